#pragma once

#include <optional>
#include <string>
#include <vector>

#include "setup/fret_limits.h"
#include "setup/fret_shape.h"
#include "setup/least_metal.h"

namespace tailblock {

/// Everything that is worked out before a verdict is spoken; the parts of fret_dress share it.
struct FretCase {
  const FretDressRequest& request;
  const FretLimits& limits;
  const Crowns& crowns;
  const FretNotes& notes;
  std::vector<double> from_nut;  ///< mm
  CrownPair found;               ///< departures, loose crowns as pressed home
  CrownPair level;               ///< the best line, fall-away included: the frets as if new
  CrownPair touched;             ///< the line that touches every crown
  FretSetting setting;
  MetalBounds bounds;

  [[nodiscard]] std::vector<NoteOverFret> notes_with(const CrownPair& crowns_mm) const {
    return notes.over_frets(crowns_mm, setting);
  }
};

/// A crown stands off the common line by more than a feeler and its own reading tell apart.
[[nodiscard]] bool crowns_are_level(const FretCase& c);

/// The smallest change of relief at which these crowns are clean. Loosening lifts the action by a factor of the neck's
/// own, which makes it a range; when tightening the saddle is taken to keep the action.
[[nodiscard]] std::optional<ReliefInstead> relief_that_does(const FretCase& c, const CrownPair& crowns);

/// What the nut must rise for the open notes that touch even over level frets; absent when a stopped note touches too
/// or none does.
[[nodiscard]] std::optional<double> nut_rise(const FretCase& c);

/// Worn frets: below the line that the others share, by more than a feeler and their own reading tell apart; and the
/// crowns with those made new, on that line.
struct WornFrets {
  std::vector<int> frets;
  CrownPair renewed;
};
[[nodiscard]] WornFrets worn_frets(const FretCase& c);

/// The note whose shortfall stands out most from its own error: absent when all are inside it.
[[nodiscard]] bool stands_out_of_the_readings(const FretCase& c, const std::vector<NoteOverFret>& notes);

}  // namespace tailblock

#pragma once

#include <optional>
#include <vector>

#include "book/records.h"
#include "setup/fret_dress.h"
#include "setup/fret_limits.h"

namespace tailblock {

/// Readings at frets that stand today: those since the frets were last levelled or renewed, or since a visit that read
/// most of them; a fret read again replaces what was read before.
struct KeptFrets {
  std::vector<FretReading> readings;
  std::optional<Date> read_on;  ///< the last visit that read how crowns stand
};
[[nodiscard]] KeptFrets kept_frets(const InstrumentStory& story, Date today);

/// How every crown stands over the bow of this neck, as far as it has been read.
struct KnownCrowns {
  std::vector<double> departures_mm;  ///< fret 1 first; the middle of bass and treble where they were read apart
  Length relief{};                    ///< of the bow that they are over
  Date read_on;
  bool apart = false;
};

/// A springing fret stands up by what it springs, until it is pressed home. Absent when no height has been read.
[[nodiscard]] std::optional<KnownCrowns> known_crowns(const InstrumentStory& story, const NeckLine& neck,
                                                      const FretLimits& limits, Date today);

/// Work after which crowns stand otherwise.
[[nodiscard]] bool is_fretwork(const Intervention& work);

}  // namespace tailblock

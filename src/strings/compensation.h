#pragma once

#include "strings/stopped_pitch.h"

namespace tailblock {

/// Which frets are weighed, and how the string is stopped.
struct Stopping {
  EndFirmness ends{};
  Finger finger{};
  int last_fret = 15;  ///< frets 1 to this are weighed by `nut_and_saddle`
};

/// The setback at which fret 12 is exactly an octave over the open string, the nut where it is.
/// @throws Refused when none within -15..40 mm does it.
[[nodiscard]] Length octave_setback(const StoppedString& string, const Stopping& stopping);

/// Crest and nut that leave the smallest sum of squared errors over frets 1..last_fret.
struct BothEnds {
  StringPlace place;
  double rms_cents = 0;
  double worst_cents = 0;  ///< largest error of those frets, without its sign
};
/// Gauss-Newton on the two places; the errors are nearly straight in both, so a few rounds settle it.
[[nodiscard]] BothEnds nut_and_saddle(const StoppedString& string, const Stopping& stopping);

/// How firmly the ends of this string must be held for fret 12 to be as sharp as was read, the crest where it is.
/// Between -4 and 8 clamped ends; beyond, the nearest of these.
[[nodiscard]] double firmness_of(const StoppedString& string, Length setback, double octave_error_cents,
                                 const Finger& finger);

/// Cents at fret 12 for each mm that the crest is set back; negative.
[[nodiscard]] double cents_per_mm_of_setback(const StoppedString& string, Length setback, const Stopping& stopping);

}  // namespace tailblock

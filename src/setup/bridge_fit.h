#pragma once

#include <optional>
#include <string>
#include <vector>

#include "setup/saddle.h"
#include "setup/saddle_limits.h"

namespace tailblock {

/// How far a saddle may stand out at one end of this bridge, in mm, and what sets each end of that range.
struct ExposureBounds {
  double least_mm, usual_least_mm, usual_most_mm, most_mm;
  double trade_least_mm;  ///< the least a saddle stands out, whatever the break angle
  std::string least_because, most_because;
};

/// From the slot's kind and depth and the break angle that must be left. With the slot's depth not known, an open-ended
/// saddle is held to its usual height.
[[nodiscard]] ExposureBounds exposure_bounds(const BridgeMeasures& bridge, const SaddleLimits& limits, bool bass);

/// The angle that a string turns through over the saddle where that stands out by `exposure_mm`.
///
///     tan b = (E + e0)/p        E exposure, p saddle to pin, e0 how far below the bridge top the string goes in (a
///     ramp)
///
/// Angle (of a middle string) and distance measured: e0 from the two. Angle alone: e0 = 0 and p from the angle.
/// Distance alone: e0 = 0, which gives the least it can be. Left out: the slope of the string before the saddle (about
/// a degree, part of the measured angle). Absent when neither was measured. Source: derived here.
[[nodiscard]] std::optional<Angle> break_angle_at(const BridgeMeasures& bridge, double exposure_mm);

/// Every limit that a saddle raised by so much, in mm at the saddle, meets or breaks.
[[nodiscard]] std::vector<LimitCheck> limit_checks(const BridgeMeasures& bridge, const SaddleLimits& limits,
                                                   double raise_bass_mm, double raise_treble_mm);

/// Heights, blank and way of working of a saddle raised by so much, in mm at the saddle.
[[nodiscard]] SaddleToMake saddle_to_make(const BridgeMeasures& bridge, const SaddleLimits& limits,
                                          double raise_bass_mm, double raise_treble_mm);

}  // namespace tailblock

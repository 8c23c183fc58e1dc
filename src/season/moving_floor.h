#pragma once

#include <span>

#include "season/year.h"

namespace tailblock {

/// The least clean action with any relief, straight between the given ones and on beyond their ends.
struct FloorLine {
  double bass_mm, treble_mm;
  double bass_slope, treble_slope;  ///< mm at fret 12 for a mm of relief
};
/// @throws Refused unless there are two or more, by rising relief.
[[nodiscard]] FloorLine floor_at(std::span<const FloorAtRelief> floors, double relief_mm);

/// Lets the floor of every path move with the relief that is believed of the instrument.
///
///     rise = f(R) - lowest,  R = level + k x,  sd^2 = f'^2 Var R,  weather share = |r - f' k|/r
///
/// f least clean action at relief R, x the wood's moisture over the reference on that day, k mm of relief a percent, r
/// mm of action a percent. A day is too low when action less rise is under the lowest: the weather moves both, which
/// the share allows for. Nothing is done without floors or without a reading of relief: the floor then stands still.
///
/// Source: derived here (docs/models/saddle.md).
void let_floor_move(YearPaths& year, const ReliefBelief& relief, const ActionLimits& limits);

}  // namespace tailblock

#pragma once

#include <vector>

#include "strings/fretted_steps.h"

namespace tailblock {

/// A string held aside by a force, at the points of its grid: just before it is let go, and one step earlier.
struct HeldString {
  std::vector<double> shape;
  std::vector<double> before;
};

/// Where frets are in the way of a pluck toward the board, the string is bent over them: frets push up as hard as it
/// takes to keep it from lying below any of them, and never pull. So a run starts without a dent, and no energy comes
/// from nowhere.
///
///     u = F G(pluck) + sum R_i G(fret i),   R_i >= 0,  depth_i <= 0,  R_i depth_i = 0      G static shape of a unit
///     force
///
/// Source: derived here (docs/models/contact.md). `lane` is the pluck whose gaps count.
[[nodiscard]] HeldString held_string(const SpeakingString& string, const StringGrid& grid, const HeldPluck& pluck,
                                     const std::vector<FretCell>& frets, std::size_t lane);

}  // namespace tailblock

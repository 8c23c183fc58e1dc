#pragma once

#include <cstddef>
#include <vector>

namespace tailblock {

/// A height that a saddle's top must reach, so far across: share 0 at string 1, 1 at the last.
struct Peg {
  double share;
  double height;
};

/// A straightedge let down on pegs: lowest in the middle of all lines on or above every peg.
struct RestingLine {
  std::size_t treble = 0, bass = 0;  ///< the pegs it rests on
  double at_treble = 0;              ///< height at share 0
  double slope = 0;                  ///< from share 0 to 1; level when one peg alone bears it

  [[nodiscard]] double at(double share) const { return at_treble + slope * share; }
};

/// It comes to rest, at its middle, on the pair of pegs, one each side, whose chord is highest there.
[[nodiscard]] RestingLine resting_line(const std::vector<Peg>& pegs);

}  // namespace tailblock

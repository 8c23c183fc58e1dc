#include "strings/resting_line.h"

#include <limits>

namespace tailblock {

RestingLine resting_line(const std::vector<Peg>& pegs) {
  RestingLine rest{.treble = 0, .bass = pegs.size() - 1, .at_treble = pegs.back().height, .slope = 0};
  double highest = -std::numeric_limits<double>::infinity();
  for (std::size_t t = 0; t < pegs.size(); ++t) {
    for (std::size_t b = 0; b < pegs.size(); ++b) {
      const Peg& treble = pegs[t];
      const Peg& bass = pegs[b];
      if (treble.share > 0.5 || bass.share < 0.5 || bass.share <= treble.share) continue;
      const double slope = (bass.height - treble.height) / (bass.share - treble.share);
      const double middle = treble.height + slope * (0.5 - treble.share);
      if (middle <= highest) continue;
      highest = middle;
      rest = {.treble = t, .bass = b, .at_treble = treble.height - slope * treble.share, .slope = slope};
    }
  }
  return rest;
}

}  // namespace tailblock

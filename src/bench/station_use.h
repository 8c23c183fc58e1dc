#pragma once

#include <vector>

#include "bench/shop_clock.h"

namespace tailblock {

/// How many of a station's places are taken through time, as steps. Places are alike, so a count is enough: stretches
/// that never overlap more than `count` deep can always be shared out among `count` places.
class StationUse {
 public:
  explicit StationUse(int count) : count_(count) {}

  /// `from` when `amount` places are free all through [from, until); else the end of the last stretch in it that
  /// forbids. No start before that can do, provided a later start never ends earlier.
  [[nodiscard]] Slot free_from(Slot from, Slot until, int amount = 1) const;
  void take(Slot from, Slot until, int amount = 1) { add(from, until, amount); }
  void give_back(Slot from, Slot until, int amount = 1) { add(from, until, -amount); }

 private:
  struct Stretch {
    Slot from;  ///< to the next one's
    int used;
  };
  void add(Slot from, Slot until, int amount);
  [[nodiscard]] std::size_t at(Slot slot) const;
  std::size_t split(Slot slot);
  void join(std::size_t i);

  int count_;
  std::vector<Stretch> stretches_{{.from = -never, .used = 0}};
};

}  // namespace tailblock

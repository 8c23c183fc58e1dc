#include "bench/station_use.h"

#include <algorithm>

namespace tailblock {

/// The stretch that the slot lies in. Halved without a branch to guess wrong: a search asks this more than all else.
std::size_t StationUse::at(Slot slot) const {
  const Stretch* first = stretches_.data();
  for (std::size_t left = stretches_.size(); left > 1;) {
    const std::size_t half = left / 2;
    first += first[half].from <= slot ? half : 0;
    left -= half;
  }
  return static_cast<std::size_t>(first - stretches_.data());
}

Slot StationUse::free_from(Slot from, Slot until, int amount) const {
  Slot free = from;
  for (std::size_t i = at(from); i < stretches_.size() && stretches_[i].from < until; ++i) {
    if (stretches_[i].used + amount > count_) free = i + 1 < stretches_.size() ? stretches_[i + 1].from : never;
  }
  return free;
}

std::size_t StationUse::split(Slot slot) {
  const std::size_t i = at(slot);
  if (stretches_[i].from == slot) return i;
  stretches_.insert(stretches_.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                    {.from = slot, .used = stretches_[i].used});
  return i + 1;
}

void StationUse::join(std::size_t i) {
  if (i > 0 && i < stretches_.size() && stretches_[i].used == stretches_[i - 1].used) {
    stretches_.erase(stretches_.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

void StationUse::add(Slot from, Slot until, int amount) {
  if (from >= until) return;
  const std::size_t first = split(from);
  const std::size_t last = split(until);
  for (std::size_t i = first; i < last; ++i) stretches_[i].used += amount;
  join(last);
  join(first);
}

}  // namespace tailblock

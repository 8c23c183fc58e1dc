#pragma once

#include <vector>

#include "bench/request.h"

namespace tailblock {

/// A place on the shop's wall clock in slots of five minutes, 0 being midnight before the first day of the plan.
using Slot = int;

inline constexpr int minutes_a_slot = 5;
inline constexpr int slots_a_day = 24 * 60 / minutes_a_slot;
inline constexpr Slot never = 1 << 28;

/// Work and waits take whole slots: five minutes begun is five minutes taken.
[[nodiscard]] constexpr int slots_for(int minutes) { return (minutes + minutes_a_slot - 1) / minutes_a_slot; }
[[nodiscard]] constexpr int day_of(Slot slot) { return slot / slots_a_day; }

/// Turns days and minutes into slots and back, and knows when the clocks change.
class ShopClock {
 public:
  ShopClock() = default;
  ShopClock(Date first_day, const std::vector<ClockChange>& changes);

  [[nodiscard]] Date first_day() const { return first_day_; }
  /// The slot that begins at or after the moment; days before the first are negative.
  [[nodiscard]] Slot slot(const Moment& moment) const;
  [[nodiscard]] Moment moment(Slot slot) const;

  /// What the wall clock shows after a wait of `slots` from `from`. A cure runs by true time: over the night when the
  /// clocks go forward it ends an hour later by the wall.
  [[nodiscard]] Slot after(Slot from, int slots) const {
    const Slot end = from + slots;
    return changes_.empty() ? end : end + shift(from, end);
  }
  /// True time from one slot to a later one, in slots.
  [[nodiscard]] int between(Slot from, Slot until) const;

 private:
  struct Change {
    Slot at;
    int forward;
  };
  [[nodiscard]] int shift(Slot from, Slot end) const;
  Date first_day_{};
  std::vector<Change> changes_;
};

}  // namespace tailblock

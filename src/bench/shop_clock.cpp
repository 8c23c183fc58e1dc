#include "bench/shop_clock.h"

#include <algorithm>

namespace tailblock {

ShopClock::ShopClock(Date first_day, const std::vector<ClockChange>& changes) : first_day_(first_day) {
  for (const ClockChange& change : changes) {
    changes_.push_back({.at = slot(change.at), .forward = change.forward_minutes / minutes_a_slot});
  }
  std::ranges::sort(changes_, {}, &Change::at);
}

Slot ShopClock::slot(const Moment& moment) const {
  return days_between(first_day_, moment.day) * slots_a_day + slots_for(moment.minute);
}

Moment ShopClock::moment(Slot slot) const {
  const int day = slot >= 0 ? slot / slots_a_day : -((slots_a_day - 1 - slot) / slots_a_day);
  return {.day = first_day_ + std::chrono::days(day), .minute = (slot - day * slots_a_day) * minutes_a_slot};
}

int ShopClock::between(Slot from, Slot until) const {
  int slots = until - from;
  for (const Change& change : changes_) {
    if (from < change.at && change.at <= until) slots -= change.forward;
  }
  return slots;
}

int ShopClock::shift(Slot from, Slot end) const {
  int shifted = 0;
  for (const Change& change : changes_) {
    if (from < change.at && change.at <= end + shifted) shifted += change.forward;
  }
  return shifted;
}

}  // namespace tailblock

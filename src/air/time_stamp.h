#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace tailblock {

/// Which comes first in a date written 3/4/2024.
enum class DayOrder { day_first, month_first };

/// A moment by the clock on the wall, as the file has it; no time zone.
using WallTime = std::chrono::sys_seconds;

/// A time stamp as written. `first` and `second` are day and month, in an order that 3/4/2024 does not tell.
struct WrittenStamp {
  int year;
  int first;
  int second;
  std::optional<DayOrder> order;  ///< told by the form itself: 2024-04-03, 3.4.2024
  std::chrono::seconds of_day;
  bool has_clock;
};

/// Reads `2024-04-03T18:30:00`, `2024/04/03 18:30`, `3.4.2024 18:30`, `4/3/2024 6:30 PM`, `3-4-24 18:30`, with seconds,
/// their fractions and a zone (`Z`, `+01:00`, which is passed over: the wall clock stands). Nothing else.
[[nodiscard]] std::optional<WrittenStamp> read_stamp(std::string_view text);

/// Reads `18:30`, `18:30:05`, `6:30 PM`.
[[nodiscard]] std::optional<std::chrono::seconds> read_clock(std::string_view text);

/// The moment meant, taking `order` where the form leaves it open; absent when there is no such day.
[[nodiscard]] std::optional<WallTime> wall_time(const WrittenStamp& stamp, DayOrder order);

}  // namespace tailblock

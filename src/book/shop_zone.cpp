#include "book/shop_zone.h"

#include <ctime>

namespace tailblock {
namespace {

using std::chrono::seconds;
using std::chrono::sys_seconds;

seconds ahead_of_utc(sys_seconds at) {
  const auto time = static_cast<std::time_t>(at.time_since_epoch().count());
  std::tm local{};
  localtime_r(&time, &local);
  return seconds(local.tm_gmtoff);
}

Moment shown_at(sys_seconds at, seconds ahead) {
  const sys_seconds wall = at + ahead;
  const Date day = std::chrono::floor<std::chrono::days>(wall);
  return {day, static_cast<int>(std::chrono::floor<std::chrono::minutes>(wall - day).count())};
}

/// The first instant of the clock as it is at `until`, which differs from that at `from`.
sys_seconds change_between(sys_seconds from, sys_seconds until) {
  const seconds old = ahead_of_utc(from);
  while (until - from > seconds(1)) {
    const sys_seconds middle = from + (until - from) / 2;
    (ahead_of_utc(middle) == old ? from : until) = middle;
  }
  return until;
}

}  // namespace

std::vector<ClockChange> clock_changes(Date first, int days) {
  std::vector<ClockChange> changes;
  sys_seconds from = instant_of({first, 0});
  for (int day = 0; day < days; ++day) {
    const sys_seconds until = from + std::chrono::days(1);
    const seconds old = ahead_of_utc(from), now = ahead_of_utc(until);
    if (old != now) {
      const auto forward = std::chrono::duration_cast<std::chrono::minutes>(now - old);
      changes.push_back({.at = shown_at(change_between(from, until), old),
                         .forward_minutes = static_cast<int>(forward.count())});
    }
    from = until;
  }
  return changes;
}

sys_seconds instant_of(const Moment& moment) {
  const std::chrono::year_month_day day(moment.day);
  std::tm local{};
  local.tm_year = static_cast<int>(day.year()) - 1900;
  local.tm_mon = static_cast<int>(static_cast<unsigned>(day.month())) - 1;
  local.tm_mday = static_cast<int>(static_cast<unsigned>(day.day()));
  local.tm_min = moment.minute;
  local.tm_isdst = -1;
  return sys_seconds(seconds(std::mktime(&local)));
}

Moment after_wait(const Moment& from, int minutes) {
  const sys_seconds ends = instant_of(from) + std::chrono::minutes(minutes);
  return shown_at(ends, ahead_of_utc(ends));
}

}  // namespace tailblock

#pragma once

#include <chrono>
#include <string>
#include <string_view>

namespace tailblock {

/// A calendar day (proleptic Gregorian), without a time zone: the day as the shop's wall calendar has it.
using Date = std::chrono::sys_days;

/// `2026-02-14`.
[[nodiscard]] std::string iso_date(Date date);

/// Reads `2026-02-14`.
/// @throws Refused naming `field` when the text is not a day that exists, years 1900..2199.
[[nodiscard]] Date date_from_iso(std::string_view field, std::string_view text);

/// Days from `from` to `to`; negative when `to` is earlier.
[[nodiscard]] constexpr int days_between(Date from, Date to) { return static_cast<int>((to - from).count()); }

/// 0-based day of the year, 0..365.
[[nodiscard]] int day_of_year(Date date);

}  // namespace tailblock

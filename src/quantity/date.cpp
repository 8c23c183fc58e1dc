#include "quantity/date.h"

#include <array>
#include <charconv>
#include <cstdio>
#include <optional>

#include "quantity/quoted_text.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

std::optional<int> whole_number(std::string_view digits) {
  int value = 0;
  const auto [end, fault] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (fault != std::errc{} || end != digits.data() + digits.size() || digits.front() == '-') return std::nullopt;
  return value;
}

std::optional<Date> read_iso(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = whole_number(text.substr(0, 4));
  const auto month = whole_number(text.substr(5, 2));
  const auto day = whole_number(text.substr(8, 2));
  if (!year || !month || !day || *year < 1900 || *year > 2199) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  if (!date.ok()) return std::nullopt;
  return Date(date);
}

}  // namespace

std::string iso_date(Date date) {
  const std::chrono::year_month_day day(date);
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", static_cast<int>(day.year()),
                static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
  return text.data();
}

Date date_from_iso(std::string_view field, std::string_view text) {
  if (const auto date = read_iso(text)) return *date;
  throw Refused(std::string(field) + ": " + quoted_text(text) + " is not a day written 2026-02-14, years 1900..2199");
}

int day_of_year(Date date) {
  const std::chrono::year_month_day day(date);
  return days_between(Date(day.year() / std::chrono::January / 1), date);
}

}  // namespace tailblock

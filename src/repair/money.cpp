#include "repair/money.h"

#include <cassert>
#include <limits>

#include "quantity/quoted_text.h"
#include "repair/table_cells.h"

namespace tailblock {
namespace {

constexpr std::int64_t most_whole = 1'000'000'000'000;

std::int64_t power_of_ten(int digits) {
  std::int64_t power = 1;
  for (int i = 0; i < digits; ++i) power *= 10;
  return power;
}

}  // namespace

std::vector<Currency> currencies(std::string_view csv) {
  const CsvTable table("currencies.csv", csv);
  std::vector<Currency> all;
  for (const CsvRow& row : table.rows()) {
    Currency currency{cell_name(row, "code"), cell_name(row, "name"), row.whole_number("minor_digits", {0, 4, ""})};
    (void)row.name("source");
    const bool three_capitals = currency.id.size() == 3 && std::all_of(currency.id.begin(), currency.id.end(),
                                                                       [](char c) { return 'A' <= c && c <= 'Z'; });
    if (!three_capitals) throw Refused(row.where("code") + ": is not three capitals");
    if (row_of_id(all, currency.id) != nullptr) throw Refused(row.where("code") + ": comes twice");
    all.push_back(std::move(currency));
  }
  return all;
}

ExactDecimal exact_decimal(std::string_view field, std::string_view text, int digits) {
  const std::string quoted = std::string(field) + ": " + quoted_text(text) + " ";
  std::string_view rest = text;
  const bool negative = !rest.empty() && rest.front() == '-';
  if (negative) rest.remove_prefix(1);
  const std::size_t point = rest.find('.');
  const std::string_view whole = rest.substr(0, point);
  const std::string_view part = point == std::string_view::npos ? std::string_view() : rest.substr(point + 1);
  const auto all_digits = [](std::string_view part_of) {
    return std::all_of(part_of.begin(), part_of.end(), [](char c) { return '0' <= c && c <= '9'; });
  };
  if (whole.empty() || !all_digits(whole) || !all_digits(part) || (part.empty() && point != std::string_view::npos)) {
    throw Refused(quoted + "is not a plain decimal number like 12.50");
  }
  if (part.size() > static_cast<std::size_t>(digits)) {
    throw Refused(quoted + "has more than " + std::to_string(digits) + " decimals");
  }
  if (whole.size() > 12) throw Refused(quoted + "is beyond 999999999999");
  std::int64_t units = 0;
  for (const char c : whole) units = units * 10 + (c - '0');
  for (const char c : part) units = units * 10 + (c - '0');
  units *= power_of_ten(digits - static_cast<int>(part.size()));
  assert(units / power_of_ten(digits) < most_whole);
  return {negative ? -units : units, digits};
}

bool is_nothing(std::string_view money) { return money.find_first_not_of("0.") == std::string_view::npos; }

std::string as_text(const ExactDecimal& value) {
  const std::int64_t power = power_of_ten(value.digits);
  const std::int64_t size = value.units < 0 ? -value.units : value.units;
  std::string text = value.units < 0 ? "-" : "";
  text += std::to_string(size / power);
  if (value.digits == 0) return text;
  const std::string part = std::to_string(size % power);
  return text + "." + std::string(static_cast<std::size_t>(value.digits) - part.size(), '0') + part;
}

std::int64_t rounded_division(std::int64_t numerator, std::int64_t denominator, MoneyRounding rounding) {
  assert(denominator > 0 && denominator <= std::numeric_limits<std::int64_t>::max() / 2);
  const bool negative = numerator < 0;
  const std::int64_t size = negative ? -numerator : numerator;
  std::int64_t quotient = size / denominator;
  const std::int64_t twice_left = 2 * (size % denominator);
  const bool half = twice_left == denominator;
  if (twice_left > denominator || (half && (rounding == MoneyRounding::half_up || quotient % 2 == 1))) ++quotient;
  return negative ? -quotient : quotient;
}

ExactDecimal times(const ExactDecimal& a, const ExactDecimal& b, MoneyRounding rounding) {
  return {rounded_division(a.units * b.units, power_of_ten(b.digits), rounding), a.digits};
}

}  // namespace tailblock

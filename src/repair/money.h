#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

/// A currency by ISO 4217: data/currencies.csv.
struct Currency {
  std::string id;  ///< its code
  std::string name;
  int minor_digits = 2;
};
/// @throws Refused naming the row.
[[nodiscard]] std::vector<Currency> currencies(std::string_view csv);

/// How half a minor unit is rounded. half_up is away from zero.
enum class MoneyRounding { half_up, half_even };

/// A decimal number, exactly: `units` times 10^-digits. No binary fraction is ever between.
struct ExactDecimal {
  std::int64_t units = 0;
  int digits = 0;
};

/// `12`, `12.5` or `-0.75` with at most `digits` decimals, as that many. No exponent, no grouping, no comma.
/// @throws Refused naming the field: not a number, too many decimals, beyond 10^12.
[[nodiscard]] ExactDecimal exact_decimal(std::string_view field, std::string_view text, int digits);
/// With all its decimals: `12.50`.
[[nodiscard]] std::string as_text(const ExactDecimal& value);

/// Whether an amount written as above is none: empty, `0`, `0.00`.
[[nodiscard]] bool is_nothing(std::string_view money);

/// numerator/denominator to the nearest whole, halves as told. denominator > 0.
[[nodiscard]] std::int64_t rounded_division(std::int64_t numerator, std::int64_t denominator, MoneyRounding rounding);

/// a x b in the digits of `a`. Both below 10^12 and 10^6 units, so that nothing overflows: the callers' ranges see to
/// it.
[[nodiscard]] ExactDecimal times(const ExactDecimal& a, const ExactDecimal& b, MoneyRounding rounding);

}  // namespace tailblock

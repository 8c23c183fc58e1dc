#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace tailblock {

/// Input that is refused, or a model asked where it does not hold. `what()` is the whole message for the person:
/// field, value, allowed range, in one line.
class Refused : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// A closed range in the unit the field is written in.
struct Range {
  double low;
  double high;
  std::string_view unit;
};

/// Decimal text to twelve significant digits, without trailing zeros: beyond any gauge, and free of the noise of converting
/// units. Independent of any locale.
[[nodiscard]] std::string plain_number(double value);

/// Returns `value` when it lies in `range`; a NaN never does.
/// @throws Refused as `pitch_hz: 10000 Hz is outside 20..1500 Hz`.
double require_within(std::string_view field, double value, const Range& range);

}  // namespace tailblock

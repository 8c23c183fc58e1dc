#include "quantity/refused.h"

#include <array>
#include <charconv>

namespace tailblock {

std::string plain_number(double value) {
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, 12).ptr;
  return {text.data(), end};
}

double require_within(std::string_view field, double value, const Range& range) {
  if (range.low <= value && value <= range.high) return value;
  const std::string unit = range.unit.empty() ? std::string() : " " + std::string(range.unit);
  throw Refused(std::string(field) + ": " + plain_number(value) + unit + " is outside " + plain_number(range.low) +
                ".." + plain_number(range.high) + unit);
}

}  // namespace tailblock

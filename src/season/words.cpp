#include "season/words.h"

#include <array>
#include <charconv>
#include <cmath>

namespace tailblock {

std::string decimals(double value, int places) {
  const double unit = std::pow(10.0, -places);
  if (std::abs(value) < unit / 2) value = 0;
  std::array<char, 64> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, places).ptr;
  return {text.data(), end};
}

std::string day_in_words(Date date) {
  static constexpr std::array<std::string_view, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                           "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::chrono::year_month_day day(date);
  return std::to_string(static_cast<unsigned>(day.day())) + " " +
         std::string(months[static_cast<unsigned>(day.month()) - 1]) + " " +
         std::to_string(static_cast<int>(day.year()));
}

std::string counted(std::size_t count, std::string_view noun) {
  return std::to_string(count) + " " + std::string(noun) + (count == 1 ? "" : "s");
}

}  // namespace tailblock

#include "http/ask_fields.h"

#include <cmath>

#include "quantity/csv_table.h"
#include "quantity/trade_notation.h"

namespace tailblock {

std::optional<std::string> query_text(const Ask& ask, const std::string& name) {
  const auto found = ask.query.find(name);
  if (found == ask.query.end() || found->second.empty()) return std::nullopt;
  return found->second;
}

std::optional<double> query_number(const Ask& ask, const std::string& name, const Range& range) {
  const auto text = query_text(ask, name);
  if (!text) return std::nullopt;
  const auto number = number_from_text(*text);
  if (!number) throw Refused(name + ": \"" + *text + "\" is not a number");
  return require_within(name, *number, range);
}

std::optional<int> query_integer(const Ask& ask, const std::string& name, const Range& range) {
  const auto number = query_number(ask, name, range);
  if (!number) return std::nullopt;
  if (*number != std::floor(*number)) throw Refused(name + ": " + plain_number(*number) + " is not a whole number");
  return static_cast<int>(*number);
}

std::optional<Date> query_date(const Ask& ask, const std::string& name) {
  const auto text = query_text(ask, name);
  if (!text) return std::nullopt;
  return date_from_iso(name, *text);
}

std::optional<Length> query_length(const Ask& ask, const std::string& name, const Range& range) {
  const auto text = query_text(ask, name);
  if (!text) return std::nullopt;
  const auto number = number_from_text(*text);
  const Length length = number ? mm(*number) : length_from_text(name, *text);
  require_within(name, in_mm(length), range);
  return length;
}

std::optional<int> query_choice(const Ask& ask, const std::string& name, std::span<const std::string_view> names) {
  const auto text = query_text(ask, name);
  if (!text) return std::nullopt;
  std::string allowed;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (*text == names[i]) return static_cast<int>(i);
    allowed += (allowed.empty() ? "" : ", ") + std::string(names[i]);
  }
  throw Refused(name + ": \"" + *text + "\" is not one of " + allowed);
}

}  // namespace tailblock

#pragma once

#include <optional>
#include <string>

#include "http/endpoint.h"

namespace tailblock {

/// A query field as written; absent when it is not there or empty.
[[nodiscard]] std::optional<std::string> query_text(const Ask& ask, const std::string& name);
/// @throws Refused when it is there and is not a number in the range.
[[nodiscard]] std::optional<double> query_number(const Ask& ask, const std::string& name, const Range& range);
[[nodiscard]] std::optional<int> query_integer(const Ask& ask, const std::string& name, const Range& range);
[[nodiscard]] std::optional<Date> query_date(const Ask& ask, const std::string& name);
/// A length in the trade's notation; a bare number is millimetres, as everywhere in a field that ends in `_mm`.
[[nodiscard]] std::optional<Length> query_length(const Ask& ask, const std::string& name, const Range& in_mm);
/// An index into `names`.
[[nodiscard]] std::optional<int> query_choice(const Ask& ask, const std::string& name,
                                              std::span<const std::string_view> names);

}  // namespace tailblock

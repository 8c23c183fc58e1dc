#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "quantity/date.h"

namespace tailblock {

/// `0.52`, with a point whatever the locale; never `-0.00`.
[[nodiscard]] std::string decimals(double value, int places);

/// `14 Aug 2025`.
[[nodiscard]] std::string day_in_words(Date date);

/// `1 reading`, `3 readings`.
[[nodiscard]] std::string counted(std::size_t count, std::string_view noun);

}  // namespace tailblock

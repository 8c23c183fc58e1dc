#pragma once

#include <array>
#include <string_view>

#include "season/response.h"

namespace tailblock {

/// What is usual for each body size.
struct BodyDesignTable {
  std::array<Length, body_size_names.size()> lower_bout_width;  ///< in the order of BodySize
};

/// Reads data/body_designs.csv.
/// @throws Refused naming the cell, or the body size that is missing or comes twice.
[[nodiscard]] BodyDesignTable body_design_table(std::string_view csv);

}  // namespace tailblock

#pragma once

#include <span>
#include <string>
#include <string_view>

#include "quantity/csv_table.h"

namespace tailblock {

/// Where one value of a table of named values goes.
struct NamedValue {
  std::string_view name;
  double* place;
  Range range;
};

/// Reads a table of named values, one a row: columns `name`, `value_column` and `source`, the last never empty.
/// @throws Refused naming the cell, or the value that is missing, unknown or comes twice.
void read_named_values(std::string table, std::string_view csv, std::string_view value_column,
                       std::span<const NamedValue> values);

}  // namespace tailblock

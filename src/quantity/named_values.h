#pragma once

#include <initializer_list>
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

/// How a table of named values is laid out, and what refusals call it.
struct NamedTable {
  std::string name;                         ///< fret_limits.csv
  std::string_view each = "figure";         ///< what one row is
  std::string_view value_column = "value";  ///< beside `name` and `source`
  std::string_view words_column = {};       ///< further words that no row goes without; empty: none
};

/// Reads a table of named values, one a row: columns `name`, `value_column` and `source`, the last
/// never empty.
/// @throws Refused naming the cell, or the value that is missing, unknown or comes twice.
void read_named_values(const NamedTable& table, std::string_view csv, std::span<const NamedValue> values);

/// Some values of a table that must not fall from one to the next.
/// @throws Refused naming the table and what falls.
void require_rising(std::string_view table, std::string_view what, std::initializer_list<double> values);

}  // namespace tailblock

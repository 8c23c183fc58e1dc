#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/csv_table.h"

/// Cells that the tables of this room share.
namespace tailblock {

[[nodiscard]] std::string cell_text(const CsvRow& row, std::string_view column);
/// An empty cell is refused.
[[nodiscard]] std::string cell_name(const CsvRow& row, std::string_view column);
/// @throws Refused naming the cell unless it is `yes` or `no`.
[[nodiscard]] bool cell_yes(const CsvRow& row, std::string_view column);
/// The place of the cell among `words`. @throws Refused naming the cell and the words.
[[nodiscard]] int cell_choice(const CsvRow& row, std::string_view column, const std::vector<std::string_view>& words);

/// All of these, each of which is any of those: `a;b|c` is a and (b or c).
using AllOfAny = std::vector<std::vector<std::string>>;
[[nodiscard]] AllOfAny all_of_any(std::string_view cell);

/// Three figures of one thing, in its unit: `low`, `typical`, `high`.
struct Spread {
  double low = 0, typical = 0, high = 0;
};
/// @throws Refused naming the row when they are out of order.
[[nodiscard]] Spread cell_spread(const CsvRow& row, std::string_view low, std::string_view typical,
                                 std::string_view high, const Range& range);

template <class Row>
[[nodiscard]] const Row* row_of_id(const std::vector<Row>& rows, std::string_view id) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.id == id; });
  return found == rows.end() ? nullptr : &*found;
}

/// Reads a table whose rows have an `id` and a `source`.
/// @throws Refused naming an id that comes twice, and what `read` refuses.
template <class Row, class Read>
[[nodiscard]] std::vector<Row> rows_with_id(const std::string& file, std::string_view csv, Read read) {
  const CsvTable table(file, csv);
  std::vector<Row> rows;
  for (const CsvRow& row : table.rows()) {
    if (row_of_id(rows, row.name("id")) != nullptr) throw Refused(row.where("id") + ": comes twice");
    (void)row.name("source");
    rows.push_back(read(row));
  }
  return rows;
}

}  // namespace tailblock

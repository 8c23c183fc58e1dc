#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/refused.h"

namespace tailblock {

/// Reads one number written with a point, whatever the locale: the whole of `text` or nothing. No infinity, no NaN.
[[nodiscard]] std::optional<double> number_from_text(std::string_view text);

class CsvTable;

/// One row of a table. Every reader names the cell it refuses: `species.csv line 7, nu_LR: "x" is not a number`.
/// A row points into its table and must not outlive it.
class CsvRow {
 public:
  /// The cell as written.
  [[nodiscard]] std::string_view text(std::string_view column) const;
  /// The cell as written; an empty one is refused.
  [[nodiscard]] std::string_view name(std::string_view column) const;
  [[nodiscard]] double number(std::string_view column, const Range& range) const;
  /// Absent when the cell is empty.
  [[nodiscard]] std::optional<double> number_if_given(std::string_view column, const Range& range) const;
  [[nodiscard]] int whole_number(std::string_view column, const Range& range) const;
  /// `species.csv line 7`, or `species.csv line 7, nu_LR`.
  [[nodiscard]] std::string where() const;
  [[nodiscard]] std::string where(std::string_view column) const;

 private:
  friend class CsvTable;
  CsvRow(const CsvTable& table, std::size_t line, std::vector<std::string> cells)
      : table_(&table), line_(line), cells_(std::move(cells)) {}
  const CsvTable* table_;
  std::size_t line_;
  std::vector<std::string> cells_;
};

/// A table of facts or of published values: comma separated with a header row, cells quoted as in RFC 4180 but never
/// over more than one line, lines starting with `#` being notes. `name` is what refusals call it.
class CsvTable {
 public:
  /// @throws Refused when there is no header or no row, a column comes twice, a row is short or long, or a quote is
  /// never closed.
  CsvTable(std::string name, std::string_view csv);
  CsvTable(const CsvTable&) = delete;
  CsvTable& operator=(const CsvTable&) = delete;
  ~CsvTable() = default;

  [[nodiscard]] const std::vector<CsvRow>& rows() const { return rows_; }
  [[nodiscard]] const std::vector<std::string>& columns() const { return columns_; }
  [[nodiscard]] bool has_column(std::string_view column) const;

 private:
  friend class CsvRow;
  [[nodiscard]] std::size_t index_of(std::string_view column) const;
  std::string name_;
  std::vector<std::string> columns_;
  std::vector<CsvRow> rows_;
};

/// A cell that holds several words: `a;b;c` as three; an empty cell as none.
[[nodiscard]] std::vector<std::string> listed(std::string_view cell, char between = ';');

}  // namespace tailblock

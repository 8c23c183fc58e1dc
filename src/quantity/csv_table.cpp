#include "quantity/csv_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

/// The cells of one line; absent when a quote is never closed or text follows a closing quote.
std::optional<std::vector<std::string>> cells_of(std::string_view line) {
  std::vector<std::string> cells(1);
  enum class At { start, bare, quoted, after_quote } at = At::start;
  for (const char c : line) {
    if (at == At::quoted) {
      if (c == '"') {
        at = At::after_quote;
      } else {
        cells.back() += c;
      }
    } else if (c == ',') {
      cells.emplace_back();
      at = At::start;
    } else if (c == '"' && at == At::start) {
      at = At::quoted;
    } else if (c == '"' && at == At::after_quote) {
      cells.back() += c;
      at = At::quoted;
    } else if (at == At::after_quote) {
      return std::nullopt;
    } else {
      cells.back() += c;
      at = At::bare;
    }
  }
  if (at == At::quoted) return std::nullopt;
  return cells;
}

}  // namespace

std::optional<double> number_from_text(std::string_view text) {
  double value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (text.empty() || fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) {
    return std::nullopt;
  }
  return value;
}

std::string_view CsvRow::text(std::string_view column) const { return cells_[table_->index_of(column)]; }

std::string_view CsvRow::name(std::string_view column) const {
  const std::string_view cell = text(column);
  if (cell.empty()) throw Refused(where(column) + ": is empty");
  return cell;
}

double CsvRow::number(std::string_view column, const Range& range) const {
  const std::string_view cell = name(column);
  const auto value = number_from_text(cell);
  if (!value) throw Refused(where(column) + ": " + quoted_text(cell) + " is not a number");
  return require_within(where(column), *value, range);
}

std::optional<double> CsvRow::number_if_given(std::string_view column, const Range& range) const {
  if (text(column).empty()) return std::nullopt;
  return number(column, range);
}

int CsvRow::whole_number(std::string_view column, const Range& range) const {
  const double value = number(column, range);
  if (value != std::floor(value) || std::abs(value) > 1e9) {
    throw Refused(where(column) + ": " + plain_number(value) + " is not a whole number");
  }
  return static_cast<int>(value);
}

std::string CsvRow::where() const { return table_->name_ + " line " + std::to_string(line_); }

std::string CsvRow::where(std::string_view column) const { return where() + ", " + std::string(column); }

CsvTable::CsvTable(std::string name, std::string_view csv) : name_(std::move(name)) {
  if (csv.starts_with("\xEF\xBB\xBF")) csv.remove_prefix(3);
  std::size_t line_number = 0;
  while (!csv.empty()) {
    const std::size_t length = std::min(csv.find('\n'), csv.size());
    std::string_view line = csv.substr(0, length);
    csv.remove_prefix(std::min(length + 1, csv.size()));
    ++line_number;
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (line.empty() || line.starts_with('#')) continue;
    const std::string here = name_ + " line " + std::to_string(line_number);
    auto cells = cells_of(line);
    if (!cells) throw Refused(here + ": a quote is not closed, or something follows it");
    if (columns_.empty()) {
      columns_ = std::move(*cells);
      continue;
    }
    if (cells->size() != columns_.size()) {
      throw Refused(here + ": " + std::to_string(cells->size()) + " cells, the header has " +
                    std::to_string(columns_.size()));
    }
    rows_.push_back(CsvRow(*this, line_number, std::move(*cells)));
  }
  for (auto column = columns_.begin(); column != columns_.end(); ++column) {
    if (std::find(columns_.begin(), column, *column) != column) {
      throw Refused(name_ + ": column " + *column + " comes twice");
    }
  }
  if (rows_.empty()) throw Refused(name_ + ": has no rows");
}

bool CsvTable::has_column(std::string_view column) const {
  return std::find(columns_.begin(), columns_.end(), column) != columns_.end();
}

std::size_t CsvTable::index_of(std::string_view column) const {
  const auto found = std::find(columns_.begin(), columns_.end(), column);
  if (found == columns_.end()) throw Refused(name_ + ": has no column " + std::string(column));
  return static_cast<std::size_t>(found - columns_.begin());
}

std::vector<std::string> listed(std::string_view cell, char between) {
  std::vector<std::string> parts;
  while (!cell.empty()) {
    const std::size_t end = cell.find(between);
    parts.emplace_back(cell.substr(0, end));
    cell = end == std::string_view::npos ? std::string_view() : cell.substr(end + 1);
  }
  return parts;
}

}  // namespace tailblock

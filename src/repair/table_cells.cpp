#include "repair/table_cells.h"

namespace tailblock {

std::string cell_text(const CsvRow& row, std::string_view column) { return std::string(row.text(column)); }
std::string cell_name(const CsvRow& row, std::string_view column) { return std::string(row.name(column)); }

bool cell_yes(const CsvRow& row, std::string_view column) { return cell_choice(row, column, {"no", "yes"}) == 1; }

int cell_choice(const CsvRow& row, std::string_view column, const std::vector<std::string_view>& words) {
  const std::string_view cell = row.name(column);
  std::string known;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == cell) return static_cast<int>(i);
    known += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + std::string(words[i]);
  }
  throw Refused(row.where(column) + ": \"" + std::string(cell) + "\" is not " + known);
}

AllOfAny all_of_any(std::string_view cell) {
  AllOfAny all;
  for (const std::string& part : listed(cell)) all.push_back(listed(part, '|'));
  return all;
}

Spread cell_spread(const CsvRow& row, std::string_view low, std::string_view typical, std::string_view high,
                   const Range& range) {
  const Spread spread{row.number(low, range), row.number(typical, range), row.number(high, range)};
  if (!(spread.low <= spread.typical && spread.typical <= spread.high)) {
    throw Refused(row.where(typical) + ": is not between " + std::string(low) + " and " + std::string(high));
  }
  return spread;
}

}  // namespace tailblock

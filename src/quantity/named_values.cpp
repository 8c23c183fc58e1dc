#include "quantity/named_values.h"

#include <algorithm>
#include <vector>

namespace tailblock {

void read_named_values(std::string table, std::string_view csv, std::string_view value_column,
                       std::span<const NamedValue> values) {
  const CsvTable rows(table, csv);
  std::vector<bool> seen(values.size(), false);
  for (const CsvRow& row : rows.rows()) {
    const std::string_view name = row.name("name");
    const auto known = std::ranges::find(values, name, &NamedValue::name);
    if (known == values.end()) {
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" is not a value of this table");
    }
    const auto place = static_cast<std::size_t>(known - values.begin());
    if (seen[place]) throw Refused(row.where("name") + ": \"" + std::string(name) + "\" comes twice");
    seen[place] = true;
    *known->place = row.number(value_column, known->range);
    (void)row.name("source");
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (!seen[i]) throw Refused(table + ": " + std::string(values[i].name) + " is missing");
  }
}

}  // namespace tailblock

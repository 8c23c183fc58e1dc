#include "quantity/named_values.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace tailblock {

void read_named_values(const NamedTable& table, std::string_view csv, std::span<const NamedValue> values) {
  const CsvTable rows(table.name, csv);
  std::vector<bool> seen(values.size(), false);
  for (const CsvRow& row : rows.rows()) {
    const std::string_view name = row.name("name");
    const auto known = std::ranges::find(values, name, &NamedValue::name);
    const std::string quoted = "\"" + std::string(name) + "\"";
    if (known == values.end()) {
      throw Refused(row.where("name") + ": " + quoted + " is not a " + std::string(table.each) + " of this table");
    }
    const auto place = static_cast<std::size_t>(known - values.begin());
    if (seen[place]) throw Refused(row.where("name") + ": " + quoted + " comes twice");
    seen[place] = true;
    *known->place = row.number(table.value_column, known->range);
    if (!table.words_column.empty()) (void)row.name(table.words_column);
    (void)row.name("source");
  }
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (!seen[i]) throw Refused(table.name + ": " + std::string(values[i].name) + " is missing");
  }
}

void require_rising(std::string_view table, std::string_view what, std::initializer_list<double> values) {
  double before = std::numeric_limits<double>::lowest();
  for (const double value : values) {
    if (!(before <= value)) {
      throw Refused(std::string(table) + ": " + std::string(what) + ": " + plain_number(value) + " is below " +
                    plain_number(before) + " which comes before it");
    }
    before = value;
  }
}

}  // namespace tailblock

#include "season/body_designs.h"

#include <algorithm>
#include <string>

#include "quantity/csv_table.h"

namespace tailblock {

BodyDesignTable body_design_table(std::string_view csv) {
  const CsvTable table("body_designs.csv", csv);
  BodyDesignTable designs{};
  std::array<bool, body_size_names.size()> seen{};
  for (const CsvRow& row : table.rows()) {
    const std::string_view name = row.name("body_size");
    const auto found = std::find(body_size_names.begin(), body_size_names.end(), name);
    if (found == body_size_names.end()) {
      throw Refused(row.where("body_size") + ": \"" + std::string(name) + "\" is not a body size");
    }
    const auto size = static_cast<std::size_t>(found - body_size_names.begin());
    if (seen[size]) throw Refused(row.where("body_size") + ": \"" + std::string(name) + "\" comes twice");
    seen[size] = true;
    designs.lower_bout_width[size] = mm(row.number("lower_bout_width_mm", {200, 600, "mm"}));
    (void)row.name("source");
  }
  for (std::size_t size = 0; size < seen.size(); ++size) {
    if (!seen[size]) throw Refused("body_designs.csv: " + std::string(body_size_names[size]) + " is missing");
  }
  return designs;
}

}  // namespace tailblock

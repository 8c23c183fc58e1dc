#include <array>
#include <set>

#include "quantity/csv_table.h"
#include "strings/intonation.h"

namespace tailblock {
namespace {

struct Figure {
  std::string_view name;
  double* place;
  Range range;
};

std::array<Figure, 6> figures_of(IntonationLimits& limits) {
  return {{
      {"firm_ends_least", &limits.firm_ends_least, {0, 2, "ends"}},
      {"firm_ends_most", &limits.firm_ends_most, {0, 4, "ends"}},
      {"spreads", &limits.spreads, {0.5, 4, ""}},
      {"crest_land_least", &limits.crest_land_least, {0, 2, "mm"}},
      {"slot_width_most", &limits.slot_width_most, {1, 10, "mm"}},
      {"in_tune_cents", &limits.in_tune_cents, {0.1, 20, "cents"}},
  }};
}

}  // namespace

IntonationLimits intonation_limits(std::string_view csv) {
  const CsvTable table("intonation_limits.csv", csv);
  IntonationLimits limits{};
  std::set<std::string_view> given;
  const auto figures = figures_of(limits);
  for (const CsvRow& row : table.rows()) {
    const std::string_view name = row.name("name");
    const Figure* known = nullptr;
    for (const Figure& figure : figures) {
      if (figure.name == name) known = &figure;
    }
    const std::string quoted = "\"" + std::string(name) + "\"";
    if (known == nullptr) throw Refused(row.where("name") + ": " + quoted + " is not a figure of this table");
    if (!given.insert(known->name).second) throw Refused(row.where("name") + ": " + quoted + " comes twice");
    *known->place = row.number("value", known->range);
    (void)row.name("source");
  }
  for (const Figure& figure : figures) {
    if (!given.contains(figure.name)) {
      throw Refused("intonation_limits.csv: " + std::string(figure.name) + " is missing");
    }
  }
  if (!(limits.firm_ends_least < limits.firm_ends_most)) {
    throw Refused("intonation_limits.csv: firm_ends_most: is not above firm_ends_least");
  }
  return limits;
}

}  // namespace tailblock

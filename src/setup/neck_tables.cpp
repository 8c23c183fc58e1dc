#include <array>

#include "quantity/named_values.h"
#include "setup/neck_angle.h"

namespace tailblock {
namespace {

std::array<NamedValue, 5> figures_of(NeckLimits& limits) {
  return {{
      {"straightedge_low", &limits.straightedge_low, {-10, 10, "mm"}},
      {"straightedge_high", &limits.straightedge_high, {-10, 10, "mm"}},
      {"heel_step", &limits.heel_step, {2, 50, "mm"}},
      {"tongue_shim_least", &limits.tongue_shim_least, {0, 2, "mm"}},
      {"years_few", &limits.years_few, {0, 100, "years"}},
  }};
}

bool yes_or_no(const CsvRow& row, std::string_view column) {
  const std::string_view cell = row.name(column);
  if (cell != "yes" && cell != "no") {
    throw Refused(row.where(column) + ": \"" + std::string(cell) + "\" is neither yes nor no");
  }
  return cell == "yes";
}

}  // namespace

NeckLimits neck_limits(std::string_view csv) {
  NeckLimits limits{};
  read_named_values({.name = "neck_limits.csv"}, csv, figures_of(limits));
  if (!(limits.straightedge_low < limits.straightedge_high)) {
    throw Refused("neck_limits.csv: straightedge_high: is not over straightedge_low");
  }
  return limits;
}

std::vector<NeckStep> neck_steps(std::string_view csv) {
  const CsvTable table("neck_steps.csv", csv);
  std::vector<NeckStep> steps;
  for (const CsvRow& row : table.rows()) {
    (void)row.name("source");
    steps.push_back({.words = std::string(row.name("step")),
                     .caution = std::string(row.text("caution")),
                     .asks_owner = yes_or_no(row, "asks_owner")});
    if (steps.back().asks_owner && steps.back().caution.empty()) {
      throw Refused(row.where("caution") + ": a step that asks the owner says why");
    }
  }
  return steps;
}

}  // namespace tailblock

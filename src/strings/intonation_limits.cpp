#include <array>

#include "quantity/named_values.h"
#include "strings/intonation.h"

namespace tailblock {
namespace {

std::array<NamedValue, 6> figures_of(IntonationLimits& limits) {
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
  IntonationLimits limits{};
  read_named_values({.name = "intonation_limits.csv"}, csv, figures_of(limits));
  if (!(limits.firm_ends_least < limits.firm_ends_most)) {
    throw Refused("intonation_limits.csv: firm_ends_most: is not above firm_ends_least");
  }
  return limits;
}

}  // namespace tailblock

#include "setup/fret_limits.h"

#include <array>
#include <set>
#include <string>

#include "quantity/csv_table.h"

namespace tailblock {
namespace {

constexpr Range heights{0.001, 5, "mm"};
constexpr Range counts{1, 24, ""};
constexpr Range factors{0.1, 10, ""};
constexpr Range shares{0, 1, ""};

struct Figure {
  std::string_view name;
  double* place;
  Range range;
};

/// Every figure of the table and where it goes. As long as the table, because it is the table.
std::array<Figure, 30> figures_of(FretLimits& limits) {
  return {{
      {"least_crown", &limits.least_crown, heights},
      {"margin", &limits.margin, heights},
      {"departure_sd", &limits.departure_sd, heights},
      {"straightedge_sd", &limits.straightedge_sd, heights},
      {"rocker_sd", &limits.rocker_sd, heights},
      {"over_board_sd", &limits.over_board_sd, heights},
      {"springs_sd", &limits.springs_sd, heights},
      {"board_true_sd", &limits.board_true_sd, heights},
      {"unread_bend", &limits.unread_bend, heights},
      {"withheld_within_sd", &limits.withheld_within_sd, factors},
      {"level_within", &limits.level_within, heights},
      {"least_cut", &limits.least_cut, heights},
      {"spot_frets_most", &limits.spot_frets_most, counts},
      {"springs_most", &limits.springs_most, heights},
      {"hump_usual", &limits.hump_usual, heights},
      {"hump_most", &limits.hump_most, heights},
      {"hump_local_most", &limits.hump_local_most, heights},
      {"tongue_rise_most", &limits.tongue_rise_most, heights},
      {"tongue_fall_most", &limits.tongue_fall_most, heights},
      {"relief_least", &limits.relief_least, heights},
      {"relief_most", &limits.relief_most, heights},
      {"relief_aim_least", &limits.relief_aim_least, heights},
      {"relief_aim_most", &limits.relief_aim_most, heights},
      {"relief_gain_low", &limits.relief_gain_low, factors},
      {"relief_gain_high", &limits.relief_gain_high, factors},
      {"relief_rise_most", &limits.relief_rise_most, heights},
      {"unread_metal", &limits.unread_metal, heights},
      {"worn_fret_highest", &limits.worn_fret_highest, counts},
      {"body_humidity_least", &limits.body_humidity_least, shares},
      {"body_humidity_most", &limits.body_humidity_most, shares},
  }};
}

void require_order(std::string_view what, std::initializer_list<double> rising) {
  double before = -1;
  for (const double value : rising) {
    if (!(before <= value)) {
      throw Refused("fret_limits.csv: " + std::string(what) + ": " + plain_number(value) + " is below " +
                    plain_number(before) + " which comes before it");
    }
    before = value;
  }
}

}  // namespace

FretLimits fret_limits(std::string_view csv) {
  const CsvTable table("fret_limits.csv", csv);
  FretLimits limits{};
  std::set<std::string_view> given;
  const auto figures = figures_of(limits);
  for (const CsvRow& row : table.rows()) {
    const std::string_view name = row.name("name");
    const Figure* known = nullptr;
    for (const Figure& figure : figures) {
      if (figure.name == name) known = &figure;
    }
    if (known == nullptr) {
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" is not a figure of this table");
    }
    if (!given.insert(known->name).second) {
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" comes twice");
    }
    *known->place = row.number("value", known->range);
    (void)row.name("source");
  }
  for (const Figure& figure : figures) {
    if (!given.contains(figure.name)) throw Refused("fret_limits.csv: " + std::string(figure.name) + " is missing");
  }
  require_order("hump", {limits.hump_usual, limits.hump_most, limits.hump_local_most});
  require_order("relief", {limits.relief_least, limits.relief_aim_least, limits.relief_aim_most, limits.relief_most});
  require_order("relief gain", {limits.relief_gain_low, limits.relief_gain_high});
  require_order("body humidity", {limits.body_humidity_least, limits.body_humidity_most});
  return limits;
}

}  // namespace tailblock

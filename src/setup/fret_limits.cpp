#include "setup/fret_limits.h"

#include <array>
#include <string>

#include "quantity/named_values.h"

namespace tailblock {
namespace {

constexpr auto table_name = "fret_limits.csv";

constexpr Range heights{0.001, 5, "mm"};
constexpr Range counts{1, 24, ""};
constexpr Range factors{0.1, 10, ""};
constexpr Range shares{0, 1, ""};

/// Every figure of the table and where it goes. As long as the table, because it is the table.
std::array<NamedValue, 30> figures_of(FretLimits& limits) {
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
  require_rising(table_name, what, rising);
}

}  // namespace

FretLimits fret_limits(std::string_view csv) {
  FretLimits limits{};
  read_named_values({.name = table_name}, csv, figures_of(limits));
  require_order("hump", {limits.hump_usual, limits.hump_most, limits.hump_local_most});
  require_order("relief", {limits.relief_least, limits.relief_aim_least, limits.relief_aim_most, limits.relief_most});
  require_order("relief gain", {limits.relief_gain_low, limits.relief_gain_high});
  require_order("body humidity", {limits.body_humidity_least, limits.body_humidity_most});
  return limits;
}

}  // namespace tailblock

#include "setup/saddle_limits.h"

#include <array>
#include <string>

#include "quantity/named_values.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr auto table_name = "saddle_limits.csv";

constexpr Range lengths{0, 20, "mm"};
constexpr Range precisions{0.005, 0.5, "mm"};
constexpr Range angles{0, 90, "deg"};
constexpr Range weights{0, 366, "days"};
constexpr Range pulls{0, 10000, "days"};
constexpr Range humidities{0.1, 0.7, ""};
constexpr Range steps{0.01, 0.2, ""};
constexpr Range gains{0, 10, ""};
constexpr Range moistures{2, 20, "percent"};
constexpr Range shares{0, 1, ""};

/// Every figure of the table and where it goes. As long as the table, because it is the table.
std::array<NamedValue, 58> figures_of(SaddleLimits& limits) {
  return {{
      {"open_ended_exposure_least", &limits.open_ended.least, lengths},
      {"open_ended_exposure_usual_least", &limits.open_ended.usual_least, lengths},
      {"open_ended_exposure_usual_most", &limits.open_ended.usual_most, lengths},
      {"open_ended_exposure_most", &limits.open_ended.most, lengths},
      {"closed_exposure_bass_least", &limits.closed_bass.least, lengths},
      {"closed_exposure_bass_usual_least", &limits.closed_bass.usual_least, lengths},
      {"closed_exposure_bass_usual_most", &limits.closed_bass.usual_most, lengths},
      {"closed_exposure_bass_most", &limits.closed_bass.most, lengths},
      {"closed_exposure_treble_least", &limits.closed_treble.least, lengths},
      {"closed_exposure_treble_usual_least", &limits.closed_treble.usual_least, lengths},
      {"closed_exposure_treble_usual_most", &limits.closed_treble.usual_most, lengths},
      {"closed_exposure_treble_most", &limits.closed_treble.most, lengths},
      {"summer_exposure_least", &limits.summer_exposure_least, lengths},
      {"break_angle_least", &limits.break_angle_least, angles},
      {"break_angle_usual_most", &limits.break_angle_usual_most, angles},
      {"slot_width_usual_least", &limits.slot_width_usual_least, lengths},
      {"slot_width_usual_most", &limits.slot_width_usual_most, lengths},
      {"slot_width_difference_most", &limits.slot_width_difference_most, lengths},
      {"fit_clearance_least", &limits.fit_clearance_least, lengths},
      {"fit_clearance_most", &limits.fit_clearance_most, lengths},
      {"lean_clearance_most", &limits.lean_clearance_most, lengths},
      {"cut_precision", &limits.cut_precision, precisions},
      {"blank_height_allowance", &limits.blank_height_allowance, lengths},
      {"blank_thickness_allowance", &limits.blank_thickness_allowance, lengths},
      {"blank_length_allowance", &limits.blank_length_allowance, lengths},
      {"crown_allowance", &limits.crown_allowance, lengths},
      {"weight_too_low", &limits.weight_too_low, weights},
      {"weight_too_high", &limits.weight_too_high, weights},
      {"pull_to_wanted", &limits.pull_to_wanted, pulls},
      {"pull_to_usual_closed", &limits.pull_to_usual_closed, pulls},
      {"pull_to_usual_open_ended", &limits.pull_to_usual_open_ended, pulls},
      {"worth_turn_rod", &limits.worth_turn_rod, weights},
      {"worth_one_saddle", &limits.worth_one_saddle, weights},
      {"worth_two_saddles", &limits.worth_two_saddles, weights},
      {"worth_humid_room", &limits.worth_humid_room, weights},
      {"worth_neck_angle", &limits.worth_neck_angle, weights},
      {"least_gain", &limits.least_gain, weights},
      {"few_days", &limits.few_days, weights},
      {"room_humidity_first", &limits.room_humidity_first, humidities},
      {"room_humidity_step", &limits.room_humidity_step, steps},
      {"room_humidity_last", &limits.room_humidity_last, humidities},
      {"room_humidity_cracks", &limits.room_humidity_cracks, humidities},
      {"season_least", &limits.season_least, weights},
      {"two_saddle_swing_least", &limits.two_saddle_swing_least, lengths},
      {"two_saddle_swing_most", &limits.two_saddle_swing_most, lengths},
      {"relief_least", &limits.relief_least, lengths},
      {"relief_most", &limits.relief_most, lengths},
      {"rod_relief_least", &limits.rod_relief_least, lengths},
      {"rod_relief_most", &limits.rod_relief_most, lengths},
      {"rod_relief_step", &limits.rod_relief_step, precisions},
      {"rod_turn_least", &limits.rod_turn_least, lengths},
      {"rod_figure_sd", &limits.rod_figure_sd, gains},
      {"wood_moisture_least", &limits.wood_moisture_least, moistures},
      {"wood_moisture_most", &limits.wood_moisture_most, moistures},
      {"shop_moisture_sd", &limits.shop_moisture_sd, gains},
      {"nothing_learnt", &limits.nothing_learnt, shares},
      {"heel_error", &limits.heel_error, lengths},
      {"frets_first_gain", &limits.frets_first_gain, lengths},
  }};
}

void require_order(std::string_view what, std::initializer_list<double> rising) {
  require_rising(table_name, what, rising);
}

void require_order(std::string_view what, const ExposureLimits& exposure) {
  require_order(what, {exposure.least, exposure.usual_least, exposure.usual_most, exposure.most});
}

}  // namespace

SaddleLimits saddle_limits(std::string_view csv) {
  SaddleLimits limits{};
  read_named_values({.name = table_name}, csv, figures_of(limits));
  require_order("open-ended exposure", limits.open_ended);
  require_order("closed exposure, bass", limits.closed_bass);
  require_order("closed exposure, treble", limits.closed_treble);
  require_order("fit clearance", {limits.fit_clearance_least, limits.fit_clearance_most});
  require_order("room humidity", {limits.room_humidity_first, limits.room_humidity_last});
  require_order("two-saddle swing", {limits.two_saddle_swing_least, limits.two_saddle_swing_most});
  require_order("relief", {limits.relief_least, limits.relief_most});
  require_order("wood moisture", {limits.wood_moisture_least, limits.wood_moisture_most});
  return limits;
}

}  // namespace tailblock

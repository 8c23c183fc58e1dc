#pragma once

#include <string_view>

namespace tailblock {

/// How far a saddle may stand out of the bridge, in mm over its top. Outside `least`..`most` it is not made; outside
/// the usual range only for a reason.
struct ExposureLimits {
  double least, usual_least, usual_most, most;
};

/// What the saddle question takes for granted: data/saddle_limits.csv, one figure a row, each with its source. Lengths
/// in mm, angles in degrees, humidities 0..1.
struct SaddleLimits {
  ExposureLimits open_ended, closed_bass, closed_treble;
  double summer_exposure_least;
  double break_angle_least, break_angle_usual_most;
  double slot_width_usual_least, slot_width_usual_most, slot_width_difference_most;
  double fit_clearance_least, fit_clearance_most, lean_clearance_most;
  double cut_precision;
  double blank_height_allowance, blank_thickness_allowance, blank_length_allowance, crown_allowance;
  /// How a day counts, and what a year spent away from the wanted action or the usual exposure counts as.
  double weight_too_low, weight_too_high, pull_to_wanted, pull_to_usual_closed, pull_to_usual_open_ended;
  /// Weighted days a year that the work must save to be advised.
  double worth_turn_rod, worth_one_saddle, worth_two_saddles, worth_humid_room, worth_neck_angle;
  double least_gain, few_days;
  double room_humidity_first, room_humidity_step, room_humidity_last, room_humidity_cracks;
  double season_least;
  double two_saddle_swing_least, two_saddle_swing_most;
  double relief_least, relief_most;
  double rod_relief_least, rod_relief_most, rod_relief_step, rod_turn_least, rod_figure_sd;
  double wood_moisture_least, wood_moisture_most;
  double shop_moisture_sd;
  double nothing_learnt;
  double heel_error;
  double frets_first_gain;  ///< mm at fret 12
};

/// Reads data/saddle_limits.csv.
/// @throws Refused naming the row: a figure missing, unknown, given twice, out of range or without a source, or a range
/// whose ends do not follow each other.
[[nodiscard]] SaddleLimits saddle_limits(std::string_view csv);

}  // namespace tailblock

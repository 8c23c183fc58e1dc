#pragma once

#include <string_view>

namespace tailblock {

/// What the fret question takes for granted; every figure with its reason in data/fret_limits.csv. Heights in mm.
struct FretLimits {
  double least_crown, margin;
  /// One standard deviation of a reading, by its kind.
  double departure_sd, straightedge_sd, rocker_sd, over_board_sd, board_true_sd, springs_sd;
  double unread_bend, withheld_within_sd;
  double level_within, least_cut, spot_frets_most, springs_most;
  double hump_usual, hump_most, hump_local_most, tongue_rise_most, tongue_fall_most;
  double relief_least, relief_most, relief_aim_least, relief_aim_most, relief_gain_low, relief_gain_high,
      relief_rise_most;
  double unread_metal, worn_fret_highest;
  double body_humidity_least, body_humidity_most;
};

/// Reads data/fret_limits.csv.
/// @throws Refused naming the row: a figure missing, unknown, given twice, out of range or without a source, or a range
/// whose ends do not follow each other.
[[nodiscard]] FretLimits fret_limits(std::string_view csv);

}  // namespace tailblock

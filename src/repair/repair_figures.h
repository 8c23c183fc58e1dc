#pragma once

#include <string_view>

namespace tailblock {

/// What repairs take for granted: data/repair_figures.csv, each in the unit it is written in there.
struct RepairFigures {
  double gate_humidity_low, gate_humidity_high;
  double slacken_lift, slacken_heel;
  double sure_margin;  ///< repeatabilities between a reading and a limit without which there is no verdict
  double cleat_spacing_least, cleat_spacing_most, cleat_along_crack, cleat_across_crack;
  double cleat_thickness_most, cleat_thickness_share, cleat_thickness_least, cleat_clear_of_brace, cleat_from_crack_end;
  double cleat_saw_and_plane, crack_needs_cleats, reach_most, off_grain_most;
  double plate_least, loss_most, thickness_gauge_sd, hygrometer_sd, thermometer_sd;
  double dust_settles;  ///< minutes from work that makes dust to work that wants clean air
  double billing_step, shared_scatter, low_high_chance;
  double noise_reference, noise_exchange, noise_ceiling, noise_legal_reference, noise_legal_exchange;
  double cleat_clear_of_rim, back_thickness;
};

/// @throws Refused naming the row: a figure missing, unknown, given twice, out of range or without a source.
[[nodiscard]] RepairFigures repair_figures(std::string_view csv);

}  // namespace tailblock

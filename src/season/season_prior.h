#pragma once

#include <string_view>

namespace tailblock {

/// What is believed of an instrument before it has been read, and of readings and accidents in general.
/// Millimetres, days, percent of wood moisture; `log_sd` is the standard deviation of a natural logarithm.
/// data/season_prior.csv says what each means and where it comes from.
struct SeasonPrior {
  double relaxed_share, hysteresis, hysteresis_log_sd, shortfall, shortfall_log_sd;
  double left_out_log_sd, neck_left_out, other_bracing_log_sd, guessed_wood_log_sd;
  double lag_median, lag_median_in_case, lag_log_sd;
  double treble_ratio, treble_ratio_sd;
  double level_bass, level_treble, level_sd, level_side_sd;
  double drift, drift_sd;
  double set_sd, unknown_change_sd, logged_floor;
  double step_sd, step_correlation, step_probability, step_threshold;
  double misreading_sd, misreading_probability, misreading_threshold;
  double bridge_level, bridge_level_sd, bridge_drift_sd, bridge_set_sd;
  double bridge_step_sd, bridge_step_correlation, unknown_bridge_change_sd;
  double relief_level, relief_level_sd, relief_response_sd, relief_change_sd;
};

/// Reads data/season_prior.csv: every value above, once.
/// @throws Refused naming the cell, or the value that is missing, unknown or comes twice.
[[nodiscard]] SeasonPrior season_prior(std::string_view csv);

}  // namespace tailblock

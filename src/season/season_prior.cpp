#include "season/season_prior.h"

#include <array>

#include "quantity/named_values.h"

namespace tailblock {

SeasonPrior season_prior(std::string_view csv) {
  constexpr Range log_sds{0, 2, ""}, sds_mm{0.001, 10, "mm"}, lags{0.1, 365, "days"}, shares{0, 1, ""};
  SeasonPrior p{};
  const std::array values{
      NamedValue{"relaxed_share", &p.relaxed_share, {0.05, 1, ""}},
      NamedValue{"hysteresis", &p.hysteresis, {0.2, 1, ""}},
      NamedValue{"hysteresis_log_sd", &p.hysteresis_log_sd, log_sds},
      NamedValue{"shortfall", &p.shortfall, {0.1, 2, ""}},
      NamedValue{"shortfall_log_sd", &p.shortfall_log_sd, log_sds},
      NamedValue{"left_out_log_sd", &p.left_out_log_sd, log_sds},
      NamedValue{"neck_left_out", &p.neck_left_out, shares},
      NamedValue{"other_bracing_log_sd", &p.other_bracing_log_sd, log_sds},
      NamedValue{"guessed_wood_log_sd", &p.guessed_wood_log_sd, log_sds},
      NamedValue{"lag_median", &p.lag_median, lags},
      NamedValue{"lag_median_in_case", &p.lag_median_in_case, lags},
      NamedValue{"lag_log_sd", &p.lag_log_sd, {0.01, 2, ""}},
      NamedValue{"treble_ratio", &p.treble_ratio, {0.1, 3, ""}},
      NamedValue{"treble_ratio_sd", &p.treble_ratio_sd, {0.001, 1, ""}},
      NamedValue{"level_bass", &p.level_bass, {0, 10, "mm"}},
      NamedValue{"level_treble", &p.level_treble, {0, 10, "mm"}},
      NamedValue{"level_sd", &p.level_sd, sds_mm},
      NamedValue{"level_side_sd", &p.level_side_sd, sds_mm},
      NamedValue{"drift", &p.drift, {-2, 2, "mm per year"}},
      NamedValue{"drift_sd", &p.drift_sd, {0.0001, 5, "mm per year"}},
      NamedValue{"set_sd", &p.set_sd, {0, 1, "mm"}},
      NamedValue{"unknown_change_sd", &p.unknown_change_sd, sds_mm},
      NamedValue{"logged_floor", &p.logged_floor, {0.001, 5, "percent"}},
      NamedValue{"step_sd", &p.step_sd, sds_mm},
      NamedValue{"step_correlation", &p.step_correlation, {0, 0.999, ""}},
      NamedValue{"step_probability", &p.step_probability, shares},
      NamedValue{"step_threshold", &p.step_threshold, shares},
      NamedValue{"misreading_sd", &p.misreading_sd, sds_mm},
      NamedValue{"misreading_probability", &p.misreading_probability, shares},
      NamedValue{"misreading_threshold", &p.misreading_threshold, shares},
      NamedValue{"bridge_level", &p.bridge_level, {0, 40, "mm"}},
      NamedValue{"bridge_level_sd", &p.bridge_level_sd, sds_mm},
      NamedValue{"bridge_drift_sd", &p.bridge_drift_sd, {0.0001, 5, "mm per year"}},
      NamedValue{"bridge_set_sd", &p.bridge_set_sd, {0, 1, "mm"}},
      NamedValue{"bridge_step_sd", &p.bridge_step_sd, sds_mm},
      NamedValue{"bridge_step_correlation", &p.bridge_step_correlation, {0, 0.9, ""}},
      NamedValue{"unknown_bridge_change_sd", &p.unknown_bridge_change_sd, sds_mm},
      NamedValue{"relief_level", &p.relief_level, {-2, 2, "mm"}},
      NamedValue{"relief_level_sd", &p.relief_level_sd, sds_mm},
      NamedValue{"relief_response_sd", &p.relief_response_sd, {0.0001, 1, "mm per percent"}},
      NamedValue{"relief_change_sd", &p.relief_change_sd, sds_mm},
  };
  read_named_values({.name = "season_prior.csv", .each = "value"}, csv, values);
  return p;
}

}  // namespace tailblock

#include "season/crack_figures.h"

#include <array>
#include <cmath>

#include "quantity/named_values.h"

namespace tailblock {

CrackFigures crack_figures(std::string_view csv) {
  constexpr Range shares{0, 1, ""}, log_sds{0, 2, ""}, spans{0.01, 3650, "days"};
  CrackFigures f{};
  const std::array values{
      NamedValue{"fast_share", &f.fast_share, {0, 0.5, ""}},
      NamedValue{"fast_days", &f.fast_days, spans},
      NamedValue{"slow_share", &f.slow_share, {0, 0.5, ""}},
      NamedValue{"slow_days", &f.slow_days, spans},
      NamedValue{"mechano_sorptive", &f.mechano_sorptive, {0, 5, "per percent"}},
      NamedValue{"mechano_sorptive_log_sd", &f.mechano_sorptive_log_sd, log_sds},
      NamedValue{"hold_days", &f.hold_days, {1, 60, "days"}},
      NamedValue{"hold_floor", &f.hold_floor, {0, 100, "percent"}},
      NamedValue{"hold_scale", &f.hold_scale, {0, 200, "percent"}},
      NamedValue{"hold_exponent", &f.hold_exponent, {0, 1, ""}},
      NamedValue{"area_share", &f.area_share, {0.5, 1, ""}},
      NamedValue{"stress_log_sd", &f.stress_log_sd, log_sds},
      NamedValue{"weakened_mean", &f.weakened_mean, shares},
      NamedValue{"weakened_sd", &f.weakened_sd, {0.001, 1, ""}},
      NamedValue{"toughness", &f.toughness, {0.05, 2, "MPa m^0.5"}},
      NamedValue{"toughness_log_sd", &f.toughness_log_sd, log_sds},
      NamedValue{"acceptable_chance", &f.acceptable_chance, {0.0001, 0.5, ""}},
      NamedValue{"fast_fall", &f.fast_fall, shares},
  };
  read_named_values({.name = "crack_figures.csv", .each = "value"}, csv, values);
  return f;
}

double held_strength_share(const CrackFigures& f) {
  constexpr double seconds_a_day = 86400;
  return (f.hold_floor + f.hold_scale * std::pow(f.hold_days * seconds_a_day, -f.hold_exponent)) / 100;
}

}  // namespace tailblock

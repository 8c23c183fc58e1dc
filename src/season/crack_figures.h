#pragma once

#include <string_view>

namespace tailblock {

/// What the crack model takes for granted; data/crack_figures.csv says where each comes from.
struct CrackFigures {
  double fast_share, fast_days, slow_share, slow_days;
  double mechano_sorptive, mechano_sorptive_log_sd;
  double hold_days, hold_floor, hold_scale, hold_exponent;
  double area_share, stress_log_sd;
  double weakened_mean, weakened_sd;
  double toughness, toughness_log_sd;
  double acceptable_chance, fast_fall;
};

/// @throws Refused naming the cell, or the figure that is missing, unknown or comes twice.
[[nodiscard]] CrackFigures crack_figures(std::string_view csv);

/// Share of the strength of a short test that is left when the stress is held for a week.
///
///     (18.3 + 108.4 t^-0.0464) percent      t in seconds: 0.77 for a week
///
/// The Madison curve, for bending; that it holds across the grain is taken for granted.
/// Source: Forests 2021, 12, 1148 (read).
[[nodiscard]] double held_strength_share(const CrackFigures& figures);

}  // namespace tailblock

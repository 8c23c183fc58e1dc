#include "body/plate_figures.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "quantity/named_values.h"

namespace tailblock {

PlateFigures plate_figures(std::string_view csv) {
  PlateFigures figures;
  constexpr Range stiffnesses{1e-4, 1e7, "N/mm2"}, slopes{0, 1e7, "N"}, factors{1, 10, ""}, shares{0, 5, ""};
  const std::array entries{
      NamedValue{"rim_outward", &figures.rim.outward_n_mm2, stiffnesses},
      NamedValue{"rim_along", &figures.rim.along_n_mm2, stiffnesses},
      NamedValue{"rim_up", &figures.rim.up_n_mm2, stiffnesses},
      NamedValue{"rim_slope", &figures.rim.slope_n, slopes},
      NamedValue{"block_half_width", &figures.block_half_width_mm, {0, 120, "mm"}},
      NamedValue{"block_in_plane", &figures.rim.block_in_plane_n_mm2, stiffnesses},
      NamedValue{"block_up", &figures.rim.block_up_n_mm2, stiffnesses},
      NamedValue{"block_slope", &figures.rim.block_slope_n, slopes},
      NamedValue{"rotation_calibration", &figures.rotation_calibration, factors},
      NamedValue{"creep_low", &figures.creep_low, factors},
      NamedValue{"creep_high", &figures.creep_high, factors},
      NamedValue{"string_spread", &figures.string_spread_mm, {30, 80, "mm"}},
      NamedValue{"linear_limit", &figures.linear_limit, {0.1, 5, ""}},
      NamedValue{"top_factor", &figures.top_factor, factors},
      NamedValue{"thickness_relative_sd", &figures.thickness_relative_sd, shares},
      NamedValue{"pins_behind_saddle", &figures.pins_behind_saddle_mm, {5, 40, "mm"}},
      NamedValue{"worn_width", &figures.worn_width_mm, {1, 60, "mm"}},
      NamedValue{"pin_hole", &figures.pin_hole_mm, {2, 12, "mm"}},
      NamedValue{"neck_relative_sd", &figures.neck_relative_sd, shares},
  };
  read_named_values({.name = "plate_figures.csv"}, csv, entries);
  figures.rim.block_half_width = mm(figures.block_half_width_mm);
  return figures;
}

double worn_share(const PlateFigures& figures, Length saddle_length, Length extra) {
  constexpr double holes = 6;
  const double grown = figures.pin_hole_mm + require_within("plate_hole_wear_mm", in_mm(extra), {0, 10, "mm"});
  const double ring = std::numbers::pi / 4 * (grown * grown - figures.pin_hole_mm * figures.pin_hole_mm);
  return std::min(1.0, holes * ring / (figures.worn_width_mm * in_mm(saddle_length)));
}

}  // namespace tailblock

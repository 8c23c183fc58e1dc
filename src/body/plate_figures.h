#pragma once

#include <string_view>

#include "body/top_design.h"

namespace tailblock {

/// What the plate model takes for granted of rims, creep and its own error; data/plate_figures.csv says where each
/// comes from.
struct PlateFigures {
  RimStiffness rim;
  double block_half_width_mm = 0;
  double rotation_calibration = 1;       ///< on the elastic turn of the bridge under the strings
  double creep_low = 1, creep_high = 1;  ///< after years over elastic
  double string_spread_mm = 54;          ///< outer strings at the saddle
  double linear_limit = 2;               ///< greatest deflection answered for, in thicknesses
  double top_factor = 2;                 ///< seasonal movement of the top is good to this factor either way, 90 %
  double thickness_relative_sd = 0, neck_relative_sd = 0;
  double pins_behind_saddle_mm = 0, worn_width_mm = 0;  ///< the strip of the bridge plate that string ends wear
  double pin_hole_mm = 0;                               ///< in a sound plate
};

/// Share of the strip along the pin holes that is gone when each of the six holes has grown by `extra`: the rings round
/// them, of the strip as long as the saddle (derived here). Valid for 0..10 mm.
[[nodiscard]] double worn_share(const PlateFigures& figures, Length saddle_length, Length extra);

/// @throws Refused naming the cell, or the figure that is missing, unknown or comes twice.
[[nodiscard]] PlateFigures plate_figures(std::string_view csv);

}  // namespace tailblock

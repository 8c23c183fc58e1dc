#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "body/body_size.h"

namespace tailblock {

struct PlateTables;

/// What is not known of a top, as standard deviations of natural logarithms; data/season_spreads.csv says where each
/// comes from.
struct TopSpreads {
  double top_movement, top_modulus, top_across_ratio, top_shear_ratio;
  double brace_modulus, brace_height, top_thickness, arch_radius;
  double rim_outward, rim_slope, relaxing;
};

/// Reads data/season_spreads.csv: every value above, once.
/// @throws Refused naming the cell, or the value that is missing, unknown or comes twice.
[[nodiscard]] TopSpreads top_spreads(std::string_view csv);

/// How far the strings at fret 12 move for one percent of moisture in all of the wood, as the plate model has it for
/// one design; a row of data/season_structure.csv. Millimetres for a rise in moisture; exponents are of the top's part.
struct TopMovement {
  BodySize body_size{};
  std::string bracing;            ///< a pattern of data/top_braces.csv
  double elastic_mm = 0;          ///< from the top, nothing relaxed, every figure at its median
  double top_mm = 0;              ///< from the top, stress across the grain relaxed: median over the spread
  double thickness_mm = 0;        ///< bridge and top swell in height
  double neck_mm = 0;             ///< neck and back, mostly negative
  double instrument_log_sd = 0;   ///< of the top's part, between instruments of the kind; thickness included
  double kind_log_sd = 0;         ///< of the top's part, shared by the kind
  double thickness_log_sd = 0;    ///< that part of instrument_log_sd which a measured thickness takes away
  double thickness_exponent = 0;  ///< d ln(top)/d ln(thickness)
  double width_exponent = 0;      ///< d ln(top)/d ln(width of the body)
  double movement_exponent = 0;   ///< d ln(top)/d ln(movement across the grain)
  double across_exponent = 0;     ///< d ln(top)/d ln(modulus across over along the grain)
  double along_exponent = 0;      ///< d ln(top)/d ln(modulus along the grain), the ratios kept
  double across_curvature = 0;    ///< of that: ln(top) = exponent x + curvature x^2/2, x = ln(ratio/usual)
  double shear_exponent = 0;      ///< d ln(top)/d ln(shear modulus over that along the grain)
  double relaxed_share_used = 0;  ///< of the modulus across the grain, that `top_mm` was calculated with
};

/// One row of the table, from the plate model: the top of this size and bracing as it is usually built, of Sitka spruce
/// cut on the quarter.
///
/// Each unknown is drawn at its median and at exp(+-sqrt(3) sd), the three points of Gauss and Hermite (weights 1/6,
/// 2/3, 1/6), one unknown at a time; means and variances of ln(top) add up. What two unknowns do together is left out:
/// tests/season/top_movement_test.cpp compares with draws of all of them. 25 solutions of the plate.
/// Derived here (docs/models/response.md).
[[nodiscard]] TopMovement top_movement(BodySize size, std::string_view bracing, double relaxed_share,
                                       const TopSpreads& spreads, const PlateTables& tables);

/// The rows of data/season_structure.csv, which `top_movement` made.
struct TopMovements {
  std::vector<TopMovement> rows;

  /// @throws Refused when the table has no such row.
  [[nodiscard]] const TopMovement& of(BodySize size, std::string_view bracing) const;
};

/// @throws Refused naming the cell, or a row that comes twice.
[[nodiscard]] TopMovements top_movements(std::string_view csv);

/// The text of data/season_structure.csv.
[[nodiscard]] std::string as_csv(const TopMovements& movements);

}  // namespace tailblock

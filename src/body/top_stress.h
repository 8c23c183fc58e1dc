#pragma once

#include "body/prepared_top.h"

namespace tailblock {

/// Stress in the wood of the top at the middle of one triangle, MPa: along and across its grain.
struct FaceStress {
  double along = 0, across = 0;
};
struct TriangleStress {
  FaceStress outer, middle, inner;
};

/// Stress under displacements, with the top's own free movement taken off.
[[nodiscard]] std::vector<TriangleStress> top_stress(const PreparedTop& prepared, const Eigen::VectorXd& displacements,
                                                     double top_moisture_change);

/// The value that a share of the top's area stays below.
[[nodiscard]] double area_quantile(const PreparedTop& prepared, std::vector<double> per_triangle, double share);

/// Energy each part stores under displacements that no moisture made, N mm; they add up to half the work of the loads.
struct PartEnergies {
  double top = 0, bridge = 0, bridge_plate = 0, ring = 0, rim = 0;
  std::vector<double> braces;
};
[[nodiscard]] PartEnergies part_energies(const PreparedTop& prepared, const Eigen::VectorXd& displacements);

}  // namespace tailblock

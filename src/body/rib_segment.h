#pragma once

#include <Eigen/Core>

namespace tailblock {

/// A piece of a brace between two neighbouring nodes of the plate, glued under it. Lengths mm, moduli MPa.
struct RibSegment {
  double dx = 0, dy = 0;  ///< from its first node to its second
  double width = 0, height = 0;
  double under_middle = 0;  ///< of the top's middle plane over the glue: half the top's thickness
  double along_mpa = 0, shear_mpa = 0, along_per_percent = 0;
  double arch_rise = 0;  ///< of the unloaded top from the first node to the second
  double glued = 1;      ///< share of its length that holds
};

/// Unknowns a node: u, v, w, p, q of the plate, then b, the turn of the brace's own cross-section (starts as -dw/ds).
inline constexpr int rib_unknowns = 6;
using RibStrain = Eigen::Matrix<double, 1, 12>;
using RibStiffness = Eigen::Matrix<double, 12, 12>;
using RibLoad = Eigen::Matrix<double, 12, 1>;

/// The four strains of the segment, each constant over it ("one point"):
///
///     axial  d/ds(u_s + e w,s - h/2 b) + z0,s w,s   bending  b,s   shear  w,s + b   twist  -(w,n),s
///
/// s along, n across, e half the top, h height. A linear axial strain against a constant one would lock through the
/// square of the eccentricity. Source: Timoshenko's beam, derived here (docs/models/plate.md).
struct RibStrains {
  RibStrain axial, bending, shear, twist;
  double length = 0;
};
[[nodiscard]] RibStrains rib_strains(const RibSegment& segment);

/// Torsion constant of a rectangle, mm4.
///
///     J = a b^3 (1/3 - 0.21 (b/a)(1 - b^4/(12 a^4)))      a the longer side
///
/// Source: Timoshenko & Goodier, Theory of Elasticity (from memory); within 0.5 % of the series.
[[nodiscard]] double torsion_constant(double width, double height);

[[nodiscard]] RibStiffness rib_stiffness(const RibSegment& segment);
/// What one percent more moisture in the brace presses on the nodes.
[[nodiscard]] RibLoad moisture_load(const RibSegment& segment);

}  // namespace tailblock

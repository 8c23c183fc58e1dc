#pragma once

#include <Eigen/Core>
#include <array>

#include "body/layered_section.h"
#include "body/triangle_mesh.h"

/// The flat triangle of the plate model. Five unknowns a node, in this order: u, v (mm, in the plane), w (mm, outside
/// positive), p = dw/dx, q = dw/dy. A point at height z moves by u - z p, v - z q.
namespace tailblock {

inline constexpr int plate_unknowns = 5;

/// Height of the unloaded top over its rim, at the corners of a triangle (the arch); mm.
using ArchHeights = std::array<double, 3>;

/// Strains of one triangle from its unknowns.
///
/// Membrane (constant): linear u, v, w over the triangle with Marguerre's terms for a shallow arch z0,
///
///     e_x = u,x + z0,x w,x   e_y = v,y + z0,y w,y   g_xy = u,y + v,x + z0,x w,y + z0,y w,x
///
/// on (u, v, w) of the three corners. Bending (linear): discrete Kirchhoff, on (w, p, q) of the three corners, taken at
/// the middles of the three sides, where b_x = -w,x and b_y = -w,y
///
///     k_x = b_x,x   k_y = b_y,y   k_xy = b_x,y + b_y,x
///
/// Source: Batoz, Bathe & Ho 1980, IJNME 15, 1771 (the element is re-derived from its assumptions in
/// docs/models/plate.md).
struct TriangleStrains {
  double area = 0;
  Eigen::Matrix<double, 3, 9> membrane;
  std::array<Eigen::Matrix<double, 3, 9>, 3> bending;

  [[nodiscard]] Eigen::Matrix<double, 3, 9> mean_bending() const { return (bending[0] + bending[1] + bending[2]) / 3; }
};
[[nodiscard]] TriangleStrains triangle_strains(PlanePoint a, PlanePoint b, PlanePoint c, const ArchHeights& arch);

using TriangleStiffness = Eigen::Matrix<double, 15, 15>;
using TriangleLoad = Eigen::Matrix<double, 15, 1>;

/// Places of (u, v, w) and of (w, p, q) of the corners among the 15 unknowns.
inline constexpr std::array<int, 9> membrane_places{0, 1, 2, 5, 6, 7, 10, 11, 12};
inline constexpr std::array<int, 9> bending_places{2, 3, 4, 7, 8, 9, 12, 13, 14};

/// Stiffness of a triangle of this section, exact for the strains above; only the lower half is filled.
[[nodiscard]] TriangleStiffness triangle_stiffness(const TriangleStrains& strains, const LayeredSection& section);

/// What one percent more moisture in one group of woods presses on the nodes.
[[nodiscard]] TriangleLoad moisture_load(const TriangleStrains& strains, const LayeredSection& section,
                                         WoodGroup group);

}  // namespace tailblock

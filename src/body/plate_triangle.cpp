#include "body/plate_triangle.h"

#include <cmath>

namespace tailblock {
namespace {

using Row9 = Eigen::Matrix<double, 1, 9>;

struct SideMiddle {
  Row9 bx, by;
};

/// b at the middle of the side from corner i to corner j: along the side w is a cubic, across it b is linear.
SideMiddle side_middle(int i, int j, double dx, double dy) {
  const double l2 = dx * dx + dy * dy;
  const double cc = dx * dx / l2, ss = dy * dy / l2, cs = dx * dy / l2;
  SideMiddle m{Row9::Zero(), Row9::Zero()};
  m.bx[3 * i] = 1.5 * dx / l2;
  m.bx[3 * j] = -1.5 * dx / l2;
  m.by[3 * i] = 1.5 * dy / l2;
  m.by[3 * j] = -1.5 * dy / l2;
  for (const int corner : {i, j}) {
    m.bx[3 * corner + 1] = 0.25 * cc - 0.5 * ss;
    m.bx[3 * corner + 2] = m.by[3 * corner + 1] = 0.75 * cs;
    m.by[3 * corner + 2] = 0.25 * ss - 0.5 * cc;
  }
  return m;
}

}  // namespace

TriangleStrains triangle_strains(PlanePoint a, PlanePoint b, PlanePoint c, const ArchHeights& arch) {
  const std::array<PlanePoint, 3> at{a, b, c};
  const double doubled = turn(a, b, c);
  TriangleStrains strains{.area = doubled / 2, .membrane = {}, .bending = {}};
  std::array<double, 3> gx{}, gy{};  // slopes of the area coordinates
  std::array<SideMiddle, 3> middle;  // of the side opposite each corner
  double z0x = 0, z0y = 0;
  for (std::size_t k = 0; k < 3; ++k) {
    const std::size_t i = (k + 1) % 3, j = (k + 2) % 3;
    gx[k] = (at[i].y - at[j].y) / doubled;
    gy[k] = (at[j].x - at[i].x) / doubled;
    middle[k] = side_middle(static_cast<int>(i), static_cast<int>(j), at[j].x - at[i].x, at[j].y - at[i].y);
    z0x += gx[k] * arch[k];
    z0y += gy[k] * arch[k];
  }
  strains.membrane.setZero();
  for (int k = 0; k < 3; ++k) {
    const double x = gx[static_cast<std::size_t>(k)], y = gy[static_cast<std::size_t>(k)];
    strains.membrane(0, 3 * k) = strains.membrane(2, 3 * k + 1) = x;
    strains.membrane(1, 3 * k + 1) = strains.membrane(2, 3 * k) = y;
    strains.membrane.col(3 * k + 2) << z0x * x, z0y * y, z0x * y + z0y * x;
  }
  for (std::size_t m = 0; m < 3; ++m) {
    Row9 bx_x = Row9::Zero(), bx_y = Row9::Zero(), by_x = Row9::Zero(), by_y = Row9::Zero();
    for (std::size_t k = 0; k < 3; ++k) {
      const double sign = k == m ? -1 : 1;  // slopes of the corner and middle functions of a six-node triangle there
      const int at_corner = static_cast<int>(3 * k);
      bx_x[at_corner + 1] -= sign * gx[k], bx_y[at_corner + 1] -= sign * gy[k];
      by_x[at_corner + 2] -= sign * gx[k], by_y[at_corner + 2] -= sign * gy[k];
      const double x = 2 * sign * gx[m], y = 2 * sign * gy[m];
      bx_x += x * middle[k].bx, bx_y += y * middle[k].bx;
      by_x += x * middle[k].by, by_y += y * middle[k].by;
    }
    strains.bending[m].row(0) = bx_x;
    strains.bending[m].row(1) = by_y;
    strains.bending[m].row(2) = bx_y + by_x;
  }
  return strains;
}

TriangleStiffness triangle_stiffness(const TriangleStrains& strains, const LayeredSection& section) {
  using Square9 = Eigen::Matrix<double, 9, 9>;
  using Strain9 = Eigen::Matrix<double, 3, 9>;
  const auto product = [](const Strain9& left, const Strain9& right) -> Square9 {
    return left.transpose().lazyProduct(right);
  };
  const double area = strains.area;
  const Strain9 forces = area * section.A * strains.membrane;
  const Square9 stretching = product(strains.membrane, forces);
  Square9 bending = Square9::Zero();
  for (const Strain9& curvature : strains.bending) {
    const Strain9 moments = area / 3 * section.D * curvature;
    bending += product(curvature, moments);
  }
  TriangleStiffness K = TriangleStiffness::Zero();
  for (std::size_t j = 0; j < 9; ++j) {
    for (std::size_t i = 0; i < 9; ++i) {
      const auto row = static_cast<int>(i), column = static_cast<int>(j);
      K(membrane_places[i], membrane_places[j]) += stretching(row, column);
      K(bending_places[i], bending_places[j]) += bending(row, column);
    }
  }
  if (!section.coupled) return K;
  const Strain9 moments = area * section.B * strains.mean_bending();
  const Square9 coupling = product(strains.membrane, moments);
  for (std::size_t j = 0; j < 9; ++j) {
    for (std::size_t i = 0; i < 9; ++i) {
      const double value = coupling(static_cast<int>(i), static_cast<int>(j));
      K(membrane_places[i], bending_places[j]) += value;
      K(bending_places[j], membrane_places[i]) += value;
    }
  }
  return K;
}

TriangleLoad moisture_load(const TriangleStrains& strains, const LayeredSection& section, WoodGroup group) {
  const auto which = static_cast<std::size_t>(group);
  const Eigen::Matrix<double, 9, 1> stretching = strains.area * strains.membrane.transpose() * section.N[which];
  const Eigen::Matrix<double, 9, 1> bending = strains.area * strains.mean_bending().transpose() * section.M[which];
  TriangleLoad load = TriangleLoad::Zero();
  for (std::size_t i = 0; i < 9; ++i) {
    load[membrane_places[i]] += stretching[static_cast<int>(i)];
    load[bending_places[i]] += bending[static_cast<int>(i)];
  }
  return load;
}

}  // namespace tailblock

#pragma once

#include <array>
#include <vector>

namespace tailblock {

/// A point of the top, millimetres: x from the neck edge along the centre line to the tail, y across, treble positive.
struct PlanePoint {
  double x = 0, y = 0;
};

/// A plane cut into triangles, corners counterclockwise.
struct TriangleMesh {
  std::vector<PlanePoint> nodes;
  std::vector<std::array<int, 3>> triangles;
};

/// Twice the area of a, b, c; positive when they run counterclockwise.
[[nodiscard]] constexpr double turn(PlanePoint a, PlanePoint b, PlanePoint c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// 1 for an equilateral triangle, 0 for one without area: 4 sqrt(3) area / (sum of the squared sides).
[[nodiscard]] double triangle_quality(PlanePoint a, PlanePoint b, PlanePoint c);

}  // namespace tailblock

#include "body/triangle_mesh.h"

#include <cmath>

namespace tailblock {

double triangle_quality(PlanePoint a, PlanePoint b, PlanePoint c) {
  const auto squared = [](PlanePoint p, PlanePoint q) { return (q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y); };
  const double sides = squared(a, b) + squared(b, c) + squared(c, a);
  return sides > 0 ? 2 * std::sqrt(3.0) * turn(a, b, c) / sides : 0;
}

}  // namespace tailblock

#pragma once

#include <vector>

#include "body/triangle_mesh.h"

/// Straight strips in the plane of a plate, in millimetres.
namespace tailblock {

struct PlaneSegment {
  PlanePoint from, to;
};

/// 0 where they touch or cross.
[[nodiscard]] double distance_between(const PlaneSegment& a, const PlaneSegment& b);
[[nodiscard]] double distance_between(const PlanePoint& point, const PlaneSegment& segment);
/// A closed polygon; on its edge counts as inside or out.
[[nodiscard]] bool is_inside(const PlanePoint& point, const std::vector<PlanePoint>& polygon);

/// A strip of some width about a segment, its ends square.
struct PlaneStrip {
  PlaneSegment middle;
  double width = 0;
};
[[nodiscard]] std::vector<PlanePoint> corners(const PlaneStrip& strip);
/// Least distance between two strips; 0 where they overlap.
[[nodiscard]] double distance_between(const PlaneStrip& a, const PlaneStrip& b);

}  // namespace tailblock

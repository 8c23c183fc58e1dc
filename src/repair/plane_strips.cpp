#include "repair/plane_strips.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

bool cross(const PlaneSegment& a, const PlaneSegment& b) {
  return turn(a.from, a.to, b.from) * turn(a.from, a.to, b.to) < 0 &&
         turn(b.from, b.to, a.from) * turn(b.from, b.to, a.to) < 0;
}

PlaneSegment side(const std::vector<PlanePoint>& polygon, std::size_t i) {
  return {polygon[i], polygon[(i + 1) % polygon.size()]};
}

}  // namespace

double distance_between(const PlanePoint& point, const PlaneSegment& segment) {
  const double dx = segment.to.x - segment.from.x, dy = segment.to.y - segment.from.y;
  const double squared = dx * dx + dy * dy;
  const double share = squared > 0 ? ((point.x - segment.from.x) * dx + (point.y - segment.from.y) * dy) / squared : 0;
  const double t = std::clamp(share, 0.0, 1.0);
  return std::hypot(point.x - segment.from.x - t * dx, point.y - segment.from.y - t * dy);
}

double distance_between(const PlaneSegment& a, const PlaneSegment& b) {
  if (cross(a, b)) return 0;
  return std::min(
      {distance_between(a.from, b), distance_between(a.to, b), distance_between(b.from, a), distance_between(b.to, a)});
}

bool is_inside(const PlanePoint& point, const std::vector<PlanePoint>& polygon) {
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const auto [a, b] = side(polygon, i);
    if ((a.y > point.y) == (b.y > point.y)) continue;
    if (point.x < a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y)) inside = !inside;
  }
  return inside;
}

std::vector<PlanePoint> corners(const PlaneStrip& strip) {
  const PlanePoint& a = strip.middle.from;
  const PlanePoint& b = strip.middle.to;
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const double nx = -(b.y - a.y) / length * strip.width / 2, ny = (b.x - a.x) / length * strip.width / 2;
  return {{a.x + nx, a.y + ny}, {b.x + nx, b.y + ny}, {b.x - nx, b.y - ny}, {a.x - nx, a.y - ny}};
}

double distance_between(const PlaneStrip& a, const PlaneStrip& b) {
  const std::vector<PlanePoint> at = corners(a), of = corners(b);
  if (is_inside(a.middle.from, of) || is_inside(b.middle.from, at)) return 0;
  double least = distance_between(side(at, 0), side(of, 0));
  for (std::size_t i = 0; i < at.size(); ++i) {
    for (std::size_t j = 0; j < of.size(); ++j) {
      least = std::min(least, distance_between(side(at, i), side(of, j)));
    }
  }
  return least;
}

}  // namespace tailblock

#include "body/delaunay.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

__extension__ using Wide = __int128;

constexpr double steps_per_mm = 10000;
constexpr std::int64_t frame = 300'000'000;  // 30 m: far outside, and every product below fits into 128 bits

std::size_t at(int index) { return static_cast<std::size_t>(index); }

int corner_of(const Delaunay::Triangle& triangle, int point) {
  const auto found = std::ranges::find(triangle.corners, point);
  return static_cast<int>(found - triangle.corners.begin());
}

}  // namespace

Delaunay::Delaunay(PlanePoint middle) : middle_(middle) {
  points_ = {{-frame, -frame}, {frame, -frame}, {0, frame}};
  triangles_ = {{{0, 1, 2}, {-1, -1, -1}}};
  touching_ = {0, 0, 0};
}

PlanePoint Delaunay::point(int index) const {
  const Place& p = points_[at(index + frame_corners)];
  return {static_cast<double>(p.x) / steps_per_mm + middle_.x, static_cast<double>(p.y) / steps_per_mm + middle_.y};
}

std::int64_t Delaunay::turn_of(int a, int b, int c) const {
  const Place &p = points_[at(a)], &q = points_[at(b)], &r = points_[at(c)];
  return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
}

/// 1 when d lies inside the circle through a, b, c, 0 when on it, -1 outside.
int Delaunay::in_circle(int a, int b, int c, int d) const {
  const Place& o = points_[at(d)];
  const auto seen = [&](int index) { return Place{points_[at(index)].x - o.x, points_[at(index)].y - o.y}; };
  const Place p = seen(a), q = seen(b), r = seen(c);
  const auto square = [](const Place& s) { return Wide(s.x) * s.x + Wide(s.y) * s.y; };
  const auto cross = [](const Place& s, const Place& t) { return Wide(s.x) * t.y - Wide(s.y) * t.x; };
  const Wide inside = square(p) * cross(q, r) + square(q) * cross(r, p) + square(r) * cross(p, q);
  return inside > 0 ? 1 : inside < 0 ? -1 : 0;
}

bool Delaunay::goes_first(int a, int b) const {
  const Place &p = points_[at(a)], &q = points_[at(b)];
  return std::pair(std::abs(p.y), p.x) < std::pair(std::abs(q.y), q.x);
}

int Delaunay::triangle_at(int point) const {
  int t = last_;
  for (int turned = 0;;) {
    const Triangle& triangle = triangles_[at(t)];
    int next = -1;
    for (int side = 0; side < 3; ++side) {  // walk across a side that the point lies beyond
      const int k = (side + turned) % 3;
      if (turn_of(triangle.corners[at((k + 1) % 3)], triangle.corners[at((k + 2) % 3)], point) < 0) {
        next = triangle.neighbours[at(k)];
        break;
      }
    }
    if (next < 0) return last_ = t;
    turned = (turned + 1) % 3;
    t = next;
  }
}

int Delaunay::insert(PlanePoint where) {
  const auto whole = [](double mm) { return static_cast<std::int64_t>(std::llround(mm * steps_per_mm)); };
  points_.push_back({whole(where.x - middle_.x), whole(where.y - middle_.y)});
  const int point = static_cast<int>(points_.size()) - 1;
  const int t = triangle_at(point);
  for (const int corner : triangles_[at(t)].corners) {
    if (points_[at(corner)].x == points_[at(point)].x && points_[at(corner)].y == points_[at(point)].y) {
      points_.pop_back();
      return corner - frame_corners;
    }
  }
  touching_.push_back(t);
  cut(t, point);
  return point - frame_corners;
}

void Delaunay::relink(int triangle, int from, int to) {
  if (triangle < 0) return;
  for (int& neighbour : triangles_[at(triangle)].neighbours) {
    if (neighbour == from) neighbour = to;
  }
}

void Delaunay::cut(int t, int point) {
  const Triangle old = triangles_[at(t)];
  const auto [a, b, c] = old.corners;
  const auto [across_a, across_b, across_c] = old.neighbours;
  const int second = static_cast<int>(triangles_.size()), third = second + 1;
  triangles_[at(t)] = {{point, b, c}, {across_a, second, third}};
  triangles_.push_back({{point, c, a}, {across_b, third, t}});
  triangles_.push_back({{point, a, b}, {across_c, t, second}});
  relink(across_b, t, second);
  relink(across_c, t, third);
  touching_[at(a)] = second;
  touching_[at(b)] = touching_[at(c)] = touching_[at(point)] = t;
  settle(t);
  settle(second);
  settle(third);
}

/// Turns the side opposite the new point (always corner 0) where the point beyond it lies in the circle, or where the
/// new point fell on that very side.
void Delaunay::settle(int t) {
  std::vector<int> open{t};
  while (!open.empty()) {
    const int one = open.back();
    open.pop_back();
    const Triangle near = triangles_[at(one)];
    const int two = near.neighbours[0];
    if (two < 0) continue;
    const auto [p, a, b] = near.corners;
    const Triangle far = triangles_[at(two)];
    int k = 0;
    while (far.neighbours[at(k)] != one || far.corners[at(k)] == a || far.corners[at(k)] == b) ++k;
    const int d = far.corners[at(k)];
    if (turn_of(p, a, b) != 0) {
      const int inside = in_circle(p, a, b, d);
      const int near_pair = goes_first(p, d) ? p : d, far_pair = goes_first(a, b) ? a : b;
      if (inside < 0 || (inside == 0 && !goes_first(near_pair, far_pair))) continue;
    }
    const int across_ad = far.neighbours[at((k + 1) % 3)], across_db = far.neighbours[at((k + 2) % 3)];
    triangles_[at(one)] = {{p, a, d}, {across_ad, two, near.neighbours[2]}};
    triangles_[at(two)] = {{p, d, b}, {across_db, near.neighbours[1], one}};
    relink(across_ad, two, one);
    relink(near.neighbours[1], one, two);
    touching_[at(p)] = touching_[at(a)] = touching_[at(d)] = one;
    touching_[at(b)] = two;
    open.push_back(one);
    open.push_back(two);
  }
}

bool Delaunay::has_edge(int first, int second) const {
  const int a = first + frame_corners, b = second + frame_corners;
  const int start = touching_[at(a)];
  int t = start;
  do {  // round point a
    const Triangle& triangle = triangles_[at(t)];
    const int k = corner_of(triangle, a);
    if (triangle.corners[at((k + 1) % 3)] == b || triangle.corners[at((k + 2) % 3)] == b) return true;
    t = triangle.neighbours[at((k + 1) % 3)];
  } while (t >= 0 && t != start);
  return false;
}

std::vector<Delaunay::Triangle> Delaunay::triangles() const {
  std::vector<Triangle> outside = triangles_;
  for (Triangle& triangle : outside) {
    for (int& corner : triangle.corners) corner -= frame_corners;
  }
  return outside;
}

}  // namespace tailblock

#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "body/triangle_mesh.h"

namespace tailblock {

/// Delaunay triangulation, point by point, with exact tests: coordinates are held in whole ten-thousandths of a
/// millimetre, so that no rounding can turn a triangle over. Points within 400 mm of the middle of the box given.
///
/// Lawson 1977 (in Rice, Mathematical Software III, 161; from memory): a point cuts the triangle it falls in, then
/// edges are turned until every circle through three corners is empty.
class Delaunay {
 public:
  explicit Delaunay(PlanePoint middle);

  /// Index of the point, or of the one already there.
  int insert(PlanePoint point);
  [[nodiscard]] PlanePoint point(int index) const;
  [[nodiscard]] int size() const { return static_cast<int>(points_.size()) - frame_corners; }
  [[nodiscard]] bool has_edge(int a, int b) const;

  struct Triangle {
    std::array<int, 3> corners;     ///< counterclockwise; negative are corners of the frame round everything
    std::array<int, 3> neighbours;  ///< across the side opposite each corner; -1 outside
  };
  [[nodiscard]] std::vector<Triangle> triangles() const;

 private:
  struct Place {
    std::int64_t x, y;
  };
  static constexpr int frame_corners = 3;
  [[nodiscard]] std::int64_t turn_of(int a, int b, int c) const;
  [[nodiscard]] int in_circle(int a, int b, int c, int d) const;
  [[nodiscard]] bool goes_first(int a, int b) const;
  [[nodiscard]] int triangle_at(int point) const;
  void cut(int triangle, int point);
  void settle(int triangle);
  void relink(int triangle, int from, int to);

  PlanePoint middle_;
  std::vector<Place> points_;
  std::vector<Triangle> triangles_;  ///< corners count the frame's first
  std::vector<int> touching_;        ///< a triangle at each point
  mutable int last_ = 0;
};

}  // namespace tailblock

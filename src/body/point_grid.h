#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "body/triangle_mesh.h"

namespace tailblock {

[[nodiscard]] inline double distance(PlanePoint a, PlanePoint b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// Points sorted into square cells, so that those near a place are found without looking at all of them.
class PointGrid {
 public:
  PointGrid(PlanePoint low, PlanePoint high, double cell) : low_(low), cell_(cell) {
    across_ = static_cast<int>((high.x - low.x) / cell) + 3;
    cells_.resize(static_cast<std::size_t>(across_ * (static_cast<int>((high.y - low.y) / cell) + 3)));
  }

  void add(PlanePoint point, int index) { cells_[cell_of(column(point.x), row(point.y))].push_back({point, index}); }

  /// Index of the nearest point within `reach` (at most a cell); -1 when there is none.
  [[nodiscard]] int nearest(PlanePoint point, double reach) const {
    int found = -1;
    double least = reach;
    for_each_near(point, [&](const Entry& entry) {
      const double away = distance(point, entry.point);
      if (away < least) least = away, found = entry.index;
    });
    return found;
  }

 private:
  struct Entry {
    PlanePoint point;
    int index;
  };
  template <class Act>
  void for_each_near(PlanePoint point, Act act) const {
    const int rows = static_cast<int>(cells_.size()) / across_;
    for (int r = std::max(0, row(point.y) - 1); r <= std::min(rows - 1, row(point.y) + 1); ++r) {
      for (int c = std::max(0, column(point.x) - 1); c <= std::min(across_ - 1, column(point.x) + 1); ++c) {
        for (const Entry& entry : cells_[cell_of(c, r)]) act(entry);
      }
    }
  }
  [[nodiscard]] int column(double x) const { return static_cast<int>(std::floor((x - low_.x) / cell_)) + 1; }
  [[nodiscard]] int row(double y) const { return static_cast<int>(std::floor((y - low_.y) / cell_)) + 1; }
  [[nodiscard]] std::size_t cell_of(int c, int r) const { return static_cast<std::size_t>(r * across_ + c); }

  PlanePoint low_;
  double cell_;
  int across_ = 0;
  std::vector<std::vector<Entry>> cells_;
};

}  // namespace tailblock

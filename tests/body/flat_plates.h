#pragma once

#include <functional>

#include "body/braced_plate.h"
#include "body/dissection.h"
#include "body/factor.h"

namespace tailblock::testing {

/// The woods of the design study's plates (shared with its decks for CalculiX): MPa, strain per percent.
inline constexpr SheetWood study_spruce{10900, 850.2, 697.6, 0.372, 4.93333e-05, 0.00148};

struct Rectangle {
  double a, b;  ///< along x and y, mm
  int across_a, across_b;
};

/// A rectangle of squares cut by alternating diagonals, of one section.
BracedPlate rectangle_plate(const Rectangle& shape, const LayeredSection& section,
                            const std::function<double(double, double)>& arch = {});

/// Node of a rectangle's grid.
inline int grid_node(const Rectangle& shape, int i, int j) { return j * (shape.across_a + 1) + i; }

/// Holds some unknowns of a node (u, v, w, p, q) with a spring this stiff.
void hold(BracedPlate& plate, int node, std::initializer_list<int> unknowns, double stiffness = 1e9);

/// Calls for every node on the edge of a rectangle: node, whether on x = const, whether on y = const.
void on_edges(const BracedPlate& plate, const Rectangle& shape, const std::function<void(int, bool, bool)>& act);

/// A rib along y = const, from edge to edge.
void add_rib_along_x(BracedPlate& plate, const Rectangle& shape, int row, RibSegment rib);

/// A third of q times area on w of each corner of each triangle.
Eigen::VectorXd pressure_load(const BracedPlate& plate, double q);

struct Solved {
  std::vector<int> first_unknown;
  Eigen::MatrixXd displacements;
  [[nodiscard]] double w(int node, int column = 0) const {
    return displacements(first_unknown[static_cast<std::size_t>(node)] + 2, column);
  }
};
Solved solve(const BracedPlate& plate, const Eigen::MatrixXd& loads);

}  // namespace tailblock::testing

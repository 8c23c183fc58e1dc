#include "flat_plates.h"

namespace tailblock::testing {

BracedPlate rectangle_plate(const Rectangle& shape, const LayeredSection& section,
                            const std::function<double(double, double)>& arch) {
  BracedPlate plate;
  for (int j = 0; j <= shape.across_b; ++j) {
    for (int i = 0; i <= shape.across_a; ++i) {
      const PlanePoint p{shape.a * i / shape.across_a, shape.b * j / shape.across_b};
      plate.mesh.nodes.push_back(p);
      plate.arch.push_back(arch ? arch(p.x, p.y) : 0);
    }
  }
  for (int j = 0; j < shape.across_b; ++j) {
    for (int i = 0; i < shape.across_a; ++i) {
      const int a = grid_node(shape, i, j), b = a + 1, d = grid_node(shape, i, j + 1), c = d + 1;
      if ((i + j) % 2 == 0) {
        plate.mesh.triangles.push_back({a, b, c});
        plate.mesh.triangles.push_back({a, c, d});
      } else {
        plate.mesh.triangles.push_back({a, b, d});
        plate.mesh.triangles.push_back({b, c, d});
      }
    }
  }
  plate.sections = {section};
  plate.section_of.assign(plate.mesh.triangles.size(), 0);
  plate.rib_slots.assign(plate.mesh.nodes.size(), 0);
  plate.find_strains();
  return plate;
}

void hold(BracedPlate& plate, int node, std::initializer_list<int> unknowns, double stiffness) {
  NodeSpring spring{.node = node};
  for (const int unknown : unknowns) spring.stiffness(unknown, unknown) = stiffness;
  plate.springs.push_back(spring);
}

void on_edges(const BracedPlate& plate, const Rectangle& shape, const std::function<void(int, bool, bool)>& act) {
  for (std::size_t n = 0; n < plate.mesh.nodes.size(); ++n) {
    const auto i = static_cast<int>(n) % (shape.across_a + 1), j = static_cast<int>(n) / (shape.across_a + 1);
    const bool x = i == 0 || i == shape.across_a, y = j == 0 || j == shape.across_b;
    if (x || y) act(static_cast<int>(n), x, y);
  }
}

void add_rib_along_x(BracedPlate& plate, const Rectangle& shape, int row, RibSegment rib) {
  rib.dx = shape.a / shape.across_a;
  rib.dy = 0;
  for (int i = 0; i <= shape.across_a; ++i) {
    const int node = grid_node(shape, i, row);
    plate.rib_slots[static_cast<std::size_t>(node)] = 1;
    if (i > 0) plate.ribs.push_back({.first = node - 1, .second = node, .segment = rib});
  }
}

Eigen::VectorXd pressure_load(const BracedPlate& plate, double q) {
  const auto first = first_unknowns(plate);
  Eigen::VectorXd load = Eigen::VectorXd::Zero(first.back());
  for (const auto& t : plate.mesh.triangles) {
    const auto& nodes = plate.mesh.nodes;
    const auto at = [&](int k) { return static_cast<std::size_t>(t[static_cast<std::size_t>(k)]); };
    for (int k = 0; k < 3; ++k) load[first[at(k)] + 2] += q * turn(nodes[at(0)], nodes[at(1)], nodes[at(2)]) / 6;
  }
  return load;
}

Solved solve(const BracedPlate& plate, const Eigen::MatrixXd& loads) {
  const Dissection dissection = dissect(plate);
  return {first_unknowns(plate), Factor(plate, dissection).displacements(loads)};
}

}  // namespace tailblock::testing

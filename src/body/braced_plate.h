#pragma once

#include <Eigen/Core>
#include <array>
#include <memory>
#include <vector>

#include "body/layered_section.h"
#include "body/plate_triangle.h"
#include "body/rib_segment.h"
#include "body/triangle_mesh.h"

/// A plate on ribs and springs, cut into triangles: what the structural calculation is given. N, mm, MPa, radians.
namespace tailblock {

/// A piece of a brace in its place. A node where several braces meet keeps one unknown b for each: its slot.
struct PlacedRib {
  int first = 0, second = 0;            ///< nodes
  int first_slot = 0, second_slot = 0;  ///< which of the node's brace unknowns
  int brace = 0;                        ///< which brace it is part of
  RibSegment segment{};
};

using NodeStiffness = Eigen::Matrix<double, plate_unknowns, plate_unknowns>;

/// A spring from one node to the ground, on (u, v, w, p, q).
struct NodeSpring {
  int node = 0;
  NodeStiffness stiffness = NodeStiffness::Zero();
};

struct BracedPlate {
  TriangleMesh mesh;
  std::vector<double> arch;  ///< height of the unloaded top, one a node
  std::vector<LayeredSection> sections;
  std::vector<int> section_of;  ///< one a triangle
  std::vector<PlacedRib> ribs;
  std::vector<NodeSpring> springs;
  std::vector<int> rib_slots;  ///< how many brace unknowns each node has
  /// One a triangle, by `find_strains`: shared between the tops of one mesh and arch.
  std::shared_ptr<const std::vector<TriangleStrains>> strains;

  [[nodiscard]] ArchHeights arch_of(const std::array<int, 3>& triangle) const;
  /// Once mesh and arch stand, before anything is calculated.
  void find_strains();
};

/// Where the unknowns of each node begin; the last entry is how many there are. Five of the plate, then its braces'.
[[nodiscard]] std::vector<int> first_unknowns(const BracedPlate& plate);

/// One column for each group of woods: what one percent more moisture presses on the unknowns.
[[nodiscard]] Eigen::MatrixXd moisture_loads(const BracedPlate& plate, const std::vector<int>& first_unknown);

/// Stiffness times displacements, summed part by part.
[[nodiscard]] Eigen::MatrixXd forces_of(const BracedPlate& plate, const std::vector<int>& first_unknown,
                                        const Eigen::MatrixXd& displacements);

/// The 15 unknowns of a triangle, or the 12 of a rib, out of a column of all of them.
[[nodiscard]] TriangleLoad unknowns_of_triangle(const std::array<int, 3>& triangle,
                                                const std::vector<int>& first_unknown,
                                                const Eigen::Ref<const Eigen::VectorXd>& all);
[[nodiscard]] RibLoad unknowns_of_rib(const PlacedRib& rib, const std::vector<int>& first_unknown,
                                      const Eigen::Ref<const Eigen::VectorXd>& all);

}  // namespace tailblock

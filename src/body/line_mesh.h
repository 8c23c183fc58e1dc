#pragma once

#include <optional>
#include <vector>

#include "body/triangle_mesh.h"

namespace tailblock {

struct Circle {
  PlanePoint centre;
  double radius = 0;
};

/// A straight line that must run along sides of triangles.
struct MeshLine {
  PlanePoint from, to;
};

/// What a mesh is made of; millimetres.
struct MeshRequest {
  std::vector<PlanePoint> rim;  ///< closed polygon, counterclockwise, many points
  std::optional<Circle> hole;
  std::vector<MeshLine> lines;  ///< inside the rim; what lies in the hole is cut away
  double spacing = 8;           ///< of nodes, about
};

struct LineMesh {
  TriangleMesh mesh;
  std::vector<int> rim, hole;  ///< nodes along the edges; the last is joined to the first
  /// Nodes along the pieces of each line, from its start: two pieces where the hole cuts it, none when it lies outside.
  std::vector<std::vector<std::vector<int>>> lines;
  double worst_quality = 1;  ///< of any triangle; 1 is equilateral
  double mean_quality = 1;
};

/// A mesh whose triangles have sides along the rim, the hole and every line.
///
/// Lines are cut where they cross and divided near the spacing; a hexagonal fill keeps clear of them; Delaunay; a piece
/// of a line that is not a side is halved until it is; the fill is smoothed. Points nearer than a quarter of the
/// spacing become one. Where lines pass so closely that a triangle is poor, other spacings near the one asked for are
/// tried and the best mesh is kept.
/// @throws Refused when no such mesh has every triangle better than `least_quality`.
[[nodiscard]] LineMesh line_mesh(const MeshRequest& request);

/// Results did not suffer down to 0.05 (design study); below this a triangle is a splinter.
inline constexpr double least_quality = 0.03;

[[nodiscard]] bool inside_polygon(const std::vector<PlanePoint>& polygon, PlanePoint point);

/// The part of a line that lies inside a polygon, when any does: from its first crossing to its last.
[[nodiscard]] std::optional<MeshLine> clipped(const MeshLine& line, const std::vector<PlanePoint>& polygon);

}  // namespace tailblock

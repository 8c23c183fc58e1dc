#include <algorithm>
#include <cmath>
#include <set>

#include "body/meshed_top.h"
#include "body/outline.h"
#include "body/point_grid.h"

namespace tailblock {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::vector<PlanePoint> rim_of(const TopDesign& design) {
  std::vector<PlanePoint> half;
  for (const OutlinePoint& p : design.outline) half.push_back({in_mm(p.x), in_mm(p.half_width)});
  for (std::size_t k = 0; k + 1 < half.size(); ++k) {
    if (distance(half[k], half[k + 1]) < 1) throw Refused("design.outline: two of its points are less than 1 mm apart");
  }
  if (half.front().y != 0 || half.back().y != 0)
    throw Refused("design.outline: both ends must lie on the centre line, half width 0");
  return outline(half);
}

Circle hole_of(const TopDesign& design, const std::vector<PlanePoint>& rim) {
  const Circle hole{{in_mm(design.soundhole.centre_x), 0}, in_mm(design.soundhole.radius)};
  for (const PlanePoint& p : rim) {
    if (distance(p, hole.centre) < hole.radius + 10)
      throw Refused("design.soundhole: it lies less than 10 mm from the edge of the top");
  }
  return hole;
}

/// The four edges of a rectangle across the top.
void add_edges(std::vector<MeshLine>& lines, const Footprint& f) {
  const PlanePoint a{f.front, -f.half_span}, b{f.back, -f.half_span}, c{f.back, f.half_span}, d{f.front, f.half_span};
  for (const MeshLine& edge : {MeshLine{a, b}, MeshLine{b, c}, MeshLine{c, d}, MeshLine{d, a}}) lines.push_back(edge);
}

void require_inside(const std::string& what, const Footprint& f, const std::vector<PlanePoint>& rim) {
  for (const double x : {f.front, f.back}) {
    for (const double y : {-f.half_span, f.half_span}) {
      if (!inside_polygon(rim, {x, y})) throw Refused(what + ": it reaches over the edge of the top");
    }
  }
}

double ring_covered(PlanePoint a, PlanePoint b, PlanePoint c, const Circle& hole, double width) {
  const double reach = distance({(a.x + b.x + c.x) / 3, (a.y + b.y + c.y) / 3}, hole.centre);
  if (width == 0 || reach > hole.radius + width + 20) return 0;
  constexpr int parts = 6;
  int inside = 0, all = 0;
  for (int i = 0; i < parts; ++i) {
    for (int j = 0; j < parts - i; ++j) {
      const double u = (i + 1.0 / 3) / parts, v = (j + 1.0 / 3) / parts, w = 1 - u - v;
      const PlanePoint p{u * a.x + v * b.x + w * c.x, u * a.y + v * b.y + w * c.y};
      ++all;
      if (distance(p, hole.centre) < hole.radius + width) ++inside;
    }
  }
  return static_cast<double>(inside) / all;
}

/// Parts the nodes along a crack: triangles to the left of it get nodes of their own, except where `held`.
void open_crack(TriangleMesh& mesh, const std::vector<int>& nodes, const Crack& crack, const std::set<int>& held,
                const std::set<int>& hole) {
  const PlanePoint from{in_mm(crack.from_x), in_mm(crack.from_y)}, to{in_mm(crack.to_x), in_mm(crack.to_y)};
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    const int node = nodes[k];
    const bool an_end = k == 0 || k + 1 == nodes.size();
    if (held.contains(node) || (an_end && !hole.contains(node))) continue;
    const PlanePoint place = mesh.nodes[at(node)];
    const double along = distance(from, place);
    const auto covers = [&](const Cleat& cleat) {
      return std::abs(in_mm(cleat.along) - along) <= in_mm(cleat.length) / 2;
    };
    if (std::ranges::any_of(crack.cleats, covers)) continue;
    const int twin = static_cast<int>(mesh.nodes.size());
    mesh.nodes.push_back(place);
    for (auto& t : mesh.triangles) {
      const auto corner = std::ranges::find(t, node);
      if (corner == t.end()) continue;
      PlanePoint middle{};
      for (const int other : t) middle.x += mesh.nodes[at(other)].x / 3, middle.y += mesh.nodes[at(other)].y / 3;
      if (turn(from, to, middle) > 0) *corner = twin;
    }
  }
}

/// What each node of the saddle line carries: half of the line on either side of it.
std::vector<SaddleNode> saddle_nodes(const TriangleMesh& mesh, const std::vector<int>& chain) {
  std::vector<SaddleNode> saddle;
  for (const int node : chain) saddle.push_back({node, 0});
  double total = 0;
  for (std::size_t k = 0; k + 1 < chain.size(); ++k) {
    const double length = distance(mesh.nodes[at(chain[k])], mesh.nodes[at(chain[k + 1])]);
    saddle[k].weight += length / 2;
    saddle[k + 1].weight += length / 2;
    total += length;
  }
  for (SaddleNode& node : saddle) node.weight /= total;
  return saddle;
}

MeshedBrace meshed_brace(const TriangleMesh& mesh, const MeshLine& line, std::vector<std::vector<int>> pieces) {
  MeshedBrace brace{.length = distance(line.from, line.to), .pieces = std::move(pieces), .shares = {}};
  for (const auto& piece : brace.pieces) {
    auto& shares = brace.shares.emplace_back();
    for (const int node : piece) {
      const PlanePoint p = mesh.nodes[at(node)];
      const double along =
          ((p.x - line.from.x) * (line.to.x - line.from.x) + (p.y - line.from.y) * (line.to.y - line.from.y)) /
          brace.length;
      shares.push_back(std::clamp(along / brace.length, 0.0, 1.0));
    }
  }
  return brace;
}

void place_ribs(MeshedTop& top) {
  top.rib_slots.assign(top.mesh.nodes.size(), 0);
  for (std::size_t b = 0; b < top.braces.size(); ++b) {
    std::vector<int> slot(top.mesh.nodes.size(), -1);
    for (std::size_t p = 0; p < top.braces[b].pieces.size(); ++p) {
      const auto& nodes = top.braces[b].pieces[p];
      const auto& shares = top.braces[b].shares[p];
      for (const int node : nodes) {
        if (slot[at(node)] < 0) slot[at(node)] = top.rib_slots[at(node)]++;
      }
      for (std::size_t k = 0; k + 1 < nodes.size(); ++k) {
        PlacedRib rib{.first = nodes[k], .second = nodes[k + 1], .brace = static_cast<int>(b)};
        rib.first_slot = slot[at(rib.first)];
        rib.second_slot = slot[at(rib.second)];
        const PlanePoint from = top.mesh.nodes[at(rib.first)], to = top.mesh.nodes[at(rib.second)];
        rib.segment.dx = to.x - from.x;
        rib.segment.dy = to.y - from.y;
        top.ribs.push_back(rib);
        top.rib_shares.emplace_back(shares[k], shares[k + 1]);
      }
    }
  }
}

/// Lines of the mesh and which is which.
struct Lines {
  std::vector<MeshLine> all;
  std::vector<MeshLine> braces;
  std::size_t first_brace = 0, first_crack = 0, saddle = 0;
};

Lines lines_of(const TopDesign& design, const std::vector<Crack>& cracks, const std::vector<PlanePoint>& rim) {
  Lines lines;
  const auto outside = [](const std::string& what) { return Refused(what + ": it lies outside the top"); };
  for (const Brace& brace : design.braces) {
    const auto inside =
        clipped({{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}}, rim);
    if (!inside || distance(inside->from, inside->to) < 10) throw outside("brace " + brace.name);
    lines.braces.push_back(*inside);
    lines.all.push_back(*inside);
  }
  lines.first_crack = lines.all.size();
  for (const Crack& crack : cracks) {
    const auto inside =
        clipped({{in_mm(crack.from_x), in_mm(crack.from_y)}, {in_mm(crack.to_x), in_mm(crack.to_y)}}, rim);
    if (!inside || distance(inside->from, inside->to) < 10) throw outside("crack");
    lines.all.push_back(*inside);
  }
  lines.saddle = lines.all.size();
  const double saddle_x = in_mm(design.bridge.saddle_x), half = in_mm(design.bridge.saddle_length) / 2;
  lines.all.push_back({{saddle_x, -half}, {saddle_x, half}});
  add_edges(lines.all, footprint(design.bridge.body));
  if (in_mm(design.bridge_plate.thickness) > 0) add_edges(lines.all, footprint(design.bridge_plate));
  if (const auto seam = clipped({{-100, 0}, {1000, 0}}, rim))
    lines.all.push_back(*seam);  // keeps a mirrored top mirrored
  return lines;
}

}  // namespace

Footprint footprint(const CrossPiece& piece) {
  return {in_mm(piece.front_x), in_mm(piece.front_x) + in_mm(piece.depth), in_mm(piece.span) / 2};
}

double covered(PlanePoint a, PlanePoint b, PlanePoint c, const Footprint& f) {
  std::vector<PlanePoint> polygon{a, b, c};
  const auto cut = [&](auto beyond) {  // keeps what lies on the inner side of one edge (Sutherland & Hodgman 1974)
    std::vector<PlanePoint> kept;
    for (std::size_t k = 0; k < polygon.size(); ++k) {
      const PlanePoint p = polygon[k], q = polygon[(k + 1) % polygon.size()];
      const double dp = beyond(p), dq = beyond(q);
      if (dp <= 0) kept.push_back(p);
      if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
        const double share = dp / (dp - dq);
        kept.push_back({p.x + share * (q.x - p.x), p.y + share * (q.y - p.y)});
      }
    }
    polygon = std::move(kept);
  };
  cut([&](PlanePoint p) { return f.front - p.x; });
  cut([&](PlanePoint p) { return p.x - f.back; });
  cut([&](PlanePoint p) { return -f.half_span - p.y; });
  cut([&](PlanePoint p) { return p.y - f.half_span; });
  double doubled = 0;
  for (std::size_t k = 2; k < polygon.size(); ++k) doubled += turn(polygon[0], polygon[k - 1], polygon[k]);
  constexpr double steps = 1e6;  // so that what is wholly covered is so exactly
  return std::round(steps * doubled / turn(a, b, c)) / steps;
}

std::vector<double> arch_heights(const TriangleMesh& mesh, const TopDesign& design) {
  const double middle_x = in_mm(design.outline.back().x) / 2;
  const double curvature = design.arch_radius ? 1 / in_mm(*design.arch_radius) : 0;
  std::vector<double> heights;
  for (const PlanePoint& p : mesh.nodes) {
    heights.push_back(-curvature / 2 * ((p.x - middle_x) * (p.x - middle_x) + p.y * p.y));
  }
  return heights;
}

MeshedTop mesh_top(const TopDesign& design, const std::vector<Crack>& cracks, Length spacing) {
  const std::vector<PlanePoint> rim = rim_of(design);
  const Circle hole = hole_of(design, rim);
  const Footprint bridge = footprint(design.bridge.body), plate = footprint(design.bridge_plate);
  require_inside("design.bridge", bridge, rim);
  require_inside("design.bridge_plate", plate, rim);
  const double saddle_x = in_mm(design.bridge.saddle_x), saddle_half = in_mm(design.bridge.saddle_length) / 2;
  if (!bridge.contains({saddle_x, saddle_half})) throw Refused("design.bridge: the saddle does not lie on it");
  if (bridge.front < hole.centre.x + hole.radius) throw Refused("design.bridge: it reaches into the soundhole");

  const Lines lines = lines_of(design, cracks, rim);
  LineMesh made = line_mesh({.rim = rim, .hole = hole, .lines = lines.all, .spacing = in_mm(spacing)});
  MeshedTop top;
  top.worst_quality = made.worst_quality;
  top.mean_quality = made.mean_quality;
  top.mesh = std::move(made.mesh);
  top.rim = std::move(made.rim);

  std::set<int> held(top.rim.begin(), top.rim.end());
  for (std::size_t b = 0; b < lines.braces.size(); ++b) {
    for (const auto& piece : made.lines[b]) held.insert(piece.begin(), piece.end());
  }
  for (std::size_t n = 0; n < top.mesh.nodes.size(); ++n) {
    const PlanePoint p = top.mesh.nodes[n];
    const bool on_plate = in_mm(design.bridge_plate.thickness) > 0 && plate.contains(p);
    if (bridge.contains(p) || on_plate) held.insert(static_cast<int>(n));
    if (bridge.contains(p)) top.bridge_nodes.push_back(static_cast<int>(n));
  }
  const std::set<int> hole_nodes(made.hole.begin(), made.hole.end());
  for (std::size_t c = 0; c < cracks.size(); ++c) {
    for (const auto& piece : made.lines[lines.first_crack + c])
      open_crack(top.mesh, piece, cracks[c], held, hole_nodes);
  }

  top.saddle = saddle_nodes(top.mesh, made.lines[lines.saddle].at(0));
  for (std::size_t b = 0; b < lines.braces.size(); ++b) {
    top.braces.push_back(meshed_brace(top.mesh, lines.braces[b], std::move(made.lines[b])));
  }
  for (const auto& t : top.mesh.triangles) {
    const PlanePoint a = top.mesh.nodes[at(t[0])], b = top.mesh.nodes[at(t[1])], c = top.mesh.nodes[at(t[2])];
    top.bridge_share.push_back(covered(a, b, c, bridge));
    top.plate_share.push_back(in_mm(design.bridge_plate.thickness) > 0 ? covered(a, b, c, plate) : 0);
    top.ring_share.push_back(in_mm(design.soundhole.ring_thickness) > 0
                                 ? ring_covered(a, b, c, hole, in_mm(design.soundhole.ring_width))
                                 : 0);
  }
  place_ribs(top);
  top.arch_radius = design.arch_radius;
  top.arch = arch_heights(top.mesh, design);
  BracedPlate skeleton{.mesh = top.mesh,
                       .arch = top.arch,
                       .sections = {},
                       .section_of = {},
                       .ribs = top.ribs,
                       .springs = {},
                       .rib_slots = top.rib_slots,
                       .strains = {}};
  for (const int node : top.rim) skeleton.springs.push_back({.node = node});
  skeleton.find_strains();
  top.strains = skeleton.strains;
  top.dissection = dissect(skeleton);
  return top;
}

}  // namespace tailblock

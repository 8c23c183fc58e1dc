#include "body/top_view.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "body/meshed_top.h"
#include "body/point_grid.h"

namespace tailblock {
namespace {

/// How far from an edge of the mesh its stress is not believed: one and a half triangles of the usual mesh.
constexpr double edge_mm = 12;
constexpr Range any{-1e9, 1e9, ""};
constexpr Count many{0, 600000};

std::size_t at(double index) { return static_cast<std::size_t>(index); }

struct NodeStress {
  std::vector<double> outer, inner;
};

NodeStress across_at_nodes(const PlateFields& fields) {
  const std::size_t nodes = fields.x_mm.size();
  NodeStress stress{std::vector<double>(nodes, 0), std::vector<double>(nodes, 0)};
  std::vector<double> around(nodes, 0);
  for (std::size_t t = 0; t < fields.first_corner.size(); ++t) {
    const std::array corners{at(fields.first_corner[t]), at(fields.second_corner[t]), at(fields.third_corner[t])};
    const auto place = [&](std::size_t k) { return PlanePoint{fields.x_mm[corners[k]], fields.y_mm[corners[k]]}; };
    const double area = turn(place(0), place(1), place(2)) / 2;
    for (const std::size_t node : corners) {
      around[node] += area;
      stress.outer[node] += area * fields.outer_across_mpa[t];
      stress.inner[node] += area * fields.inner_across_mpa[t];
    }
  }
  for (std::size_t n = 0; n < nodes; ++n) {
    if (around[n] == 0) continue;
    stress.outer[n] /= around[n];
    stress.inner[n] /= around[n];
  }
  return stress;
}

/// Nodes at the edge of the mesh: on a side that belongs to one triangle only.
std::vector<PlanePoint> edge_nodes(const PlateFields& fields) {
  std::vector<std::array<double, 2>> sides;
  for (std::size_t t = 0; t < fields.first_corner.size(); ++t) {
    const std::array corners{fields.first_corner[t], fields.second_corner[t], fields.third_corner[t]};
    for (std::size_t k = 0; k < 3; ++k) {
      const double a = corners[k], b = corners[(k + 1) % 3];
      sides.push_back({std::min(a, b), std::max(a, b)});
    }
  }
  std::ranges::sort(sides);
  std::vector<PlanePoint> edge;
  for (std::size_t s = 0; s < sides.size();) {
    std::size_t next = s + 1;
    while (next < sides.size() && sides[next] == sides[s]) ++next;
    if (next == s + 1) edge.push_back({fields.x_mm[at(sides[s][0])], fields.y_mm[at(sides[s][0])]});
    s = next;
  }
  return edge;
}

Footprint widened(const CrossPiece& piece) {
  Footprint print = footprint(piece);
  print.front -= edge_mm / 2, print.back += edge_mm / 2, print.half_span += edge_mm / 2;
  return print;
}

GreatestAcross greatest_across(const TopDesign& design, const PlateFields& fields, const NodeStress& stress) {
  const std::vector<PlanePoint> edge = edge_nodes(fields);
  const Footprint bridge = widened(design.bridge.body), plate = widened(design.bridge_plate);
  const auto believed = [&](PlanePoint p) {
    if (bridge.contains(p) || plate.contains(p)) return false;
    return std::ranges::none_of(edge, [&](PlanePoint e) { return distance(p, e) < edge_mm; });
  };
  GreatestAcross greatest;
  for (std::size_t n = 0; n < stress.outer.size(); ++n) {
    const double most = std::max(stress.outer[n], stress.inner[n]);
    const PlanePoint p{fields.x_mm[n], fields.y_mm[n]};
    if (most <= greatest.mpa || !believed(p)) continue;
    greatest = {.mpa = most, .x = mm(p.x), .y = mm(p.y), .inner = stress.inner[n] > stress.outer[n]};
  }
  return greatest;
}

}  // namespace

TopView top_view(PlateResult result) {
  assert(result.fields);
  const PlateFields fields = std::move(*result.fields);
  result.fields.reset();
  const NodeStress stress = across_at_nodes(fields);
  TopView view{.shape = {.x_mm = fields.x_mm, .y_mm = fields.y_mm, .corners = {}},
               .state = {.numbers = {},
                         .strings_height_mm = fields.strings_height_mm,
                         .moisture_height_mm = fields.moisture_height_mm,
                         .across_mpa = {},
                         .greatest_across = greatest_across(result.design, fields, stress)}};
  for (std::size_t t = 0; t < fields.first_corner.size(); ++t) {
    for (const double corner : {fields.first_corner[t], fields.second_corner[t], fields.third_corner[t]})
      view.shape.corners.push_back(corner);
  }
  for (std::size_t n = 0; n < stress.outer.size(); ++n) {
    const double most = std::max(stress.outer[n], stress.inner[n]);
    view.state.across_mpa.push_back(std::round(most * 1e3) / 1e3);  // far below anything that is drawn
  }
  view.state.numbers = std::move(result);
  return view;
}

TopState state_on(const TopShape& shape, TopView view) {
  assert(view.shape.corners.size() == shape.corners.size() && "the same lines are cut into the same triangles");
  const auto moved = [&](std::vector<double>& values) {
    std::vector<double> placed(shape.x_mm.size(), 0);
    for (std::size_t k = 0; k < shape.corners.size(); ++k) {
      placed[at(shape.corners[k])] = values[at(view.shape.corners[k])];
    }
    values = std::move(placed);
  };
  for (auto* values : {&view.state.strings_height_mm, &view.state.moisture_height_mm, &view.state.across_mpa}) {
    moved(*values);
  }
  return std::move(view.state);
}

void describe(FieldVisitor& visit, TopShape& shape) {
  visit.numbers({"x_mm", "nodes: from the neck edge"}, shape.x_mm, any, many);
  visit.numbers({"y_mm", "nodes: from the centre line; treble positive"}, shape.y_mm, any, many);
  visit.numbers({"corners", "triangles: three nodes each, from 0"}, shape.corners, any, many);
}

void describe(FieldVisitor& visit, GreatestAcross& greatest) {
  visit.number({"mpa", "mean over the triangles round one node"}, greatest.mpa, any);
  visit.length({"x_mm", "where, from the neck edge"}, greatest.x, {-1e9, 1e9, "mm"});
  visit.length({"y_mm", "from the centre line; treble positive"}, greatest.y, {-1e9, 1e9, "mm"});
  visit.flag({"inner", "in the face towards the braces"}, greatest.inner);
}

void describe(FieldVisitor& visit, TopState& state) {
  object(visit, {"numbers", "as the plate model answers"}, state.numbers);
  visit.numbers({"strings_height_mm", "nodes: rise under the strings"}, state.strings_height_mm, any, many);
  visit.numbers({"moisture_height_mm", "nodes: rise with the moisture"}, state.moisture_height_mm, any, many);
  visit.numbers({"across_mpa", "nodes: stress across the grain, both together, the face that is pulled more"},
                state.across_mpa, any, many);
  object(visit, {"greatest_across", "of it, off bridge, plate and edges"}, state.greatest_across);
}

}  // namespace tailblock

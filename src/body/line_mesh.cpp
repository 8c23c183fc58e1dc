#include "body/line_mesh.h"

#include <cmath>
#include <numbers>
#include <unordered_set>

#include "body/delaunay.h"
#include "body/point_grid.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

// Shares of the spacing, as tried in the design study.
constexpr double one_point = 0.28;   // nearer points become one
constexpr double fill_clear = 0.62;  // the fill keeps this far from edges and lines

constexpr double good_quality = 0.25;  // a mesh this good is taken at once

std::size_t at(int index) { return static_cast<std::size_t>(index); }

PlanePoint between(PlanePoint a, PlanePoint b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

/// How far along a line, in shares of it, the nearest place to a point is.
double share_along(const MeshLine& line, PlanePoint p) {
  const double dx = line.to.x - line.from.x, dy = line.to.y - line.from.y;
  return ((p.x - line.from.x) * dx + (p.y - line.from.y) * dy) / (dx * dx + dy * dy);
}

/// Where along `line` it is crossed by `other`, in shares of it.
std::optional<double> crossing(const MeshLine& line, const MeshLine& other) {
  const double start = turn(other.from, other.to, line.from), end = turn(other.from, other.to, line.to);
  const double other_start = turn(line.from, line.to, other.from), other_end = turn(line.from, line.to, other.to);
  if (start * end > 0 || other_start * other_end > 0 || start == end) return std::nullopt;
  return start / (start - end);
}

/// The pieces of a line outside a circle.
std::vector<MeshLine> outside(const MeshLine& line, const std::optional<Circle>& hole) {
  if (!hole) return {line};
  const double length = distance(line.from, line.to);
  const double foot = share_along(line, hole->centre);
  const double away = distance(between(line.from, line.to, foot), hole->centre);
  if (away >= hole->radius) return {line};
  const double half = std::sqrt(hole->radius * hole->radius - away * away) / length;
  std::vector<MeshLine> pieces;
  if (foot - half > 0) pieces.push_back({line.from, between(line.from, line.to, std::min(1.0, foot - half))});
  if (foot + half < 1) pieces.push_back({between(line.from, line.to, std::max(0.0, foot + half)), line.to});
  return pieces;
}

std::uint64_t side_key(int a, int b) {
  return (static_cast<std::uint64_t>(std::min(a, b)) << 32) | static_cast<std::uint64_t>(std::max(a, b));
}

/// One mesh at one spacing.
class Mesher {
 public:
  Mesher(const MeshRequest& request, double spacing)
      : request_(request), spacing_(spacing), grid_(low(), high(), spacing), box_low_(low()), box_high_(high()) {
    for (std::size_t i = 0; i < request.lines.size(); ++i) {
      for (const MeshLine& piece : outside(request.lines[i], request.hole)) {
        if (distance(piece.from, piece.to) > one_point * spacing) pieces_.push_back({piece, i, {}});
      }
    }
  }

  LineMesh made() {
    place_fixed_points();
    rim_ = divided_polygon(request_.rim);
    if (request_.hole) hole_ = divided_polygon(hole_polygon());
    for (Piece& piece : pieces_) divide(piece);
    edge_points_ = static_cast<int>(points_.size());
    fill();
    first_halving_ = static_cast<int>(points_.size());
    triangulate();
    return result();
  }

 private:
  struct Piece {
    MeshLine line;
    std::size_t of;
    std::vector<int> nodes;
  };

  [[nodiscard]] PlanePoint low() const {
    PlanePoint p = request_.rim.front();
    for (const PlanePoint& q : request_.rim) p.x = std::min(p.x, q.x), p.y = std::min(p.y, q.y);
    return p;
  }
  [[nodiscard]] PlanePoint high() const {
    PlanePoint p = request_.rim.front();
    for (const PlanePoint& q : request_.rim) p.x = std::max(p.x, q.x), p.y = std::max(p.y, q.y);
    return p;
  }
  [[nodiscard]] std::vector<PlanePoint> hole_polygon() const {
    constexpr int sides = 360;
    std::vector<PlanePoint> polygon;
    for (int i = 0; i < sides; ++i) {
      const double turned = 2 * std::numbers::pi * i / sides;
      polygon.push_back({request_.hole->centre.x + request_.hole->radius * std::cos(turned),
                         request_.hole->centre.y + request_.hole->radius * std::sin(turned)});
    }
    return polygon;
  }

  int place(PlanePoint point) {
    const int known = grid_.nearest(point, one_point * spacing_);
    if (known >= 0) return known;
    points_.push_back(point);
    grid_.add(point, static_cast<int>(points_.size()) - 1);
    return static_cast<int>(points_.size()) - 1;
  }

  void place_fixed_points() {
    for (const Piece& piece : pieces_) (void)place(piece.line.from), (void)place(piece.line.to);
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      for (std::size_t j = i + 1; j < pieces_.size(); ++j) {
        const MeshLine& line = pieces_[i].line;
        if (const auto share = crossing(line, pieces_[j].line)) (void)place(between(line.from, line.to, *share));
      }
    }
  }

  /// Nodes round a closed polygon: the fixed points on it, and points about a spacing apart between them.
  std::vector<int> divided_polygon(const std::vector<PlanePoint>& polygon) {
    std::vector<double> along{0};
    for (std::size_t k = 0; k < polygon.size(); ++k) {
      along.push_back(along.back() + distance(polygon[k], polygon[(k + 1) % polygon.size()]));
    }
    std::vector<std::pair<double, int>> stops;
    for (std::size_t n = 0; n < points_.size(); ++n) {
      double nearest = one_point * spacing_, place_along = -1;
      for (std::size_t k = 0; k < polygon.size(); ++k) {
        const MeshLine side{polygon[k], polygon[(k + 1) % polygon.size()]};
        const double share = std::clamp(share_along(side, points_[n]), 0.0, 1.0);
        const double away = distance(between(side.from, side.to, share), points_[n]);
        if (away < nearest) nearest = away, place_along = along[k] + share * (along[k + 1] - along[k]);
      }
      if (place_along >= 0) stops.emplace_back(place_along, static_cast<int>(n));
    }
    if (stops.empty()) stops.emplace_back(0, place(polygon.front()));
    std::ranges::sort(stops);
    std::vector<int> nodes;
    for (std::size_t s = 0; s < stops.size(); ++s) {
      const double start = stops[s].first;
      const double end = s + 1 < stops.size() ? stops[s + 1].first : stops[0].first + along.back();
      append(nodes, stops[s].second);
      const int parts = std::max(1, static_cast<int>(std::lround((end - start) / spacing_)));
      for (int i = 1; i < parts; ++i) {
        const double stop = std::fmod(start + (end - start) * i / parts, along.back());
        const auto k = static_cast<std::size_t>(std::ranges::upper_bound(along, stop) - along.begin()) - 1;
        append(nodes, place(between(polygon[k], polygon[(k + 1) % polygon.size()],
                                    (stop - along[k]) / (along[k + 1] - along[k]))));
      }
    }
    while (nodes.size() > 1 && nodes.back() == nodes.front()) nodes.pop_back();
    return nodes;
  }

  static void append(std::vector<int>& nodes, int node) {
    if (nodes.empty() || nodes.back() != node) nodes.push_back(node);
  }

  void divide(Piece& piece) {
    const MeshLine& line = piece.line;
    std::vector<std::pair<double, int>> stops;
    const double length = distance(line.from, line.to);
    for (std::size_t n = 0; n < points_.size(); ++n) {
      const double share = share_along(line, points_[n]);
      if (share * length < -one_point * spacing_ || (share - 1) * length > one_point * spacing_) continue;
      const double away = distance(between(line.from, line.to, std::clamp(share, 0.0, 1.0)), points_[n]);
      if (away < one_point * spacing_) stops.emplace_back(share, static_cast<int>(n));
    }
    std::ranges::sort(stops);
    for (std::size_t s = 0; s < stops.size(); ++s) {
      append(piece.nodes, stops[s].second);
      if (s + 1 == stops.size()) break;
      const PlanePoint from = points_[at(stops[s].second)], to = points_[at(stops[s + 1].second)];
      const int parts = static_cast<int>(std::lround(distance(from, to) / spacing_));
      for (int i = 1; i < parts; ++i) append(piece.nodes, place(between(from, to, static_cast<double>(i) / parts)));
    }
  }

  /// A hexagonal pattern, mirrored about y = 0, where it keeps clear of every edge and line.
  void fill() {
    PointGrid middles(box_low_, box_high_, spacing_);
    std::vector<double> radius;
    const auto guard = [&](const std::vector<int>& nodes, bool closed) {
      for (std::size_t k = 0; k + 1 < nodes.size() + (closed ? 1 : 0); ++k) {
        const PlanePoint a = points_[at(nodes[k])], b = points_[at(nodes[(k + 1) % nodes.size()])];
        middles.add(between(a, b, 0.5), static_cast<int>(radius.size()));
        radius.push_back(std::min(distance(a, b) / 2, spacing_));
      }
    };
    guard(rim_, true);
    if (request_.hole) guard(hole_, true);
    for (const Piece& piece : pieces_) guard(piece.nodes, false);

    const double rise = spacing_ * std::sqrt(3.0) / 2;
    const int rows = static_cast<int>(std::max(std::abs(box_low_.y), std::abs(box_high_.y)) / rise) + 1;
    const int columns = static_cast<int>((box_high_.x - box_low_.x) / spacing_) + 1;
    for (int r = -rows; r <= rows; ++r) {
      for (int c = 0; c <= columns; ++c) {
        const PlanePoint p{box_low_.x + spacing_ * (c + 0.5 * (std::abs(r) % 2)), rise * r};
        if (p.y <= box_low_.y || p.y >= box_high_.y || p.x >= box_high_.x) continue;
        if (grid_.nearest(p, fill_clear * spacing_) >= 0) continue;
        const int middle = middles.nearest(p, 0.75 * spacing_);
        if (middle >= 0 && middles.nearest(p, radius[at(middle)]) >= 0) continue;
        if (request_.hole && distance(p, request_.hole->centre) < request_.hole->radius) continue;
        if (inside_polygon(request_.rim, p)) points_.push_back(p);
      }
    }
  }

  void triangulate() {
    Delaunay delaunay({(box_low_.x + box_high_.x) / 2, (box_low_.y + box_high_.y) / 2});
    std::vector<int> order(points_.size()), index(points_.size());
    for (std::size_t n = 0; n < order.size(); ++n) order[n] = static_cast<int>(n);
    const double strip = 3 * spacing_;
    std::ranges::sort(order, {}, [&](int n) {  // to and fro over strips, so that each point falls near the last
      const PlanePoint p = points_[at(n)];
      const int s = static_cast<int>((p.x - box_low_.x) / strip);
      return std::tuple(s, s % 2 == 0 ? p.y : -p.y, n);
    });
    for (const int n : order) index[at(n)] = delaunay.insert(points_[at(n)]);
    std::vector<int> back(points_.size(), -1);
    for (std::size_t n = 0; n < index.size(); ++n) back[at(index[n])] = static_cast<int>(n);

    // Halves every piece of a line that is not a side yet.
    const auto keep_sides = [&](std::vector<int>& nodes, bool closed) {
      for (std::size_t k = 0; k + 1 < nodes.size() + (closed ? 1 : 0);) {
        const int a = nodes[k], b = nodes[(k + 1) % nodes.size()];
        if (delaunay.has_edge(index[at(a)], index[at(b)])) {
          ++k;
          continue;
        }
        if (distance(points_[at(a)], points_[at(b)]) < 0.02 * spacing_)
          throw Refused("braces: two of them cannot be told apart");
        const int known = delaunay.insert(between(points_[at(a)], points_[at(b)], 0.5));
        if (at(known) == back.size()) {
          points_.push_back(delaunay.point(known));
          index.push_back(known);
          back.push_back(static_cast<int>(points_.size()) - 1);
        }
        nodes.insert(nodes.begin() + static_cast<std::ptrdiff_t>(k) + 1, back[at(known)]);
        settled_ = false;
      }
    };
    for (int pass = 0; pass < 20; ++pass) {
      settled_ = true;
      keep_sides(rim_, true);
      if (request_.hole) keep_sides(hole_, true);
      for (Piece& piece : pieces_) keep_sides(piece.nodes, false);
      if (settled_) break;
    }
    keep_inside(delaunay.triangles(), back);
  }

  /// Drops what lies outside the rim or in the hole.
  void keep_inside(const std::vector<Delaunay::Triangle>& all, const std::vector<int>& back) {
    std::unordered_set<std::uint64_t> rim_sides;
    for (std::size_t k = 0; k < rim_.size(); ++k) rim_sides.insert(side_key(rim_[k], rim_[(k + 1) % rim_.size()]));
    std::vector<bool> in_hole(points_.size(), false), dropped(all.size(), false);
    if (request_.hole) {
      for (const int node : hole_) in_hole[at(node)] = true;
    }
    const auto node = [&](int corner) { return corner < 0 ? corner : back[at(corner)]; };
    std::vector<int> open;
    for (std::size_t t = 0; t < all.size(); ++t) {
      const auto& corners = all[t].corners;
      if (std::ranges::any_of(corners, [](int corner) { return corner < 0; }))
        dropped[t] = true, open.push_back(static_cast<int>(t));
    }
    while (!open.empty()) {
      const Delaunay::Triangle& triangle = all[at(open.back())];
      open.pop_back();
      for (int k = 0; k < 3; ++k) {
        const int next = triangle.neighbours[at(k)];
        if (next < 0 || dropped[at(next)]) continue;
        const int a = node(triangle.corners[at((k + 1) % 3)]), b = node(triangle.corners[at((k + 2) % 3)]);
        if (a >= 0 && b >= 0 && rim_sides.contains(side_key(a, b))) continue;
        dropped[at(next)] = true;
        open.push_back(next);
      }
    }
    for (std::size_t t = 0; t < all.size(); ++t) {
      if (dropped[t]) continue;
      const std::array<int, 3> corners{node(all[t].corners[0]), node(all[t].corners[1]), node(all[t].corners[2])};
      if (std::ranges::all_of(corners, [&](int corner) { return in_hole[at(corner)]; })) continue;
      triangles_.push_back(corners);
    }
  }

  /// Moves each fill point to the middle of its neighbours, all at once, where that spoils no triangle.
  void smooth(std::vector<PlanePoint>& nodes) const {
    const auto fixed = [&](int node) { return node < edge_points_ || node >= first_halving_; };
    for (int sweep = 0; sweep < 3; ++sweep) {
      std::vector<PlanePoint> sum(nodes.size());
      std::vector<int> count(nodes.size(), 0);
      for (const auto& t : triangles_) {
        for (std::size_t k = 0; k < 3; ++k) {
          const PlanePoint p = nodes[at(t[(k + 1) % 3])];
          sum[at(t[k])].x += p.x, sum[at(t[k])].y += p.y;
          ++count[at(t[k])];
        }
      }
      std::vector<PlanePoint> moved = nodes;
      for (std::size_t n = 0; n < nodes.size(); ++n) {
        if (!fixed(static_cast<int>(n)) && count[n] > 0) moved[n] = {sum[n].x / count[n], sum[n].y / count[n]};
      }
      for (const auto& t : triangles_) {
        const auto quality = [&](const std::vector<PlanePoint>& in) {
          return triangle_quality(in[at(t[0])], in[at(t[1])], in[at(t[2])]);
        };
        if (quality(moved) >= std::min(0.5, quality(nodes))) continue;
        for (const int node : t) moved[at(node)] = nodes[at(node)];
      }
      nodes = std::move(moved);
    }
  }

  LineMesh result() {
    if (triangles_.empty()) throw Refused("design.outline: it does not enclose a top");
    std::vector<PlanePoint> nodes = points_;
    smooth(nodes);
    std::vector<int> number(nodes.size(), -1);
    LineMesh mesh;
    mesh.lines.resize(request_.lines.size());
    double sum = 0;
    for (auto& t : triangles_) {
      const double quality = triangle_quality(nodes[at(t[0])], nodes[at(t[1])], nodes[at(t[2])]);
      sum += quality;
      mesh.worst_quality = std::min(mesh.worst_quality, quality);
      for (int& corner : t) {
        if (number[at(corner)] < 0) {
          number[at(corner)] = static_cast<int>(mesh.mesh.nodes.size());
          mesh.mesh.nodes.push_back(nodes[at(corner)]);
        }
        corner = number[at(corner)];
      }
      mesh.mesh.triangles.push_back(t);
    }
    mesh.mean_quality = sum / static_cast<double>(triangles_.size());
    const auto renumber = [&](const std::vector<int>& from, std::vector<int>& to) {
      for (const int node : from) {
        if (number[at(node)] >= 0) append(to, number[at(node)]);
      }
    };
    renumber(rim_, mesh.rim);
    renumber(hole_, mesh.hole);
    for (const Piece& piece : pieces_) renumber(piece.nodes, mesh.lines[piece.of].emplace_back());
    return mesh;
  }

  const MeshRequest& request_;
  double spacing_;
  PointGrid grid_;
  PlanePoint box_low_, box_high_;
  std::vector<Piece> pieces_;
  std::vector<PlanePoint> points_;
  int edge_points_ = 0, first_halving_ = 0;
  bool settled_ = false;
  std::vector<int> rim_, hole_;
  std::vector<std::array<int, 3>> triangles_;
};

}  // namespace

bool inside_polygon(const std::vector<PlanePoint>& polygon, PlanePoint p) {
  bool inside = false;
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    const PlanePoint a = polygon[k], b = polygon[(k + 1) % polygon.size()];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

std::optional<MeshLine> clipped(const MeshLine& line, const std::vector<PlanePoint>& polygon) {
  const bool starts_in = inside_polygon(polygon, line.from), ends_in = inside_polygon(polygon, line.to);
  std::vector<double> shares;
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    if (const auto share = crossing(line, {polygon[k], polygon[(k + 1) % polygon.size()]})) shares.push_back(*share);
  }
  std::ranges::sort(shares);
  if (shares.empty()) return starts_in ? std::optional(line) : std::nullopt;
  const double start = starts_in ? 0 : shares.front(), end = ends_in ? 1 : shares.back();
  if (end <= start) return std::nullopt;
  return MeshLine{between(line.from, line.to, start), between(line.from, line.to, end)};
}

LineMesh line_mesh(const MeshRequest& request) {
  std::optional<LineMesh> best;
  for (const double share : {1.0, 0.93, 1.07, 0.86}) {
    LineMesh mesh = Mesher(request, share * request.spacing).made();
    if (!best || mesh.worst_quality > best->worst_quality) best = std::move(mesh);
    if (best->worst_quality >= good_quality) break;
  }
  if (best->worst_quality < least_quality) {
    throw Refused("braces: two of them pass too closely to be calculated at this mesh; move one or merge them");
  }
  return std::move(*best);
}

}  // namespace tailblock

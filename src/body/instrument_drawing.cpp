#include "body/instrument_drawing.h"

#include <algorithm>
#include <cmath>

#include "body/outline.h"
#include "body/point_grid.h"

namespace tailblock {
namespace {

constexpr Need free_to_leave_out = Need::has_default;
constexpr Range places_mm{-2000, 2000, "mm"};
constexpr std::size_t words = 200;
constexpr Count many{0, 10000};
constexpr double beyond_the_edge = 6;  // mm of paper round every view

}  // namespace

void describe(FieldVisitor& visit, DrawingRequest& request) {
  constexpr Need free = free_to_leave_out;
  choice(visit, {"body_size", "in words of form", free}, request.body_size, body_size_names);
  choice(visit, {"bracing", "of the top", free}, request.bracing, bracing_names);
  maybe(visit, {"lower_bout_width_mm", "when it was measured"}, request.lower_bout_width,
        [&](const Field& field, Length& value) {
          visit.length(field, value, {250, 500, "mm"});
        });
  visit.length({"scale_length_mm", "nut to saddle, nominal", free}, request.scale_length, {400, 750, "mm"});
  visit.integer({"body_joint_fret", "the fret over the body joint", free}, request.body_joint_fret, {10, 16, ""});
  visit.integer({"fret_count", "frets on the board", free}, request.fret_count, {12, 26, ""});
}

void describe(FieldVisitor& visit, DrawingPoint& point) {
  visit.length({"x_mm", "along the view"}, point.x, places_mm);
  visit.length({"y_mm", "across the view"}, point.y, places_mm);
}

void describe(FieldVisitor& visit, DrawnLine& line) {
  choice(visit, {"part", "what it is"}, line.part, drawn_part_names);
  visit.text({"name", "as the bench calls it; empty: it has no name of its own"}, line.name, words);
  visit.flag({"closed", "the last point joins the first"}, line.closed);
  visit.length({"width_mm", "of a brace; 0: a line without width"}, line.width, {0, 100, "mm"});
  list(visit, {"points", "from its first end"}, line.points, many);
}

void describe(FieldVisitor& visit, DrawnPlace& place) {
  visit.text({"name", "as the bench calls it"}, place.name, words);
  object(visit, {"at", "where it is"}, place.at);
}

void describe(FieldVisitor& visit, ViewDrawing& view) {
  choice(visit, {"view", "how it is looked at"}, view.view, drawing_view_names);
  visit.flag({"upright", "x runs down the page and y across it; false: x across and y down"}, view.upright);
  visit.flag({"mirrored", "what runs across the page grows to the left"}, view.mirrored);
  visit.flag({"upside_down", "what runs down the page grows upward"}, view.upside_down);
  visit.length({"x_from_mm", "what the drawing fills"}, view.x_from, places_mm);
  visit.length({"x_to_mm", "what the drawing fills"}, view.x_to, places_mm);
  visit.length({"y_from_mm", "what the drawing fills"}, view.y_from, places_mm);
  visit.length({"y_to_mm", "what the drawing fills"}, view.y_to, places_mm);
  list(visit, {"lines", "in the order they are drawn"}, view.lines, many);
  list(visit, {"places", "that can be told by name"}, view.places, many);
}

void describe(FieldVisitor& visit, InstrumentDrawing& drawing) {
  list(visit, {"views", "all seven"}, drawing.views, many);
  visit.texts({"assumed", "what no record says"}, drawing.assumed, words, many);
}

namespace {

DrawingPoint point(double x, double y) { return {mm(x), mm(y)}; }

DrawnLine rectangle(DrawnPart part, const std::string& name, double x_from, double x_to, double half_width) {
  return {.part = part,
          .name = name,
          .closed = true,
          .width = {},
          .points = {point(x_from, -half_width), point(x_to, -half_width), point(x_to, half_width),
                     point(x_from, half_width)}};
}

DrawnLine circle(DrawnPart part, const std::string& name, double x, double y, double radius) {
  constexpr int corners = 48;
  constexpr double turn = 6.283185307179586;
  DrawnLine line{.part = part, .name = name, .closed = true, .width = {}, .points = {}};
  for (int k = 0; k < corners; ++k) {
    const double angle = turn * k / corners;
    line.points.push_back(point(x + radius * std::cos(angle), y + radius * std::sin(angle)));
  }
  return line;
}

/// The instrument's measures as the views use them, in millimetres.
struct Measures {
  TopDesign top;
  DrawingFigures figures;
  double neck_end_depth = 0;
  double nut_x = 0, board_end_x = 0, joint_fret_share = 0, scale = 0;
  int frets = 0;
  std::vector<PlanePoint> rim;       ///< closed
  std::vector<PlanePoint> one_side;  ///< neck edge to tail, y >= 0
  std::vector<double> along;         ///< the way along the rim to each of its points
  double upper_x = 0, waist_x = 0, lower_x = 0, tail_x = 0, widest = 0;

  [[nodiscard]] double fret_x(int number) const { return nut_x + scale * (1 - std::pow(2.0, -number / 12.0)); }

  [[nodiscard]] double half_board(double x) const {
    const double nut = in_mm(figures.nut_width) / 2, joint = in_mm(figures.board_width_at_joint) / 2;
    return nut + (joint - nut) * (x - nut_x) / (0 - nut_x);
  }

  /// Straight between the points of the rim.
  [[nodiscard]] double half_width(double x) const {
    const auto after = std::ranges::find_if(one_side, [&](PlanePoint p) { return x <= p.x; });
    if (after == one_side.begin() || after == one_side.end()) return 0;
    const PlanePoint a = *(after - 1), b = *after;
    return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
  }

  [[nodiscard]] double along_rim(double x) const {
    const auto after = std::ranges::find_if(one_side, [&](PlanePoint p) { return x <= p.x; });
    if (after == one_side.begin()) return 0;
    if (after == one_side.end()) return along.back();
    const auto at = static_cast<std::size_t>(after - one_side.begin());
    const PlanePoint a = one_side[at - 1], b = one_side[at];
    return along[at - 1] + (along[at] - along[at - 1]) * (x - a.x) / (b.x - a.x);
  }

  [[nodiscard]] double depth(double way_along) const {
    return neck_end_depth + (in_mm(figures.tail_depth) - neck_end_depth) * way_along / along.back();
  }
};

void find_outline(Measures& m) {
  std::vector<PlanePoint> half;
  for (const OutlinePoint& p : m.top.outline) half.push_back({in_mm(p.x), in_mm(p.half_width)});
  m.rim = outline(half);
  // The rim runs from the tail along y > 0 to the centre line at the neck: half of it, the other way round, is one
  // side.
  const auto corners = static_cast<std::ptrdiff_t>(m.rim.size() / 2);
  m.one_side.assign(m.rim.begin(), m.rim.begin() + corners + 1);
  std::ranges::reverse(m.one_side);
  for (std::size_t k = 0; k < m.one_side.size(); ++k) {
    m.along.push_back(k == 0 ? 0 : m.along.back() + distance(m.one_side[k - 1], m.one_side[k]));
  }
  const auto widest_up_to = [&](double from, double to, bool least) {
    double best_x = from, best = least ? 1e9 : -1e9;
    for (const PlanePoint& p : m.one_side) {
      if (p.x < from || to < p.x || (least ? best <= p.y : p.y <= best)) continue;
      best = p.y, best_x = p.x;
    }
    return best_x;
  };
  m.tail_x = half.back().x;
  m.lower_x = widest_up_to(m.tail_x / 2, m.tail_x, false);
  m.upper_x = widest_up_to(0, m.tail_x * 0.3, false);
  m.waist_x = widest_up_to(m.upper_x, m.lower_x, true);
  m.widest = m.half_width(m.lower_x);
}

Measures measures_of(const DrawingRequest& request, const TopDesignTable& tops, const DrawingTables& tables,
                     std::vector<std::string>& assumed) {
  const auto size = static_cast<std::size_t>(request.body_size);
  const TopBuild& build = tops.builds[size];
  Measures m;
  m.top = build.top;
  m.figures = tables.figures[size];
  m.neck_end_depth = in_mm(build.behind.block_depth);
  m.scale = in_mm(request.scale_length);
  m.frets = request.fret_count;
  fit(m.top, build.behind,
      {.lower_bout_width = request.lower_bout_width,
       .scale_length = request.scale_length,
       .body_joint_fret = request.body_joint_fret});
  find_outline(m);
  if (!request.lower_bout_width) assumed.emplace_back("the width of the lower bout, as usual for the body size");
  m.joint_fret_share = std::pow(2.0, -request.body_joint_fret / 12.0);
  m.nut_x = -m.scale * (1 - m.joint_fret_share);
  m.board_end_x = m.fret_x(m.frets) + 5;  // what stands beyond the last fret
  if (request.bracing == Bracing::other) {
    assumed.emplace_back("no braces are drawn: the bracing is of no pattern the book knows");
  } else {
    const auto name = bracing_names[static_cast<std::size_t>(request.bracing)];
    m.top.braces = stretched(tops.pattern(name).braces, m.top);
  }
  assumed.emplace_back("bars of the back, depth of the sides, neck and headstock, as usual for the body size");
  return m;
}

bool inside(const std::vector<PlanePoint>& rim, PlanePoint p) {
  bool in = false;
  for (std::size_t k = 0; k < rim.size(); ++k) {
    const PlanePoint a = rim[k], b = rim[(k + 1) % rim.size()];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
  }
  return in;
}

/// The longest stretch of a line that lies within the rim.
std::vector<DrawingPoint> within(const std::vector<PlanePoint>& rim, PlanePoint from, PlanePoint to) {
  const auto at = [&](double share) {
    return PlanePoint{from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)};
  };
  std::vector<double> cuts{0, 1};
  for (std::size_t k = 0; k < rim.size(); ++k) {
    const PlanePoint a = rim[k], b = rim[(k + 1) % rim.size()];
    const double one = turn(from, to, a), other = turn(from, to, b);
    if ((one > 0) == (other > 0)) continue;
    const double share_of_edge = one / (one - other);
    const PlanePoint crossing{a.x + share_of_edge * (b.x - a.x), a.y + share_of_edge * (b.y - a.y)};
    const double length = distance(from, to);
    const double share =
        ((crossing.x - from.x) * (to.x - from.x) + (crossing.y - from.y) * (to.y - from.y)) / (length * length);
    if (0 < share && share < 1) cuts.push_back(share);
  }
  std::ranges::sort(cuts);
  double best_from = 0, best_to = 0;
  for (std::size_t k = 1; k < cuts.size(); ++k) {
    if (cuts[k] - cuts[k - 1] <= best_to - best_from || !inside(rim, at((cuts[k] + cuts[k - 1]) / 2))) continue;
    best_from = cuts[k - 1], best_to = cuts[k];
  }
  const PlanePoint first = at(best_from), last = at(best_to);
  return {point(first.x, first.y), point(last.x, last.y)};
}

DrawnLine rim_line(const Measures& m) {
  DrawnLine line{.part = DrawnPart::edge, .name = "rim", .closed = true, .width = {}, .points = {}};
  for (std::size_t k = 0; k < m.rim.size(); k += 2) line.points.push_back(point(m.rim[k].x, m.rim[k].y));
  return line;
}

DrawnLine centre_seam(const Measures& m, double from) {
  return {.part = DrawnPart::seam,
          .name = "centre seam",
          .closed = false,
          .width = {},
          .points = {point(from, 0), point(m.tail_x, 0)}};
}

DrawnLine neck_shape(const Measures& m) {
  return {.part = DrawnPart::neck,
          .name = "",
          .closed = true,
          .width = {},
          .points = {point(m.nut_x, -m.half_board(m.nut_x)), point(0, -m.half_board(0)), point(0, m.half_board(0)),
                     point(m.nut_x, m.half_board(m.nut_x))}};
}

ViewDrawing plate_view(DrawingView view, bool mirrored, const Measures& m, bool with_neck) {
  return {.view = view,
          .upright = true,
          .mirrored = mirrored,
          .upside_down = false,
          .x_from = mm((with_neck ? m.nut_x : 0) - beyond_the_edge),
          .x_to = mm(m.tail_x + beyond_the_edge),
          .y_from = mm(-m.widest - beyond_the_edge),
          .y_to = mm(m.widest + beyond_the_edge),
          .lines = {rim_line(m)},
          .places = {}};
}

void add_board(ViewDrawing& view, const Measures& m) {
  const double nut = m.half_board(m.nut_x), end = m.half_board(m.board_end_x);
  view.lines.push_back(
      {.part = DrawnPart::board,
       .name = "board",
       .closed = true,
       .width = {},
       .points = {point(m.nut_x, -nut), point(m.board_end_x, -end), point(m.board_end_x, end), point(m.nut_x, nut)}});
  view.lines.push_back({.part = DrawnPart::nut,
                        .name = "nut",
                        .closed = false,
                        .width = {},
                        .points = {point(m.nut_x, -nut), point(m.nut_x, nut)}});
  for (int number = 1; number <= m.frets; ++number) {
    const double x = m.fret_x(number);
    view.lines.push_back({.part = DrawnPart::fret,
                          .name = "fret " + std::to_string(number),
                          .closed = false,
                          .width = {},
                          .points = {point(x, -m.half_board(x)), point(x, m.half_board(x))}});
  }
}

double edge_of(const CrossPiece& piece, bool back) { return in_mm(piece.front_x) + (back ? in_mm(piece.depth) : 0); }

ViewDrawing front_view(const Measures& m) {
  ViewDrawing view = plate_view(DrawingView::front, false, m, true);
  const Soundhole& hole = m.top.soundhole;
  view.lines.push_back(centre_seam(m, in_mm(hole.centre_x) + in_mm(hole.radius)));
  view.lines.push_back(circle(DrawnPart::hole, "soundhole", in_mm(hole.centre_x), 0, in_mm(hole.radius)));
  add_board(view, m);
  const CrossPiece& bridge = m.top.bridge.body;
  view.lines.push_back(
      rectangle(DrawnPart::bridge, "bridge", edge_of(bridge, false), edge_of(bridge, true), in_mm(bridge.span) / 2));
  const double saddle = in_mm(m.top.bridge.saddle_x), half = in_mm(m.top.bridge.saddle_length) / 2;
  view.lines.push_back({.part = DrawnPart::saddle,
                        .name = "saddle",
                        .closed = false,
                        .width = {},
                        .points = {point(saddle, -half), point(saddle, half)}});
  return view;
}

ViewDrawing back_view(const Measures& m) {
  ViewDrawing view = plate_view(DrawingView::back, true, m, true);
  view.lines.push_back(centre_seam(m, 0));
  view.lines.push_back(neck_shape(m));
  return view;
}

void add_blocks(ViewDrawing& view, const Measures& m) {
  constexpr double neck_block = 60, tail_block = 22;  // mm along the body; drawn only, common practice
  const double half = in_mm(m.top.rim.block_half_width);
  view.lines.push_back(rectangle(DrawnPart::block, "neck block", 0, neck_block, half));
  view.lines.push_back(rectangle(DrawnPart::block, "tail block", m.tail_x - tail_block, m.tail_x, half));
}

ViewDrawing top_inside_view(const Measures& m) {
  ViewDrawing view = plate_view(DrawingView::top_inside, true, m, false);
  const Soundhole& hole = m.top.soundhole;
  view.lines.push_back(centre_seam(m, 0));
  view.lines.push_back(circle(DrawnPart::hole, "soundhole", in_mm(hole.centre_x), 0, in_mm(hole.radius)));
  const CrossPiece& plate = m.top.bridge_plate;
  view.lines.push_back(
      rectangle(DrawnPart::plate, "bridge plate", edge_of(plate, false), edge_of(plate, true), in_mm(plate.span) / 2));
  for (const Brace& brace : m.top.braces) {
    view.lines.push_back(
        {.part = DrawnPart::brace,
         .name = brace.name,
         .closed = false,
         .width = brace.width,
         .points = within(m.rim, {in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)})});
  }
  add_blocks(view, m);
  return view;
}

ViewDrawing back_inside_view(const Measures& m, const DrawingTables& tables) {
  ViewDrawing view = plate_view(DrawingView::back_inside, false, m, false);
  view.lines.push_back(centre_seam(m, 0));
  for (const BackBrace& brace : tables.back_braces) {
    const double x = brace.at_share * m.tail_x;
    view.lines.push_back({.part = DrawnPart::brace,
                          .name = brace.name,
                          .closed = false,
                          .width = brace.width,
                          .points = within(m.rim, {x, -2 * m.widest}, {x, 2 * m.widest})});
  }
  add_blocks(view, m);
  return view;
}

ViewDrawing side_view(DrawingView side, const Measures& m) {
  const double length = m.along.back(), tail = in_mm(m.figures.tail_depth), neck = in_mm(m.figures.neck_depth);
  constexpr double neck_shown = 90;  // mm of neck before the body
  ViewDrawing view{.view = side,
                   .upright = false,
                   .mirrored = side == DrawingView::treble_side,
                   .upside_down = false,
                   .x_from = mm(-neck_shown - beyond_the_edge),
                   .x_to = mm(length + beyond_the_edge),
                   .y_from = mm(-beyond_the_edge - 8),
                   .y_to = mm(std::max(tail, m.neck_end_depth) + beyond_the_edge),
                   .lines = {},
                   .places = {}};
  view.lines.push_back({.part = DrawnPart::edge,
                        .name = "side",
                        .closed = true,
                        .width = {},
                        .points = {point(0, 0), point(length, 0), point(length, tail), point(0, m.neck_end_depth)}});
  // The heel sweeps from the neck's depth to the depth of the body at the joint.
  view.lines.push_back({.part = DrawnPart::neck,
                        .name = "heel",
                        .closed = true,
                        .width = {},
                        .points = {point(-neck_shown, 0), point(0, 0), point(0, m.neck_end_depth),
                                   point(-10, m.neck_end_depth), point(-22, m.neck_end_depth * 0.62),
                                   point(-40, neck + 6), point(-62, neck), point(-neck_shown, neck)}});
  view.lines.push_back({.part = DrawnPart::board,
                        .name = "board",
                        .closed = true,
                        .width = {},
                        .points = {point(-neck_shown, -6), point(0, -6), point(0, 0), point(-neck_shown, 0)}});
  return view;
}

ViewDrawing headstock_view(const Measures& m) {
  const double length = in_mm(m.figures.headstock_length), nut = in_mm(m.figures.nut_width) / 2;
  const double low = in_mm(m.figures.headstock_width_at_nut) / 2, high = in_mm(m.figures.headstock_width_at_tip) / 2;
  constexpr double shoulder = 22;  // mm from the nut to the full width
  ViewDrawing view{.view = DrawingView::headstock,
                   .upright = true,
                   .mirrored = false,
                   .upside_down = true,
                   .x_from = mm(-30),
                   .x_to = mm(length + beyond_the_edge),
                   .y_from = mm(-std::max(low, high) - 2 * beyond_the_edge),
                   .y_to = mm(std::max(low, high) + 2 * beyond_the_edge),
                   .lines = {},
                   .places = {}};
  view.lines.push_back({.part = DrawnPart::edge,
                        .name = "headstock",
                        .closed = true,
                        .width = {},
                        .points = {point(0, -nut), point(shoulder, -low), point(length, -high), point(length, high),
                                   point(shoulder, low), point(0, nut)}});
  view.lines.push_back({.part = DrawnPart::neck,
                        .name = "",
                        .closed = true,
                        .width = {},
                        .points = {point(-30, -nut), point(0, -nut), point(0, nut), point(-30, nut)}});
  view.lines.push_back(
      {.part = DrawnPart::nut, .name = "nut", .closed = false, .width = {}, .points = {point(0, -nut), point(0, nut)}});
  constexpr double tuner_radius = 4.5, tuner_inset = 16;
  for (int pair = 0; pair < 3; ++pair) {
    const double x = length * (0.32 + 0.25 * pair);
    const double half = low + (high - low) * (x - shoulder) / (length - shoulder) - tuner_inset;
    const std::string bass = "tuner of string " + std::to_string(6 - pair);
    const std::string treble = "tuner of string " + std::to_string(1 + pair);
    view.lines.push_back(circle(DrawnPart::tuner, bass, x, -half, tuner_radius));
    view.lines.push_back(circle(DrawnPart::tuner, treble, x, half, tuner_radius));
  }
  return view;
}

/// Where a mark is on the axes of the top; on the headstock from the nut.
double mark_at(DrawingMark mark, const Measures& m) {
  const Soundhole& hole = m.top.soundhole;
  switch (mark) {
    case DrawingMark::neck_edge:
      return 0;
    case DrawingMark::upper_bout:
      return m.upper_x;
    case DrawingMark::waist:
      return m.waist_x;
    case DrawingMark::lower_bout:
      return m.lower_x;
    case DrawingMark::hole:
      return in_mm(hole.centre_x);
    case DrawingMark::hole_edge:
      return in_mm(hole.centre_x) + in_mm(hole.radius);
    case DrawingMark::bridge_front:
      return edge_of(m.top.bridge.body, false);
    case DrawingMark::saddle:
      return in_mm(m.top.bridge.saddle_x);
    case DrawingMark::bridge_back:
      return edge_of(m.top.bridge.body, true);
    case DrawingMark::tail:
      return m.tail_x;
    case DrawingMark::nut:
      return m.nut_x;
    case DrawingMark::middle:
    case DrawingMark::tip:
      break;
  }
  return 0;
}

DrawingPoint place_on(DrawingView view, const NamedPlace& place, const Measures& m) {
  const double beyond = in_mm(place.beyond);
  if (view == DrawingView::headstock) {
    const double length = in_mm(m.figures.headstock_length);
    const double from = place.at == DrawingMark::tip ? length : place.at == DrawingMark::middle ? length / 2 : 0;
    return point(from + beyond, place.across * in_mm(m.figures.headstock_width_at_nut) / 2);
  }
  if (view == DrawingView::bass_side || view == DrawingView::treble_side) {
    const double way = m.along_rim(mark_at(place.at, m)) + beyond;
    return point(way, place.across * m.depth(way));
  }
  const double x = mark_at(place.at, m) + beyond;
  return point(x, place.across * (x < 0 ? m.half_board(x) : m.half_width(x)));
}

void add_places(ViewDrawing& view, const std::vector<NamedPlace>& places, const Measures& m) {
  for (const NamedPlace& place : places) {
    if (std::ranges::find(place.views, view.view) == place.views.end()) continue;
    view.places.push_back({place.name, place_on(view.view, place, m)});
  }
}

}  // namespace

InstrumentDrawing instrument_drawing(const DrawingRequest& request, const TopDesignTable& tops,
                                     const DrawingTables& tables) {
  require_valid(request);
  InstrumentDrawing drawing;
  const Measures m = measures_of(request, tops, tables, drawing.assumed);
  drawing.views = {front_view(m),
                   back_view(m),
                   side_view(DrawingView::bass_side, m),
                   side_view(DrawingView::treble_side, m),
                   headstock_view(m),
                   top_inside_view(m),
                   back_inside_view(m, tables)};
  for (ViewDrawing& view : drawing.views) add_places(view, tables.places, m);
  return drawing;
}

}  // namespace tailblock

#include "paper/findings_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tailblock {
namespace {

constexpr std::array<std::string_view, drawing_view_names.size()> view_words{
    "Front",     "Back",              "Side, bass strings", "Side, treble strings",
    "Headstock", "Inside of the top", "Inside of the back"};

constexpr double most_high = 104, between = 6, name_high = 5.5, widest_name = 27, number_mm = 2.8,
                 ring_mm = 5;

struct PaperPoint {
  double x, y;
};

/// Where a view lies on the picture.
class PlacedView {
 public:
  PlacedView(const ViewDrawing& view, double scale, double left, double top)
      : view_(view), scale_(scale), left_(left), top_(top) {}

  [[nodiscard]] PaperPoint at(const DrawingPoint& point) const {
    const double x = in_mm(point.x), y = in_mm(point.y);
    const double over = along(view_.upright ? y : x, view_.upright ? view_.y_from : view_.x_from,
                              view_.upright ? view_.y_to : view_.x_to, view_.mirrored);
    const double down = along(view_.upright ? x : y, view_.upright ? view_.x_from : view_.y_from,
                              view_.upright ? view_.x_to : view_.y_to, view_.upside_down);
    return {left_ + over, top_ + down};
  }
  [[nodiscard]] std::vector<double> path(const std::vector<DrawingPoint>& points, bool closed) const {
    std::vector<double> path;
    const auto add = [&](const DrawingPoint& point) {
      const PaperPoint on = at(point);
      path.insert(path.end(), {on.x, on.y});
    };
    for (const DrawingPoint& point : points) add(point);
    if (closed && !points.empty()) add(points.front());
    return path;
  }
  [[nodiscard]] double scale() const { return scale_; }

 private:
  [[nodiscard]] double along(double value, Length from, Length to, bool turned) const {
    return scale_ * (turned ? in_mm(to) - value : value - in_mm(from));
  }
  const ViewDrawing& view_;
  double scale_, left_, top_;
};

double across_mm(const ViewDrawing& view) {
  return view.upright ? in_mm(view.y_to) - in_mm(view.y_from) : in_mm(view.x_to) - in_mm(view.x_from);
}
double down_mm(const ViewDrawing& view) {
  return view.upright ? in_mm(view.x_to) - in_mm(view.x_from) : in_mm(view.y_to) - in_mm(view.y_from);
}

struct Pen {
  Ink ink;
  double thick_mm;
  bool dashed = false;
};

Pen pen_of(const DrawnLine& line, double scale) {
  switch (line.part) {
    case DrawnPart::edge:
      return {Ink::ink, 0.4};
    case DrawnPart::brace:
      return {Ink::band_half, std::max(0.4, scale * in_mm(line.width))};
    case DrawnPart::hole:
    case DrawnPart::bridge:
    case DrawnPart::saddle:
      return {Ink::ink, 0.25};
    case DrawnPart::fret:
      return {Ink::rule, 0.15};
    case DrawnPart::seam:
      return {Ink::rule, 0.2, true};
    case DrawnPart::board:
    case DrawnPart::neck:
    case DrawnPart::nut:
    case DrawnPart::plate:
    case DrawnPart::block:
    case DrawnPart::tuner:
      break;
  }
  return {Ink::soft, 0.2};
}

void draw_instrument(Picture& picture, const ViewDrawing& view, const PlacedView& placed) {
  for (const DrawnLine& line : view.lines) {
    if (line.part == DrawnPart::edge && line.closed && line.points.size() > 2) {
      picture.shapes.push_back(
          {.kind = ShapeKind::area, .points_mm = placed.path(line.points, false), .ink = Ink::tint});
    }
  }
  for (const DrawnLine& line : view.lines) {
    if (line.points.size() < 2) continue;
    const Pen pen = pen_of(line, placed.scale());
    picture.shapes.push_back({.kind = ShapeKind::line,
                              .points_mm = placed.path(line.points, line.closed),
                              .ink = pen.ink,
                              .thick_mm = pen.thick_mm,
                              .dashed = pen.dashed});
  }
}

/// Half way along a line; the middle of an area's corners.
PaperPoint middle_of(const MarkedFinding& finding, const PlacedView& placed) {
  const auto& points = finding.points;
  if (finding.shape == FindingShape::line && points.size() > 2) return placed.at(points[points.size() / 2]);
  PaperPoint sum{0, 0};
  for (const DrawingPoint& point : points) {
    const PaperPoint on = placed.at(point);
    sum.x += on.x;
    sum.y += on.y;
  }
  const auto count = static_cast<double>(points.size());
  return {sum.x / count, sum.y / count};
}

void mark_extent(Picture& picture, const MarkedFinding& finding, const PlacedView& placed) {
  if (finding.shape == FindingShape::area && finding.points.size() > 2) {
    picture.shapes.push_back(
        {.kind = ShapeKind::area, .points_mm = placed.path(finding.points, false), .ink = Ink::wash});
  }
  if (finding.points.size() < 2) return;
  picture.shapes.push_back({.kind = ShapeKind::line,
                            .points_mm = placed.path(finding.points, finding.shape == FindingShape::area),
                            .ink = Ink::accent,
                            .thick_mm = finding.shape == FindingShape::area ? 0.35 : 0.8});
}

/// Numbers stand where there is room: each is moved down until it is clear of those before it.
PaperPoint clear_of(PaperPoint wanted, const std::vector<PaperPoint>& others) {
  constexpr int tries = 40;
  for (int i = 0; i < tries; ++i) {
    const bool clear = std::ranges::none_of(
        others, [&](const PaperPoint& other) { return std::hypot(other.x - wanted.x, other.y - wanted.y) < ring_mm; });
    if (clear) break;
    wanted.y += ring_mm / 2;
  }
  return wanted;
}

void mark_numbers(Picture& picture, const std::vector<const MarkedFinding*>& here, const PlacedView& placed) {
  std::vector<PaperPoint> settled;
  for (const MarkedFinding* finding : here) {
    const PaperPoint at = clear_of(middle_of(*finding, placed), settled);
    settled.push_back(at);
    const auto round = [&](ShapeKind kind, Ink ink) {
      picture.shapes.push_back(
          {.kind = kind, .points_mm = {at.x, at.y}, .ink = ink, .thick_mm = 0.4, .size_mm = ring_mm});
    };
    round(ShapeKind::dot, Ink::white);
    round(ShapeKind::ring, Ink::accent);
    picture.shapes.push_back({.kind = ShapeKind::words,
                              .points_mm = {at.x, at.y + 0.36 * number_mm},
                              .ink = Ink::ink,
                              .size_mm = number_mm,
                              .words = std::to_string(finding->number),
                              .hold = Hold::middle});
  }
}

class Composer {
 public:
  Composer(const std::vector<MarkedFinding>& findings, double wide_mm) : findings_(findings) {
    picture_.width_mm = wide_mm;
    picture_.height_mm = 0;
    picture_.says = "The instrument with what was found marked on it.";
  }

  /// Side by side, at the one scale that fits them all.
  void in_a_row(const std::vector<const ViewDrawing*>& views) {
    if (views.empty()) return;
    double down = 0;
    for (const ViewDrawing* view : views) down = std::max(down, down_mm(*view));
    double scale = most_high / down;
    while (wide_of(views, scale) > picture_.width_mm) scale *= 0.98;
    double left = 0;
    for (const ViewDrawing* view : views) {
      const double wide = wide_of({view}, scale);
      add(*view, scale, left + (wide - scale * across_mm(*view)) / 2, left);
      left += wide + between;
    }
    used_ = std::max(used_, left - between);
    top_ += name_high + scale * down + between;
  }

  /// No wider than what stands in it, so that a narrow screen need not make it smaller.
  [[nodiscard]] Picture picture() {
    if (used_ > 0) picture_.width_mm = std::min(picture_.width_mm, used_);
    picture_.height_mm = std::max(5.0, top_ - between + 1);
    return std::move(picture_);
  }

 private:
  /// A view that is narrower than its name stands in a place as wide as the name.
  static double wide_of(const std::vector<const ViewDrawing*>& views, double scale) {
    double wide = between * static_cast<double>(views.size() - 1);
    for (const ViewDrawing* view : views) wide += std::max(scale * across_mm(*view), widest_name);
    return wide;
  }
  void add(const ViewDrawing& view, double scale, double left, double name_left) {
    picture_.shapes.push_back({.kind = ShapeKind::words,
                               .points_mm = {name_left, top_ + 3},
                               .ink = Ink::soft,
                               .size_mm = 2.75,
                               .words = std::string(view_in_words(view.view))});
    const PlacedView placed(view, scale, left, top_ + name_high);
    draw_instrument(picture_, view, placed);
    std::vector<const MarkedFinding*> here;
    for (const MarkedFinding& finding : findings_) {
      if (finding.view == view.view && !finding.points.empty()) here.push_back(&finding);
    }
    picture_.says += " " + std::string(view_in_words(view.view)) + ":";
    for (const MarkedFinding* finding : here) {
      mark_extent(picture_, *finding, placed);
      picture_.says += (finding == here.front() ? " " : ", ") + std::to_string(finding->number);
    }
    picture_.says += ".";
    mark_numbers(picture_, here, placed);
  }

  const std::vector<MarkedFinding>& findings_;
  Picture picture_;
  double top_ = 0, used_ = 0;
};

}  // namespace

std::string_view view_in_words(DrawingView view) { return view_words[static_cast<std::size_t>(view)]; }

Picture findings_picture(const InstrumentDrawing& drawing, const std::vector<MarkedFinding>& findings,
                         double wide_mm) {
  std::vector<const ViewDrawing*> upright, lying;
  for (const ViewDrawing& view : drawing.views) {
    const bool marked = std::ranges::any_of(
        findings, [&](const MarkedFinding& one) { return one.view == view.view && !one.points.empty(); });
    if (marked) (view.upright ? upright : lying).push_back(&view);
  }
  Composer composer(findings, wide_mm);
  composer.in_a_row(upright);
  for (const ViewDrawing* view : lying) composer.in_a_row({view});
  return composer.picture();
}

}  // namespace tailblock

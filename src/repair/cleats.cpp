#include "repair/cleats.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>

#include "body/outline.h"
#include "body/top_designs.h"
#include "repair/plane_strips.h"

namespace tailblock {
namespace {

constexpr double step_mm = 0.5;

struct NamedStrip {
  std::string name;
  PlaneStrip strip;
  bool holds = true;  ///< a crack under it is held
};

/// The crack as a line, and everything a cleat must stay clear of.
struct CrackedPlane {
  PlaneSegment crack;
  double length = 0, ux = 0, uy = 0;
  std::vector<NamedStrip> strips;
  std::vector<PlanePoint> rim;
  PlanePoint hole{};
  double hole_radius = 0, ring_width = 0;

  [[nodiscard]] PlanePoint at(double s) const { return {crack.from.x + ux * s, crack.from.y + uy * s}; }
};

PlaneStrip across(const CrossPiece& piece) {
  const double x = in_mm(piece.front_x), depth = in_mm(piece.depth), half = in_mm(piece.span) / 2;
  return {{{x + depth / 2, -half}, {x + depth / 2, half}}, depth};
}

std::vector<PlanePoint> rim_of(const TopDesign& design) {
  std::vector<PlanePoint> half;
  for (const OutlinePoint& point : design.outline) half.push_back({in_mm(point.x), in_mm(point.half_width)});
  return outline(half);
}

CrackedPlane plane_of(const CleatsRequest& request, const TopDesign& design) {
  CrackedPlane plane;
  plane.crack = {{in_mm(request.from_x), in_mm(request.from_y)}, {in_mm(request.to_x), in_mm(request.to_y)}};
  const double dx = plane.crack.to.x - plane.crack.from.x, dy = plane.crack.to.y - plane.crack.from.y;
  plane.length = require_within("crack_length_mm", std::hypot(dx, dy), {5, 600, "mm"});
  plane.ux = dx / plane.length;
  plane.uy = dy / plane.length;
  plane.rim = rim_of(design);
  plane.hole = {in_mm(design.soundhole.centre_x), 0};
  plane.hole_radius = in_mm(design.soundhole.radius);
  for (const PlanePoint& end : {plane.crack.from, plane.crack.to}) {
    if (!is_inside(end, plane.rim)) throw Refused("from_x_mm: the crack leaves the plate");
  }
  for (const HoldingStrip& brace : request.braces) {
    plane.strips.push_back(
        {brace.name,
         {{{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}}, in_mm(brace.width)}});
  }
  if (request.plate == CrackedPlate::back) return plane;
  plane.ring_width = in_mm(design.soundhole.ring_width);
  for (const Brace& brace : design.braces) {
    plane.strips.push_back(
        {brace.name,
         {{{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}}, in_mm(brace.width)}});
  }
  if (design.bridge_plate.thickness > Length{}) plane.strips.push_back({"bridge plate", across(design.bridge_plate)});
  return plane;
}

PlaneStrip cleat_at(const CrackedPlane& plane, double s, const RepairFigures& figures) {
  const PlanePoint middle = plane.at(s);
  const double half = figures.cleat_along_crack / 2;
  return {{{middle.x - plane.ux * half, middle.y - plane.uy * half},
           {middle.x + plane.ux * half, middle.y + plane.uy * half}},
          figures.cleat_across_crack};
}

bool is_clear(const CrackedPlane& plane, double s, const RepairFigures& figures) {
  const PlaneStrip cleat = cleat_at(plane, s, figures);
  for (const NamedStrip& named : plane.strips) {
    if (distance_between(cleat, named.strip) < figures.cleat_clear_of_brace) return false;
  }
  const std::vector<PlanePoint> corner = corners(cleat);
  for (std::size_t i = 0; i < corner.size(); ++i) {
    const PlaneSegment edge{corner[i], corner[(i + 1) % corner.size()]};
    if (distance_between(plane.hole, edge) < plane.hole_radius + plane.ring_width && plane.hole_radius > 0 &&
        plane.ring_width > 0) {
      return false;
    }
    for (std::size_t k = 0; k < plane.rim.size(); ++k) {
      const PlaneSegment side{plane.rim[k], plane.rim[(k + 1) % plane.rim.size()]};
      if (distance_between(edge, side) < figures.cleat_clear_of_rim) return false;
    }
  }
  return is_inside(plane.at(s), plane.rim);
}

/// A stretch of the crack that something glued under the plate crosses.
struct Hold {
  double from = 0, to = 0;
  std::string name;
};

/// The stretch of the crack where `holds` is true, as one hold.
void add_hold(std::vector<Hold>& holds, const CrackedPlane& plane, const std::string& name,
              const std::function<bool(const PlanePoint&)>& is_held) {
  std::optional<Hold> hold;
  for (double s = 0; s <= plane.length; s += step_mm) {
    if (!is_held(plane.at(s))) continue;
    if (!hold) hold = Hold{s, s, name};
    hold->to = s;
  }
  if (hold) holds.push_back(*hold);
}

std::vector<Hold> holds_of(const CrackedPlane& plane) {
  std::vector<Hold> holds;
  if (plane.ring_width > 0) {
    add_hold(holds, plane, "soundhole and its ring", [&](const PlanePoint& at) {
      return std::hypot(at.x - plane.hole.x, at.y - plane.hole.y) < plane.hole_radius + plane.ring_width;
    });
  }
  for (const NamedStrip& named : plane.strips) {
    const std::vector<PlanePoint> corner = corners(named.strip);
    add_hold(holds, plane, named.name, [&](const PlanePoint& at) { return is_inside(at, corner); });
  }
  std::sort(holds.begin(), holds.end(), [](const Hold& a, const Hold& b) { return a.from < b.from; });
  return holds;
}

/// The nearest place to `s` where a cleat lies clear, within half a spacing.
std::optional<double> nearest_clear(const CrackedPlane& plane, double s, const RepairFigures& figures) {
  for (double off = 0; off <= figures.cleat_spacing_most / 2; off += step_mm) {
    for (const double place : {s - off, s + off}) {
      if (0 <= place && place <= plane.length && is_clear(plane, place, figures)) return place;
    }
  }
  return std::nullopt;
}

/// Where cleats are wanted between two holds; an end of the crack wants one near it.
std::vector<double> wanted_places(double from, double to, bool open_start, bool open_end,
                                  const RepairFigures& figures) {
  const double near_end = std::min(figures.cleat_from_crack_end, (to - from) / 2);
  std::vector<double> places;
  double a = from, b = to;
  if (open_start) places.push_back(a = from + near_end);
  if (open_end) places.push_back(b = to - near_end);
  const int between = static_cast<int>(std::ceil((b - a) / figures.cleat_spacing_most - 1e-9)) - 1;
  for (int k = 1; k <= between; ++k) places.push_back(a + (b - a) * k / (between + 1));
  return places;
}

std::vector<double> places_of(const CrackedPlane& plane, const std::vector<Hold>& holds, const RepairFigures& figures) {
  std::vector<double> wanted;
  double from = 0;
  bool open_start = true;
  const auto add = [&](double to, bool open_end) {
    if (to > from) {
      for (const double place : wanted_places(from, to, open_start, open_end, figures)) wanted.push_back(place);
    }
  };
  for (const Hold& hold : holds) {
    add(hold.from, false);
    from = std::max(from, hold.to);
    open_start = false;
  }
  add(plane.length, true);
  std::sort(wanted.begin(), wanted.end());
  std::vector<double> places;
  for (const double place : wanted) {
    const auto clear = nearest_clear(plane, place, figures);
    // two that were moved together would overlap
    if (clear && (places.empty() || *clear - places.back() >= figures.cleat_along_crack)) places.push_back(*clear);
  }
  return places;
}

/// The stretches from what holds the crack to what holds it next.
std::vector<std::pair<double, double>> unheld(double length, const std::vector<Hold>& holds,
                                              const std::vector<double>& places, double cleat) {
  std::vector<std::pair<double, double>> held, free;
  for (const Hold& hold : holds) held.emplace_back(hold.from, hold.to);
  for (const double place : places) held.emplace_back(place - cleat / 2, place + cleat / 2);
  std::sort(held.begin(), held.end());
  double reached = 0;
  for (const auto& [from, to] : held) {
    if (from > reached) free.emplace_back(reached, from);
    reached = std::max(reached, to);
  }
  if (length > reached) free.emplace_back(reached, length);
  return free;
}

/// The clear place nearest the middle of a stretch in which a cleat still fits.
std::optional<double> clear_within(const std::pair<double, double>& stretch, const CrackedPlane& plane,
                                   const RepairFigures& figures) {
  const double middle = (stretch.first + stretch.second) / 2;
  const double room = (stretch.second - stretch.first - figures.cleat_along_crack) / 2;
  for (double off = 0; off <= room; off += step_mm) {
    for (const double place : {middle - off, middle + off}) {
      if (is_clear(plane, place, figures)) return place;
    }
  }
  return std::nullopt;
}

/// Where a cleat that was crowded out leaves a long stretch, one more.
void fill_long_stretches(std::vector<double>& places, const CrackedPlane& plane, const std::vector<Hold>& holds,
                         const RepairFigures& figures) {
  for (bool added = true; added;) {
    added = false;
    for (const auto& stretch : unheld(plane.length, holds, places, figures.cleat_along_crack)) {
      if (stretch.second - stretch.first <= figures.cleat_spacing_most) continue;
      const auto more = clear_within(stretch, plane, figures);
      if (!more) continue;
      places.insert(std::upper_bound(places.begin(), places.end(), *more), *more);
      added = true;
      break;
    }
  }
}

void add_cautions(CleatsResult& result, const CleatsRequest& request, const CrackedPlane& plane, Length as_built,
                  const RepairFigures& figures) {
  const double off_grain = std::abs(std::atan2(plane.uy, plane.ux)) * 180 / std::numbers::pi;
  const double from_grain = std::min(off_grain, 180 - off_grain);
  if (from_grain > figures.off_grain_most) {
    result.cautions.push_back("It runs " + plain_number(std::round(from_grain)) +
                              " degrees off the grain: a blow rather than a grain crack; fit all splinters dry first.");
  }
  if (!request.plate_thickness) {
    result.cautions.emplace_back("The plate was not measured beside the crack: " + plain_number(in_mm(as_built)) +
                                 " mm, as it is usually built, is taken.");
  }
  if (std::any_of(result.cleats.begin(), result.cleats.end(), [](const auto& one) { return !one.within_reach; })) {
    result.cautions.emplace_back(
        "Some are beyond the reach of an arm through the soundhole: magnets, or a line through a hole in the crack.");
  }
  if (result.called_for && in_mm(result.longest_without_hold) > figures.cleat_spacing_most) {
    result.cautions.push_back("A stretch of " + plain_number(std::round(in_mm(result.longest_without_hold))) +
                              " mm has no room for a cleat: a strip of linen there.");
  }
  result.cautions.emplace_back("Only after the crack itself is glued and level; feather all edges; bridge no brace.");
}

void add_cut_list(CleatsResult& result, const RepairFigures& figures) {
  const double pieces = static_cast<double>(result.cleats.size());
  result.strip_length = mm(pieces * (figures.cleat_across_crack + figures.cleat_saw_and_plane));
  result.strip_width = mm(figures.cleat_along_crack);
}

std::string words_of(const CleatsResult& result, const CleatsRequest& request, const RepairFigures& figures) {
  const std::string length = plain_number(std::round(in_mm(result.crack_length))) + " mm";
  if (!result.called_for) {
    return "No cleats: " + length + " is not over " + plain_number(figures.crack_needs_cleats) +
           " mm, and it was not glued before. The trade disagrees.";
  }
  if (in_mm(result.thickness) < figures.cleat_thickness_least) {
    return "The plate is too thin for wooden cleats: a strip of linen.";
  }
  if (result.cleats.empty()) return "No cleats: what is glued under the plate holds the whole crack.";
  std::string words = std::to_string(result.cleats.size());
  words += result.cleats.size() == 1 ? " cleat" : " cleats";
  return words + " of " + request.wood + ", " + plain_number(std::round(10 * in_mm(result.thickness)) / 10) +
         " mm thick, grain across the crack.";
}

}  // namespace

CleatsResult cleats(const CleatsRequest& request, const TopDesignTable& designs, const RepairFigures& figures) {
  require_valid(request);
  const TopDesign design = design_of(request.top, designs);
  const CrackedPlane plane = plane_of(request, design);
  const std::vector<Hold> holds = holds_of(plane);
  CleatsResult result;
  result.crack_length = mm(plane.length);
  result.called_for = request.glued_before || plane.length > figures.crack_needs_cleats;
  const Length as_built = request.plate == CrackedPlate::back ? mm(figures.back_thickness) : design.thickness;
  const double plate_mm = in_mm(request.plate_thickness.value_or(as_built));
  const double sd = request.plate_thickness_sd ? in_mm(*request.plate_thickness_sd) : figures.thickness_gauge_sd;
  result.thickness = mm(std::min(figures.cleat_thickness_share * (plate_mm - sd), figures.cleat_thickness_most));
  result.along_crack = mm(figures.cleat_along_crack);
  result.across_crack = mm(figures.cleat_across_crack);
  result.grain = radians(std::atan2(plane.uy, plane.ux) + std::numbers::pi / 2);
  for (const Hold& hold : holds) result.held_by.push_back(hold.name);
  const bool wooden = in_mm(result.thickness) >= figures.cleat_thickness_least;
  std::vector<double> places;
  if (result.called_for && wooden) {
    places = places_of(plane, holds, figures);
    fill_long_stretches(places, plane, holds, figures);
  }
  for (const double place : places) {
    const PlanePoint at = plane.at(place);
    const double reach = std::max(0.0, std::hypot(at.x - plane.hole.x, at.y - plane.hole.y) - plane.hole_radius);
    result.cleats.push_back({mm(place), mm(at.x), mm(at.y), mm(reach), reach <= figures.reach_most});
    result.as_damage.cleats.push_back({.along = mm(place), .length = mm(figures.cleat_along_crack)});
  }
  result.as_damage.from_x = request.from_x;
  result.as_damage.from_y = request.from_y;
  result.as_damage.to_x = request.to_x;
  result.as_damage.to_y = request.to_y;
  for (const auto& [from, to] : unheld(plane.length, holds, places, figures.cleat_along_crack)) {
    result.longest_without_hold = std::max(result.longest_without_hold, mm(to - from));
  }
  add_cut_list(result, figures);
  add_cautions(result, request, plane, as_built, figures);
  result.words = words_of(result, request, figures);
  return result;
}

}  // namespace tailblock

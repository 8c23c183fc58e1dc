#include "season/crack_that_is_there.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "body/layered_section.h"
#include "body/line_mesh.h"
#include "body/meshed_top.h"
#include "body/outline.h"
#include "body/point_grid.h"

namespace tailblock {
namespace {

using Stretch = std::pair<double, double>;

struct Line {
  PlanePoint from, to;
  [[nodiscard]] double length() const { return distance(from, to); }
};

Line line_of(const Crack& crack) {
  return {{in_mm(crack.from_x), in_mm(crack.from_y)}, {in_mm(crack.to_x), in_mm(crack.to_y)}};
}

/// Where a brace crosses the crack, with half its width either way; nothing when it does not, or runs along it.
std::optional<Stretch> crossed_by(const Line& crack, const Brace& brace) {
  const PlanePoint a{in_mm(brace.from_x), in_mm(brace.from_y)}, b{in_mm(brace.to_x), in_mm(brace.to_y)};
  const double cx = crack.to.x - crack.from.x, cy = crack.to.y - crack.from.y, bx = b.x - a.x, by = b.y - a.y;
  const double across = cx * by - cy * bx, sine = across / (crack.length() * std::hypot(bx, by));
  constexpr double alongside = 0.17;  // 10 degrees
  if (std::abs(sine) < alongside) return std::nullopt;
  const double ax = a.x - crack.from.x, ay = a.y - crack.from.y;
  const double on_crack = (ax * by - ay * bx) / across, on_brace = (ax * cy - ay * cx) / across;
  if (on_crack < 0 || on_crack > 1 || on_brace < 0 || on_brace > 1) return std::nullopt;
  const double half = in_mm(brace.width) / 2 / std::abs(sine), middle = on_crack * crack.length();
  return Stretch{middle - half, middle + half};
}

/// Whether a brace is loose where it crosses: a loose end that reaches so far. Looseness is measured from where the
/// brace ends on the top, not from where it is drawn to.
bool is_loose_there(const Line& crack, const Brace& brace, const TopDesign& design, const TopDamage& damage) {
  std::vector<PlanePoint> half;
  for (const OutlinePoint& p : design.outline) half.push_back({in_mm(p.x), in_mm(p.half_width)});
  const auto on_top =
      clipped({{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}}, outline(half));
  if (!on_top) return false;
  const PlanePoint a = on_top->from, b = on_top->to;
  const double cx = crack.to.x - crack.from.x, cy = crack.to.y - crack.from.y;
  const double on_brace =
      ((a.x - crack.from.x) * cy - (a.y - crack.from.y) * cx) / (cx * (b.y - a.y) - cy * (b.x - a.x));
  const double from_first = on_brace * distance(a, b);
  return std::ranges::any_of(damage.loose_braces, [&](const LooseBrace& loose) {
    if (loose.brace != brace.name) return false;
    const double from_end = loose.end == BraceEnd::first ? from_first : distance(a, b) - from_first;
    return in_mm(loose.from_end) <= from_end && from_end <= in_mm(loose.from_end) + in_mm(loose.length);
  });
}

/// The part of the crack over or under a cross piece.
std::optional<Stretch> within(const Line& crack, const CrossPiece& piece) {
  if (!(in_mm(piece.thickness) > 0)) return std::nullopt;
  const Footprint area = footprint(piece);
  double from = 0, to = 1;
  const auto clip = [&](double start, double change, double low, double high) {
    if (change == 0) {
      if (start < low || start > high) to = -1;
      return;
    }
    const double one = (low - start) / change, other = (high - start) / change;
    from = std::max(from, std::min(one, other));
    to = std::min(to, std::max(one, other));
  };
  clip(crack.from.x, crack.to.x - crack.from.x, area.front, area.back);
  clip(crack.from.y, crack.to.y - crack.from.y, -area.half_span, area.half_span);
  if (!(from < to)) return std::nullopt;
  return Stretch{from * crack.length(), to * crack.length()};
}

}  // namespace

std::vector<std::pair<double, double>> free_stretches(const Crack& crack, const TopDesign& design,
                                                      const TopDamage& damage) {
  const Line line = line_of(crack);
  std::vector<Stretch> held;
  for (const Cleat& cleat : crack.cleats) {
    held.emplace_back(in_mm(cleat.along) - in_mm(cleat.length) / 2, in_mm(cleat.along) + in_mm(cleat.length) / 2);
  }
  for (const Brace& brace : design.braces) {
    const auto crossed = crossed_by(line, brace);
    if (crossed && !is_loose_there(line, brace, design, damage)) held.push_back(*crossed);
  }
  for (const CrossPiece* piece : {&design.bridge.body, &design.bridge_plate}) {
    if (const auto part = within(line, *piece)) held.push_back(*part);
  }
  std::ranges::sort(held);
  std::vector<Stretch> free;
  double end = 0;
  for (const auto& [from, to] : held) {
    if (from > end) free.emplace_back(end, std::min(from, line.length()));
    end = std::max(end, to);
  }
  if (end < line.length()) free.emplace_back(end, line.length());
  return free;
}

double crack_compliance(const SheetWood& wood) {
  const double along = 1 / wood.along_mpa, across = 1 / wood.across_mpa, shear = 1 / wood.shear_mpa;
  const double coupled = -wood.nu / wood.along_mpa;
  return std::sqrt(along * across / 2) * std::sqrt(std::sqrt(across / along) + (2 * coupled + shear) / (2 * along));
}

double stress_intensity(double stress_mpa, double length_mm) {
  return stress_mpa * std::sqrt(std::numbers::pi * length_mm / 2 / 1000);
}

}  // namespace tailblock

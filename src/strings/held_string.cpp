#include "strings/held_string.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

double depth_below(const std::vector<double>& shape, const FretCell& fret, std::size_t lane) {
  return -fret.gap[lane] - fret.left * shape[fret.at] - fret.right * shape[fret.at + 1];
}

/// A fret in the way: the shape that a unit push of it gives the string, and how hard it pushes.
struct PushingFret {
  const FretCell* fret;
  std::vector<double> unit_shape;
  double unit_rise;
  double push = 0;
};

PushingFret pushing(const SpeakingString& string, const StringGrid& grid, const FretCell& fret) {
  PushingFret in_the_way{.fret = &fret, .unit_shape = {}, .unit_rise = 0};
  in_the_way.unit_shape = static_shape(string, grid, {{fret.at, fret.left}, {fret.at + 1, fret.right}}, 1);
  in_the_way.unit_rise = fret.left * in_the_way.unit_shape[fret.at] + fret.right * in_the_way.unit_shape[fret.at + 1];
  return in_the_way;
}

/// Lets one fret push as hard as the string now asks of it; says how far that moved the string there.
double settle(PushingFret& fret, std::vector<double>& shape, std::size_t lane) {
  const double more = std::max(-fret.push, depth_below(shape, *fret.fret, lane) / fret.unit_rise);
  fret.push += more;
  for (std::size_t j = 0; j < shape.size(); ++j) shape[j] += more * fret.unit_shape[j];
  return more * fret.unit_rise;
}

void bend_over(std::vector<PushingFret>& pushing, std::vector<double>& shape, std::size_t lane) {
  constexpr int most_rounds = 2000;
  constexpr double settled = 1e-13;  // m
  for (int round = 0; round < most_rounds; ++round) {
    double moved = 0;
    for (PushingFret& fret : pushing) moved = std::max(moved, std::abs(settle(fret, shape, lane)));
    if (moved < settled) return;
  }
}

}  // namespace

HeldString held_string(const SpeakingString& string, const StringGrid& grid, const HeldPluck& pluck,
                       const std::vector<FretCell>& frets, std::size_t lane) {
  constexpr double rounding = 1e-12;  // m
  const std::vector<PointShare> shares = pluck_shares(grid, pluck.place);
  const double force = pluck.height / height_per_force(string, pluck.place);
  HeldString held{.shape = static_shape(string, grid, shares, force), .before = {}};
  std::vector<PushingFret> in_the_way;
  for (bool found = true; found;) {
    found = false;
    for (const FretCell& fret : frets) {
      const bool known = std::ranges::any_of(in_the_way, [&](const PushingFret& p) { return p.fret == &fret; });
      if (known || depth_below(held.shape, fret, lane) <= rounding) continue;
      in_the_way.push_back(pushing(string, grid, fret));
      found = true;
    }
    if (found) bend_over(in_the_way, held.shape, lane);
  }
  held.before = before_release(string, grid, shares, force, held.shape);
  return held;
}

}  // namespace tailblock

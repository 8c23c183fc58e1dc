#include "season/moving_floor.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace tailblock {
namespace {

void require_rising(std::span<const FloorAtRelief> floors) {
  for (std::size_t i = 1; i < floors.size(); ++i) {
    if (floors[i - 1].relief < floors[i].relief) continue;
    throw Refused("limits.floors[" + std::to_string(i) + "].relief_mm: " + plain_number(in_mm(floors[i].relief)) +
                  " mm does not rise over the one before it, " + plain_number(in_mm(floors[i - 1].relief)) + " mm");
  }
}

FloorLine line_through(const FloorAtRelief& a, const FloorAtRelief& b, double relief_mm) {
  const double span = in_mm(b.relief - a.relief);
  const double bass_slope = in_mm(b.lowest_bass - a.lowest_bass) / span;
  const double treble_slope = in_mm(b.lowest_treble - a.lowest_treble) / span;
  const double beyond = relief_mm - in_mm(a.relief);
  return {.bass_mm = in_mm(a.lowest_bass) + bass_slope * beyond,
          .treble_mm = in_mm(a.lowest_treble) + treble_slope * beyond,
          .bass_slope = bass_slope,
          .treble_slope = treble_slope};
}

double weather_share(double response, double floor_slope, double relief_per_percent) {
  return std::abs(response - floor_slope * relief_per_percent) / response;
}

}  // namespace

FloorLine floor_at(std::span<const FloorAtRelief> floors, double relief_mm) {
  if (floors.size() < 2) throw Refused("limits.floors: 1 is outside 2..50, or none at all");
  require_rising(floors);
  std::size_t i = 1;
  while (i + 1 < floors.size() && in_mm(floors[i].relief) < relief_mm) ++i;
  return line_through(floors[i - 1], floors[i], relief_mm);
}

void let_floor_move(YearPaths& year, const ReliefBelief& relief, const ActionLimits& limits) {
  if (limits.floors.empty() || relief.readings == 0) return;
  const FloorLine usual = floor_at(limits.floors, relief.level_mm);
  for (YearPath& path : year.paths) {
    for (const double x : path.above_reference_percent) {
      const FloorLine floor = floor_at(limits.floors, relief.mean_mm(x));
      const double relief_sd = std::sqrt(std::max(0.0, relief.variance_mm2(x)));
      path.floor_bass.rise_mm.push_back(floor.bass_mm - in_mm(limits.lowest_bass));
      path.floor_bass.sd_mm.push_back(std::abs(floor.bass_slope) * relief_sd);
      path.floor_treble.rise_mm.push_back(floor.treble_mm - in_mm(limits.lowest_treble));
      path.floor_treble.sd_mm.push_back(std::abs(floor.treble_slope) * relief_sd);
    }
    const double r = path.response_mm_per_percent;
    path.floor_bass.weather_share = weather_share(r, usual.bass_slope, relief.mm_per_percent);
    path.floor_treble.weather_share = weather_share(r, usual.treble_slope, relief.mm_per_percent);
  }
}

}  // namespace tailblock

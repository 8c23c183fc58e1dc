#include "setup/raised_year.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "season/outside.h"

namespace tailblock {
namespace {

double mean_of(const std::vector<double>& daily, Stretch stretch) {
  double sum = 0;
  int days = 0;
  for_each_day(stretch, static_cast<int>(daily.size()), [&](std::size_t t) { sum += daily[t], ++days; });
  return days > 0 ? sum / days : 0;
}

}  // namespace

DaysOutside days_outside(const YearPaths& year, std::span<const Raised> parts, const ActionLimits& limits) {
  if (parts.size() == 1) {  // the same all year: move the limits instead of the strings
    const Length bass = mm(parts[0].bass_mm), treble = mm(parts[0].treble_mm);
    return days_outside(year, {.lowest_bass = limits.lowest_bass - bass,
                               .lowest_treble = limits.lowest_treble - treble,
                               .highest_bass = limits.highest_bass - bass,
                               .highest_treble = limits.highest_treble - treble});
  }
  YearPaths raised = year;
  for (YearPath& path : raised.paths) {
    for (const Raised& part : parts) {
      for_each_day(part.stretch, year.count, [&](std::size_t t) {
        path.bass_mm[t] += part.bass_mm;
        path.treble_mm[t] += part.treble_mm;
      });
    }
  }
  return days_outside(raised, limits);
}

WithSpread mean_action(const YearPaths& year, bool bass, Stretch stretch) {
  double weight = 0, sum = 0, squares = 0;
  for (const YearPath& path : year.paths) {
    const double mean = mean_of(bass ? path.bass_mm : path.treble_mm, stretch);
    const double level = bass ? path.level_sd_bass_mm : path.level_sd_treble_mm;
    weight += path.weight;
    sum += path.weight * mean;
    squares += path.weight * (mean * mean + level * level);
  }
  const double mean = sum / weight;
  return {mean, std::sqrt(std::max(0.0, squares / weight - mean * mean))};
}

WithSpread today_over_mean(const YearPaths& year, bool bass, Stretch stretch, const ActionToday& today) {
  const std::vector<double>& now = bass ? today.bass_mm : today.treble_mm;
  const std::vector<double>& open = bass ? today.bass_open_mm : today.treble_open_mm;
  assert(now.size() == year.paths.size() && open.size() == year.paths.size());
  double weight = 0, sum = 0, squares = 0;
  for (std::size_t i = 0; i < year.paths.size(); ++i) {
    const YearPath& path = year.paths[i];
    const double over = now[i] - mean_of(bass ? path.bass_mm : path.treble_mm, stretch);
    weight += path.weight;
    sum += path.weight * over;
    squares += path.weight * (over * over + open[i] * open[i]);
  }
  const double mean = sum / weight;
  return {mean, std::sqrt(std::max(0.0, squares / weight - mean * mean))};
}

}  // namespace tailblock

#include "setup/pooled_action.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tailblock {
namespace {

constexpr double grid_mm = 0.01;
/// Widths that a normal is shared between: none, then from 0.02 mm up by 6 % each. Sharing keeps the variance exact
/// and puts at most 0.01 into the kurtosis.
constexpr std::size_t width_count = 92;
constexpr double first_width_mm = 0.02;
constexpr double width_ratio = 1.06;
constexpr double reach = 4.5;  // normals are cut off this many widths out, where 7e-6 of them is left

double normal_under(double deviations) { return std::erfc(-deviations / std::numbers::sqrt2) / 2; }

double share_under(double height_mm, double mean_mm, double variance_mm2) {
  if (variance_mm2 == 0) return height_mm > mean_mm ? 1 : 0;
  return normal_under((height_mm - mean_mm) / std::sqrt(variance_mm2));
}

/// The variance of each width, in mm2.
constexpr std::array<double, width_count> variances = [] {
  std::array<double, width_count> variance{};
  double width_mm = first_width_mm;
  for (std::size_t c = 1; c < width_count; ++c, width_mm *= width_ratio) variance[c] = width_mm * width_mm;
  return variance;
}();

enum class Height { action, over_floor };

bool floor_moves(const YearPaths& year) { return !year.paths.empty() && !year.paths[0].floor_bass.rise_mm.empty(); }

/// Calls `visit(weight, mean, variance)` for every day of the stretch under every hypothesis.
template <class Visit>
void for_each_normal(const YearPaths& year, bool bass, Height height, Stretch stretch, Visit visit) {
  for (const YearPath& path : year.paths) {
    const std::vector<double>& mean = bass ? path.bass_mm : path.treble_mm;
    const std::vector<double>& weather = bass ? path.weather_sd_bass_mm : path.weather_sd_treble_mm;
    const std::vector<double>& loading = bass ? path.level_loading_bass : path.level_loading_treble;
    const double level_sd = bass ? path.level_sd_bass_mm : path.level_sd_treble_mm;
    if (height == Height::action) {
      for_each_day(stretch, year.count, [&](std::size_t t) {
        const double level = loading[t] * level_sd;
        visit(path.weight, mean[t], level * level + weather[t] * weather[t]);
      });
      continue;
    }
    const MovingFloor& floor = bass ? path.floor_bass : path.floor_treble;
    for_each_day(stretch, year.count, [&](std::size_t t) {
      const double level = loading[t] * level_sd;
      const double by_weather = floor.weather_share * weather[t];
      visit(path.weight, mean[t] - floor.rise_mm[t],
            level * level + floor.sd_mm[t] * floor.sd_mm[t] + by_weather * by_weather);
    });
  }
}

struct Moments {
  double days = 0, mean_mm = 0, variance_mm2 = 0;
  double lowest_mm = 1e300, highest_mm = -1e300, largest_variance_mm2 = 0;
};

Moments moments_of(const YearPaths& year, bool bass, Height height, Stretch stretch) {
  Moments sum;
  double squares = 0;
  for_each_normal(year, bass, height, stretch, [&](double weight, double mean, double variance) {
    sum.days += weight;
    sum.mean_mm += weight * mean;
    squares += weight * (mean * mean + variance);
    sum.lowest_mm = std::min(sum.lowest_mm, mean);
    sum.highest_mm = std::max(sum.highest_mm, mean);
    sum.largest_variance_mm2 = std::max(sum.largest_variance_mm2, variance);
  });
  if (sum.days > 0) sum.mean_mm /= sum.days;
  if (sum.days > 0) sum.variance_mm2 = std::max(0.0, squares / sum.days - sum.mean_mm * sum.mean_mm);
  return sum;
}

/// Adds to `under` what `heap`, days on the grid, comes to once every day is spread as a normal of this width.
void add_spread(const std::vector<double>& heap, std::size_t offset, double width_mm, std::vector<double>& under) {
  if (std::all_of(heap.begin(), heap.end(), [](double days) { return days == 0; })) return;
  const auto half = static_cast<std::size_t>(std::ceil(reach * width_mm / grid_mm));
  std::vector<double> kernel(2 * half + 1);
  for (std::size_t k = 0; k < kernel.size(); ++k) {
    const double away_mm = (static_cast<double>(k) - static_cast<double>(half)) * grid_mm;
    kernel[k] = width_mm > 0 ? normal_under(away_mm / width_mm) : 0.5;
  }
  std::vector<double> settled(under.size() + 1);  // days whose whole normal lies below a grid point
  for (std::size_t b = 0; b < heap.size(); ++b) {
    if (heap[b] == 0) continue;
    const std::size_t from = b + offset - half;
    for (std::size_t k = 0; k < kernel.size(); ++k) under[from + k] += heap[b] * kernel[k];
    settled[from + kernel.size()] += heap[b];
  }
  double running = 0;
  for (std::size_t j = 0; j < under.size(); ++j) under[j] += running += settled[j];
}

/// Every day of the stretch thrown into one heap.
PooledAction::Heap heap_of(const YearPaths& year, bool bass, Height height, Stretch stretch, const Moments& moments) {
  PooledAction::Heap heap;
  heap.days = moments.days;
  const auto widest = static_cast<std::size_t>(
      std::lower_bound(variances.begin(), variances.end() - 1, moments.largest_variance_mm2) - variances.begin());
  const auto bins = static_cast<std::size_t>((moments.highest_mm - moments.lowest_mm) / grid_mm) + 2;
  std::vector<std::vector<double>> heaps(std::min(widest + 2, width_count), std::vector<double>(bins));
  std::size_t c = 0;
  for_each_normal(year, bass, height, stretch, [&](double weight, double mean, double variance) {
    const double place = (mean - moments.lowest_mm) / grid_mm;
    const auto bin = static_cast<std::size_t>(place);
    const double next = place - static_cast<double>(bin);
    const double left = std::max(0.0, variance - next * (1 - next) * grid_mm * grid_mm);  // sharing two bins adds this
    while (c > 0 && left < variances[c]) --c;
    while (c + 2 < width_count && variances[c + 1] <= left) ++c;
    const double wider = std::min(1.0, (left - variances[c]) / (variances[c + 1] - variances[c]));
    heaps[c][bin] += weight * (1 - wider) * (1 - next);
    heaps[c][bin + 1] += weight * (1 - wider) * next;
    heaps[c + 1][bin] += weight * wider * (1 - next);
    heaps[c + 1][bin + 1] += weight * wider * next;
  });

  const double largest_mm = std::sqrt(variances[heaps.size() - 1]);
  const auto offset = static_cast<std::size_t>(std::ceil(reach * largest_mm / grid_mm)) + 2;
  heap.lowest_mm = moments.lowest_mm - static_cast<double>(offset) * grid_mm;
  heap.under.assign(bins + 2 * offset, 0.0);
  for (std::size_t w = 0; w < heaps.size(); ++w) add_spread(heaps[w], offset, std::sqrt(variances[w]), heap.under);
  return heap;
}

}  // namespace

PooledAction::PooledAction(const YearPaths& year, bool bass, Stretch stretch) {
  const Moments moments = moments_of(year, bass, Height::action, stretch);
  days_ = moments.days;
  mean_mm_ = moments.mean_mm;
  variance_mm2_ = moments.variance_mm2;
  if (!(days_ > 0)) return;
  action_ = heap_of(year, bass, Height::action, stretch, moments);
  if (!floor_moves(year)) return;
  over_floor_ = heap_of(year, bass, Height::over_floor, stretch, moments_of(year, bass, Height::over_floor, stretch));
}

double PooledAction::Heap::days_under(double height_mm) const {
  if (under.empty()) return 0;
  const double place = (height_mm - lowest_mm) / grid_mm;
  const auto last = static_cast<double>(under.size()) - 1;
  if (!(place > 1)) return 0;
  if (place >= last - 1) return days;
  const auto k = static_cast<std::size_t>(place);
  const double x = place - static_cast<double>(k);
  const double before = under[k - 1], left = under[k], right = under[k + 1], after = under[k + 2];
  const double cubic = left + x * ((right - before) / 2 + x * (before - 2.5 * left + 2 * right - after / 2 +
                                                               x * (1.5 * (left - right) + (after - before) / 2)));
  return std::clamp(cubic, left, right);
}

NormalDays::NormalDays(const YearPaths& year, bool bass, Stretch stretch) {
  const Moments action = moments_of(year, bass, Height::action, stretch);
  days_ = action.days;
  mean_mm_ = over_floor_mm_ = action.mean_mm;
  variance_mm2_ = over_floor_variance_mm2_ = action.variance_mm2;
  if (!floor_moves(year)) return;
  const Moments over_floor = moments_of(year, bass, Height::over_floor, stretch);
  over_floor_mm_ = over_floor.mean_mm;
  over_floor_variance_mm2_ = over_floor.variance_mm2;
}

double NormalDays::days_under(double floor_mm) const {
  return days_ * share_under(floor_mm, over_floor_mm_, over_floor_variance_mm2_);
}

double NormalDays::days_over(double height_mm) const {
  return days_ * (1 - share_under(height_mm, mean_mm_, variance_mm2_));
}

}  // namespace tailblock

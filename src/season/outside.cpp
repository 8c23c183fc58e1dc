#include "season/outside.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "season/normal.h"

namespace tailblock {
namespace {

constexpr int days_together = 5;  // the paths are smooth: one day stands for five
/// What stays the same all year (bass level, treble level, treble ratio) is sampled at 13 points: each coordinate takes
/// the middles of 13 equal shares once, in orders found by search so that neither the coordinates nor their squares go
/// together (correlations under 0.03).
constexpr std::size_t nodes = 13;
constexpr std::array<std::array<int, nodes>, 3> shares{{{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12},
                                                        {1, 6, 11, 8, 4, 7, 3, 12, 10, 5, 0, 2, 9},
                                                        {2, 10, 1, 4, 9, 12, 3, 7, 8, 6, 11, 0, 5}}};
constexpr double discrete_days = 0.3;  // a count is whole: its own spread when the weather leaves none

struct Day {
  std::size_t place;
  double days;
};

std::vector<Day> sampled_days(int count) {
  std::vector<Day> sampled;
  for (int first = 0; first < count; first += days_together) {
    const int size = std::min(days_together, count - first);
    sampled.push_back({.place = static_cast<std::size_t>(first + size / 2), .days = static_cast<double>(size)});
  }
  return sampled;
}

/// One side of one path on the sampled days, what is not known of it kept apart.
struct SampledSide {
  std::vector<double> mean, of_level, of_ratio, inverse_sd;  // millimetres a standard normal; the weather's 1/sd

  SampledSide(const YearPath& path, bool bass, const std::vector<Day>& sampled) {
    const std::vector<double>& weather = bass ? path.weather_sd_bass_mm : path.weather_sd_treble_mm;
    const std::vector<double>& loading = bass ? path.level_loading_bass : path.level_loading_treble;
    const double level_sd = bass ? path.level_sd_bass_mm : path.level_sd_treble_mm;
    const bool uncertain_ratio = !bass && !path.ratio_mm.empty();
    for (const Day& day : sampled) {
      const double ratio = uncertain_ratio ? path.ratio_mm[day.place] : 0;
      const double sd = weather[day.place];
      mean.push_back((bass ? path.bass_mm : path.treble_mm)[day.place]);
      of_level.push_back(loading[day.place] * level_sd);
      of_ratio.push_back(ratio);
      inverse_sd.push_back(1 / std::sqrt(std::max(1e-12, sd * sd - ratio * ratio)));
    }
  }

  [[nodiscard]] double height(std::size_t i, double level, double ratio) const {
    return mean[i] + of_level[i] * level + of_ratio[i] * ratio;
  }
};

/// Days outside as a sum over days of chances, and how they come: the weather keeps a string out for days on end.
struct Tally {
  double days = 0;
  double variance = 0;  // were every day on its own
  void add(double chance, double weight) {
    days += weight * chance;
    variance += weight * chance * (1 - chance);
  }
  /// Adds this count to a mixture as nothing at all, with the chance that no spell comes, and otherwise a normal that
  /// makes mean and variance right. Spells last weather_days / 2 on average and come independently.
  void put(NormalMixture& counts, double weight, double weather_days) const {
    const double none = std::exp(-2 * days / weather_days);
    const double some = 1 - none;
    if (none > 1e-3) counts.add(weight * none, 0, discrete_days);
    if (some < 1e-9) return;
    const double mean = days / some;
    const double spread = (variance * weather_days + days * days) / some - mean * mean;
    counts.add(weight * some, mean, std::sqrt(std::max(0.0, spread)) + discrete_days);
  }
};

Estimate counted_days(const NormalMixture& mixture, int count) {
  const auto quantile = [&](double p) {
    return std::clamp(mixture.quantile(p, 1e-3), 0.0, static_cast<double>(count));
  };
  return {.median = quantile(0.5), .low = quantile(0.05), .high = quantile(0.95)};
}

double below(double z) { return standard_normal(z).below; }

/// The nodes as standard normals.
std::array<std::array<double, 3>, nodes> node_table() {
  std::array<std::array<double, 3>, nodes> table{};
  for (std::size_t node = 0; node < nodes; ++node) {
    for (std::size_t k = 0; k < 3; ++k) {
      table[node][k] = standard_normal_quantile((shares[k][node] + 0.5) / static_cast<double>(nodes));
    }
  }
  return table;
}

}  // namespace

SideDays days_outside(const YearPaths& paths, bool bass, double raised_mm, double floor_mm, double ceiling_mm) {
  const std::vector<Day> sampled = sampled_days(paths.count);
  NormalMixture low, high;
  const auto table = node_table();
  for (const YearPath& path : paths.paths) {
    const SampledSide side(path, bass, sampled);
    for (const std::array<double, 3>& z : table) {
      Tally under, over;
      for (std::size_t i = 0; i < sampled.size(); ++i) {
        const double height = side.height(i, z[0], z[2]) + raised_mm;
        under.add(below((floor_mm - height) * side.inverse_sd[i]), sampled[i].days);
        over.add(below((height - ceiling_mm) * side.inverse_sd[i]), sampled[i].days);
      }
      under.put(low, path.weight, path.weather_days);
      over.put(high, path.weight, path.weather_days);
    }
  }
  return {.low = counted_days(low, paths.count), .high = counted_days(high, paths.count)};
}

DaysOutside days_outside(const YearPaths& paths, const ActionLimits& limits) {
  const std::vector<Day> sampled = sampled_days(paths.count);
  const double low_b = in_mm(limits.lowest_bass);
  const double low_t = in_mm(limits.lowest_treble);
  const double high_b = in_mm(limits.highest_bass);
  const double high_t = in_mm(limits.highest_treble);
  std::array<NormalMixture, 6> counts;  // in the order of DaysOutside
  const auto table = node_table();
  for (const YearPath& path : paths.paths) {
    const double along = path.level_correlation;
    const double across = std::sqrt(std::max(0.0, 1 - along * along));
    const SampledSide bass(path, true, sampled);
    const SampledSide treble(path, false, sampled);
    for (const std::array<double, 3>& z : table) {
      const double treble_level = along * z[0] + across * z[1];
      std::array<Tally, 6> tally;
      for (std::size_t i = 0; i < sampled.size(); ++i) {
        const double b = bass.height(i, z[0], 0);
        const double t = treble.height(i, treble_level, z[2]);
        const std::array<double, 4> chance{
            below((low_b - b) * bass.inverse_sd[i]), below((low_t - t) * treble.inverse_sd[i]),
            below((b - high_b) * bass.inverse_sd[i]), below((t - high_t) * treble.inverse_sd[i])};
        for (std::size_t k = 0; k < 4; ++k) tally[k].add(chance[k], sampled[i].days);
        // One weather moves both sides: the side that is nearer to its limit goes out first.
        tally[4].add(std::max(chance[0], chance[1]), sampled[i].days);
        tally[5].add(std::max(chance[2], chance[3]), sampled[i].days);
      }
      for (std::size_t k = 0; k < 6; ++k) tally[k].put(counts[k], path.weight, path.weather_days);
    }
  }
  const auto estimate = [&](std::size_t k) { return counted_days(counts[k], paths.count); };
  return {.low_bass = estimate(0),
          .low_treble = estimate(1),
          .high_bass = estimate(2),
          .high_treble = estimate(3),
          .low_either = estimate(4),
          .high_either = estimate(5)};
}

}  // namespace tailblock

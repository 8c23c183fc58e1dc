#include "season/outside.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "season/normal.h"

namespace tailblock {
namespace {

constexpr int days_together = 4;   // the paths are smooth: one day stands for four
constexpr int level_nodes = 9;     // equal shares of the persistent level
constexpr int lattice_nodes = 13;  // of both sides' levels: Fibonacci lattice, 8 against 13
constexpr int lattice_step = 8;
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

/// Days outside as a sum over days of chances, and the spread that the weather gives that sum.
struct Tally {
  double days = 0;
  double variance = 0;
  void add(double chance, double weight) {
    days += weight * chance;
    variance += weight * chance * (1 - chance);
  }
  [[nodiscard]] double sd(double weather_days) const { return std::sqrt(variance * weather_days) + discrete_days; }
};

Estimate counted_days(const NormalMixture& mixture, int count) {
  const auto quantile = [&](double p) {
    return std::clamp(mixture.quantile(p, 1e-3), 0.0, static_cast<double>(count));
  };
  return {.median = quantile(0.5), .low = quantile(0.05), .high = quantile(0.95)};
}

double below(double z) { return standard_normal(z).below; }

}  // namespace

SideDays days_outside(const YearPaths& paths, bool bass, double raised_mm, double floor_mm, double ceiling_mm) {
  const std::vector<Day> sampled = sampled_days(paths.count);
  NormalMixture low, high;
  for (const YearPath& path : paths.paths) {
    const std::vector<double>& mean = bass ? path.bass_mm : path.treble_mm;
    const std::vector<double>& weather = bass ? path.weather_sd_bass_mm : path.weather_sd_treble_mm;
    const std::vector<double>& loading = bass ? path.level_loading_bass : path.level_loading_treble;
    const double level_sd = bass ? path.level_sd_bass_mm : path.level_sd_treble_mm;
    for (int node = 0; node < level_nodes; ++node) {
      const double level = level_sd * standard_normal_quantile((node + 0.5) / level_nodes);
      Tally under, over;
      for (const Day& day : sampled) {
        const double height = mean[day.place] + loading[day.place] * level + raised_mm;
        const double scale = 1 / weather[day.place];
        under.add(below((floor_mm - height) * scale), day.days);
        over.add(below((height - ceiling_mm) * scale), day.days);
      }
      low.add(path.weight, under.days, under.sd(path.weather_days));
      high.add(path.weight, over.days, over.sd(path.weather_days));
    }
  }
  return {.low = counted_days(low, paths.count), .high = counted_days(high, paths.count)};
}

DaysOutside days_outside(const YearPaths& paths, const ActionLimits& limits) {
  const std::vector<Day> sampled = sampled_days(paths.count);
  std::array<NormalMixture, 6> counts;  // in the order of DaysOutside
  for (const YearPath& path : paths.paths) {
    const double along = path.level_correlation;
    const double across = std::sqrt(std::max(0.0, 1 - along * along));
    for (int node = 0; node < lattice_nodes; ++node) {
      const double z1 = standard_normal_quantile((node + 0.5) / lattice_nodes);
      const double z2 = standard_normal_quantile((node * lattice_step % lattice_nodes + 0.5) / lattice_nodes);
      const double bass_level = path.level_sd_bass_mm * z1;
      const double treble_level = path.level_sd_treble_mm * (along * z1 + across * z2);
      std::array<Tally, 6> tally;
      for (const Day& day : sampled) {
        const std::size_t i = day.place;
        const double bass = path.bass_mm[i] + path.level_loading_bass[i] * bass_level;
        const double treble = path.treble_mm[i] + path.level_loading_treble[i] * treble_level;
        const double bass_scale = 1 / path.weather_sd_bass_mm[i];
        const double treble_scale = 1 / path.weather_sd_treble_mm[i];
        const double low_bass = below((in_mm(limits.lowest_bass) - bass) * bass_scale);
        const double low_treble = below((in_mm(limits.lowest_treble) - treble) * treble_scale);
        const double high_bass = below((bass - in_mm(limits.highest_bass)) * bass_scale);
        const double high_treble = below((treble - in_mm(limits.highest_treble)) * treble_scale);
        const std::array<double, 6> chance{low_bass,
                                           low_treble,
                                           high_bass,
                                           high_treble,
                                           std::max(low_bass, low_treble),
                                           std::max(high_bass, high_treble)};
        for (std::size_t k = 0; k < 6; ++k) tally[k].add(chance[k], day.days);
      }
      for (std::size_t k = 0; k < 6; ++k) counts[k].add(path.weight, tally[k].days, tally[k].sd(path.weather_days));
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

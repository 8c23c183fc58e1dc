#include "season/outside.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "season/normal.h"

namespace tailblock {
namespace {

constexpr int days_together = 7;  // the paths are smooth: one day stands for a week
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

/// A height on the sampled days, what is not known of it kept apart: millimetres a standard normal; the weather's 1/sd.
struct SampledHeight {
  std::vector<double> mean, of_level, of_ratio, inverse_sd;

  [[nodiscard]] double chance_below(double limit, std::size_t i, double level, double ratio) const {
    return standard_normal((limit - mean[i] - of_level[i] * level - of_ratio[i] * ratio) * inverse_sd[i]).below;
  }
};

/// One side of one path: its action, which may be too high, and its action less the rise of the floor, which may be too
/// low.
struct SampledSide {
  SampledHeight action, over_floor;

  SampledSide(const YearPath& path, bool bass, const std::vector<Day>& sampled) {
    const std::vector<double>& weather = bass ? path.weather_sd_bass_mm : path.weather_sd_treble_mm;
    const std::vector<double>& loading = bass ? path.level_loading_bass : path.level_loading_treble;
    const MovingFloor& floor = bass ? path.floor_bass : path.floor_treble;
    const double level_sd = bass ? path.level_sd_bass_mm : path.level_sd_treble_mm;
    const bool uncertain_ratio = !bass && !path.ratio_mm.empty();
    for (const Day& day : sampled) {
      const double ratio = uncertain_ratio ? path.ratio_mm[day.place] : 0;
      const double sd = weather[day.place];
      action.mean.push_back((bass ? path.bass_mm : path.treble_mm)[day.place]);
      action.of_level.push_back(loading[day.place] * level_sd);
      action.of_ratio.push_back(ratio);
      action.inverse_sd.push_back(1 / std::sqrt(std::max(1e-12, sd * sd - ratio * ratio)));
    }
    over_floor = action;
    if (floor.rise_mm.empty()) return;
    for (std::size_t i = 0; i < sampled.size(); ++i) {
      over_floor.mean[i] -= floor.rise_mm[sampled[i].place];
      over_floor.of_level[i] = std::hypot(over_floor.of_level[i], floor.sd_mm[sampled[i].place]);
      over_floor.inverse_sd[i] /= std::max(1e-3, floor.weather_share);
    }
  }
};

/// Days outside as a sum over days of chances, and that sum's variance were every day on its own.
struct Tally {
  double days = 0;
  double variance = 0;
  void add(double chance, double weight) {
    days += weight * chance;
    variance += weight * chance * (1 - chance);
  }
};

/// The distribution of one count over all paths and nodes: normal parts, gathered by whole days of their mean so that
/// mean and variance of each gathering stay exact.
class Counts {
 public:
  explicit Counts(int count) : count_(count), bins_(static_cast<std::size_t>(count) + 2) {}

  /// Adds a tally as nothing at all, with the chance that no spell comes, and otherwise a normal that makes mean and
  /// variance right. The weather keeps a string out for days on end: spells last weather_days / 2 on average and come
  /// independently.
  void add(const Tally& tally, double weight, double weather_days) {
    const double none = std::exp(-2 * tally.days / weather_days);
    const double some = 1 - none;
    put(weight * none, 0, 0);
    if (some < 1e-9) return;
    const double mean = tally.days / some;
    put(weight * some, mean,
        std::max(0.0, (tally.variance * weather_days + tally.days * tally.days) / some - mean * mean));
  }

  [[nodiscard]] Estimate estimate() const {
    NormalMixture mixture;
    for (const Bin& bin : bins_) {
      if (!(bin.weight > 0)) continue;
      const double mean = bin.first / bin.weight;
      mixture.add(bin.weight, mean, std::sqrt(std::max(0.0, bin.second / bin.weight - mean * mean)) + discrete_days);
    }
    const auto quantile = [&](double p) {
      return std::clamp(mixture.quantile(p, 0.05), 0.0, static_cast<double>(count_));
    };
    return {.median = quantile(0.5), .low = quantile(0.05), .high = quantile(0.95)};
  }

 private:
  struct Bin {
    double weight = 0, first = 0, second = 0;  // moments
  };

  void put(double weight, double mean, double variance) {
    // Bin 0 holds what is nothing at all, bin 1 up to a day and so on.
    const auto day = static_cast<std::size_t>(std::min(std::ceil(mean), count_ + 1.0));
    bins_[day].weight += weight;
    bins_[day].first += weight * mean;
    bins_[day].second += weight * (variance + mean * mean);
  }

  int count_;
  std::vector<Bin> bins_;
};

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
  Counts low(paths.count);
  Counts high(paths.count);
  const auto table = node_table();
  for (const YearPath& path : paths.paths) {
    const SampledSide side(path, bass, sampled);
    for (const std::array<double, 3>& z : table) {
      Tally under, over;
      for (std::size_t i = 0; i < sampled.size(); ++i) {
        under.add(side.over_floor.chance_below(floor_mm - raised_mm, i, z[0], z[2]), sampled[i].days);
        over.add(1 - side.action.chance_below(ceiling_mm - raised_mm, i, z[0], z[2]), sampled[i].days);
      }
      low.add(under, path.weight, path.weather_days);
      high.add(over, path.weight, path.weather_days);
    }
  }
  return {.low = low.estimate(), .high = high.estimate()};
}

DaysOutside days_outside(const YearPaths& paths, const ActionLimits& limits) {
  const std::vector<Day> sampled = sampled_days(paths.count);
  const double low_b = in_mm(limits.lowest_bass);
  const double low_t = in_mm(limits.lowest_treble);
  const double high_b = in_mm(limits.highest_bass);
  const double high_t = in_mm(limits.highest_treble);
  std::array<Counts, 6> counts{Counts(paths.count), Counts(paths.count), Counts(paths.count),
                               Counts(paths.count), Counts(paths.count), Counts(paths.count)};
  const auto table = node_table();
  for (const YearPath& path : paths.paths) {
    const double along = path.level_correlation;
    const double across = std::sqrt(std::max(0.0, 1 - along * along));
    const SampledSide bass(path, true, sampled);
    const SampledSide treble(path, false, sampled);
    for (const std::array<double, 3>& z : table) {
      Tally low_bass, low_treble, high_bass, high_treble, low_either, high_either;
      for (std::size_t i = 0; i < sampled.size(); ++i) {
        const double level_treble = along * z[0] + across * z[1];
        const double lb = bass.over_floor.chance_below(low_b, i, z[0], 0);
        const double lt = treble.over_floor.chance_below(low_t, i, level_treble, z[2]);
        const double hb = 1 - bass.action.chance_below(high_b, i, z[0], 0);
        const double ht = 1 - treble.action.chance_below(high_t, i, level_treble, z[2]);
        const double days = sampled[i].days;
        low_bass.add(lb, days);
        low_treble.add(lt, days);
        high_bass.add(hb, days);
        high_treble.add(ht, days);
        // One weather moves both sides: the side that is nearer to its limit goes out first.
        low_either.add(std::max(lb, lt), days);
        high_either.add(std::max(hb, ht), days);
      }
      const std::array<Tally, 6> tallies{low_bass, low_treble, high_bass, high_treble, low_either, high_either};
      for (std::size_t k = 0; k < 6; ++k) counts[k].add(tallies[k], path.weight, path.weather_days);
    }
  }
  return {.low_bass = counts[0].estimate(),
          .low_treble = counts[1].estimate(),
          .high_bass = counts[2].estimate(),
          .high_treble = counts[3].estimate(),
          .low_either = counts[4].estimate(),
          .high_either = counts[5].estimate()};
}

}  // namespace tailblock

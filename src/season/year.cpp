#include "season/year.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "season/calibrate.h"
#include "season/moving_floor.h"
#include "season/normal.h"
#include "season/outside.h"
#include "season/words.h"

namespace tailblock {
namespace {

/// Newton's error is the square of its last step over a few standard deviations: this leaves it under 1e-4 mm.
constexpr double last_step_mm = 5e-4;

/// The mixture of one side on one day, as plain arrays.
struct DayMixture {
  std::vector<double> weight, mean, inverse_sd;

  explicit DayMixture(const YearPaths& paths)
      : weight(paths.paths.size()), mean(paths.paths.size()), inverse_sd(paths.paths.size()) {
    for (std::size_t k = 0; k < weight.size(); ++k) weight[k] = paths.paths[k].weight;
  }

  void take(const YearPaths& paths, bool bass, std::size_t day) {
    for (std::size_t k = 0; k < weight.size(); ++k) {
      const YearPath& path = paths.paths[k];
      const double level = bass ? path.level_loading_bass[day] * path.level_sd_bass_mm
                                : path.level_loading_treble[day] * path.level_sd_treble_mm;
      const double weather = bass ? path.weather_sd_bass_mm[day] : path.weather_sd_treble_mm[day];
      mean[k] = bass ? path.bass_mm[day] : path.treble_mm[day];
      inverse_sd[k] = 1 / std::sqrt(level * level + weather * weather);
    }
  }

  [[nodiscard]] double middle() const {
    double sum = 0;
    for (std::size_t k = 0; k < weight.size(); ++k) sum += weight[k] * mean[k];
    return sum;
  }
};

constexpr FivePoints shares{0.05, 0.25, 0.50, 0.75, 0.95};

/// Five quantiles a day. Each one's distance from the mean lies nearly on the line through its last two days, so one
/// Newton step from there is as a rule enough; the pass over the mixture is shared.
ActionBand band(const YearPaths& paths, bool bass) {
  ActionBand band;
  const std::array<std::vector<double>*, 5> out{&band.low_mm, &band.lower_mm, &band.median_mm, &band.upper_mm,
                                                &band.high_mm};
  DayMixture mixture(paths);
  FivePoints yesterday{};
  FivePoints day_before{};
  for (std::size_t day = 0; day < static_cast<std::size_t>(paths.count); ++day) {
    mixture.take(paths, bass, day);
    const double middle = mixture.middle();
    FivePoints point{};
    for (std::size_t q = 0; q < 5; ++q) point[q] = middle + 2 * yesterday[q] - day_before[q];
    const auto here = mixture_at(mixture.weight, mixture.mean, mixture.inverse_sd, point);
    for (std::size_t q = 0; q < 5; ++q) {
      const double step = (shares[q] - here[q].below) / here[q].density;
      const bool near = std::abs(step) < last_step_mm;
      const double x =
          near ? point[q] + step
               : mixture_quantile(mixture.weight, mixture.mean, mixture.inverse_sd, shares[q], point[q], last_step_mm);
      day_before[q] = day > 0 ? yesterday[q] : x - middle;
      yesterday[q] = x - middle;
      out[q]->push_back(x);
    }
  }
  return band;
}

/// Moisture of the wood at the lag that half of the weight lies below.
std::vector<double> moisture_at_median_lag(const Calibration& calibration, const HomeAir& home, Date first, int count) {
  std::vector<const Hypothesis*> by_lag;
  for (const Hypothesis& h : calibration.hypotheses) by_lag.push_back(&h);
  std::stable_sort(by_lag.begin(), by_lag.end(), [](const auto* a, const auto* b) { return a->lag < b->lag; });
  double below = 0;
  const Hypothesis* median = by_lag.back();
  for (const Hypothesis* h : by_lag) {
    below += h->weight;
    if (below < 0.5) continue;
    median = h;
    break;
  }
  return expected_moisture(*median, calibration.today, home, first, count);
}

std::string verdict_of(const YearResult& result) {
  const auto low = std::min_element(result.bass.median_mm.begin(), result.bass.median_mm.end());
  const auto high = std::max_element(result.bass.median_mm.begin(), result.bass.median_mm.end());
  const auto told = [&](std::vector<double>::const_iterator it) {
    const auto i = static_cast<std::size_t>(it - result.bass.median_mm.begin());
    return decimals(*it, 2) + " mm (" + decimals(result.bass.low_mm[i], 2) + " to " +
           decimals(result.bass.high_mm[i], 2) + ") about " +
           day_in_words(result.first + std::chrono::days(static_cast<int>(i)));
  };
  return "Bass at fret 12 lowest " + told(low) + ", highest " + told(high) + ".";
}

}  // namespace

double action_quantile_mm(const YearPaths& paths, bool bass, int day, double p) {
  require_within("day", day, {0, static_cast<double>(paths.count - 1), ""});
  require_within("p", p, {1e-6, 1 - 1e-6, ""});
  DayMixture mixture(paths);
  mixture.take(paths, bass, static_cast<std::size_t>(day));
  return mixture_quantile(mixture.weight, mixture.mean, mixture.inverse_sd, p, mixture.middle(), 1e-6);
}

YearResult year(const YearRequest& request, const SeasonTables& tables) {
  require_valid(request);
  const Calibration calibration = calibrate(request.instrument, tables);
  const HomeAir& home = request.instrument.home;
  YearPaths paths = year_paths(calibration, home, request.first, request.count);
  YearResult result;
  result.first = request.first;
  result.bass = band(paths, true);
  result.treble = band(paths, false);
  for (const HomeDay& day : home_days(home, request.first, request.count)) {
    result.relative_humidity.push_back(day.relative_humidity);
  }
  result.moisture_percent = moisture_at_median_lag(calibration, home, request.first, request.count);
  if (request.limits) {
    let_floor_move(paths, calibration.relief, *request.limits);
    result.days_outside.push_back(days_outside(paths, *request.limits));
  }
  const auto& median = result.bass.median_mm;
  const auto day_of = [&](auto extreme) {
    return iso_date(request.first + std::chrono::days(static_cast<int>(extreme - median.begin())));
  };
  result.lowest_day = day_of(std::min_element(median.begin(), median.end()));
  result.highest_day = day_of(std::max_element(median.begin(), median.end()));
  result.verdict = verdict_of(result);
  return result;
}

}  // namespace tailblock

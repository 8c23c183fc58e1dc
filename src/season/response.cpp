#include "season/response.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "season/calibrate.h"
#include "season/grid_quantiles.h"
#include "season/last_change.h"
#include "season/normal.h"
#include "season/words.h"

namespace tailblock {
namespace {

Estimate quantiles(const NormalMixture& mixture) {
  return {.median = mixture.quantile(0.5), .low = mixture.quantile(0.05), .high = mixture.quantile(0.95)};
}

/// Highest mean of 30 days less the lowest, in a year that repeats.
double swing_of_months(const std::vector<double>& year) {
  constexpr std::size_t month = 30;
  double sum = std::accumulate(year.begin(), year.begin() + month, 0.0);
  double low = sum;
  double high = sum;
  for (std::size_t i = 0; i < year.size(); ++i) {
    sum += year[(i + month) % year.size()] - year[i];
    low = std::min(low, sum);
    high = std::max(high, sum);
  }
  return std::max((high - low) / month, 1e-9);
}

Estimate swing(const Learnt& learnt) {
  std::vector<double> by_lag;
  for (const LagNode& node : learnt.lags) by_lag.push_back(swing_of_months(typical_moisture(learnt.typical, node.lag)));
  return response_times(learnt, by_lag);
}

/// Posterior over prior variance of the logarithm of the response.
double prior_weight(const Learnt& learnt) {
  double mean = 0;
  double square = 0;
  for (const Cell& cell : learnt.cells) {
    const double log_response = std::log(cell.response);
    mean += cell.total() * log_response;
    square += cell.total() * log_response * log_response;
  }
  const double prior_variance = learnt.prior.log_response_sd * learnt.prior.log_response_sd;
  return (square - mean * mean) / prior_variance;
}

void tell_today(ResponseResult& result, const Calibration& calibration, double cell_width) {
  NormalMixture bass, treble, treble_response, drift_a_year;
  result.moisture_today_percent = 0;
  for (const Hypothesis& h : calibration.hypotheses) {
    const double r = h.response_mm_per_percent;
    const double x = h.moisture_today_percent - calibration.reference_moisture_percent;
    const double w = h.moisture_departure_percent;
    const auto& c = h.covariance;
    result.moisture_today_percent += h.weight * (h.moisture_today_percent + w);
    bass.add(h.weight, h.level_bass_mm + r * (x + w),
             std::sqrt(std::max(0.0, c[0][0] + 2 * r * c[0][4] + r * r * c[4][4])));
    const double a = r * x;               // factor of the ratio
    const double b = r * h.treble_ratio;  // factor of the departure
    treble.add(h.weight, h.level_treble_mm + b * (x + w),
               std::sqrt(std::max(0.0, c[1][1] + a * a * c[2][2] + b * b * c[4][4] + 2 * a * c[1][2] + 2 * b * c[1][4] +
                                           2 * a * b * c[2][4])));
    treble_response.add(h.weight, b,
                        r * std::sqrt(c[2][2] + h.treble_ratio * h.treble_ratio * cell_width * cell_width / 12));
    drift_a_year.add(h.weight, h.drift_mm_per_year, std::sqrt(c[3][3]));
  }
  result.action12_bass_today_mm = quantiles(bass);
  result.action12_treble_today_mm = quantiles(treble);
  result.response_treble_mm_per_percent = quantiles(treble_response);
  result.drift_mm_per_year = quantiles(drift_a_year);
}

/// The middle of the strings moves by r (1 + rho)/2, of which the top does r g/2 (learning.h).
void tell_parts(ResponseResult& result, const Learnt& learnt) {
  NormalMixture top, neck;
  for (const Cell& cell : learnt.cells) {
    for (std::size_t model = 0; model < 2; ++model) {
      if (!(cell.weight[model] > 1e-6)) continue;
      const LatentNormal l = (model == 0 ? learnt.plain : *learnt.stepped).latents(cell.lag, cell.response);
      const double half = cell.response / 2;
      const double ratio = l.mean[treble_ratio], bridge = l.mean[bridge_ratio];
      const double ratio_variance = l.covariance[treble_ratio][treble_ratio];
      const double bridge_variance = l.covariance[bridge_ratio][bridge_ratio];
      const double both = l.covariance[treble_ratio][bridge_ratio];
      top.add(cell.weight[model], half * bridge, half * std::sqrt(bridge_variance));
      neck.add(cell.weight[model], half * (1 + ratio - bridge),
               half * std::sqrt(std::max(0.0, ratio_variance + bridge_variance - 2 * both)));
    }
  }
  result.top_mm_per_percent = quantiles(top);
  result.neck_and_back_mm_per_percent = quantiles(neck);
  const auto& seen = learnt.record.observations;
  result.bridge_readings = static_cast<int>(
      std::count_if(seen.begin(), seen.end(), [](const Observation& o) { return o.side == Side::bridge; }));
}

void say_what_was_assumed(ResponseResult& result, const Learnt& learnt) {
  result.first_guess = learnt.prior.guess;
  result.assumptions = learnt.prior.assumptions;
  for (const Side side : {Side::bass, Side::treble}) {
    const auto& seen = learnt.record.observations;
    if (std::any_of(seen.begin(), seen.end(), [&](const Observation& o) { return o.side == side; })) continue;
    result.assumptions.push_back(std::string("The ") + (side == Side::bass ? "bass" : "treble") +
                                 " side has not been read: its height is a guess.");
  }
  if (result.bridge_readings < 2) {
    result.assumptions.emplace_back(
        "What the top does and what neck and back do is guessed: the bridge's height over a straightedge on the rim, "
        "read "
        "in two seasons, tells them apart.");
  }
  for (const std::size_t day : learnt.supposed_steps) {
    if (day == 0 || day >= learnt.record.days.size()) continue;
    result.assumptions.push_back("Something moved between " + day_in_words(learnt.record.days[day - 1]) + " and " +
                                 day_in_words(learnt.record.days[day]) +
                                 " that nobody recorded; earlier readings no longer set the height.");
  }
}

}  // namespace

ResponseResult response(const ResponseRequest& request, const SeasonTables& tables) {
  const Learnt learnt = learn(request, tables);
  const Calibration calibration = calibration_of(learnt);
  ResponseResult result;
  result.response_bass_mm_per_percent = response_times(learnt, std::vector<double>(learnt.lags.size(), 1.0));
  result.lag_days = lag_estimate(learnt);
  result.summer_to_winter_drop_mm = swing(learnt);
  result.prior_weight = prior_weight(learnt);
  tell_today(result, calibration, std::log(learnt.responses[1] / learnt.responses[0]));
  tell_parts(result, learnt);
  const std::vector<bool> repeated = repeats(request.readings);
  const auto written_twice = std::count(repeated.begin(), repeated.end(), true);
  result.readings_used =
      static_cast<int>(request.readings.size() - learnt.flagged.size()) - static_cast<int>(written_twice);
  result.flagged = learnt.flagged;
  if (const auto change = last_change(learnt, *tables.prior, request.home.weather_memory)) {
    result.last_change.push_back(*change);
  }
  say_what_was_assumed(result, learnt);
  return result;
}

}  // namespace tailblock

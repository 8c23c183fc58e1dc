#include <algorithm>
#include <cmath>
#include <vector>

#include "season/last_change.h"
#include "season/normal.h"
#include "season/words.h"

namespace tailblock {
namespace {

constexpr double hidden_mm = 0.5;
constexpr double fine_gauge_mm = 0.03;
constexpr int days_to_another_visit = 30;
constexpr double good_enough = 0.95;
constexpr double worth_the_trouble = 0.03;

/// The most probable lag under a move, with the responses that go with it.
struct Slice {
  std::size_t lag;
  std::vector<double> responses, weights;
};

Slice likeliest_slice(const Learnt& learnt) {
  std::vector<double> of_lag(learnt.lags.size(), 0.0);
  for (const Cell& cell : learnt.cells) of_lag[cell.lag] += cell.weight[1];
  Slice slice{.lag = static_cast<std::size_t>(std::max_element(of_lag.begin(), of_lag.end()) - of_lag.begin()),
              .responses = {},
              .weights = {}};
  for (const Cell& cell : learnt.cells) {
    if (cell.lag != slice.lag) continue;
    slice.responses.push_back(cell.response);
    slice.weights.push_back(cell.weight[1] / of_lag[slice.lag]);
  }
  return slice;
}

/// Sums over the slice of the estimate of a move, by side, and of its covariance.
struct Moments {
  std::array<double, 2> mean{};
  std::array<double, 3> second{};  // bass bass, bass treble, treble treble
  std::array<double, 3> variance{};
};

/// What is left for the strings when the bridge may have moved too, by an unknown amount.
StepInformation without_bridge(StepInformation info, double bridge_step_sd) {
  constexpr auto bridge = static_cast<std::size_t>(Side::bridge);
  const double held = info.precision[bridge][bridge] + 1 / (bridge_step_sd * bridge_step_sd);
  for (std::size_t i = 0; i < 2; ++i) {
    const double leant = info.precision[i][bridge] / held;
    info.weighted_mm[i] -= leant * info.weighted_mm[bridge];
    for (std::size_t k = 0; k < 2; ++k) info.precision[i][k] -= leant * info.precision[bridge][k];
  }
  return info;
}

/// Standard deviation with which a move common to the sides could be estimated.
double step_sd(const Evidence& evidence, const Slice& slice, std::size_t interval, double bridge_step_sd) {
  Moments m;
  std::array<bool, 2> read{};
  for (std::size_t k = 0; k < slice.responses.size(); ++k) {
    const StepInformation info = without_bridge(evidence.step(0, slice.responses[k], interval), bridge_step_sd);
    read = {info.precision[0][0] > 1e-9, info.precision[1][1] > 1e-9};
    const double a = read[0] ? info.precision[0][0] : 1;
    const double d = read[1] ? info.precision[1][1] : 1;
    const double b = info.precision[0][1];
    const double det = a * d - b * b;
    const std::array<double, 3> v{d / det, -b / det, a / det};
    const std::array<double, 2> estimate{v[0] * info.weighted_mm[0] + v[1] * info.weighted_mm[1],
                                         v[1] * info.weighted_mm[0] + v[2] * info.weighted_mm[1]};
    for (std::size_t i = 0; i < 3; ++i) m.variance[i] += slice.weights[k] * v[i];
    for (std::size_t i = 0; i < 2; ++i) m.mean[i] += slice.weights[k] * estimate[i];
    m.second[0] += slice.weights[k] * estimate[0] * estimate[0];
    m.second[1] += slice.weights[k] * estimate[0] * estimate[1];
    m.second[2] += slice.weights[k] * estimate[1] * estimate[1];
  }
  const double bb = m.variance[0] + m.second[0] - m.mean[0] * m.mean[0];
  const double bt = m.variance[1] + m.second[1] - m.mean[0] * m.mean[1];
  const double tt = m.variance[2] + m.second[2] - m.mean[1] * m.mean[1];
  if (!read[1]) return std::sqrt(bb);
  if (!read[0]) return std::sqrt(tt);
  return std::sqrt((bb * tt - bt * bt) / (bb + tt - 2 * bt));
}

VisitRecord with_finer_gauge(VisitRecord record) {
  for (Observation& seen : record.observations) {
    if (seen.day + 1 == record.days.size()) seen.gauge_sd_mm = std::min(seen.gauge_sd_mm, fine_gauge_mm);
  }
  return record;
}

VisitRecord with_another_visit(VisitRecord record) {
  const std::size_t last_day = record.days.size() - 1;
  const Date next = record.days.back() + std::chrono::days(days_to_another_visit);
  const std::vector<Observation> readings = record.observations;
  record.days.push_back(next);
  record.today = std::max(record.today, next);
  for (const Observation& seen : readings) {
    if (seen.day != last_day || seen.set != readings.back().set) continue;
    record.observations.push_back(seen);
    record.observations.back().day = last_day + 1;
    record.observations.back().set = seen.set + 1;
    record.observations.back().date = next;
  }
  return record;
}

}  // namespace

double detection_power(double size_mm, double sd_mm, const SeasonPrior& p) {
  const double v = sd_mm * sd_mm;
  const double s2 = p.step_sd * p.step_sd * (1 + p.step_correlation) / 2;
  const double k = p.step_threshold / (1 - p.step_threshold) * (1 - p.step_probability) / p.step_probability;
  const double t2 = v * (v + s2) / s2 * (2 * std::log(k) + std::log1p(s2 / v));
  const double t = std::sqrt(std::max(0.0, t2));
  return standard_normal((size_mm - t) / sd_mm).below + standard_normal((-size_mm - t) / sd_mm).below;
}

std::string better_reading(const Learnt& learnt, const SeasonPrior& p, Days weather_memory) {
  const Slice slice = likeliest_slice(learnt);
  const std::size_t last = learnt.record.days.size() - 1;
  const LagNode& node = learnt.lags[slice.lag];
  const DayMoisture now = day_moisture(node, learnt.record.days, learnt.reference_percent, weather_memory);
  DayMoisture logged = now;
  logged.departure_percent[last] = logged.departure_percent[last + 1] = 0;
  DayMoisture later = now;  // wood on the further day as on the last: what counts is its own weather
  {
    std::vector<Date> visit_days = learnt.record.days;
    later.above_reference_percent.insert(later.above_reference_percent.end() - 1, now.above_reference_percent[last]);
    later.departure_percent.insert(later.departure_percent.end() - 1, now.departure_percent[last]);
    const std::size_t m = last + 3;
    later.unit_covariance.assign(m * m, 0.0);
    const auto old_place = [&](std::size_t i) { return i <= last ? i : last; };
    for (std::size_t i = 0; i < m; ++i) {
      for (std::size_t j = 0; j < m; ++j) {
        const bool across = (i <= last) != (j <= last);
        const double kept =
            across ? std::exp(-days_to_another_visit / (in_days(node.lag) + in_days(weather_memory))) : 1;
        later.unit_covariance[i * m + j] = kept * now.unit_covariance[old_place(i) * (last + 2) + old_place(j)];
      }
    }
  }
  const auto power = [&](const VisitRecord& record, const DayMoisture& moisture) {
    return detection_power(hidden_mm,
                           step_sd(Evidence(record, evidence_prior(learnt.prior, p), std::span(&moisture, 1)), slice,
                                   last - 1, p.bridge_step_sd),
                           p);
  };
  const double as_it_is = power(learnt.record, now);
  const auto in_100 = [](double chance) { return decimals(100 * chance, 0); };
  if (as_it_is > good_enough) {
    return "These readings would find a hidden 0.5 mm " + in_100(as_it_is) + " times in 100: no better one is needed.";
  }
  struct Choice {
    std::string what;
    double power;
  };
  const std::vector<Choice> choices{
      {"Reading again today with a gauge good to 0.03 mm", power(with_finer_gauge(learnt.record), now)},
      {"A hygrometer log of the weeks before a visit", power(learnt.record, logged)},
      {"Another visit in a month", power(with_another_visit(learnt.record), later)}};
  const auto best = std::max_element(choices.begin(), choices.end(),
                                     [](const Choice& a, const Choice& b) { return a.power < b.power; });
  if (best->power < as_it_is + worth_the_trouble) {
    return "A hidden 0.5 mm would be found " + in_100(as_it_is) +
           " times in 100; only more visits in other seasons will sharpen that.";
  }
  return best->what + " would help most: a hidden 0.5 mm would then be found " + in_100(best->power) +
         " times in 100, now " + in_100(as_it_is) + ".";
}

}  // namespace tailblock

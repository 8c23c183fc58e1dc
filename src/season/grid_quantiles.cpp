#include "season/grid_quantiles.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

constexpr int finer = 8;

/// Where a rising function of x reaches `p`, by halving.
template <class Share>
double solve(double low, double high, double p, Share share) {
  for (int step = 0; step < 50; ++step) {
    const double middle = (low + high) / 2;
    (share(middle) < p ? low : high) = middle;
  }
  return (low + high) / 2;
}

template <class Share>
Estimate estimate(double low, double high, Share share) {
  return {.median = std::exp(solve(low, high, 0.5, share)),
          .low = std::exp(solve(low, high, 0.05, share)),
          .high = std::exp(solve(low, high, 0.95, share))};
}

}  // namespace

LogDensity::LogDensity(double first_node, double spacing, std::span<const double> weight)
    : first_(first_node - spacing), spacing_(spacing / finer) {
  std::vector<double> logs;
  for (const double w : weight) logs.push_back(std::log(std::max(w, 1e-300)));
  // One more node at either end, on the parabola through the last three and never above the last.
  const auto beyond = [](double end, double next, double third) { return std::min(end, 3 * end - 3 * next + third); };
  const std::size_t n = logs.size();
  logs.push_back(beyond(logs[n - 1], logs[n - 2], logs[n - 3]));
  logs.insert(logs.begin(), beyond(logs[0], logs[1], logs[2]));
  const auto last = static_cast<int>(logs.size()) - 1;
  const auto node = [&](int i) { return logs[static_cast<std::size_t>(std::clamp(i, 0, last))]; };
  for (int i = 0; i <= last; ++i) {
    for (int part = 0; part < (i < last ? finer : 1); ++part) {
      // Cubic through the nodes at -1, 0, 1, 2 (Lagrange).
      const double t = static_cast<double>(part) / finer;
      const double log_density = -t * (t - 1) * (t - 2) / 6 * node(i - 1) + (t + 1) * (t - 1) * (t - 2) / 2 * node(i) -
                                 (t + 1) * t * (t - 2) / 2 * node(i + 1) + (t + 1) * t * (t - 1) / 6 * node(i + 2);
      density_.push_back(std::exp(log_density));
    }
  }
  below_.assign(density_.size(), 0);
  for (std::size_t i = 1; i < density_.size(); ++i) below_[i] = below_[i - 1] + (density_[i - 1] + density_[i]) / 2;
}

double LogDensity::share_below(double log_x) const {
  const double place = (log_x - first_) / spacing_;
  if (!(place > 0)) return 0;
  const auto i = static_cast<std::size_t>(place);
  if (i + 1 >= density_.size()) return 1;
  const double t = place - static_cast<double>(i);
  return (below_[i] + t * (density_[i] + t * (density_[i + 1] - density_[i]) / 2)) / below_.back();
}

Estimate response_times(const Learnt& learnt, const std::vector<double>& factor_by_lag) {
  const std::size_t count = learnt.responses.size();
  const double first = std::log(learnt.responses.front());
  const double spacing = std::log(learnt.responses[1]) - first;
  std::vector<double> weight(learnt.cells.size());
  std::vector<double> of_lag(learnt.lags.size(), 0.0);
  for (std::size_t i = 0; i < weight.size(); ++i) {
    weight[i] = learnt.cells[i].total();
    of_lag[learnt.cells[i].lag] += weight[i];
  }
  double low = INFINITY;
  double high = -INFINITY;
  for (const double factor : factor_by_lag) {
    low = std::min(low, first + std::log(factor));
    high = std::max(high, std::log(learnt.responses.back() * factor));
  }
  std::vector<LogDensity> densities;
  for (std::size_t lag = 0; lag < of_lag.size(); ++lag) {
    densities.emplace_back(first + std::log(factor_by_lag[lag]), spacing,
                           std::span(weight).subspan(lag * count, count));
  }
  return estimate(low, high, [&](double log_x) {
    double below = 0;
    for (std::size_t lag = 0; lag < of_lag.size(); ++lag) below += of_lag[lag] * densities[lag].share_below(log_x);
    return below;
  });
}

Estimate lag_estimate(const Learnt& learnt) {
  std::vector<double> weight(learnt.lags.size(), 0.0);
  for (const Cell& cell : learnt.cells) weight[cell.lag] += cell.total();
  const double first = std::log(in_days(learnt.lags.front().lag));
  const double last = std::log(in_days(learnt.lags.back().lag));
  const double spacing = (last - first) / static_cast<double>(weight.size() - 1);
  const LogDensity density(first, spacing, weight);
  return estimate(first - spacing, last + spacing, [&](double log_x) { return density.share_below(log_x); });
}

}  // namespace tailblock

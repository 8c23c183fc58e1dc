#include "season/grid_quantiles.h"

#include <cmath>

namespace tailblock {
namespace {

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

double share_below(double log_x, double first_node, double spacing, std::span<const double> weight) {
  double whole = 0;
  double below = 0;
  for (std::size_t i = 0; i + 1 < weight.size(); ++i) {
    const double area = (weight[i] + weight[i + 1]) / 2;
    const double t = (log_x - first_node) / spacing - static_cast<double>(i);
    whole += area;
    if (t >= 1) below += area;
    if (0 < t && t < 1) below += t * (weight[i] + t * (weight[i + 1] - weight[i]) / 2);
  }
  return whole > 0 ? below / whole : 0;
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
  return estimate(low, high, [&](double log_x) {
    double below = 0;
    for (std::size_t lag = 0; lag < of_lag.size(); ++lag) {
      below += of_lag[lag] * share_below(log_x - std::log(factor_by_lag[lag]), first, spacing,
                                         std::span(weight).subspan(lag * count, count));
    }
    return below;
  });
}

Estimate lag_estimate(const Learnt& learnt) {
  std::vector<double> weight(learnt.lags.size(), 0.0);
  for (const Cell& cell : learnt.cells) weight[cell.lag] += cell.total();
  const double first = std::log(in_days(learnt.lags.front().lag));
  const double last = std::log(in_days(learnt.lags.back().lag));
  const double spacing = (last - first) / static_cast<double>(weight.size() - 1);
  return estimate(first, last, [&](double log_x) { return share_below(log_x, first, spacing, weight); });
}

}  // namespace tailblock

#include "season/relief.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "season/suspicion.h"

namespace tailblock {
namespace {

struct Seen {
  std::size_t reading;
  double value_mm, gauge_sd_mm, above_reference_percent;
  std::size_t changes_before;
};

std::vector<Seen> relief_readings(const Learnt& learnt, const ResponseRequest& request) {
  const WoodPath& path = learnt.lags[learnt.lags.size() / 2].path;
  const std::vector<bool> repeated = repeats(request.readings);
  std::vector<Seen> seen;
  for (std::size_t i = 0; i < request.readings.size(); ++i) {
    const HeightReading& reading = request.readings[i];
    if (reading.kind != HeightKind::relief || repeated[i]) continue;
    const auto earlier = std::count_if(request.changes.begin(), request.changes.end(), [&](const SetupChange& change) {
      return change.moves_relief && std::tuple(change.date, change.order) < std::tuple(reading.date, reading.order);
    });
    const double moisture = path.moisture_percent[static_cast<std::size_t>(days_between(path.first, reading.date))];
    seen.push_back({.reading = i,
                    .value_mm = in_mm(reading.value),
                    .gauge_sd_mm = in_mm(reading.gauge_sd),
                    .above_reference_percent = moisture - learnt.reference_percent,
                    .changes_before = static_cast<std::size_t>(earlier)});
  }
  return seen;
}

Eigen::MatrixXd covariance_of(const std::vector<Seen>& seen, const SeasonPrior& p) {
  const auto n = static_cast<Eigen::Index>(seen.size());
  Eigen::MatrixXd c(n, n);
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < n; ++j) {
      const Seen& a = seen[static_cast<std::size_t>(i)];
      const Seen& b = seen[static_cast<std::size_t>(j)];
      const auto shared_changes = static_cast<double>(std::min(a.changes_before, b.changes_before));
      c(i, j) = p.relief_level_sd * p.relief_level_sd +
                p.relief_response_sd * p.relief_response_sd * a.above_reference_percent * b.above_reference_percent +
                shared_changes * p.relief_change_sd * p.relief_change_sd;
    }
    const double gauge = seen[static_cast<std::size_t>(i)].gauge_sd_mm;
    c(i, i) += gauge * gauge + p.set_sd * p.set_sd / 4;
  }
  return c;
}

/// Level after all `changes` and response, given what was seen.
ReliefBelief belief(const std::vector<Seen>& seen, std::size_t changes, const SeasonPrior& p) {
  const double level_variance = p.relief_level_sd * p.relief_level_sd;
  const double change_variance = p.relief_change_sd * p.relief_change_sd;
  Eigen::Matrix2d variance;
  variance << level_variance + static_cast<double>(changes) * change_variance, 0, 0,
      p.relief_response_sd * p.relief_response_sd;
  Eigen::Vector2d mean(p.relief_level, 0);
  if (!seen.empty()) {
    const auto n = static_cast<Eigen::Index>(seen.size());
    Eigen::MatrixXd with_readings(2, n);
    Eigen::VectorXd off(n);
    for (Eigen::Index i = 0; i < n; ++i) {
      const Seen& one = seen[static_cast<std::size_t>(i)];
      with_readings(0, i) = level_variance + static_cast<double>(one.changes_before) * change_variance;
      with_readings(1, i) = variance(1, 1) * one.above_reference_percent;
      off[i] = one.value_mm - p.relief_level;
    }
    const Eigen::MatrixXd gain = covariance_of(seen, p).llt().solve(with_readings.transpose()).transpose();
    mean += gain * off;
    variance -= gain * with_readings.transpose();
  }
  return {.readings = static_cast<int>(seen.size()),
          .level_mm = mean[0],
          .mm_per_percent = mean[1],
          .level_variance = variance(0, 0),
          .covariance = variance(0, 1),
          .response_variance = variance(1, 1)};
}

/// Places in `seen` of the reading least believed, when it passes the threshold.
std::optional<Misreading> worst(const std::vector<Seen>& seen, const SeasonPrior& p) {
  constexpr std::size_t least = 4;  // three stand against one
  if (seen.size() < least) return std::nullopt;
  const Eigen::MatrixXd precision = covariance_of(seen, p).llt().solve(
      Eigen::MatrixXd::Identity(static_cast<Eigen::Index>(seen.size()), static_cast<Eigen::Index>(seen.size())));
  Eigen::VectorXd off(static_cast<Eigen::Index>(seen.size()));
  for (std::size_t i = 0; i < seen.size(); ++i) {
    off[static_cast<Eigen::Index>(i)] = seen[i].value_mm - p.relief_level;
  }
  const Eigen::VectorXd pull = precision * off;
  double gravest = std::log(p.misreading_threshold / (1 - p.misreading_threshold));
  std::optional<Misreading> found;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const auto k = static_cast<Eigen::Index>(i);
    const double variance = 1 / precision(k, k);
    const double residual = pull[k] * variance;
    const double wide = variance + p.misreading_sd * p.misreading_sd;
    const double log_odds = std::log(p.misreading_probability / (1 - p.misreading_probability)) +
                            (std::log(variance / wide) + residual * residual * (1 / variance - 1 / wide)) / 2;
    if (!(log_odds > gravest)) continue;
    gravest = log_odds;
    found = Misreading{seen[i].reading, seen[i].value_mm - residual, std::sqrt(variance)};
  }
  return found;
}

}  // namespace

void learn_relief(Learnt& learnt, const ResponseRequest& request, const SeasonPrior& prior) {
  std::vector<Seen> seen = relief_readings(learnt, request);
  while (const auto misread = worst(seen, prior)) {
    learnt.flagged.push_back(flagged_reading(request.readings[misread->reading], *misread));
    std::erase_if(seen, [&](const Seen& one) { return one.reading == misread->reading; });
  }
  const auto changes = std::ranges::count_if(request.changes, &SetupChange::moves_relief);
  learnt.relief = belief(seen, static_cast<std::size_t>(changes), prior);
}

}  // namespace tailblock

#pragma once

#include <span>
#include <vector>

#include "season/learning.h"
#include "season/response.h"

namespace tailblock {

/// A density over the logarithm of something, known at equally spaced nodes and smooth between them: its logarithm is
/// drawn as a cubic through four nodes, on a grid eight times as fine; straight lines from there. At least three nodes;
/// one more is guessed at either end.
class LogDensity {
 public:
  LogDensity(double first_node, double spacing, std::span<const double> weight);
  /// Share that lies below `log_x`, 0..1.
  [[nodiscard]] double share_below(double log_x) const;

 private:
  double first_, spacing_;
  std::vector<double> density_, below_;
};

/// Median and 90 % interval of response x factor, where the factor depends on the lag: 1 for the response itself, the
/// swing of the moisture for the swing of the action.
[[nodiscard]] Estimate response_times(const Learnt& learnt, const std::vector<double>& factor_by_lag);

[[nodiscard]] Estimate lag_estimate(const Learnt& learnt);

}  // namespace tailblock

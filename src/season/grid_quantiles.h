#pragma once

#include <span>
#include <vector>

#include "season/learning.h"
#include "season/response.h"

namespace tailblock {

/// Share of a density given at equally spaced nodes (in the logarithm) that lies below `log_x`; straight lines between
/// the nodes. `weight` is the density at the nodes in any unit.
[[nodiscard]] double share_below(double log_x, double first_node, double spacing, std::span<const double> weight);

/// Median and 90 % interval of response x factor, where the factor depends on the lag: 1 for the response itself, the
/// swing of the moisture for the swing of the action.
[[nodiscard]] Estimate response_times(const Learnt& learnt, const std::vector<double>& factor_by_lag);

[[nodiscard]] Estimate lag_estimate(const Learnt& learnt);

}  // namespace tailblock

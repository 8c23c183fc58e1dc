#pragma once

#include <string>
#include <vector>

#include "bench/bench.h"

namespace tailblock::testing {

/// Every rule of the request that a plan breaks, a sentence each, found slowly and plainly from the request and the
/// result alone: minute by minute, with none of the planner's own code.
[[nodiscard]] std::vector<std::string> faults_of(const BenchRequest& request, const BenchResult& result);

/// The plan's cost added up again from its times.
[[nodiscard]] double cost_again(const BenchRequest& request, const BenchResult& result, const BenchWeights& weights);

}  // namespace tailblock::testing

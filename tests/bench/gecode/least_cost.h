#pragma once

#include "small_bench.h"

namespace tailblock::testing {

struct ProvenLeast {
  double cost;
  bool promises_kept;   ///< some plan keeps them all, and only such plans were weighed
  unsigned long nodes;  ///< of the search tree
};

/// The least cost of any plan of a small bench by the planner's own weights, proven by Gecode's branch and bound over a
/// model that shares nothing with the planner: every start on the grain, whether or not a gap is left before it. As
/// in the planner, a plan that moves a promise later counts only where every plan does.
/// @throws Refused for weights that are no whole parts of the grain, and where the proof would need a longer horizon.
[[nodiscard]] ProvenLeast least_cost(const SmallBench& bench, const BenchWeights& weights);

}  // namespace tailblock::testing

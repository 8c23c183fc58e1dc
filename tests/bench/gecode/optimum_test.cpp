#include <gtest/gtest.h>

#include <cstdio>

#include "bench/bench.h"
#include "least_cost.h"
#include "plan_checker.h"
#include "published.h"

namespace tailblock {
namespace {

/// On our own objective, lateness, shop time, changes of instrument and promises, over every start and not only those
/// that fill gaps.
TEST(BenchOptimum, is_reached_on_a_hundred_small_benches_by_a_general_solvers_proof) {
  const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));
  int below_rules = 0, equal = 0, promised = 0, moved = 0;
  unsigned long most_nodes = 0;
  for (unsigned seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const testing::SmallBench small = testing::small_bench(seed);
    const BenchRequest request = testing::request_of(small);  // with the plans of a first answer
    const BenchResult result = bench(request, weights);
    EXPECT_TRUE(testing::faults_of(request, result).empty());
    const testing::ProvenLeast least = testing::least_cost(small, weights);
    EXPECT_NEAR(result.cost.total, least.cost, 1e-6);
    equal += std::abs(result.cost.total - least.cost) < 1e-6 ? 1 : 0;
    below_rules += result.cost.total < result.cost.best_rule - 1e-6 ? 1 : 0;
    EXPECT_EQ(result.moved_promises.empty(), least.promises_kept);
    promised += result.cost.promises > 0 ? 1 : 0;
    moved += least.promises_kept ? 0 : 1;
    most_nodes = std::max(most_nodes, least.nodes);
  }
  std::printf(
      "  %d of 100 equal to the proven least; %d of them below the best rule, %d with a promise off its day, %d of "
      "them "
      "later; at most %lu nodes\n",
      equal, below_rules, promised, moved, most_nodes);
}

}  // namespace
}  // namespace tailblock

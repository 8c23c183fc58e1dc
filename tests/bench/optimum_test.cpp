#include <gtest/gtest.h>

#include <cstdio>
#include <random>

#include "bench/bench.h"
#include "every_plan.h"
#include "plan_checker.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::SmallBench;

/// Up to four instruments and ten operations in half days of work.
SmallBench small_bench(unsigned seed) {
  std::mt19937 dice(seed);
  const auto between = [&](int low, int high) {
    return low + static_cast<int>(dice() % static_cast<unsigned>(high - low + 1));
  };
  SmallBench bench{.hours = 8, .grain = 60, .instruments = {}};
  int left = 10;
  const int instruments = between(2, 4);
  for (int j = 0; j < instruments; ++j) {
    testing::SmallInstrument instrument{.arrives = 60 * between(0, 4),
                                        .due_days = between(0, 3),
                                        .weight = between(0, 2) == 0 ? 3.0 : 1.0,
                                        .promised_day = {},
                                        .operations = {}};
    const int operations = std::min(left - (instruments - 1 - j), between(1, 4));
    left -= operations;
    for (int k = 0; k < operations; ++k) {
      const int wait = between(0, 2) == 0 ? 60 * between(1, 24) : 0;
      instrument.operations.push_back(
          {.hands_on = 60 * between(1, 4), .wait = wait, .station = wait > 0 && between(0, 1) == 0});
    }
    bench.instruments.push_back(instrument);
  }
  return bench;
}

/// On our own objective, changes of instrument included, over every start and not only those that fill gaps.
TEST(BenchOptimum, no_plan_at_all_is_cheaper_on_a_hundred_small_benches) {
  const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));
  int cheaper_by_search = 0, equal = 0;
  for (unsigned seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const SmallBench small = small_bench(seed);
    const BenchRequest request = testing::request_of(small);  // with the plans of a first answer
    const BenchResult result = bench(request, weights);
    EXPECT_TRUE(testing::faults_of(request, result).empty());
    const bool beaten = testing::any_plan_below(result.cost.total - 1e-6, small, weights);
    EXPECT_FALSE(beaten) << "a plan cheaper than " << result.cost.total << " exists";
    EXPECT_TRUE(testing::any_plan_below(result.cost.total + 1e-6, small, weights))
        << "the search misses the planner's own";
    equal += beaten ? 0 : 1;
    cheaper_by_search += result.cost.total < result.cost.best_rule - 1e-6 ? 1 : 0;
  }
  std::printf("  %d of 100 proven least; %d of them below the best rule\n", equal, cheaper_by_search);
}

}  // namespace
}  // namespace tailblock

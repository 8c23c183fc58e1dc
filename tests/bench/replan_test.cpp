#include <gtest/gtest.h>

#include <cstdio>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "plan_checker.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::MadeUpBench;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

/// The bench with the plan's days promised and its order kept.
BenchRequest promised(BenchRequest request, const BenchResult& plan) {
  for (std::size_t j = 0; j < request.instruments.size(); ++j)
    request.instruments[j].promised = plan.instruments[j].ready.day;
  request.kept_order = plan.order;
  return request;
}

TEST(Replan, moves_no_promise_when_nothing_has_changed) {  // P05
  for (unsigned seed = 1; seed <= 20; ++seed) {
    BenchRequest request = MadeUpBench(seed).shop(12);
    request.plans = 500;
    request = promised(request, bench(request, weights));
    request.plans = 3000;
    request.seed = 9;
    EXPECT_TRUE(bench(request, weights).moved_promises.empty()) << "seed " << seed;
  }
}

TEST(Replan, leaves_work_begun_where_it_is) {  // P06
  BenchRequest request = MadeUpBench(3).shop(12);
  request.plans = 500;
  const BenchResult first = bench(request, weights);
  request = promised(request, first);
  const PlannedOperation started = first.next.at(0);
  for (BenchInstrument& instrument : request.instruments) {
    for (Operation& operation : instrument.operations) {
      if (instrument.name != started.instrument || operation.name != started.operation) continue;
      operation.state = WorkState::at_work;
      operation.person = started.person;
    }
  }
  const BenchResult again = bench(request, weights);
  EXPECT_TRUE(testing::faults_of(request, again).empty());
  EXPECT_EQ(again.next.at(0).instrument, started.instrument);
  EXPECT_EQ(again.next.at(0).operation, started.operation);
  EXPECT_EQ(again.next.at(0).starts, request.now);
}

/// P04: half a day is lost. Later moves of promises among twelve: keeping the old order, replanning as if nothing had
/// been promised, replanning with the promises weighed.
TEST(Replan, moves_fewer_promises_than_either_keeping_the_order_or_planning_afresh) {
  double kept = 0, afresh = 0, weighed = 0;
  const int benches = 60;
  BenchWeights free = weights;
  free.promise_later = free.promise_later_day = free.promise_earlier_day = 0;
  for (unsigned seed = 1; seed <= benches; ++seed) {
    BenchRequest request = MadeUpBench(500 + seed).shop(12);
    request.plans = 1500;
    request = promised(request, bench(request, weights));
    request.now.minute += 4 * 60;
    const auto moved = [](const BenchResult& result) { return static_cast<double>(result.moved_promises.size()); };
    BenchRequest unpromised = request;
    for (BenchInstrument& instrument : unpromised.instruments) instrument.promised.reset();
    unpromised.plans = 1500;
    const BenchResult fresh = bench(unpromised, free);
    for (std::size_t j = 0; j < request.instruments.size(); ++j)
      afresh += fresh.instruments[j].ready.day > *request.instruments[j].promised ? 1 : 0;
    const BenchResult stable = bench(request, weights);
    weighed += moved(stable);
    for (const std::string& sentence : stable.moved_promises) {
      EXPECT_NE(sentence.find(" moves from 2026-"), std::string::npos) << sentence;
      EXPECT_NE(sentence.find(": "), std::string::npos) << sentence;
    }
    request.plans = 1;
    kept += moved(bench(request, weights));
  }
  std::printf(
      "  half a day lost: %.1f of 12 promises move when the order is (nearly) kept, %.1f planned afresh, %.1f "
      "weighed\n",
      kept / benches, afresh / benches, weighed / benches);
  EXPECT_LT(weighed, 0.8 * afresh);
  EXPECT_LT(weighed, 0.8 * kept);
}

TEST(Replan, takes_up_a_new_instrument_and_forgets_a_collected_one) {
  BenchRequest request = MadeUpBench(5).shop(8);
  const BenchResult first = bench(request, weights);
  request = promised(request, first);
  request.instruments.erase(request.instruments.begin());
  BenchInstrument fresh = request.instruments[0];
  fresh.name = "brought in today";
  fresh.promised.reset();
  request.instruments.push_back(fresh);
  EXPECT_TRUE(testing::faults_of(request, bench(request, weights)).empty());
}

}  // namespace
}  // namespace tailblock

#include "bench/bench.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <numeric>

#include "bench/list_search.h"
#include "made_up_bench.h"
#include "plan_checker.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::MadeUpBench;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

/// Whether the result keeps every rule and costs what it says.
void expect_sound(const BenchRequest& request, const BenchResult& result) {
  for (const std::string& fault : testing::faults_of(request, result)) ADD_FAILURE() << fault;
  EXPECT_NEAR(result.cost.total, testing::cost_again(request, result, weights), 1e-6);
  EXPECT_LE(result.cost.total, result.cost.best_rule + 1e-9);
}

/// Two people, one of whom does the spraying, a rack that what was sprayed hangs on, a shelf for what was split, a
/// lunch break, a holiday, work split, begun, waiting, pinned and beside.
BenchRequest busy_shop(unsigned seed) {
  MadeUpBench made(seed);
  BenchRequest request = made.shop(made.between(3, 14));
  request.people.push_back(request.people[0]);
  request.people[1].name = "second";
  request.people[1].hours = {{.weekday = 2, .from_minute = 10 * 60, .to_minute = 13 * 60},
                             {.weekday = 2, .from_minute = 13 * 60 + 30, .to_minute = 19 * 60},
                             {.weekday = 4, .from_minute = 9 * 60, .to_minute = 17 * 60},
                             {.weekday = 6, .from_minute = 9 * 60, .to_minute = 14 * 60}};
  request.people[0].days_off = {{.day = request.now.day + std::chrono::days(1)}};
  request.people[1].leaves_to_others = {"spraying"};
  request.stations.push_back({.name = "rack", .count = 1});
  request.stations.push_back({.name = "shelf", .count = 1});
  request.clock_changes = {
      {.at = {.day = request.now.day + std::chrono::days(27), .minute = 180}, .forward_minutes = 60}};
  for (std::size_t i = 0; i < request.instruments.size(); ++i) {
    BenchInstrument& instrument = request.instruments[i];
    if (made.between(0, 2) == 0) instrument.arrives.day += std::chrono::days(made.between(5, 20));
    for (Operation& operation : instrument.operations) {
      if (!operation.air_work.empty()) {
        operation.skill = "spraying";
        operation.stations = {{.name = "spray place"},
                              {.name = "rack",
                               .hands_on = false,
                               .wait_minutes = std::min(operation.wait_minutes, 5 * made.between(1, 12))}};
      }
      if (operation.hands_on_minutes > 150) {
        operation.splittable = true;
        if (operation.stations.size() < 3)
          operation.stations.push_back({.name = "shelf", .hands_on = false, .wait_minutes = operation.wait_minutes});
      }
    }
    if (i == 0 && !instrument.operations[0].splittable && instrument.operations[0].stations.empty()) {
      instrument.operations[0].state = WorkState::at_work;
      instrument.operations[0].minutes_left = 45;
    }
    if (i == 1 && instrument.operations[0].wait_minutes > 0) {
      instrument.operations[0].state = WorkState::waiting;
      instrument.operations[0].wait_ends = Moment{.day = request.now.day + std::chrono::days(1), .minute = 600};
    }
    if (i == 2) {
      Operation blank = testing::work("make a part", 60);
      blank.beside = true;
      instrument.operations.push_back(blank);
    }
    if (i == 3)
      instrument.operations.back().pinned = Moment{.day = request.now.day + std::chrono::days(70), .minute = 600};
    const auto stands_free = [](const Operation& one) {
      return !one.splittable && !one.pinned && !one.beside && one.state == WorkState::to_do;
    };
    if (instrument.operations.size() > 3 && std::ranges::all_of(instrument.operations, stands_free)) {
      const int waits = instrument.operations[0].wait_minutes + instrument.operations[1].wait_minutes;
      instrument.operations[2].greatest_gaps = {
          {.from = instrument.operations[0].name, .minutes = waits + 5 * made.between(576, 1440)}};
    }
    if (made.between(0, 4) == 0)
      instrument.operations.back().not_before = Moment{.day = request.now.day + std::chrono::days(made.between(1, 40))};
    if (made.between(0, 3) == 0)
      instrument.operations.back().begin_by = Moment{.day = request.now.day + std::chrono::days(made.between(1, 9))};
    if (made.between(0, 1) == 0) instrument.promised = *instrument.due + std::chrono::days(made.between(-3, 3));
  }
  return request;
}

TEST(Bench, keeps_every_rule_of_the_shop) {
  int operations = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    BenchRequest request = busy_shop(seed);
    request.plans = 300;
    const BenchResult result = bench(request, weights);
    expect_sound(request, result);
    operations += static_cast<int>(result.operations.size());
  }
  std::printf("  %d operations planned, every rule kept\n", operations);
}

/// What a beginning costs is a bound for the search: it may not fall, even where being early costs more than the shop's
/// time.
TEST(Bench, never_costs_less_when_more_is_placed) {
  for (const double promise_earlier_day : {weights.promise_earlier_day, 3 * weights.shop_day}) {
    BenchWeights priced = weights;
    priced.promise_earlier_day = promise_earlier_day;
    for (unsigned seed = 1; seed <= 20; ++seed) {
      const BenchRequest request = busy_shop(seed);
      const BenchNetwork network = bench_network(request);
      SerialPlan plan(network, priced, request);
      double before = plan.cost_so_far();
      for (const std::int16_t job : list_by_rule(network, BenchRule::slack).jobs) {
        plan.place(job, 0);
        EXPECT_GE(plan.cost_so_far(), before - 1e-9)
            << "seed " << seed << ", " << promise_earlier_day << " a day early";
        before = plan.cost_so_far();
      }
      EXPECT_NEAR(before, plan.cost().total(), 1e-6);
    }
  }
}

TEST(Bench, gives_the_same_plan_twice_and_another_for_another_seed_or_count) {
  BenchRequest request = MadeUpBench(7).shop(12);
  request.plans = 500;
  const BenchResult once = bench(request, weights), again = bench(request, weights);
  ASSERT_EQ(once.order.size(), again.order.size());
  for (std::size_t i = 0; i < once.order.size(); ++i) EXPECT_EQ(once.order[i].instrument, again.order[i].instrument);
  EXPECT_EQ(once.cost.total, again.cost.total);
  request.plans = 5000;
  EXPECT_LE(bench(request, weights).cost.total, once.cost.total);
}

TEST(Bench, keeps_recoat_windows) {  // C07
  int gaps = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    BenchRequest request = MadeUpBench(seed).shop(12);
    request.plans = 200;
    const BenchResult result = bench(request, weights);
    std::map<std::string, const PlannedOperation*> last_coat;
    for (const PlannedOperation& operation : result.operations) {
      if (operation.operation.find(" coat") == std::string::npos) continue;
      const PlannedOperation*& before = last_coat[operation.instrument];
      if (before != nullptr) {
        const int gap = days_between(before->hands_on_ends.day, operation.starts.day) * 1440 + operation.starts.minute -
                        before->hands_on_ends.minute;
        EXPECT_GE(gap, 60);
        EXPECT_LE(gap, 240);
        ++gaps;
      }
      before = &operation;
    }
  }
  EXPECT_GT(gaps, 100);
  std::printf("  %d gaps between coats, all of 60 to 240 minutes\n", gaps);
}

/// P02: what planning is worth on the invented bench, by the weights of the study.
TEST(Bench, saves_a_quarter_against_first_come_first_served) {
  const BenchWeights of_study{.late_day = 10,
                              .shop_day = 1,
                              .change_of_instrument = 0.1,
                              .promise_later = 0,
                              .promise_later_day = 0,
                              .promise_earlier_day = 0,
                              .begun_overdue = 0,
                              .begun_overdue_day = 0};
  double first_come = 0, rule = 0, found = 0;
  const int benches = 100;
  for (unsigned seed = 1; seed <= benches; ++seed) {
    BenchRequest request = MadeUpBench(1000 + seed).shop(12);
    request.plans = 4000;
    const BenchResult result = bench(request, of_study);
    first_come += result.cost.first_come;
    rule += result.cost.best_rule;
    found += result.cost.total;
  }
  std::printf("  %d benches of 12: first come %.1f, best rule %.1f, search %.1f: %.1f %% lower than first come\n",
              benches, first_come / benches, rule / benches, found / benches, 100 * (1 - found / first_come));
  EXPECT_LE(found, 0.75 * first_come);
}

}  // namespace
}  // namespace tailblock

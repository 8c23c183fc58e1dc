#include "bench/promise.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <map>
#include <random>

#include "bench/list_search.h"
#include "bench/work_order.h"
#include "made_up_bench.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::MadeUpBench;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));
const DurationPrior prior = duration_prior(testing::repository_file("data/duration_prior.csv"));

TEST(Durations, begin_at_the_procedures_figure_and_end_at_the_shops_own) {
  std::vector<FinishedWork> log;
  EXPECT_EQ(times_estimate(learnt_duration(log, "glue", prior), 0), 1);
  for (int i = 0; i < 1000; ++i) log.push_back({.kind = "glue", .estimated_minutes = 40, .actual_minutes = 60});
  const LearntDuration learnt = learnt_duration(log, "glue", prior);
  EXPECT_NEAR(times_estimate(learnt, 0), 1.5, 0.01);
  EXPECT_LT(learnt.scale, 0.03);
  EXPECT_EQ(learnt_duration(log, "sand", prior).finished, 0);
}

TEST(Durations, shrink_by_the_worth_of_the_prior) {
  const std::vector<FinishedWork> log(5, {.kind = "glue", .estimated_minutes = 40, .actual_minutes = 80});
  EXPECT_NEAR(learnt_duration(log, "glue", prior).mean, std::log(2) / 2, 1e-12);
}

/// D01: log-normal, median 60, s 0.35.
TEST(Durations, have_the_quantiles_of_a_log_normal) {
  testing::Published table("durations.csv");
  for (const CsvRow& row : table.rows()) {
    const LearntDuration learnt{.finished = 0, .mean = 0, .scale = row.number("scatter", {0, 2, ""}), .freedom = 1e9};
    const double z = row.number("z", {-5, 5, ""});
    table.check(row,
                row.number("median", {0, 1e4, ""}) * times_estimate(learnt, student_from_normal(z, learnt.freedom)));
  }
}

TEST(Durations, spread_by_students_t) {
  testing::Published table("student_t.csv");
  for (const CsvRow& row : table.rows())
    table.check(row, student_from_normal(row.number("z", {-5, 5, ""}), row.number("freedom", {1, 1e9, ""})));
}

TEST(Promise, is_the_plans_own_day_when_nothing_scatters) {  // D02
  DurationPrior certain = prior;
  certain.scatter = 0;
  PromiseRequest request{.bench = MadeUpBench(4).shop(8), .finished = {}, .chance = 0.8, .simulations = 50};
  for (const PromisedDay& day : promise(request, weights, certain).instruments) {
    EXPECT_EQ(day.promise, day.planned) << day.name;
    EXPECT_EQ(day.chance, 1) << day.name;
  }
}

TEST(Promise, leaves_work_that_outgrows_the_shorter_day_to_the_other_person) {
  BenchRequest bench;
  bench.now = {Date(std::chrono::days(20'000)), 0};
  bench.people.resize(2);
  bench.people[0].name = "whole day";
  bench.people[1].name = "two hours";
  for (int weekday = 1; weekday <= 7; ++weekday) {
    bench.people[0].hours.push_back({.weekday = weekday, .from_minute = 9 * 60, .to_minute = 17 * 60});
    bench.people[1].hours.push_back({.weekday = weekday, .from_minute = 9 * 60, .to_minute = 11 * 60});
  }
  Operation fit;
  fit.name = "fit";
  fit.hands_on_minutes = 110;
  bench.instruments.resize(1);
  bench.instruments[0].name = "one";
  bench.instruments[0].arrives = bench.now;
  bench.instruments[0].operations = {fit};
  PromiseRequest request;
  request.bench = bench;
  const PromiseResult promised = promise(request, weights, prior);
  EXPECT_EQ(promised.instruments.at(0).promise, bench.now.day);
}

/// Drawn longer, the fitting would outgrow the gap over it and the three fit no day at all.
TEST(Promise, keeps_planned_minutes_where_a_gap_leaves_no_room_for_longer_ones) {
  PromiseRequest request{.bench = testing::empty_shop(), .finished = {}, .chance = 0.8, .simulations = 100};
  request.bench.instruments.resize(1);
  BenchInstrument& one = request.bench.instruments[0];
  one.name = "one";
  one.arrives = request.bench.now;
  one.operations = {testing::work("clean", 30), testing::work("fit", 60), testing::work("glue", 30)};
  one.operations[2].greatest_gaps = {{.from = "clean", .minutes = 65}};
  EXPECT_EQ(promise(request, weights, prior).instruments.at(0).promise, request.bench.now.day);
}

TEST(Promise, of_one_instrument_keeps_its_draws_whatever_else_is_there) {
  PromiseRequest request{.bench = MadeUpBench(4).shop(1), .finished = {}, .chance = 0.8, .simulations = 50};
  const PromisedDay alone = promise(request, weights, prior).instruments[0];
  BenchInstrument later = request.bench.instruments[0];
  later.name = "much later";
  later.arrives.day += std::chrono::days(200);
  request.bench.instruments.push_back(later);
  const PromisedDay beside = promise(request, weights, prior).instruments[0];
  EXPECT_EQ(alone.promise, beside.promise);
  EXPECT_EQ(alone.chance, beside.chance);
}

/// A shop with habits of its own, which the planner knows only from thirty finished operations of each name: how much
/// longer than its estimate each kind of work takes there, and how much it scatters.
class SimulatedShop {
 public:
  explicit SimulatedShop(unsigned seed) : dice_(seed), scatter_(0.2 + 0.3 * uniform()) {}

  std::vector<FinishedWork> log_of(const BenchRequest& request) {
    std::vector<FinishedWork> log;
    for (const BenchInstrument& instrument : request.instruments) {
      for (const Operation& operation : instrument.operations) {
        if (habit_.contains(operation.name)) continue;
        habit_[operation.name] = 0.15 * normal_(dice_);
        for (int i = 0; i < 30; ++i)
          log.push_back({.kind = operation.name,
                         .estimated_minutes = 60,
                         .actual_minutes = 60 * times(operation.name, normal_(dice_))});
      }
    }
    return log;
  }

  /// The same bench as it turns out once: a slow instrument is slow throughout.
  BenchRequest turned_out(BenchRequest bench) {
    for (BenchInstrument& instrument : bench.instruments) {
      const double shared = normal_(dice_);
      for (Operation& operation : instrument.operations) {
        const double z = 0.5 * shared + std::sqrt(0.75) * normal_(dice_);
        operation.hands_on_minutes =
            std::max(5, static_cast<int>(operation.hands_on_minutes * times(operation.name, z)));
        if (!operation.air_work.empty()) operation.hands_on_minutes = std::min(operation.hands_on_minutes, 60);
        if (operation.hands_on_minutes > 500) operation.splittable = true;
      }
    }
    return bench;
  }

 private:
  double uniform() { return std::uniform_real_distribution<double>()(dice_); }
  double times(const std::string& kind, double z) { return std::exp(habit_[kind] + scatter_ * z); }
  std::mt19937_64 dice_;
  std::normal_distribution<double> normal_;
  double scatter_;
  std::map<std::string, double> habit_;
};

/// Worked through in the plan's order, nothing else coming in.
TEST(Promise, of_eighty_percent_is_kept_on_75_to_88_percent_of_simulated_shops) {
  int kept = 0, sure_kept = 0, promises = 0;
  double stated = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    SimulatedShop shop(seed);
    PromiseRequest request{.bench = MadeUpBench(seed + 70).shop(12), .finished = {}, .chance = 0.8, .simulations = 200};
    request.finished = shop.log_of(request.bench);
    request.bench.plans = 500;
    const PromiseResult result = promise(request, weights, prior);
    for (int turn = 0; turn < 5; ++turn) {
      BenchRequest turned = shop.turned_out(request.bench);
      turned.kept_order = result.order;
      const BenchNetwork network = bench_network(turned);
      SerialPlan plan(network, weights, turned);
      place_list(plan, list_from_order(network, turned));
      for (std::size_t j = 0; j < turned.instruments.size(); ++j) {
        const Date ready = turned.now.day + std::chrono::days(day_of(plan.ready(static_cast<int>(j)) - 1));
        kept += ready <= result.instruments[j].promise ? 1 : 0;
        sure_kept += ready <= result.instruments[j].sure_of ? 1 : 0;
        stated += result.instruments[j].chance;
        ++promises;
      }
    }
  }
  const double share = static_cast<double>(kept) / promises;
  std::printf("  %d promises: %.1f %% kept (stated %.1f %%); the first day with at least 80 %%: %.1f %% kept\n",
              promises, 100 * share, 100 * stated / promises, 100.0 * sure_kept / promises);
  EXPECT_GE(share, 0.75);
  EXPECT_LE(share, 0.88);
}

}  // namespace
}  // namespace tailblock

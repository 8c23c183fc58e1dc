#include <gtest/gtest.h>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "plan_checker.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::faults_of;
using testing::work;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

Operation fretwork(const std::string& name, int minutes) {
  Operation frets = work(name, minutes);
  frets.skill = "fretwork";
  return frets;
}

/// Ann and Ben, in on the same hours, with a long job on the frets of each of two instruments.
BenchRequest two_to_refret() {
  BenchRequest request = testing::empty_shop();
  request.people[0].name = "Ann";
  request.people.push_back(request.people[0]);
  request.people[1].name = "Ben";
  for (const char* name : {"parlour", "jumbo"}) {
    BenchInstrument instrument;
    instrument.name = name;
    instrument.arrives = request.now;
    instrument.due = request.now.day;
    instrument.operations = {work("slacken", 10), fretwork("fit frets", 300), work("string up", 10)};
    request.instruments.push_back(instrument);
  }
  return request;
}

std::vector<std::string> hands_at(const BenchResult& plan, const std::string& operation) {
  std::vector<std::string> hands;
  for (const PlannedOperation& one : plan.operations) {
    if (one.operation == operation) hands.push_back(one.person);
  }
  return hands;
}

TEST(LeftToOthers, what_one_leaves_the_other_does_and_it_is_ready_so_much_later) {
  BenchRequest request = two_to_refret();
  const BenchResult shared = bench(request, weights);
  for (const PlannedInstrument& one : shared.instruments) EXPECT_EQ(one.ready.day, request.now.day) << one.name;

  request.people[1].leaves_to_others = {"fretwork"};
  const BenchResult left = bench(request, weights);
  EXPECT_EQ(faults_of(request, left), std::vector<std::string>{});
  EXPECT_EQ(hands_at(left, "fit frets"), (std::vector<std::string>{"Ann", "Ann"}));
  const auto next_day = std::ranges::count(left.instruments, request.now.day + std::chrono::days(1),
                                           [](const PlannedInstrument& one) { return one.ready.day; });
  EXPECT_EQ(next_day, 1) << "twice five hours are more than Ann's day";
}

TEST(LeftToOthers, leaving_what_no_operation_is_changes_nothing) {
  BenchRequest request = two_to_refret();
  const double before = bench(request, weights).cost.total;
  request.people[1].leaves_to_others = {"spraying", ""};
  EXPECT_EQ(bench(request, weights).cost.total, before);
}

TEST(LeftToOthers, hands_stay_at_what_they_are_at) {
  BenchRequest request = two_to_refret();
  request.people[1].leaves_to_others = {"fretwork"};
  BenchInstrument& parlour = request.instruments[0];
  parlour.operations.erase(parlour.operations.begin());
  parlour.operations[0].state = WorkState::at_work;
  parlour.operations[0].person = "Ben";
  parlour.operations[0].minutes_left = 200;
  const BenchResult plan = bench(request, weights);
  EXPECT_EQ(faults_of(request, plan), std::vector<std::string>{});
  for (const PlannedOperation& one : plan.operations) {
    if (one.operation != "fit frets") continue;
    EXPECT_EQ(one.person, one.instrument == "parlour" ? "Ben" : "Ann");
  }
}

TEST(LeftToOthers, a_wait_asks_for_nobodys_hands) {
  BenchRequest request = two_to_refret();
  request.instruments.resize(1);
  for (BenchPerson& person : request.people) person.leaves_to_others = {"fretwork"};
  request.instruments[0].operations.erase(request.instruments[0].operations.begin());
  Operation& waits = request.instruments[0].operations[0];
  waits.state = WorkState::waiting;
  waits.wait_ends = later(request.now, 90);
  const BenchResult plan = bench(request, weights);
  EXPECT_EQ(faults_of(request, plan), std::vector<std::string>{});
}

TEST(LeftToOthers, the_checker_sees_work_by_someone_who_leaves_it) {
  BenchRequest request = two_to_refret();
  const BenchResult plan = bench(request, weights);
  for (BenchPerson& person : request.people) person.leaves_to_others = {"fretwork"};
  const auto faults = faults_of(request, plan);
  EXPECT_EQ(std::ranges::count_if(faults,
                                  [](const std::string& fault) {
                                    return fault.find("by someone who leaves fretwork to others") != std::string::npos;
                                  }),
            2);
}

}  // namespace
}  // namespace tailblock

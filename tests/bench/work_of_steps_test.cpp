#include "bench/work_of_steps.h"

#include <gtest/gtest.h>

#include <map>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::repository_text;

const RepairTables& repairs() {
  static const RepairTables tables = repair_tables(repository_text);
  return tables;
}
ProcedureResult plan_of(const std::string& id) {
  ProcedureRequest request;
  request.procedure = id;
  return procedure(request, repairs());
}

std::vector<Operation> work_of(const ProcedureResult& plan) {
  std::vector<StepOfJob> steps;
  for (const StepShown& step : plan.steps) steps.push_back({.step = &step});
  return work_of_steps(steps, repairs().figures);
}

BenchRequest shop_with(const std::string& id) {
  BenchRequest request = testing::empty_shop();
  request.stations = usual_stations(repairs().materials.stations);
  BenchInstrument instrument;
  instrument.name = "guitar";
  instrument.arrives = request.now;
  instrument.operations = work_of(plan_of(id));
  request.instruments = {instrument};
  request.plans = 20;
  return request;
}

TEST(WorkOfSteps, every_repair_can_be_planned_with_its_gaps_kept) {
  const BenchWeights weights = bench_weights(repository_text("data/bench_weights.csv"));
  for (const RepairProcedure& one : repairs().procedures) {
    const ProcedureResult plan = plan_of(one.id);
    const BenchRequest request = shop_with(one.id);
    const BenchResult result = bench(request, weights);
    ASSERT_EQ(result.operations.size(), plan.steps.size()) << one.id;
    std::map<std::string, const PlannedOperation*> placed;
    for (const PlannedOperation& operation : result.operations) placed[operation.operation] = &operation;
    const auto& work = request.instruments.front().operations;
    for (std::size_t i = 0; i < plan.steps.size(); ++i) {
      if (!plan.steps[i].greatest_gap_minutes) continue;
      const auto& to = plan.steps[i].greatest_gap_to;
      for (std::size_t j = i + 1; j < plan.steps.size(); ++j) {
        if (std::find(to.begin(), to.end(), plan.steps[j].operation) == to.end()) continue;
        const int gap = minutes_between(placed[work[i].name]->hands_on_ends, placed[work[j].name]->starts);
        EXPECT_LE(gap, *plan.steps[i].greatest_gap_minutes) << one.id << ": " << work[i].name << " to " << work[j].name;
        break;
      }
    }
  }
}

TEST(WorkOfSteps, a_coat_that_goes_on_again_is_numbered_and_tied) {
  const auto work = work_of(plan_of("refinish"));
  const auto second = std::find_if(work.begin(), work.end(),
                                   [](const Operation& one) { return one.name == "Spray one lacquer coat (2)"; });
  ASSERT_NE(second, work.end());
  EXPECT_EQ(second->kind, "spray_lacquer_coat");
  EXPECT_EQ(second->greatest_gap_minutes, 10080);
  EXPECT_EQ(second->air_work, "spray_lacquer_coat") << "each finish has its own range of humidity";
  ASSERT_EQ(second->stations.size(), 2U);
  EXPECT_EQ(second->stations[0].name, "spray place");
  EXPECT_EQ(second->stations[0].wait_minutes, 0) << "the next may be sprayed when this one hangs on the rack";
  EXPECT_EQ(second->stations[1].name, "dust-free rack");
  EXPECT_EQ(second->stations[1].wait_minutes, 120);
  EXPECT_FALSE(second->stations[1].hands_on) << "nothing hangs on the rack while it is sprayed";
  EXPECT_EQ(second->skill, "spraying");
  EXPECT_EQ(work.front().skill, "") << "anyone takes an instrument in";
}

const Operation& of_kind(const std::vector<Operation>& work, const std::string& kind) {
  const auto found = std::ranges::find(work, kind, &Operation::kind);
  if (found == work.end()) throw Refused("no " + kind);
  return *found;
}

/// Clean the crack, then within a day glue it, with the dry closing test between: a night may lie in it.
TEST(WorkOfSteps, a_gap_over_several_steps_leads_from_the_one_to_the_other) {
  const auto work = work_of(plan_of("top_crack"));
  const Operation& glue = of_kind(work, "glue_crack_hide");
  ASSERT_EQ(glue.greatest_gaps.size(), 1U);
  EXPECT_EQ(glue.greatest_gaps[0].from, of_kind(work, "clean_crack").name);
  EXPECT_EQ(glue.greatest_gaps[0].minutes, 1440);
  EXPECT_FALSE(of_kind(work, "close_crack_dry").greatest_gap_minutes);
}

TEST(WorkOfSteps, a_gap_leads_to_no_step_of_another_job) {
  const ProcedureResult plan = plan_of("top_crack");
  std::vector<StepOfJob> steps;
  for (const StepShown& step : plan.steps)
    steps.push_back({.step = &step, .job = step.operation == "glue_crack_hide" ? 1 : 0});
  EXPECT_TRUE(of_kind(work_of_steps(steps, repairs().figures), "glue_crack_hide").greatest_gaps.empty());
}

TEST(WorkOfSteps, minutes_go_up_and_gaps_go_down_to_five) {
  StepShown first, second;
  first.operation = first.name = "wipe";
  first.hands_on_minutes.typical = 2;
  first.wait_minutes.typical = 12;
  first.greatest_gap_minutes = 29;
  first.greatest_gap_to = {"glue"};
  second.operation = second.name = "glue";
  second.hands_on_minutes.typical = 15;
  const auto work = work_of_steps({{.step = &first}, {.step = &second}}, repairs().figures);
  EXPECT_EQ(work[0].hands_on_minutes, 5) << "two minutes are not none";
  EXPECT_EQ(work[0].wait_minutes, 15);
  EXPECT_EQ(work[1].hands_on_minutes, 15);
  EXPECT_EQ(work[1].greatest_gap_minutes, 25);
}

TEST(WorkOfSteps, dust_is_given_the_tables_hour_before_clean_work) {
  StepShown sand, coat;
  sand.operation = sand.name = "sand";
  sand.air = WorkAir::dust;
  coat.operation = coat.name = "coat";
  coat.needs_dust_free = true;
  RepairFigures figures = repairs().figures;
  EXPECT_EQ(work_of_steps({{.step = &sand}, {.step = &coat}}, figures)[1].least_gap_minutes, 60);
  EXPECT_EQ(work_of_steps({{.step = &coat}, {.step = &coat}}, figures)[1].least_gap_minutes, 0);
  figures.dust_settles = 87;
  EXPECT_EQ(work_of_steps({{.step = &sand}, {.step = &coat}}, figures)[1].least_gap_minutes, 90);
}

TEST(WorkOfSteps, waits_and_fixtures_are_those_of_the_tables) {
  const auto work = work_of(plan_of("bridge_lifted"));
  const auto glue =
      std::find_if(work.begin(), work.end(), [](const Operation& one) { return one.kind == "glue_bridge"; });
  ASSERT_NE(glue, work.end());
  EXPECT_EQ(glue->wait_minutes, 1440);
  ASSERT_EQ(glue->stations.size(), 1U);
  EXPECT_EQ(glue->stations[0].name, "soundhole clamps");
  EXPECT_EQ(glue->stations[0].wait_minutes, 480);
  EXPECT_TRUE(glue->stations[0].hands_on) << "hands put them on";
}

}  // namespace
}  // namespace tailblock

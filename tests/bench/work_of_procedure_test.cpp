#include "bench/work_of_procedure.h"

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

BenchRequest shop_with(const std::string& id) {
  BenchRequest request = testing::empty_shop();
  request.stations = usual_stations(repairs().materials.stations);
  BenchInstrument instrument;
  instrument.name = "guitar";
  instrument.arrives = request.now;
  instrument.operations = work_of_procedure(plan_of(id));
  request.instruments = {instrument};
  request.plans = 20;
  return request;
}

TEST(WorkOfProcedure, every_repair_can_be_planned_with_its_gaps_kept) {
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

TEST(WorkOfProcedure, a_coat_that_goes_on_again_is_numbered_and_tied) {
  const auto work = work_of_procedure(plan_of("refinish"));
  const auto second = std::find_if(work.begin(), work.end(),
                                   [](const Operation& one) { return one.name == "Spray one lacquer coat (2)"; });
  ASSERT_NE(second, work.end());
  EXPECT_EQ(second->kind, "spray_lacquer_coat");
  EXPECT_EQ(second->greatest_gap_minutes, 10080);
  EXPECT_EQ(second->air_work, "finish");
  EXPECT_EQ(second->stations, (std::vector<std::string>{"spray place", "dust-free rack"}));
}

TEST(WorkOfProcedure, a_gap_over_several_steps_is_shared_out) {
  const auto work = work_of_procedure(plan_of("top_crack"));
  const auto at = [&](const char* kind) {
    return std::find_if(work.begin(), work.end(), [&](const Operation& one) { return one.kind == kind; });
  };
  // clean the crack, then within a day glue it, with the dry closing test between
  const int first = at("close_crack_dry")->greatest_gap_minutes.value();
  const int second = at("glue_crack_hide")->greatest_gap_minutes.value();
  EXPECT_LE(first + at("close_crack_dry")->hands_on_minutes + second, 1440);
  EXPECT_GT(first + at("close_crack_dry")->hands_on_minutes + second, 1440 - 15);
}

TEST(WorkOfProcedure, waits_and_fixtures_are_those_of_the_tables) {
  const auto work = work_of_procedure(plan_of("bridge_lifted"));
  const auto glue =
      std::find_if(work.begin(), work.end(), [](const Operation& one) { return one.kind == "glue_bridge"; });
  ASSERT_NE(glue, work.end());
  EXPECT_EQ(glue->wait_minutes, 1440);
  EXPECT_EQ(glue->station_wait_minutes, 480);
  EXPECT_EQ(glue->stations, (std::vector<std::string>{"soundhole clamps"}));
}

}  // namespace
}  // namespace tailblock

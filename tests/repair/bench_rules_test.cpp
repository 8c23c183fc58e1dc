#include <gtest/gtest.h>

#include <algorithm>

#include "body/plate_figures.h"
#include "body/top_designs.h"
#include "repair/cleats.h"
#include "repair/diagnose.h"
#include "repair/finish_day.h"
#include "repair/procedure.h"
#include "repair_bench.h"

/// What a repairer expects of the tables at the bench, one case of the trade each.
namespace tailblock {
namespace {

using testing::refusal_with;
using testing::repository_repairs;
using testing::repository_text;
using testing::with;

GivenReading reading(const std::string& measure, double value) {
  return {.measure = measure, .value = value, .sd = {}, .earlier = {}, .earlier_sd = {}};
}

CauseVerdict verdict(const DiagnoseRequest& request, const std::string& id) {
  for (const CauseShown& one : diagnose(request, repository_repairs()).causes) {
    if (one.cause == id) return one.verdict;
  }
  throw std::runtime_error(id + " is not among the causes");
}

DiagnoseRequest open_seam(double body_humidity) {
  DiagnoseRequest request;
  request.findings = {{.kind = "centre_seam_open", .where = "back", .readings = {}}};
  request.readings = {reading("body_humidity", body_humidity)};
  return request;
}

TEST(BenchRules, an_open_seam_in_dry_air_is_dryness_and_not_the_glue) {
  EXPECT_EQ(verdict(open_seam(34), "crack_seam_dry"), CauseVerdict::stands);
  EXPECT_EQ(verdict(open_seam(34), "crack_seam_glue"), CauseVerdict::ruled_out);
}

TEST(BenchRules, that_a_seam_is_open_says_nothing_of_why) {
  DiagnoseRequest request = open_seam(47);
  EXPECT_EQ(verdict(request, "crack_seam_dry"), CauseVerdict::open);
  EXPECT_EQ(verdict(request, "crack_seam_glue"), CauseVerdict::open);
  request.facts = {{"width_follows_air", false}};
  EXPECT_EQ(verdict(request, "crack_seam_glue"), CauseVerdict::stands);
  EXPECT_EQ(verdict(request, "crack_seam_dry"), CauseVerdict::ruled_out);
  request.facts = {{"width_follows_air", true}};
  EXPECT_EQ(verdict(request, "crack_seam_dry"), CauseVerdict::stands);
  EXPECT_EQ(verdict(request, "crack_seam_glue"), CauseVerdict::ruled_out);
}

TEST(BenchRules, a_brace_that_a_strip_goes_under_is_loose_where_the_air_is_right) {
  DiagnoseRequest request;
  request.findings = {{.kind = "brace_loose", .where = "top", .readings = {reading("brace_gap_depth", 8)}}};
  request.readings = {reading("body_humidity", 47)};
  EXPECT_EQ(verdict(request, "brace_open"), CauseVerdict::stands);
  EXPECT_EQ(verdict(request, "brace_dry"), CauseVerdict::open);
  request.readings = {reading("body_humidity", 34)};
  EXPECT_EQ(verdict(request, "brace_open"), CauseVerdict::ruled_out);
  EXPECT_EQ(verdict(request, "brace_dry"), CauseVerdict::stands);
}

std::vector<std::string> operations(const ProcedureRequest& request) {
  std::vector<std::string> ids;
  for (const StepShown& step : procedure(request, repository_repairs()).steps) ids.push_back(step.operation);
  return ids;
}

bool tests_the_finish(const std::string& repair, const std::vector<GivenAnswer>& answers) {
  ProcedureRequest request;
  request.procedure = repair;
  request.answers = answers;
  const auto ids = operations(request);
  return std::ranges::find(ids, "spot_test_naphtha") != ids.end();
}

TEST(BenchRules, solvents_come_near_a_finish_only_where_it_is_worked_on) {
  EXPECT_FALSE(tests_the_finish("top_crack", {}));
  EXPECT_TRUE(tests_the_finish("top_crack", {{"finish", "yes"}}));
  EXPECT_FALSE(tests_the_finish("bridge_plate", {}));
  EXPECT_TRUE(tests_the_finish("bridge_plate", {{"replace", "yes"}}));
}

TEST(BenchRules, a_coat_says_its_finish_and_cleats_say_what_they_are_counted_by) {
  ProcedureRequest request;
  request.procedure = "refinish";
  request.answers = {{"coat", "lacquer"}};
  bool sprayed = false;
  for (const StepShown& step : procedure(request, repository_repairs()).steps) {
    if (step.operation != "spray_lacquer_coat") continue;
    sprayed = true;
    ASSERT_EQ(step.finishes.size(), 1U);
    EXPECT_EQ(step.finishes[0],
              "Nitrocellulose lacquer: 1 to 168 h between coats, 4 coats a day at most, cured in 14 to 42 days");
  }
  EXPECT_TRUE(sprayed);
  request = {};
  request.procedure = "top_crack";
  for (const StepShown& step : procedure(request, repository_repairs()).steps) {
    const bool counted = step.operation == "glue_cleats" || step.operation == "make_cleats";
    EXPECT_EQ(step.amount == "cleats", counted) << step.operation;
  }
}

TEST(BenchRules, an_amount_that_nothing_grows_with_or_that_is_read_nowhere_is_refused) {
  EXPECT_EQ(refusal_with("data/amount_measures.csv", with("crack_mm,", "crack_km,")),
            "amount_measures.csv line 4, amount: no operation grows with it");
  EXPECT_NE(refusal_with("data/amount_measures.csv", with("crack_length", "relief")).find("is not in finding_measures.csv"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/amount_measures.csv", with("seam_mm,gap_length", "crack_mm,gap_length")).find("comes twice"),
            std::string::npos);
}

TEST(BenchRules, a_heel_brings_the_strings_down_only_where_it_opens_with_them) {
  DiagnoseRequest request;
  request.readings = {reading("heel_gap_depth", 3)};
  request.facts = {{"gap_opens_with_strings", false}};
  EXPECT_EQ(diagnose(request, repository_repairs()).slacken_now, "");
  request.facts = {{"gap_opens_with_strings", true}};
  EXPECT_EQ(diagnose(request, repository_repairs()).slacken_now,
            "The heel opens with the strings: slacken them now.");
}

TEST(BenchRules, damp_holds_gluing_as_dryness_does) {
  const RepairFigures& figures = repository_repairs().figures;
  EXPECT_EQ(humidity_gate(KnownValue{60, 2}, {}, figures).state, GateState::damp);
  EXPECT_TRUE(humidity_gate(KnownValue{60, 2}, {}, figures).holds);
  EXPECT_FALSE(humidity_gate(KnownValue{50, 2}, {}, figures).holds);
}

int open_causes(const DiagnoseRequest& request) {
  const auto causes = diagnose(request, repository_repairs()).causes;
  return static_cast<int>(std::ranges::count(causes, CauseVerdict::open, &CauseShown::verdict));
}

/// Asked again in full, through causes that look back at other causes.
TEST(BenchRules, what_an_answer_would_decide_is_what_it_decides) {
  int compared = 0;
  for (const Symptom& symptom : repository_repairs().diagnosis.symptoms) {
    DiagnoseRequest request;
    if (symptom.id != "any") request.symptoms = {symptom.id};
    request.readings = {reading("body_humidity", 34), reading("relief", 0.2)};
    const int open = open_causes(request);
    for (const NextMeasurement& next : diagnose(request, repository_repairs()).next) {
      if (!next.about.starts_with("fact:")) continue;
      DiagnoseRequest yes = request, no = request;
      yes.facts.push_back({next.about.substr(5), true});
      no.facts.push_back({next.about.substr(5), false});
      const auto [least, most] = std::minmax({open - open_causes(yes), open - open_causes(no)});
      EXPECT_EQ(next.decides_at_least, least) << symptom.id << ": " << next.about;
      EXPECT_EQ(next.decides_at_most, most) << symptom.id << ": " << next.about;
      ++compared;
    }
  }
  EXPECT_GT(compared, 20);
}

const TopDesignTable& designs() {
  static const TopDesignTable table = top_design_table({.outlines = repository_text("data/top_outlines.csv"),
                                                        .builds = repository_text("data/top_builds.csv"),
                                                        .braces = repository_text("data/top_braces.csv")},
                                                       plate_figures(repository_text("data/plate_figures.csv")));
  return table;
}

CleatsRequest crack_of_back(double from, double to) {
  CleatsRequest request;
  request.plate = CrackedPlate::back;
  request.from_x = mm(from);
  request.to_x = mm(to);
  request.from_y = request.to_y = mm(60);
  return request;
}

TEST(BenchRules, cleats_keep_off_the_rim) {
  const RepairFigures& figures = repository_repairs().figures;
  double rim = 300;
  try {
    for (; rim < 700; rim += 0.5) (void)cleats(crack_of_back(250, rim), designs(), figures);
  } catch (const Refused&) {
  }
  const CleatsResult result = cleats(crack_of_back(250, rim - 1.5), designs(), figures);
  ASSERT_FALSE(result.cleats.empty());
  const double far_edge = 250 + in_mm(result.cleats.back().along) + in_mm(result.along_crack) / 2;
  EXPECT_LE(far_edge, rim - figures.cleat_clear_of_rim);
}

TEST(BenchRules, cleats_beyond_the_arm_say_so) {
  RepairFigures short_arm = repository_repairs().figures;
  short_arm.reach_most = 60;
  const CleatsResult result = cleats(crack_of_back(150, 400), designs(), short_arm);
  EXPECT_FALSE(result.cleats.back().within_reach);
  EXPECT_TRUE(std::ranges::any_of(result.cautions, [](const std::string& caution) {
    return caution.starts_with("Some are beyond the reach of an arm");
  }));
}

TEST(BenchRules, air_nearer_its_limit_than_the_gauges_can_tell_takes_no_coat) {
  FinishDayRequest request;
  request.relative_humidity = humidity_percent(58);
  request.work_temperature = celsius(19.1);
  const FinishDayResult result =
      finish_day(request, repository_repairs().materials, repository_repairs().figures);
  EXPECT_EQ(result.verdict, CoatVerdict::too_near);
  EXPECT_TRUE(result.reasons.empty());
  EXPECT_EQ(result.coats_today, 0);
}

}  // namespace
}  // namespace tailblock

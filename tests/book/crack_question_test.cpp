#include "book/crack_question.h"

#include <gtest/gtest.h>

#include "body/prepared_top.h"
#include "book/top_question.h"
#include "top_story.h"

namespace tailblock {
namespace {

using testing::data_tables;
using testing::day;
using testing::expect_refused;
using testing::found;

const Date today = testing::top_today;

CrackAnswer asked(const InstrumentStory& story, const TopRecords& records = {}, std::optional<int> years = {}) {
  PlateMemo memo;
  return crack_answer(story, records, {}, data_tables(), memo, years, today);
}

TopDesign design() {
  std::vector<std::string> said;
  return *known_top(testing::top_story(), data_tables(), today, said)->drawn;
}

FindingStory lower_bout_crack() {
  return found("crack", DrawingView::front, {{mm(345), mm(70)}, {mm(435), mm(70)}});
}

CrackAnswer with(std::vector<FindingStory> stories) {
  return asked(testing::top_story(), testing::top_records_of(std::move(stories)));
}

TEST(CrackQuestion, gives_the_numbers_of_the_model) {
  const InstrumentStory story = testing::top_story();
  const CrackAnswer answer = asked(story, {}, 3);
  CrackRiskRequest plain;
  std::vector<std::string> said;
  plain.top = *known_top(story, data_tables(), today, said);
  plain.home = story.home.air;
  plain.first = today;
  plain.years_lived = 3;
  const CrackRiskResult model = crack_risk(plain, data_tables().cracks());
  EXPECT_TRUE(answer.known);
  EXPECT_DOUBLE_EQ(answer.result.here.chance, model.here.chance);
  EXPECT_EQ(answer.result.keep_relative_humidity, model.keep_relative_humidity);
  EXPECT_EQ(answer.result.verdict, model.verdict);
  EXPECT_EQ(answer.assumed, said);
}

TEST(CrackQuestion, an_unknown_bracing_calculates_nothing) {
  InstrumentStory story = testing::top_story();
  story.instrument.design.bracing = Bracing::other;
  const CrackAnswer answer = asked(story);
  EXPECT_FALSE(answer.known);
  EXPECT_TRUE(answer.result.curve.empty());
}

TEST(CrackQuestion, the_logged_air_of_the_home_is_the_air_it_lives_in) {
  PlateMemo memo;
  const InstrumentStory story = testing::top_story();
  std::vector<LoggedDay> log;
  for (int i = 0; i < 30; ++i) log.push_back({.date = today + std::chrono::days(i), .temperature_c = 20, .relative_humidity = 0.12});
  const CrackAnswer dry = crack_answer(story, {}, log, data_tables(), memo, 0, today);
  EXPECT_LT(dry.result.lowest_week_relative_humidity, 0.13);
  EXPECT_GT(dry.result.here.chance, asked(story, {}, 0).result.here.chance);
}

TEST(CrackQuestion, a_repair_takes_the_proof_of_the_years_before_it_away) {
  const FindingStory crack = lower_bout_crack();
  EXPECT_EQ(with({}).years_lived, 10);
  const TopRecords glued = [&] {
    TopRecords records = testing::top_records_of({crack});
    records.jobs = {testing::job_done(crack, "glue_crack_hide", day(2026, 2, 12))};
    return records;
  }();
  const CrackAnswer answer = asked(testing::top_story(), glued);
  EXPECT_EQ(answer.years_lived, 0);
  EXPECT_TRUE(answer.cracks.empty());
  EXPECT_GT(answer.result.here.chance, with({}).result.here.chance);
  EXPECT_EQ(answer.assumed.back(), "Mended on 2026-02-12: the years before prove nothing, and 0 since are taken");
  EXPECT_EQ(asked(testing::top_story(), glued, 25).years_lived, 25);
  TopRecords long_ago = glued;
  long_ago.survey->found_now[0].found_on = day(2022, 1, 1);
  long_ago.jobs = {testing::job_done(crack, "glue_crack_hide", day(2022, 6, 1))};
  EXPECT_EQ(asked(testing::top_story(), long_ago).years_lived, 3);
}

TEST(CrackQuestion, a_crack_that_was_found_is_judged_and_named) {
  const FindingStory crack = lower_bout_crack();
  const CrackAnswer answer = with({crack});
  ASSERT_EQ(answer.result.cracks.size(), 1U);
  ASSERT_EQ(answer.cracks.size(), 1U);
  EXPECT_EQ(answer.cracks[0].number, crack.number);
  EXPECT_NEAR(in_mm(answer.result.cracks[0].length), 90, 1e-6);
  EXPECT_GT(answer.result.cracks[0].chance_runs_on, 0);
  EXPECT_NE(answer.result.verdict.find("judged each by itself"), std::string::npos);
}

TEST(CrackQuestion, an_old_cleat_shortens_the_free_stretch) {
  const FindingStory patch = found("old_repair", DrawingView::top_inside,
                                   {{mm(385), mm(60)}, {mm(385), mm(80)}, {mm(399), mm(80)}, {mm(399), mm(60)}});
  const CrackAnswer bare = with({lower_bout_crack()}), held = with({lower_bout_crack(), patch});
  EXPECT_LT(in_mm(held.result.cracks[0].longest_free), in_mm(bare.result.cracks[0].longest_free) - 5);
  EXPECT_LT(held.result.cracks[0].chance_runs_on, bare.result.cracks[0].chance_runs_on);
}

// The crack is laid across the X leg, which holds it until it is found loose there.
TEST(CrackQuestion, a_loose_brace_holds_no_crack) {
  const std::string leg = "X leg to treble";
  const double all = testing::length_on_top(design(), leg);
  const DrawingPoint crossing = testing::on_brace(design(), leg, all - 90);
  const FindingStory crack = found("crack", DrawingView::front,
                                   {{crossing.x - mm(35), crossing.y}, {crossing.x + mm(35), crossing.y}});
  const auto loose = [&](double reach) {
    FindingStory story = found("brace_loose", DrawingView::top_inside,
                               {testing::on_brace(design(), leg, all - reach), testing::on_brace(design(), leg, all)});
    story.finding.part = leg;
    return story;
  };
  const auto longest = [&](std::vector<FindingStory> stories) {
    return in_mm(with(std::move(stories)).result.cracks.at(0).longest_free);
  };
  const double sound = longest({crack});
  EXPECT_NEAR(longest({crack, loose(110)}), 70, 1e-6);
  EXPECT_LT(sound, 36);
  EXPECT_NEAR(longest({crack, loose(70)}), sound, 1e-6) << "loose, but not so far";
}

TEST(CrackQuestion, a_crack_across_the_grain_is_not_judged_and_said) {
  const FindingStory across = found("crack_across_grain", DrawingView::front, {{mm(380), mm(30)}, {mm(390), mm(70)}});
  const CrackAnswer answer = with({across, lower_bout_crack()});
  ASSERT_EQ(answer.result.cracks.size(), 1U);
  EXPECT_NEAR(in_mm(answer.result.cracks[0].length), 90, 1e-6);
  EXPECT_EQ(answer.not_used, std::vector<std::string>{
                                 "Finding " + std::to_string(across.number) +
                                 ": not taken, it runs across the grain, which this model does not judge"});
}

TEST(CrackQuestion, refuses_a_wood_of_unknown_strength_in_one_line) {
  InstrumentStory story = testing::top_story();
  story.instrument.design.top_species = "koa";
  expect_refused([&] { (void)asked(story); },
                 "top.species: no strength across the grain is known for koa, so nothing can be said");
}

}  // namespace
}  // namespace tailblock

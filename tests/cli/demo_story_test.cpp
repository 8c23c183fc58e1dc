#include <gtest/gtest.h>

#include "demo_book.h"

namespace tailblock {
namespace {

using testing::demo_through_a_year;
using testing::DemoBook;

constexpr std::string_view story_instrument = "the sunburst mid-size with the drop-in saddle";
constexpr std::string_view damaged_instrument = "the black ladder-braced parlour";
constexpr std::string_view mistyped_instrument = "the cedar-topped fan-braced small body";
constexpr std::string_view steady_instrument = "the maple square-shouldered one";
constexpr std::string_view calibrated_instrument = "the teacher's mid-size with the ebony board";

const HiddenNature& truth_of(std::string_view instrument_key) {
  static const DemoTables tables = demo_tables(testing::kept_file);
  for (const HiddenNature& nature : tables.natures) {
    if (nature.instrument == instrument_key) return nature;
  }
  throw Refused("hidden.csv has no " + std::string(instrument_key));
}

double action12_bass(const VisitStory& told) {
  for (const Reading& reading : told.readings) {
    if (reading.measure == "action12_bass") return reading.value;
  }
  throw Refused("no action was read at that visit");
}

const ChangeShare& last_change(const ResponseResult& result) {
  if (result.last_change.empty()) throw Refused("there is no last change");
  return result.last_change.front();
}

TEST(DemoStory, opens_on_the_instrument_of_the_story) {
  for (const auto& demo : demo_through_a_year()) EXPECT_EQ(demo->stories.front().instrument.name, story_instrument);
}

TEST(DemoStory, in_winter_it_was_right_in_august_and_is_too_low_now) {
  for (const unsigned month : {0U, 1U, 2U, 11U}) {
    const DemoBook& demo = *demo_through_a_year()[month];
    const InstrumentStory& story = demo.story_of(story_instrument);
    SCOPED_TRACE(iso_date(demo.today));
    ASSERT_GE(story.visits.size(), 4U);
    const VisitStory& latest = story.visits.back();
    const VisitStory& before = story.visits[story.visits.size() - 2];
    EXPECT_EQ(std::chrono::year_month_day(before.visit.date).month(), std::chrono::August);
    EXPECT_NE(latest.visit.reason.find("right in August"), std::string::npos);
    EXPECT_GE(action12_bass(before), 2.2) << "right: three thirty-seconds or a hair under";
    EXPECT_LE(action12_bass(latest), 1.9) << "too low for a player of medium attack";
  }
}

TEST(DemoStory, the_season_explains_its_change_whatever_the_day) {
  for (const auto& demo : demo_through_a_year()) {
    SCOPED_TRACE(iso_date(demo->today));
    const ChangeShare change = last_change(demo->response_of(demo->story_of(story_instrument)));
    EXPECT_FALSE(change.something_else) << change.verdict;
    EXPECT_LE(change.unexplained_bass_mm.low, 0) << change.verdict;
    EXPECT_GE(change.unexplained_bass_mm.high, 0) << change.verdict;
    EXPECT_GE(std::abs(change.season_bass_mm.median), 0.1) << change.verdict;
  }
}

TEST(DemoStory, its_response_is_found_again) {
  for (const auto& demo : demo_through_a_year()) {
    SCOPED_TRACE(iso_date(demo->today));
    const Estimate found = demo->response_of(demo->story_of(story_instrument)).response_bass_mm_per_percent;
    EXPECT_LE(found.low, truth_of("sunburst").response_bass);
    EXPECT_GE(found.high, truth_of("sunburst").response_bass);
  }
}

TEST(DemoStory, the_season_does_not_explain_the_damaged_one) {
  for (const auto& demo : demo_through_a_year()) {
    SCOPED_TRACE(iso_date(demo->today));
    const ChangeShare change = last_change(demo->response_of(demo->story_of(damaged_instrument)));
    EXPECT_TRUE(change.something_else) << change.verdict;
    EXPECT_LT(change.unexplained_bass_mm.high, -0.4) << change.verdict;
  }
}

TEST(DemoStory, the_bridge_over_the_rim_tells_its_top_from_neck_and_back) {
  const double truth = truth_of("harbour_slope").bridge_over_rim_mm_per_percent / 2;
  int held = 0;
  for (const auto& demo : demo_through_a_year()) {
    SCOPED_TRACE(iso_date(demo->today));
    InstrumentStory story = demo->story_of("the slope-shouldered one from the harbour");
    const ResponseResult told = demo->response_of(story);
    for (VisitStory& visit : story.visits) {
      std::erase_if(visit.readings, [](const Reading& reading) { return reading.measure == "bridge_over_rim"; });
    }
    const ResponseResult untold = demo->response_of(story);
    EXPECT_GE(told.bridge_readings, 3);
    EXPECT_EQ(untold.bridge_readings, 0);
    const auto width = [](const Estimate& estimate) { return estimate.high - estimate.low; };
    EXPECT_LT(width(told.neck_and_back_mm_per_percent), width(untold.neck_and_back_mm_per_percent));
    EXPECT_LT(std::abs(told.top_mm_per_percent.median - truth), std::abs(untold.top_mm_per_percent.median - truth));
    if (told.top_mm_per_percent.low <= truth && truth <= told.top_mm_per_percent.high) ++held;
  }
  EXPECT_GE(held, 9);
}

TEST(DemoStory, nothing_is_wrong_with_the_others) {
  for (const auto& demo : demo_through_a_year()) {
    for (const InstrumentStory& story : demo->stories) {
      if (story.instrument.name == damaged_instrument || story.visits.size() < 2) continue;
      const ChangeShare change = last_change(demo->response_of(story));
      EXPECT_FALSE(change.something_else)
          << iso_date(demo->today) << ", " << story.instrument.name << ": " << change.verdict;
    }
  }
}

TEST(DemoStory, only_the_mistyped_reading_is_set_aside) {
  for (const auto& demo : demo_through_a_year()) {
    for (const InstrumentStory& story : demo->stories) {
      SCOPED_TRACE(iso_date(demo->today) + ", " + story.instrument.name);
      const auto flagged = demo->response_of(story).flagged;
      if (story.instrument.name != mistyped_instrument) {
        EXPECT_TRUE(flagged.empty());
        continue;
      }
      ASSERT_EQ(flagged.size(), 1U);
      EXPECT_NEAR(in_mm(flagged.front().value), in_mm(inches(5.0 / 32)), 1e-9);
    }
  }
}

TEST(DemoStory, a_steady_room_hardly_moves_its_instrument) {
  for (const auto& demo : demo_through_a_year()) {
    const ResponseResult steady = demo->response_of(demo->story_of(steady_instrument));
    const ResponseResult story = demo->response_of(demo->story_of(story_instrument));
    EXPECT_LT(steady.summer_to_winter_drop_mm.median, 0.12);
    EXPECT_GT(story.summer_to_winter_drop_mm.median, 0.35);
    EXPECT_LT(story.summer_to_winter_drop_mm.median, 0.7);
  }
}

TEST(DemoStory, many_visits_with_a_fine_gauge_and_a_log_leave_little_of_the_prior) {
  for (const auto& demo : demo_through_a_year()) {
    const ResponseResult known = demo->response_of(demo->story_of(calibrated_instrument));
    EXPECT_LT(known.prior_weight, 0.2) << iso_date(demo->today);
    EXPECT_LE(known.response_bass_mm_per_percent.low, truth_of("teacher").response_bass);
    EXPECT_GE(known.response_bass_mm_per_percent.high, truth_of("teacher").response_bass);
  }
}

}  // namespace
}  // namespace tailblock

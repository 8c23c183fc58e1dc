#include <gtest/gtest.h>

#include "book/questions.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;

Reading read(const std::string& measure, double value, ReadingState state = ReadingState::as_found) {
  static RecordId id = 0;
  return {.id = ++id, .measure = measure, .value = value, .gauge = "ruler_64ths", .gauge_sd = 0.12, .state = state};
}

InstrumentStory story_of(std::vector<VisitStory> visits) {
  InstrumentStory story;
  story.instrument.design.body_size = BodySize::small;
  story.home.air.kind = HomeKind::outdoor_months;
  story.visits = std::move(visits);
  return story;
}

VisitStory visit_on(Date date) {
  VisitStory story;
  story.visit.date = date;
  return story;
}

TEST(ResponseRequest, as_found_comes_before_the_work_and_as_left_after_it) {
  VisitStory visit = visit_on(day(2026, 2, 14));
  visit.readings = {read("action12_bass", 2.4, ReadingState::as_left), read("action12_treble", 1.5),
                    read("relief", 0.2)};
  visit.interventions = {{.kind = "saddle_lowered", .action12_bass_change = mm(-0.3), .change_sd = mm(0.07)}};
  const ResponseRequest request = response_request(story_of({visit}), {}, day(2026, 3, 1));
  ASSERT_EQ(request.readings.size(), 3U);
  EXPECT_EQ(request.readings[0].kind, HeightKind::action12_bass);
  EXPECT_EQ(request.readings[0].order, 2);
  EXPECT_EQ(request.readings[0].value, mm(2.4));
  EXPECT_EQ(request.readings[0].gauge_sd, mm(0.12));
  EXPECT_EQ(request.readings[0].date, day(2026, 2, 14));
  EXPECT_EQ(request.readings[1].kind, HeightKind::action12_treble);
  EXPECT_EQ(request.readings[1].order, 0);
  EXPECT_EQ(request.readings[2].kind, HeightKind::relief);
  ASSERT_EQ(request.changes.size(), 1U);
  EXPECT_EQ(request.changes[0].order, 1);
  EXPECT_EQ(request.changes[0].what, "saddle lowered");
  EXPECT_EQ(request.changes[0].action12_bass_change, mm(-0.3));
  EXPECT_FALSE(request.changes[0].action12_treble_change.has_value());
  EXPECT_EQ(request.changes[0].change_sd, mm(0.07));
}

TEST(ResponseRequest, two_visits_on_one_day_keep_their_order) {
  VisitStory morning = visit_on(day(2026, 2, 14)), evening = morning;
  morning.readings = {read("action12_bass", 2.4, ReadingState::as_left)};
  evening.readings = {read("action12_bass", 2.2)};
  const ResponseRequest request = response_request(story_of({morning, evening}), {}, day(2026, 3, 1));
  ASSERT_EQ(request.readings.size(), 2U);
  EXPECT_LT(request.readings[0].order, request.readings[1].order);
}

TEST(ResponseRequest, leaves_out_what_is_superseded_what_is_no_height_and_what_is_yet_to_come) {
  VisitStory now = visit_on(day(2026, 2, 14)), later = visit_on(day(2026, 8, 1));
  now.readings = {read("action12_bass", 9), read("action12_bass", 2.4), read("body_humidity", 41)};
  now.readings[0].superseded_by = now.readings[1].id;
  later.readings = {read("action12_bass", 2.9)};
  later.interventions = {{.kind = "neck_reset"}};
  const ResponseRequest request = response_request(story_of({now, later}), {}, day(2026, 7, 31));
  ASSERT_EQ(request.readings.size(), 1U);
  EXPECT_EQ(request.readings[0].value, mm(2.4));
  EXPECT_TRUE(request.changes.empty());
}

TEST(ResponseRequest, carries_the_bridge_over_the_rim_and_the_work_that_moves_it) {
  testing::TestBook test;
  test.book.add({test.reading("bridge_over_rim", 12.3)});
  test.book.add(Intervention{.visit_id = test.visit, .kind = "bridge_renewed"});
  test.book.add(Intervention{.visit_id = test.visit, .kind = "saddle_lowered"});
  const ResponseRequest request = response_request(test.book.story(test.instrument), {}, day(2026, 3, 1));
  ASSERT_EQ(request.readings.size(), 1U);
  EXPECT_EQ(request.readings[0].kind, HeightKind::bridge_over_rim);
  EXPECT_EQ(request.readings[0].value, mm(12.3));
  ASSERT_EQ(request.changes.size(), 2U);
  EXPECT_TRUE(request.changes[0].moves_bridge);
  EXPECT_FALSE(request.changes[1].moves_bridge);
}

TEST(ResponseRequest, carries_the_design_the_home_and_its_log) {
  const std::vector<LoggedDay> log{{.date = day(2026, 1, 1), .temperature_c = 18, .relative_humidity = 0.31}};
  const ResponseRequest request = response_request(story_of({}), log, day(2026, 3, 1));
  EXPECT_EQ(request.today, day(2026, 3, 1));
  EXPECT_EQ(request.design.body_size, BodySize::small);
  EXPECT_EQ(request.home.kind, HomeKind::outdoor_months);
  ASSERT_EQ(request.home.log.size(), 1U);
  EXPECT_EQ(request.home.log[0].relative_humidity, 0.31);
}

TEST(ResponseRequest, made_from_the_book_is_one_the_season_model_takes) {
  testing::TestBook test;
  test.book.add({test.reading("action12_bass", 2.4), test.reading("action12_treble", 1.9)});
  test.book.add(Intervention{.visit_id = test.visit, .kind = "neck_reset"});
  EXPECT_NO_THROW(require_valid(response_request(test.book.story(test.instrument), {}, day(2026, 3, 1))));
}

TEST(KnownRod, is_learnt_from_turns_that_were_read_before_and_after) {
  VisitStory visit = visit_on(day(2026, 2, 14));
  const auto finely = [](const std::string& measure, double value, ReadingState state) {
    Reading reading = read(measure, value, state);
    reading.gauge_sd = 0.002;
    return reading;
  };
  visit.readings = {finely("relief", 0.30, ReadingState::as_found), finely("relief", 0.10, ReadingState::as_left),
                    finely("action12_bass", 2.6, ReadingState::as_found),
                    finely("action12_bass", 2.22, ReadingState::as_left)};
  visit.interventions = {{.kind = "rod_adjusted"}};
  InstrumentStory story = story_of({visit});
  const DataTables tables = load_data_tables(testing::repository_text);
  EXPECT_FALSE(known_rod(story, {}, tables, day(2026, 3, 1)).has_value()) << "it has no rod to turn";
  story.instrument.adjustable_rod = true;
  const RodFigure known = known_rod(story, {}, tables, day(2026, 3, 1)).value();
  EXPECT_NEAR(known.action12_per_relief, 1.9, 0.02);
  EXPECT_EQ(known.turns, 1);
  EXPECT_EQ(known_rod(story, {}, tables, day(2026, 2, 13))->turns, 0) << "it had not been turned yet";
  story.visits[0].interventions.push_back({.kind = "saddle_lowered"});
  EXPECT_EQ(known_rod(story, {}, tables, day(2026, 3, 1))->turns, 0) << "other work moved the strings too";
}

}  // namespace
}  // namespace tailblock

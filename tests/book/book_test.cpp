#include "book/book.h"

#include <gtest/gtest.h>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;
using testing::TestBook;

TEST(Book, keeps_an_owner_as_given) {
  TestBook test;
  const RecordId id = test.book.keep(Owner{.name = "A. Player", .contact = "by post", .note = "left-handed"});
  const Owner owner = test.book.owner(id);
  EXPECT_EQ(owner.id, id);
  EXPECT_EQ(owner.name, "A. Player");
  EXPECT_EQ(owner.contact, "by post");
  EXPECT_EQ(owner.note, "left-handed");
}

TEST(Book, changes_the_owner_with_that_id_and_no_other) {
  TestBook test;
  const RecordId first = test.book.keep(Owner{.name = "first"});
  const RecordId second = test.book.keep(Owner{.name = "second"});
  test.book.keep(Owner{.id = second, .name = "renamed"});
  EXPECT_EQ(test.book.owner(first).name, "first");
  EXPECT_EQ(test.book.owner(second).name, "renamed");
  EXPECT_EQ(test.book.owner(test.owner).name, "A. Player");
  EXPECT_EQ(test.book.owners().size(), 3U);
}

TEST(Book, keeps_a_home_with_its_twelve_months) {
  TestBook test;
  Home home{.name = "stone house", .air = {}, .note = "river side"};
  home.air.kind = HomeKind::outdoor_months;
  for (std::size_t month = 0; month < 12; ++month) {
    home.air.temperature_c[month] = 0.1 + static_cast<double>(month);
    home.air.dew_point_c[month] = -5.3 + static_cast<double>(month);
    home.air.relative_humidity[month] = 0.31 + 0.01 * static_cast<double>(month);
  }
  home.air.heating_set_point = celsius(18.5);
  home.air.moisture_gain_g_per_m3 = 2.7;
  home.air.humidifier_floor = humidity_percent(38);
  home.air.dehumidifier_ceiling = humidity_percent(61);
  home.air.weather_sd_relative_humidity = 0.043;
  home.air.weather_memory = days(4.5);
  const Home kept = test.book.home(test.book.keep(home));
  EXPECT_EQ(kept.name, home.name);
  EXPECT_EQ(kept.note, home.note);
  EXPECT_EQ(kept.air.kind, home.air.kind);
  EXPECT_EQ(kept.air.temperature_c, home.air.temperature_c);
  EXPECT_EQ(kept.air.dew_point_c, home.air.dew_point_c);
  EXPECT_EQ(kept.air.relative_humidity, home.air.relative_humidity);
  EXPECT_EQ(kept.air.heating_set_point, home.air.heating_set_point);
  EXPECT_EQ(kept.air.moisture_gain_g_per_m3, home.air.moisture_gain_g_per_m3);
  EXPECT_EQ(kept.air.humidifier_floor, home.air.humidifier_floor);
  EXPECT_EQ(kept.air.dehumidifier_ceiling, home.air.dehumidifier_ceiling);
  EXPECT_EQ(kept.air.weather_sd_relative_humidity, home.air.weather_sd_relative_humidity);
  EXPECT_EQ(kept.air.weather_memory, home.air.weather_memory);
  EXPECT_TRUE(kept.air.log.empty());
}

TEST(Book, keeps_an_instrument_with_every_field) {
  TestBook test;
  Instrument instrument{.owner_id = test.owner, .home_id = test.home, .name = "the blackened parlour"};
  instrument.made = "about 1910, no label";
  instrument.design.body_size = BodySize::parlour;
  instrument.design.bracing = Bracing::ladder;
  instrument.design.lower_bout_width = inches(13.5);
  instrument.design.top_thickness = mm(2.6);
  instrument.design.ring_angle = degrees(12);
  instrument.design.top_species = "red spruce";
  instrument.design.kept_in_case = true;
  instrument.scale_length = mm(622);
  instrument.body_joint_fret = 12;
  instrument.fret_count = 18;
  instrument.adjustable_rod = true;
  instrument.slot = SaddleSlot::open_ended;
  instrument.slot_depth = mm(3.5);
  instrument.slot_length = mm(108);
  instrument.string_set = "extra light";
  instrument.tuning = "open D";
  instrument.attack = AttackLevel::hard;
  instrument.wanted_action12_bass = sixty_fourths(5);
  instrument.highest_action12_treble = mm(2.25);
  instrument.note = "bar frets";
  const Instrument kept = test.book.instrument(test.book.keep(instrument));
  EXPECT_EQ(testing::fields_of(kept, "id"), testing::fields_of(instrument, "id"));
  EXPECT_FALSE(kept.slot_width.has_value());
}

TEST(Book, a_reading_keeps_what_was_typed_beside_what_it_means) {
  TestBook test;
  Reading reading = test.reading("action12_bass", 1.984375);
  reading.typed = "5/64";
  reading.state = ReadingState::as_left;
  test.book.add(std::vector{reading});
  const Reading kept = test.book.visit_story(test.visit).readings.at(0);
  EXPECT_EQ(kept.typed, "5/64");
  EXPECT_EQ(kept.value, 1.984375);
  EXPECT_EQ(kept.state, ReadingState::as_left);
  EXPECT_EQ(kept.gauge, "ruler_64ths");
}

TEST(Book, a_reading_without_a_spread_takes_its_gauges) {
  TestBook test;
  test.book.add(std::vector{test.reading("action12_bass", 2)});
  const Reading kept = test.book.visit_story(test.visit).readings.at(0);
  EXPECT_EQ(kept.gauge_sd, test.tables.gauge("ruler_64ths")->sd);
}

TEST(Book, a_correction_supersedes_and_the_old_reading_stays_as_it_was) {
  TestBook test;
  const RecordId old = test.book.add(std::vector{test.reading("action12_bass", 2.0)}).at(0);
  Reading correction = test.reading("action12_bass", 2.4);
  correction.supersedes = old;
  const RecordId corrected = test.book.add(std::vector{correction}).at(0);
  const auto readings = test.book.visit_story(test.visit).readings;
  ASSERT_EQ(readings.size(), 2U);
  EXPECT_EQ(readings[0].id, old);
  EXPECT_EQ(readings[0].value, 2.0);
  EXPECT_EQ(readings[0].superseded_by, corrected);
  EXPECT_EQ(readings[1].supersedes, old);
  EXPECT_EQ(readings[1].superseded_by, 0);
}

TEST(Book, corrects_a_reading_once) {
  TestBook test;
  Reading correction = test.reading("action12_bass", 2.4);
  correction.supersedes = test.book.add(std::vector{test.reading("action12_bass", 2.0)}).at(0);
  const RecordId by = test.book.add(std::vector{correction}).at(0);
  expect_refused([&] { test.book.add(std::vector{correction}); },
                 "supersedes: reading 1 is already superseded by " + std::to_string(by));
}

TEST(Book, a_story_tells_visits_newest_last_with_what_belongs_to_each) {
  TestBook test;
  const RecordId winter = test.book.keep(Visit{.instrument_id = test.instrument, .date = day(2026, 2, 14)});
  const RecordId autumn = test.book.keep(Visit{.instrument_id = test.instrument, .date = day(2025, 10, 3)});
  test.book.add(std::vector{test.reading("action12_bass", 2.1), test.reading("relief", 0.2, winter, "feelers")});
  test.book.add(Intervention{.visit_id = winter, .kind = "saddle_lowered", .action12_bass_change = mm(-0.3)});
  test.book.add(SaddleDecision{.visit_id = winter, .choice = "one_saddle", .raise_bass_at_saddle = mm(0.5)});
  const InstrumentStory story = test.book.story(test.instrument);
  EXPECT_EQ(story.owner.id, test.owner);
  EXPECT_EQ(story.home.id, test.home);
  ASSERT_EQ(story.visits.size(), 3U);
  EXPECT_EQ(story.visits[0].visit.id, test.visit);
  EXPECT_EQ(story.visits[1].visit.id, autumn);
  EXPECT_EQ(story.visits[2].visit.id, winter);
  ASSERT_EQ(story.visits[0].readings.size(), 1U);
  EXPECT_EQ(story.visits[0].readings[0].measure, "action12_bass");
  EXPECT_TRUE(story.visits[1].readings.empty());
  ASSERT_EQ(story.visits[2].interventions.size(), 1U);
  EXPECT_EQ(story.visits[2].interventions[0].action12_bass_change, mm(-0.3));
  EXPECT_EQ(story.visits[2].interventions[0].change_sd, mm(test.tables.intervention("saddle_lowered")->change_sd_mm));
  EXPECT_FALSE(story.visits[2].interventions[0].action12_treble_change.has_value());
  ASSERT_EQ(story.visits[2].decisions.size(), 1U);
  EXPECT_EQ(story.visits[2].decisions[0].raise_bass_at_saddle, mm(0.5));
}

TEST(Book, the_air_log_keeps_the_first_of_two_days_unless_told_to_replace) {
  TestBook test;
  const auto first = test.book.keep_air_log(
      test.home, {{.date = day(2026, 1, 1), .relative_humidity = 0.31}, {.date = day(2026, 1, 2)}}, false);
  EXPECT_EQ(first.added, 2);
  EXPECT_EQ(first.already_there, 0);
  const std::vector<LoggedDay> later{{.date = day(2026, 1, 1), .relative_humidity = 0.4}, {.date = day(2026, 1, 3)}};
  const auto second = test.book.keep_air_log(test.home, later, false);
  EXPECT_EQ(second.added, 1);
  EXPECT_EQ(second.already_there, 1);
  const auto january = [&] { return test.book.air_log(test.home, day(2026, 1, 1), day(2026, 1, 31)); };
  ASSERT_EQ(january().size(), 3U);
  EXPECT_EQ(january()[0].relative_humidity, 0.31);
  test.book.keep_air_log(test.home, later, true);
  EXPECT_EQ(january()[0].relative_humidity, 0.4);
  EXPECT_EQ(test.book.air_log(test.home, day(2026, 1, 2), day(2026, 1, 2)).size(), 1U);
  EXPECT_EQ(test.book.story(test.instrument).logged_days, 3);
}

TEST(Book, keeps_settings_by_name) {
  TestBook test;
  EXPECT_EQ(test.book.setting("shop name"), "");
  test.book.keep_setting("shop name", "the bench");
  test.book.keep_setting("shop name", "the other bench");
  EXPECT_EQ(test.book.setting("shop name"), "the other bench");
}

TEST(Book, what_was_kept_is_there_when_it_is_opened_again) {
  TestBook test;
  test.book.add(std::vector{test.reading("action12_bass", 2.1)});
  const Book again(test.file);
  EXPECT_EQ(again.story(test.instrument).visits.at(0).readings.at(0).value, 2.1);
}

TEST(Book, refuses_in_one_line_what_it_does_not_take) {
  TestBook test;
  expect_refused([&] { (void)test.book.instrument(17); }, "instrument_id: 17 is not in the book");
  expect_refused([&] { (void)test.book.story(17); }, "instrument_id: 17 is not in the book");
  expect_refused([&] { (void)test.book.visit(17); }, "visit_id: 17 is not in the book");
  expect_refused([&] { (void)test.book.home(17); }, "home_id: 17 is not in the book");
  expect_refused([&] { test.book.keep(Owner{.id = 17, .name = "nobody"}); }, "owner_id: 17 is not in the book");
  expect_refused([&] { test.book.keep(Owner{}); }, "name: is empty");
  expect_refused([&] { test.book.keep(Instrument{.owner_id = 17, .home_id = test.home, .name = "x"}); },
                 "owner_id: 17 is not in the book");
  expect_refused(
      [&] { test.book.keep(Instrument{.owner_id = test.owner, .home_id = test.home, .name = "x", .fret_count = 40}); },
      "fret_count: 40 is outside 12..26");
  expect_refused([&] { test.book.add(std::vector{test.reading("colour", 2)}); },
                 "measure: \"colour\" is not in data/measures.csv");
  expect_refused([&] { test.book.add(std::vector{test.reading("relief", 0.2, test.visit, "thumb")}); },
                 "gauge: \"thumb\" is not in data/gauges.csv");
  expect_refused([&] { test.book.add(std::vector{test.reading("relief", 0.2, test.visit, "hygrometer")}); },
                 "gauge: electronic hygrometer reads percent, relief is in mm");
  expect_refused([&] { test.book.add(std::vector{test.reading("action12_bass", 78)}); },
                 "action12_bass: 78 mm is outside 0..12 mm");
  expect_refused([&] { test.book.add(Intervention{.visit_id = test.visit, .kind = "wished"}); },
                 "kind: \"wished\" is not in data/interventions.csv");
}

TEST(Book, takes_all_of_a_visits_readings_or_none) {
  TestBook test;
  Reading of_no_visit = test.reading("relief", 0.2, 17, "feelers");
  expect_refused(
      [&] {
        test.book.add(std::vector{test.reading("action12_bass", 2), of_no_visit});
      },
      "visit_id: 17 is not in the book");
  EXPECT_TRUE(test.book.visit_story(test.visit).readings.empty());
}

}  // namespace
}  // namespace tailblock

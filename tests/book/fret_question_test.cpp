#include "book/fret_question.h"

#include <gtest/gtest.h>

#include "book/fret_place.h"
#include "book/questions.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

TEST(FretPlace, is_read_from_the_id_of_a_reading) {
  const auto whole = fret_place("fret_crown@7");
  ASSERT_TRUE(whole);
  EXPECT_EQ(whole->measure, "fret_crown");
  EXPECT_EQ(whole->fret, 7);
  EXPECT_EQ(whole->side, FretSide::both);
  EXPECT_EQ(fret_place("fret_height@12b")->side, FretSide::bass);
  EXPECT_EQ(fret_place("fret_springs@24t")->side, FretSide::treble);
  const auto gap = fret_place("fret_gap@7t/1-14");
  ASSERT_TRUE(gap);
  EXPECT_EQ(gap->from_fret, 1);
  EXPECT_EQ(gap->to_fret, 14);
}

TEST(FretPlace, of_another_form_is_none) {
  for (const char* id : {"fret_crown", "fret_crown@", "fret_crown@0", "fret_crown@25", "fret_crown@07", "fret_crown@7x",
                         "fret_crown@7bt", "fret_crown@7/1-14", "fret_gap@7", "fret_gap@7/14-1", "fret_gap@7/1-",
                         "fret_gap@7/1-14 ", "relief@7", "fret_crown@-3", "fret_crown@7@8"}) {
    EXPECT_FALSE(fret_place(id)) << id;
  }
}

TEST(FretPlace, finds_its_measure_and_no_measure_without_a_fret) {
  const TradeTables tables = testing::repository_tables();
  ASSERT_NE(tables.measure("fret_crown@7b"), nullptr);
  EXPECT_EQ(tables.measure("fret_crown@7b")->id, "fret_crown");
  EXPECT_EQ(tables.measure("fret_crown"), nullptr);
  EXPECT_EQ(tables.measure("fret_colour@7"), nullptr);
}

/// A book whose instrument has had every crown read.
struct BookOfFrets : testing::TestBook {
  std::vector<std::unique_ptr<std::string>> texts;
  DataTables data = load_data_tables([this](std::string_view path) -> std::string_view {
    return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
  });
  EnvelopeMemo memo;

  void read_crowns(RecordId at_visit, const std::vector<std::pair<int, double>>& high, ReadingState state,
                   int first = 1, int last = 20) {
    std::vector<Reading> readings;
    for (int fret = first; fret <= last; ++fret) {
      double by = 0;
      for (const auto& [at, value] : high) by = at == fret ? value : by;
      Reading one = reading("fret_crown@" + std::to_string(fret), by, at_visit, "dial_indicator");
      one.state = state;
      readings.push_back(one);
    }
    book.add(readings);
  }
  [[nodiscard]] FretAnswer answer(const FretWishes& wishes = {}) {
    return fret_answer(book.story(instrument), data, memo, wishes, day(2026, 2, 20));
  }
};

TEST(FretAnswer, has_no_result_before_a_crown_is_read) {
  BookOfFrets shop;
  EXPECT_FALSE(shop.answer().result);
  EXPECT_FALSE(shop.answer().read_on);
}

TEST(FretAnswer, rests_on_the_crowns_kept_at_a_visit) {
  BookOfFrets shop;
  shop.read_crowns(shop.visit, {{9, 0.2}}, ReadingState::as_found);
  const FretAnswer answer = shop.answer();
  ASSERT_TRUE(answer.result);
  EXPECT_EQ(answer.read_on, day(2025, 8, 20));
  EXPECT_EQ(answer.readings.size(), 20U);
  EXPECT_EQ(answer.result->verdict, FretVerdict::spot) << answer.result->sentence;
  EXPECT_GT(in_mm(answer.result->frets[8].remove_bass), 0.1);
}

TEST(FretAnswer, takes_one_fret_read_again_in_place_of_what_was_read_before) {
  BookOfFrets shop;
  shop.read_crowns(shop.visit, {{9, 0.2}}, ReadingState::as_found);
  const RecordId later = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2026, 1, 10)});
  shop.read_crowns(later, {{9, 0.0}}, ReadingState::as_found, 9, 9);
  const FretAnswer answer = shop.answer();
  EXPECT_EQ(answer.readings.size(), 20U);
  EXPECT_EQ(answer.result->verdict, FretVerdict::clean) << answer.result->sentence;
}

TEST(FretAnswer, forgets_what_was_found_once_the_frets_were_levelled) {
  BookOfFrets shop;
  shop.read_crowns(shop.visit, {{9, 0.2}, {4, 0.2}}, ReadingState::as_found);
  shop.book.add(Intervention{.visit_id = shop.visit, .kind = "frets_levelled"});
  EXPECT_FALSE(shop.answer().result);
  shop.read_crowns(shop.visit, {}, ReadingState::as_left);
  EXPECT_EQ(shop.answer().result->verdict, FretVerdict::clean);
}

TEST(FretAnswer, takes_readings_as_they_are_typed_and_keeps_nothing) {
  BookOfFrets shop;
  FretWishes wishes;
  for (int fret = 1; fret <= 20; ++fret) wishes.readings.push_back({.fret = fret, .value = mm(fret == 5 ? 0.2 : 0)});
  const FretAnswer answer = shop.answer(wishes);
  ASSERT_TRUE(answer.result);
  EXPECT_FALSE(answer.read_on);
  EXPECT_TRUE(shop.book.story(shop.instrument).visits.front().readings.empty());
}

TEST(FretAnswer, asks_for_damp_air_before_a_file_when_the_body_was_dry_that_day) {
  BookOfFrets shop;
  shop.read_crowns(shop.visit, {{9, 0.2}}, ReadingState::as_found);
  shop.book.add({shop.reading("body_humidity", 31, 0, "hygrometer")});
  EXPECT_FALSE(shop.answer().result->cut_is_advised);
  EXPECT_EQ(shop.answer().result->verdict, FretVerdict::spot);
}

TEST(KnownCrowns, stand_under_the_strings) {
  BookOfFrets shop;
  const auto asked = [&] { return known_setup(shop.book.story(shop.instrument), shop.data, day(2026, 2, 20)); };
  const KnownSetup level = asked();
  EXPECT_TRUE(level.clearance.neck.crown_departures_mm.empty());
  EXPECT_EQ(level.assumed.back(), "Frets taken as level, none was read");

  shop.read_crowns(shop.visit, {{9, 0.2}}, ReadingState::as_found);
  const KnownSetup high = asked();
  const auto& departures = high.clearance.neck.crown_departures_mm;
  ASSERT_EQ(departures.size(), 20U);
  // The height of fret 9 over its neighbours' line is what was read, wherever the line of all crowns is put.
  EXPECT_NEAR(departures[8] - 0.5 * (departures[7] + departures[9]), 0.2, 0.02);
  EXPECT_EQ(high.assumed.back(), "Crowns as read on 2025-08-20");

  shop.book.add(Intervention{.visit_id = shop.visit, .kind = "frets_levelled"});
  EXPECT_TRUE(asked().clearance.neck.crown_departures_mm.empty());
}

TEST(KnownCrowns, that_cost_much_are_dressed_before_the_saddle_and_others_are_played_on) {
  BookOfFrets shop;
  const auto needs = [&] {
    const InstrumentStory story = shop.book.story(shop.instrument);
    return player_needs(story, known_setup(story, shop.data, day(2026, 2, 20)), shop.data, shop.memo);
  };
  const PlayerNeeds level = needs();
  EXPECT_EQ(level.frets_first, "");

  shop.read_crowns(shop.visit, {{9, 0.025}}, ReadingState::as_found);
  const PlayerNeeds uneven = needs();
  EXPECT_EQ(uneven.frets_first, "");
  const double dearer = in_mm(uneven.limits.lowest_bass + uneven.limits.lowest_treble - level.limits.lowest_bass -
                              level.limits.lowest_treble);
  EXPECT_GT(dearer, 0.02);

  const RecordId later = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2026, 1, 10)});
  shop.read_crowns(later, {{9, 0.12}}, ReadingState::as_found);
  const PlayerNeeds high = needs();
  EXPECT_TRUE(high.frets_first.starts_with("Dress the frets first: as they stand nothing lower than "));
  EXPECT_NE(high.frets_first.find("by fret 9;"), std::string::npos) << high.frets_first;
  EXPECT_NEAR(in_mm(high.limits.lowest_bass), in_mm(level.limits.lowest_bass), 0.01);
}

TEST(KnownCrowns, springing_frets_stand_up_and_ends_read_apart_meet_in_the_middle) {
  BookOfFrets shop;
  shop.read_crowns(shop.visit, {}, ReadingState::as_found);
  const auto bend_at_7 = [&] {
    const auto departures =
        known_setup(shop.book.story(shop.instrument), shop.data, day(2026, 2, 20)).clearance.neck.crown_departures_mm;
    return departures[6] - 0.5 * (departures[5] + departures[7]);
  };
  EXPECT_NEAR(bend_at_7(), 0, 0.001);
  const RecordId later = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2026, 1, 10)});
  shop.book.add({shop.reading("fret_crown@7b", 0.1, later, "dial_indicator"),
                 shop.reading("fret_crown@7t", 0.2, later, "dial_indicator")});
  EXPECT_NEAR(bend_at_7(), 0.15, 0.01);
  shop.book.add({shop.reading("fret_springs@7", 0.06, later, "dial_indicator")});
  EXPECT_NEAR(bend_at_7(), 0.15, 0.01) << "loose, and standing as high as it was read";
}

TEST(FretReadingsInTheBook, are_refused_without_a_fret_or_out_of_range) {
  testing::TestBook shop;
  expect_refused([&] { shop.book.add({shop.reading("fret_crown", 0.1, 0, "dial_indicator")}); },
                 "measure: \"fret_crown\" is not in data/measures.csv");
  expect_refused([&] { shop.book.add({shop.reading("fret_crown@7", 5, 0, "dial_indicator")}); },
                 "fret_crown@7: 5 mm is outside -1.5..1.5 mm");
}

}  // namespace
}  // namespace tailblock

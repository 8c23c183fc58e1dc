#include "setup/saddle.h"

#include <gtest/gtest.h>

#include "hand_made_year.h"
#include "season_tables.h"

namespace tailblock {
namespace {

using testing::day;
using testing::option;
using testing::says;

SaddleResult answer(const SaddleRequest& request) {
  static const SaddleLimits limits = testing::usual_limits();
  return saddle(request, testing::season_tables(), limits);
}

/// Invented: indoors in a heated home of a cold winter.
HomeAir heated_home() {
  HomeAir home;
  home.kind = HomeKind::indoor_months;
  home.temperature_c = {20, 20, 20, 21, 22, 24, 25, 25, 23, 21, 20, 20};
  home.relative_humidity = {.24, .25, .29, .36, .45, .54, .57, .57, .52, .43, .34, .27};
  return home;
}

void read(SaddleRequest& request, const char* date, double bass_mm, double treble_mm, double sd_mm = 0.05) {
  for (const auto& [kind, value] :
       {std::pair{HeightKind::action12_bass, bass_mm}, std::pair{HeightKind::action12_treble, treble_mm}}) {
    HeightReading reading;
    reading.date = day(date);
    reading.order = 0;
    reading.kind = kind;
    reading.value = mm(value);
    reading.gauge_sd = mm(sd_mm);
    request.instrument.readings.push_back(reading);
  }
}

/// Strings too low in February; it was right in August.
SaddleRequest low_in_february() {
  SaddleRequest request = testing::drop_in();
  request.instrument.home = heated_home();
  request.instrument.today = request.first = day("2026-02-14");
  read(request, "2025-08-20", 2.4, 1.9);
  read(request, "2026-02-14", 1.75, 1.35);
  return request;
}

void refuses(const SaddleRequest& request, const std::string& line) {
  try {
    (void)answer(request);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(SaddleFromReadings, low_in_february_and_right_in_august_asks_for_a_taller_saddle) {
  const SaddleResult result = answer(low_in_february());
  const SaddleOption& leave = option(result, SaddleChoice::leave);
  const SaddleOption& one = option(result, SaddleChoice::one_saddle);
  const SaddleOption& two = option(result, SaddleChoice::two_saddles);
  EXPECT_GT(leave.days.low_either.median, 20);
  EXPECT_LT(leave.days.high_either.median, 5);
  ASSERT_TRUE(one.possible);
  EXPECT_GT(in_mm(one.saddles.at(0).raise_bass), 0.2);
  EXPECT_LT(in_mm(one.saddles.at(0).raise_bass), 1.2);
  EXPECT_LT(one.days.low_either.median, 10);
  EXPECT_LT(one.days.high_either.median, 20);
  // Set today, in the driest month, under the action that is wanted on the mean of the year.
  EXPECT_LT(in_mm(one.set_bass_today), 2.4);
  EXPECT_GT(in_mm(one.set_bass_today), 1.8);
  EXPECT_LT(in_mm(one.set_today_sd), 0.2);
  ASSERT_TRUE(two.possible);
  EXPECT_EQ(two.saddles.at(0).season, "winter");
  EXPECT_GT(two.saddles[0].raise_bass, one.saddles[0].raise_bass);
  EXPECT_LT(two.saddles[1].raise_bass, one.saddles[0].raise_bass);
  EXPECT_GT(result.best, 0);
  EXPECT_TRUE(says(result.cautions, "dry enough to crack a top"));
  EXPECT_FALSE(says(result.cautions, "SOMETHING ELSE MOVED"));
}

TEST(SaddleFromReadings, as_it_is_counts_the_days_that_the_year_does) {
  const SaddleRequest request = low_in_february();
  const YearResult year_ahead =
      year({.instrument = request.instrument, .first = request.first, .count = request.count, .limits = request.limits},
           testing::season_tables());
  const SaddleResult result = answer(request);
  EXPECT_EQ(option(result, SaddleChoice::leave).days.low_either.median,
            year_ahead.days_outside.at(0).low_either.median);
  EXPECT_EQ(option(result, SaddleChoice::leave).days.high_bass.high, year_ahead.days_outside.at(0).high_bass.high);
}

TEST(SaddleFromReadings, a_room_kept_humid_needs_a_lower_saddle_than_a_dry_one) {
  SaddleRequest request = low_in_february();
  request.limits = {
      .lowest_bass = mm(2.2), .lowest_treble = mm(1.7), .highest_bass = mm(2.6), .highest_treble = mm(2.1)};
  const SaddleResult result = answer(request);
  const SaddleOption& one = option(result, SaddleChoice::one_saddle);
  const SaddleOption& room = option(result, SaddleChoice::humid_room);
  ASSERT_FALSE(room.saddles.empty());
  EXPECT_LT(room.saddles[0].raise_bass, one.saddles.at(0).raise_bass);
  EXPECT_LT(room.cost, one.cost);
}

TEST(SaddleFromReadings, in_the_shops_air_sets_higher_when_the_shop_is_damper_than_the_home) {
  SaddleRequest request = low_in_february();
  const SaddleOption at_home = option(answer(request), SaddleChoice::one_saddle);
  request.shop_moisture_percent = 8.5;  // the home is at about 5
  const SaddleOption in_shop = option(answer(request), SaddleChoice::one_saddle);
  EXPECT_GT(in_mm(in_shop.set_bass_today), in_mm(at_home.set_bass_today) + 0.15);
  EXPECT_EQ(in_shop.saddles.at(0).raise_bass, at_home.saddles.at(0).raise_bass);
}

TEST(SaddleFromReadings, a_large_drop_that_the_season_cannot_make_stops_the_cut) {
  SaddleRequest request = low_in_february();
  request.instrument.readings.clear();
  read(request, "2024-08-20", 2.40, 1.90, 0.03);
  read(request, "2025-02-10", 2.00, 1.55, 0.03);
  read(request, "2025-08-20", 2.42, 1.91, 0.03);
  read(request, "2026-02-14", 1.20, 0.80, 0.03);
  const SaddleResult result = answer(request);
  EXPECT_EQ(result.best, 0);
  EXPECT_TRUE(says(result.cautions, "SOMETHING ELSE MOVED"));
}

TEST(SaddleFromReadings, a_first_visit_is_told_to_read_again_in_another_season) {
  SaddleRequest request = low_in_february();
  request.instrument.readings.clear();
  read(request, "2026-02-14", 1.75, 1.35);
  const SaddleResult result = answer(request);
  EXPECT_TRUE(says(result.cautions, "ONE MORE READING IN ANOTHER SEASON"));
  EXPECT_TRUE(option(result, static_cast<SaddleChoice>(result.best)).reversible);
}

TEST(SaddleFromReadings, refuses_what_it_cannot_answer_in_one_line) {
  SaddleRequest request = low_in_february();
  request.limits.highest_bass = mm(1.5);
  refuses(request, "limits.highest_bass_mm: 1.5 mm is not over limits.lowest_bass_mm 1.8 mm");
  request = low_in_february();
  request.wanted_treble = mm(2.8);
  refuses(request, "wanted_treble_mm: 2.8 mm is outside 1.3..2.5 mm");
  request = low_in_february();
  request.instrument.readings.erase(request.instrument.readings.begin() + 1);
  request.instrument.readings.pop_back();
  refuses(request, "instrument.readings: no action12_treble among them; a saddle needs both sides read at least once");
  request = low_in_february();
  request.bridge.exposure_bass = mm(-1);
  refuses(request, "bridge.exposure_bass_mm: -1 mm is outside 0..12 mm");
  request = low_in_february();
  request.count = 10;
  refuses(request, "count: 10 days is outside 28..366 days");
}

/// Every field of a request, put out of its range one at a time, is refused by its own name.
struct OutOfRange {
  void (*spoil)(SaddleRequest&);
  const char* line;
};

TEST(SaddleFromReadings, names_every_field_that_is_out_of_range) {
  const std::vector<OutOfRange> cases{
      {[](SaddleRequest& r) { r.bridge.exposure_treble = mm(13); },
       "bridge.exposure_treble_mm: 13 mm is outside 0..12 mm"},
      {[](SaddleRequest& r) { r.bridge.exposure_centre = mm(13); },
       "bridge.exposure_centre_mm: 13 mm is outside 0..12 mm"},
      {[](SaddleRequest& r) { r.bridge.exposure_sd = mm(2); }, "bridge.exposure_sd_mm: 2 mm is outside 0.005..1 mm"},
      {[](SaddleRequest& r) { r.bridge.slot_depth = mm(20); }, "bridge.slot_depth_mm: 20 mm is outside 0.5..15 mm"},
      {[](SaddleRequest& r) { r.bridge.slot_width = mm(0); }, "bridge.slot_width_mm: 0 mm is outside 1..10 mm"},
      {[](SaddleRequest& r) { r.bridge.slot_width_other_end = mm(20); },
       "bridge.slot_width_other_end_mm: 20 mm is outside 1..10 mm"},
      {[](SaddleRequest& r) { r.bridge.slot_length = mm(20); }, "bridge.slot_length_mm: 20 mm is outside 40..200 mm"},
      {[](SaddleRequest& r) { r.bridge.saddle_thickness = mm(20); },
       "bridge.saddle_thickness_mm: 20 mm is outside 1..10 mm"},
      {[](SaddleRequest& r) { r.bridge.pin_to_saddle = mm(60); }, "bridge.pin_to_saddle_mm: 60 mm is outside 2..40 mm"},
      {[](SaddleRequest& r) { r.wanted_bass = mm(50); }, "wanted_bass_mm: 50 mm is outside 0..10 mm"},
      {[](SaddleRequest& r) { r.scale_length = mm(200); }, "scale_length_mm: 200 mm is outside 300..1000 mm"},
      {[](SaddleRequest& r) { r.saddle_setback = mm(20); }, "saddle_setback_mm: 20 mm is outside -5..15 mm"},
      {[](SaddleRequest& r) { r.body_joint_fret = 20; }, "body_joint_fret: 20 is outside 9..18"},
      {[](SaddleRequest& r) { r.heel_depth = mm(200); }, "heel_depth_mm: 200 mm is outside 40..150 mm"},
      {[](SaddleRequest& r) { r.shop_moisture_percent = 30; },
       "shop_moisture_percent: 30 percent is outside 2..20 percent"},
  };
  for (const OutOfRange& one : cases) {
    SaddleRequest request = low_in_february();
    one.spoil(request);
    refuses(request, one.line);
  }
}

}  // namespace
}  // namespace tailblock

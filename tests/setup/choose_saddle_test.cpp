#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "hand_made_year.h"
#include "season/moving_floor.h"
#include "season/outside.h"
#include "setup/neck_angle.h"
#include "setup/saddle_options.h"
#include "setup/year_to_serve.h"

namespace tailblock {
namespace {

using testing::drop_in;
using testing::HandMade;
using testing::option;
using testing::says;
using testing::serving;

const SaddleLimits limits = testing::usual_limits();

/// A guitar that swings by so much either way of 2.4 and 1.9 mm.
HandMade swinging(double amplitude_mm) {
  return {.swing_bass_mm = amplitude_mm, .swing_treble_mm = amplitude_mm, .level_sd_mm = 0.05, .weather_sd_mm = 0.05};
}

double too_low_and_too_high(const SaddleOption& shown) {
  return shown.days.low_either.median + shown.days.high_either.median;
}

TEST(Saddle, always_shows_the_six_ways_in_their_order) {
  for (const SaddleSlot slot : {SaddleSlot::closed, SaddleSlot::open_ended}) {
    SaddleRequest request = drop_in();
    request.bridge.slot = slot;
    const SaddleResult result = choose_saddle(request, serving({swinging(0.3)}), limits);
    ASSERT_EQ(result.options.size(), 6U);
    for (std::size_t i = 0; i < 6; ++i) EXPECT_EQ(static_cast<std::size_t>(result.options[i].choice), i);
    EXPECT_TRUE(result.options[0].possible);
  }
}

TEST(Saddle, leaves_a_guitar_that_is_right_all_year_alone) {
  const SaddleResult result = choose_saddle(drop_in(), serving({swinging(0.1)}), limits);
  EXPECT_EQ(result.best, 0);
  EXPECT_EQ(
      result.advice,
      "Leave the saddle, it serves the year. Expect 0 days (0 to 0) too low and 0 days (0 to 0) too high in the year.");
  EXPECT_LT(too_low_and_too_high(result.options[0]), 0.5);
  EXPECT_TRUE(result.cautions.empty());
}

TEST(Saddle, raising_it_by_a_32nd_raises_fret_12_by_a_64th) {
  SaddleLimits steps_of_a_32nd = limits;
  steps_of_a_32nd.cut_precision = 25.4 / 32 / 4;
  const double low_mm = 2.4 - 25.4 / 64;  // a 64th of an inch under the wanted action
  const SaddleResult result =
      choose_saddle(drop_in(), serving({{.bass_mm = low_mm, .treble_mm = 1.9, .level_sd_mm = 0.05}}), steps_of_a_32nd);
  const SaddleOption& one = option(result, SaddleChoice::one_saddle);
  EXPECT_NEAR(in_inches(one.saddles.at(0).raise_bass), 1.0 / 32, 1e-9);
  EXPECT_NEAR(in_mm(one.saddles.at(0).raise_treble), 0, 1e-9);
  EXPECT_NEAR(in_sixty_fourths(one.set_bass_today - option(result, SaddleChoice::leave).set_bass_today), 1, 1e-9);
}

TEST(Saddle, counts_the_setback_in) {
  SaddleRequest request = drop_in();
  request.saddle_setback = mm(3);
  const SaddleResult result = choose_saddle(request, serving({swinging(0.1)}), limits);
  EXPECT_NEAR(result.saddle_per_action, 2 * (1 + 3.0 / 645), 1e-12);
}

TEST(Saddle, chooses_bass_and_treble_by_themselves) {
  const SaddleResult result =
      choose_saddle(drop_in(), serving({{.bass_mm = 2.2, .treble_mm = 2.1, .level_sd_mm = 0.05}}), limits);
  const SaddleToMake& made = option(result, SaddleChoice::one_saddle).saddles.at(0);
  EXPECT_NEAR(in_mm(made.raise_bass), 0.4, 1e-9);
  EXPECT_NEAR(in_mm(made.raise_treble), -0.4, 1e-9);
  EXPECT_TRUE(made.new_bone);
}

TEST(Saddle, gives_heights_in_steps_that_a_file_holds_and_days_at_those_heights) {
  const YearToServe year = serving({{.bass_mm = 2.0137,
                                     .treble_mm = 1.777,
                                     .swing_bass_mm = 0.41,
                                     .swing_treble_mm = 0.3,
                                     .level_sd_mm = 0.15,
                                     .weather_sd_mm = 0.1}});
  const SaddleOption one = option(choose_saddle(drop_in(), year, limits), SaddleChoice::one_saddle);
  const double raise_bass = in_mm(one.saddles.at(0).raise_bass), raise_treble = in_mm(one.saddles.at(0).raise_treble);
  EXPECT_NEAR(raise_bass / 0.05, std::round(raise_bass / 0.05), 1e-9);
  EXPECT_NEAR(raise_treble / 0.05, std::round(raise_treble / 0.05), 1e-9);
  const double low = days_outside(year.home, true, raise_bass / 2, 1.8, 3.0).low.median;
  EXPECT_NEAR(one.days.low_bass.median, low, 2.0);  // the season model counts one side with other nodes than both
  const DaysOutside plain = days_outside(year.home, {.lowest_bass = mm(1.8 - raise_bass / 2),
                                                     .lowest_treble = mm(1.3 - raise_treble / 2),
                                                     .highest_bass = mm(3.0 - raise_bass / 2),
                                                     .highest_treble = mm(2.5 - raise_treble / 2)});
  EXPECT_EQ(one.days.low_either.high, plain.low_either.high);
}

// ---- two saddles ----

TEST(Saddle, two_beat_one_where_the_swing_is_wider_than_the_range) {
  const SaddleResult result = choose_saddle(drop_in(), serving({swinging(0.75)}), limits);
  const SaddleOption& one = option(result, SaddleChoice::one_saddle);
  const SaddleOption& two = option(result, SaddleChoice::two_saddles);
  ASSERT_TRUE(two.possible);
  EXPECT_LT(two.cost, one.cost - 40);
  EXPECT_LT(too_low_and_too_high(two), too_low_and_too_high(one));
  EXPECT_EQ(result.best, static_cast<int>(SaddleChoice::two_saddles));
  EXPECT_EQ(two.saddles.at(0).season, "winter");
  EXPECT_EQ(two.saddles.at(1).season, "summer");
  EXPECT_GT(two.saddles[0].raise_bass, two.saddles[1].raise_bass);
  EXPECT_EQ(two.saddles[0].until.substr(4), two.saddles[1].from.substr(4))
      << "the day of the year on which they change";
  EXPECT_EQ(two.saddles[1].until, two.saddles[0].from);
  EXPECT_LT(two.saddles[1].from, two.saddles[1].until);
  EXPECT_LT(two.saddles[0].from, two.saddles[0].until);
}

RC_GTEST_PROP(Saddle, two_never_cost_more_than_one, ()) {
  const double amplitude = *rc::gen::inRange(10, 90) / 100.0;
  const SaddleResult result = choose_saddle(drop_in(), serving({swinging(amplitude)}), limits);
  const SaddleOption& two = option(result, SaddleChoice::two_saddles);
  if (two.possible) RC_ASSERT(two.cost <= option(result, SaddleChoice::one_saddle).cost + 2 * limits.worth_one_saddle);
}

TEST(Saddle, two_are_told_what_fret_12_should_read_today_with_each_of_them_in) {
  const SaddleOption two =
      option(choose_saddle(drop_in(), serving({swinging(0.6)}), limits), SaddleChoice::two_saddles);
  // Today is the lowest day: 1.8 mm on the bass as it is.
  for (const SaddleToMake& made : two.saddles) {
    EXPECT_NEAR(in_mm(made.set_bass_today), 1.8 + in_mm(made.raise_bass) / 2, 1e-3);
  }
  EXPECT_EQ(two.set_bass_today, two.saddles[0].set_bass_today) << "the winter saddle is in today";
}

TEST(Saddle, two_are_refused_in_an_open_ended_slot) {
  SaddleRequest request = drop_in();
  request.bridge.slot = SaddleSlot::open_ended;
  request.bridge.exposure_bass = mm(2.4);
  request.bridge.exposure_treble = mm(2.2);
  const SaddleResult result = choose_saddle(request, serving({swinging(0.75)}), limits);
  const SaddleOption& two = option(result, SaddleChoice::two_saddles);
  EXPECT_FALSE(two.possible);
  EXPECT_EQ(
      two.why_not,
      "An open-ended saddle is shaped and fitted in its place: it cannot be shimmed from below, raised without a new "
      "one, or swapped by the owner.");
  EXPECT_TRUE(two.saddles.empty());
  EXPECT_NE(result.best, static_cast<int>(SaddleChoice::two_saddles));
}

TEST(Saddle, two_need_a_whole_year) {
  const SaddleOption two =
      option(choose_saddle(drop_in(), serving({swinging(0.6)}, 200), limits), SaddleChoice::two_saddles);
  EXPECT_EQ(two.why_not, "Two saddles need a whole year to be judged; 200 days were asked for.");
}

TEST(Saddle, two_that_would_be_one_are_refused) {
  const SaddleOption two = option(choose_saddle(drop_in(), serving({swinging(0)}), limits), SaddleChoice::two_saddles);
  EXPECT_EQ(two.why_not, "No two saddles do better than one inside the limits of this bridge.");
}

TEST(Saddle, two_carry_a_caution_when_the_swing_is_small_or_too_large) {
  const auto cautions = [](double amplitude) {
    HandMade low = swinging(amplitude);
    low.bass_mm -= 0.5;  // a guitar that needs a saddle in any case
    low.treble_mm -= 0.5;
    return option(choose_saddle(drop_in(), serving({low}), limits), SaddleChoice::two_saddles).cautions;
  };
  EXPECT_TRUE(says(cautions(0.18), "under 0.40 mm one saddle is usual"));
  EXPECT_TRUE(says(cautions(0.85), "care of the air, or the structure, comes before saddles"));
}

TEST(Saddle, the_lower_of_two_keeps_two_millimetres) {
  SaddleRequest request = drop_in();
  request.bridge.break_angle = degrees(40);
  request.bridge.exposure_bass = request.bridge.exposure_treble = mm(2.2);
  const SaddleOption two = option(choose_saddle(request, serving({swinging(0.7)}), limits), SaddleChoice::two_saddles);
  for (const SaddleToMake& made : two.saddles) EXPECT_GE(in_mm(made.exposure_bass), 2.0 - 1e-9);
}

// ---- the room ----

/// A room whose dry half can be filled in: at a floor f the lower half of the swing shrinks as f nears 0.5.
YearToServe drying_room(double amplitude_mm) {
  YearToServe year = serving({swinging(amplitude_mm)});
  year.kept_above = [amplitude_mm](RelativeHumidity floor) {
    YearPaths paths = testing::hand_made_year({swinging(amplitude_mm)});
    const double lowest_mm = -amplitude_mm * (0.5 - in_fraction(floor)) / 0.25;
    for (YearPath& path : paths.paths) {
      for (double& height : path.bass_mm) height = std::max(height, 2.4 + lowest_mm);
      for (double& height : path.treble_mm) height = std::max(height, 1.9 + lowest_mm);
    }
    return paths;
  };
  for (int t = 0; t < 365; ++t) {
    year.relative_humidity[static_cast<std::size_t>(t)] = 0.5 + 0.25 * testing::season(t, 365);
  }
  return year;
}

TEST(Saddle, keeps_the_room_at_the_least_humidity_that_serves) {
  const YearToServe year = drying_room(0.75);
  const SaddleOption room = option(choose_saddle(drop_in(), year, limits), SaddleChoice::humid_room);
  ASSERT_TRUE(room.possible) << room.why_not;
  const double kept = room.keep_relative_humidity.value();
  EXPECT_LE(room.days.low_bass.median, limits.few_days);
  EXPECT_LE(room.days.high_bass.median, limits.few_days);
  // One step drier does not serve.
  SaddleLimits drier = limits;
  drier.room_humidity_last = kept - limits.room_humidity_step;
  const SaddleOption dry = option(choose_saddle(drop_in(), year, drier), SaddleChoice::humid_room);
  EXPECT_TRUE(says(dry.cautions, "Even at 40 % one side would stay outside its range: at 40 % on "));
}

TEST(Saddle, says_from_when_to_when_the_room_needs_it) {
  const SaddleOption room = option(choose_saddle(drop_in(), drying_room(0.75), limits), SaddleChoice::humid_room);
  // The room is at 50 - 25 cos(2 pi (t + 1/2)/365) percent: under 45 to t = 79 and from t = 285, counted from 15
  // January.
  const std::string title = room.title.substr(0, room.title.find(", and"));
  EXPECT_EQ(title, "Keep the room at 45 % or more from about 27 October to 4 April");
  EXPECT_TRUE(says(room.cautions, "wets whatever is colder than"));
}

TEST(Saddle, wants_no_humidifier_where_one_saddle_serves) {
  const SaddleOption room = option(choose_saddle(drop_in(), drying_room(0.2), limits), SaddleChoice::humid_room);
  EXPECT_EQ(
      room.why_not,
      "Not needed for the strings: one saddle serves the room as it is, with no side outside its range for more than "
      "10 days.");
  EXPECT_FALSE(room.keep_relative_humidity.has_value());
}

TEST(Saddle, knows_a_room_that_is_never_dry) {
  YearToServe year = serving({swinging(0.75)});
  year.relative_humidity.assign(365, 0.6);
  const SaddleOption room = option(choose_saddle(drop_in(), year, limits), SaddleChoice::humid_room);
  EXPECT_EQ(room.why_not, "The room is never drier than 50 % as it is: a humidifier changes nothing.");
}

// ---- the neck ----

TEST(Saddle, turns_the_neck_when_one_saddle_would_be_too_low) {
  SaddleRequest request = drop_in();
  request.bridge.break_angle.reset();
  request.bridge.exposure_bass = mm(2.4);
  request.bridge.exposure_treble = mm(2.2);
  const SaddleResult result =
      choose_saddle(request, serving({{.bass_mm = 3.6, .treble_mm = 3.1, .level_sd_mm = 0.05}}), limits);
  const SaddleOption& neck = option(result, SaddleChoice::neck_angle);
  ASSERT_TRUE(neck.possible) << neck.why_not;
  // 1.2 mm too high at fret 12 is 2.4 mm of saddle: it would vanish in the bridge. Back to 3.25 and 2.75 mm, the middle
  // of the usual, is a rise of (3.25 + 2.4) / 2 = 3.0 mm to what a file holds, half of 3.25 + 2.75 - 0.0 + 0.2.
  const double rise = 3.1;
  EXPECT_NEAR(in_mm(*neck.heel_removal), rise * 95 / (645 * std::exp2(-14 / 12.0)), 1e-6);
  EXPECT_NEAR(in_degrees(*neck.neck_turn), std::atan(rise / (645 * std::exp2(-14 / 12.0))) * 180 / std::numbers::pi,
              1e-6);
  EXPECT_NEAR(in_mm(neck.saddles.at(0).exposure_bass + neck.saddles[0].exposure_treble) / 2, 3.0, 0.03);
  EXPECT_NEAR(in_mm(neck.set_bass_today), 2.4, 0.03) << "the action is kept";
  EXPECT_EQ(result.best, static_cast<int>(SaddleChoice::neck_angle));
  EXPECT_FALSE(neck.reversible);
  EXPECT_TRUE(
      says(neck.cautions, "Each 0.10 mm of error at the heel cap is 0.30 mm at the saddle and 0.15 mm at fret 12."));
  EXPECT_TRUE(says(neck.cautions, "Only after season, relief"));
}

TEST(Saddle, offers_the_very_neck_that_the_question_of_the_neck_gives) {
  SaddleRequest request = drop_in();
  request.bridge.break_angle.reset();
  for (const double exposure_mm : {2.4, 2.0, 1.7}) {
    request.bridge.exposure_bass = mm(exposure_mm);
    request.bridge.exposure_treble = mm(exposure_mm - 0.2);
    const YearToServe year = serving({{.bass_mm = 3.6, .treble_mm = 3.2, .level_sd_mm = 0.05}});
    const SaddleOption neck = option(choose_saddle(request, year, limits), SaddleChoice::neck_angle);
    ASSERT_TRUE(neck.possible) << neck.why_not;
    const NeckNeed need = neck_need(SaddleCase(request, year, limits));
    NeckAngleRequest asked;
    asked.bass = need.bass;
    asked.treble = need.treble;
    asked.exposure_sd = request.bridge.exposure_sd;
    asked.scale_length = request.scale_length;
    asked.saddle_setback = request.saddle_setback;
    asked.body_joint_fret = request.body_joint_fret;
    asked.heel_depth = request.heel_depth;
    const NeckAngleResult alone =
        neck_angle(asked, neck_limits(testing::repository_file("data/neck_limits.csv")), mm(limits.heel_error), {});
    EXPECT_EQ(alone.verdict, NeckVerdict::called_for);
    EXPECT_NEAR(in_mm(alone.heel.back().remove), in_mm(*neck.heel_removal), 1e-12);
    EXPECT_NEAR(in_degrees(alone.turn), in_degrees(*neck.neck_turn), 1e-12);
    EXPECT_NEAR(in_mm(alone.uncertainty) / alone.saddle_per_heel, in_mm(*neck.heel_removal_sd), 1e-12);
    EXPECT_NEAR(in_mm(alone.bass.exposure), in_mm(neck.saddles.at(0).exposure_bass), 1e-9);
    EXPECT_NEAR(in_mm(alone.treble.exposure), in_mm(neck.saddles.at(0).exposure_treble), 1e-9);
    EXPECT_TRUE(says(alone.cautions, neck.cautions.at(0).c_str()) || says(neck.cautions, alone.cautions.at(0).c_str()));
  }
}

TEST(Saddle, turns_no_neck_when_one_saddle_does) {
  const SaddleOption neck =
      option(choose_saddle(drop_in(), serving({swinging(0.3)}), limits), SaddleChoice::neck_angle);
  EXPECT_EQ(
      neck.why_not,
      "Not needed: one saddle would stand out by 3.20 mm at the bass and 2.80 mm at the treble, well over the least "
      "that a saddle stands out.");
  EXPECT_FALSE(neck.heel_removal.has_value());
}

TEST(Saddle, withholds_the_neck_verdict_within_twice_its_uncertainty) {
  SaddleRequest request = drop_in();
  request.bridge.break_angle.reset();
  request.bridge.exposure_bass = mm(2.4);
  request.bridge.exposure_treble = mm(2.2);
  const auto neck_at = [&](double high_mm, double level_sd_mm) {
    return option(
        choose_saddle(request,
                      serving({{.bass_mm = 2.4 + high_mm, .treble_mm = 1.9 + high_mm, .level_sd_mm = level_sd_mm}}),
                      limits),
        SaddleChoice::neck_angle);
  };
  // Lowering by 0.5 mm at fret 12 leaves 1.2 mm at the treble, 0.4 under the least; 2 x 0.1 mm of level is 0.2 of
  // saddle.
  EXPECT_TRUE(neck_at(0.6, 0.02).possible);
  const SaddleOption near = neck_at(0.5, 0.15);
  EXPECT_FALSE(near.possible);
  EXPECT_EQ(near.why_not,
            "No verdict: one saddle would stand out by 1.40 mm at the bass and 1.20 mm at the treble, too near the "
            "least for an uncertainty of 0.32 mm. Read it again in another season.");
}

TEST(Saddle, takes_nothing_off_the_heel_when_the_saddle_would_be_too_tall) {
  const SaddleOption neck =
      option(choose_saddle(drop_in(), serving({{.bass_mm = 0.9, .treble_mm = 0.5, .level_sd_mm = 0.05}}), limits),
             SaddleChoice::neck_angle);
  EXPECT_FALSE(neck.possible);
  EXPECT_TRUE(says({neck.why_not}, "taking wood off the heel would make it worse")) << neck.why_not;
}

// ---- limits ----

TEST(Saddle, limits_hold_it_back_and_it_says_so) {
  SaddleRequest request = drop_in();
  request.bridge.slot_depth = mm(3.5);
  const SaddleOption one =
      option(choose_saddle(request, serving({{.bass_mm = 1.9, .treble_mm = 1.9, .level_sd_mm = 0.05}}), limits),
             SaddleChoice::one_saddle);
  EXPECT_NEAR(in_mm(one.saddles.at(0).exposure_bass), 3.5, 1e-9);
  EXPECT_TRUE(one.possible);
  EXPECT_TRUE(says(one.cautions, "The year asks for 0.70 mm more at the bass than the depth of the slot allows."));
}

TEST(Saddle, no_height_between_two_limits_is_refused_in_a_line) {
  SaddleRequest request = drop_in();
  request.bridge.break_angle.reset();
  request.bridge.pin_to_saddle = mm(16);
  request.bridge.slot_depth = mm(4);
  const SaddleResult result = choose_saddle(request, serving({swinging(0.3)}), limits);
  const SaddleOption& one = option(result, SaddleChoice::one_saddle);
  EXPECT_FALSE(one.possible);
  EXPECT_EQ(one.why_not,
            "No height at the bass is both over 4.29 mm (the break angle) and under 4.00 mm (the depth of the slot).");
  EXPECT_EQ(result.best, 0);
}

TEST(Saddle, open_ended_over_an_eighth_of_an_inch_warns_of_splitting) {
  SaddleRequest request = drop_in();
  request.bridge.slot = SaddleSlot::open_ended;
  request.bridge.exposure_bass = request.bridge.exposure_treble = mm(3.0);
  request.bridge.slot_depth = mm(5);
  const SaddleOption one =
      option(choose_saddle(request, serving({{.bass_mm = 1.7, .treble_mm = 1.9, .level_sd_mm = 0.05}}), limits),
             SaddleChoice::one_saddle);
  EXPECT_GT(in_mm(one.saddles.at(0).exposure_bass), 3.175);
  EXPECT_TRUE(one.possible);
  EXPECT_TRUE(says(one.cautions, "can split the bridge"));
  request.bridge.slot_depth.reset();
  const SaddleOption unknown =
      option(choose_saddle(request, serving({{.bass_mm = 1.7, .treble_mm = 1.9, .level_sd_mm = 0.05}}), limits),
             SaddleChoice::one_saddle);
  EXPECT_LE(in_mm(unknown.saddles.at(0).exposure_bass), 3.175);
}

// ---- uncertainty, and the season first ----

TEST(Saddle, warns_where_the_reading_matters_more_than_the_cut) {
  YearToServe year = serving({{.bass_mm = 2.28, .treble_mm = 1.9, .level_sd_mm = 0.02}});
  const std::string caution =
      "The reading matters more than the cut: an error of 0.15 mm at fret 12 is 0.30 mm at the saddle, and the cut is "
      "0.25 mm. Read again with feelers before bone is removed.";
  year.reading_sd_mm = 0.15;
  EXPECT_TRUE(says(option(choose_saddle(drop_in(), year, limits), SaddleChoice::one_saddle).cautions, caution));
  year.reading_sd_mm = 0.03;
  EXPECT_FALSE(says(option(choose_saddle(drop_in(), year, limits), SaddleChoice::one_saddle).cautions,
                    "The reading matters more"));
}

TEST(Saddle, gives_the_spread_of_the_raise_and_of_what_to_set_today) {
  // Two guitars as likely: 2.3 and 2.5 mm on the mean, today 2.0 on both.
  YearToServe year = serving(
      {{.bass_mm = 2.3, .level_sd_mm = 0.1, .weight = 0.5}, {.bass_mm = 2.5, .level_sd_mm = 0.1, .weight = 0.5}});
  year.today.bass_mm = {2.0, 2.0};
  const SaddleOption one = option(choose_saddle(drop_in(), year, limits), SaddleChoice::one_saddle);
  EXPECT_NEAR(in_mm(one.saddles.at(0).raise_bass_sd), 2 * std::hypot(0.1, 0.1), 1e-6);
  EXPECT_NEAR(in_mm(one.set_today_sd), 0.1, 1e-6);
  EXPECT_NEAR(in_mm(one.set_bass_today), 2.0 + in_mm(one.saddles[0].raise_bass) / 2, 1e-9);
}

TEST(Saddle, tells_what_a_misreading_costs) {
  YearToServe year = serving({swinging(0.55)});
  const double careful = option(choose_saddle(drop_in(), year, limits), SaddleChoice::one_saddle).days_more_if_misread;
  year.reading_sd_mm = 0.2;
  const double careless = option(choose_saddle(drop_in(), year, limits), SaddleChoice::one_saddle).days_more_if_misread;
  EXPECT_GT(careful, 0);
  EXPECT_GT(careless, 4 * careful);
}

TEST(Saddle, leaves_everything_alone_when_something_else_moved) {
  YearToServe year = serving({{.bass_mm = 1.4, .treble_mm = 1.0, .level_sd_mm = 0.05}});
  EXPECT_EQ(choose_saddle(drop_in(), year, limits).best, static_cast<int>(SaddleChoice::one_saddle));
  ChangeShare change;
  change.from = testing::day("2025-08-20");
  change.to = testing::day("2026-01-15");
  change.something_else = true;
  change.verdict = "Half of the drop is not the season.";
  year.last_change = {change};
  const SaddleResult result = choose_saddle(drop_in(), year, limits);
  EXPECT_EQ(result.best, 0);
  EXPECT_TRUE(says({result.advice}, "something other than the season moved")) << result.advice;
  EXPECT_TRUE(says(result.cautions,
                   "SOMETHING ELSE MOVED between 20 Aug 2025 and 15 Jan 2026: no bone is cut until it is "
                   "found. Half of the drop is not the season."));
}

TEST(Saddle, asks_for_another_season_when_hardly_anything_was_learnt) {
  SaddleRequest request = drop_in();
  request.bridge.slot = SaddleSlot::open_ended;
  request.bridge.exposure_bass = request.bridge.exposure_treble = mm(2.9);
  request.bridge.slot_depth = mm(5);
  YearToServe year = serving({{.bass_mm = 2.95, .treble_mm = 2.4, .level_sd_mm = 0.1}});
  EXPECT_EQ(choose_saddle(request, year, limits).best, static_cast<int>(SaddleChoice::one_saddle));
  year.prior_weight = 0.95;
  const SaddleResult result = choose_saddle(request, year, limits);
  EXPECT_EQ(result.best, 0) << "filing an open-ended saddle cannot be undone";
  EXPECT_TRUE(says(result.cautions, "ONE MORE READING IN ANOTHER SEASON before bone is cut"));
  EXPECT_TRUE(result.advice.starts_with("Before bone is cut, one more reading in another season.")) << result.advice;
}

TEST(Saddle, minds_relief_and_the_wood_first) {
  YearToServe year = serving({swinging(0.1)});
  year.relief_mm = 0.5;
  year.moisture_today_percent = 5.1;
  SaddleRequest request = drop_in();
  request.bridge.break_angle.reset();
  request.bridge.slot_depth.reset();
  const auto cautions = choose_saddle(request, year, limits).cautions;
  EXPECT_TRUE(says(cautions,
                   "Relief was last read at 0.50 mm, outside 0.02..0.40 mm: set it before the saddle. 0.10 mm of it is "
                   "worth 0.24 mm (0.15 to 0.34) at fret 12."));
  EXPECT_TRUE(says(cautions, "The wood is at about 5.1 % today, outside 6 to 9 %"));
  EXPECT_TRUE(says(cautions, "The break angle was not measured"));
  EXPECT_TRUE(says(cautions, "The slot's depth is not known"));
  year.relief_mm.reset();
  EXPECT_TRUE(says(choose_saddle(request, year, limits).cautions, "Relief was not read"));
}

TEST(Saddle, warns_of_a_room_dry_enough_to_crack_a_top) {
  YearToServe year = serving({swinging(0.1)});
  year.relative_humidity[10] = 0.24;
  EXPECT_TRUE(says(choose_saddle(drop_in(), year, limits).cautions, "24 %"));
}

TEST(Saddle, answers_the_same_twice) {
  const YearToServe year = serving({swinging(0.6)});
  EXPECT_EQ(choose_saddle(drop_in(), year, limits).advice, choose_saddle(drop_in(), year, limits).advice);
}

/// A neck with a rod that follows the usual figure, on a guitar whose floor falls with relief as the strings' motion
/// makes it (docs/models/clearance.md).
struct WithRod {
  SaddleRequest request = drop_in();
  YearToServe year;

  WithRod(double relief_mm, double bass_mm, double treble_mm)
      : year(serving({{.bass_mm = bass_mm, .treble_mm = treble_mm, .level_sd_mm = 0.05}})) {
    request.rod = RodFigure{};
    const auto floor = [](double relief, double lowest_bass, double lowest_treble) {
      return FloorAtRelief{mm(relief), mm(lowest_bass), mm(lowest_treble)};
    };
    request.limits.floors = {floor(0, 2.3, 1.8), floor(0.1, 2.05, 1.55), floor(0.2, 1.8, 1.3), floor(0.4, 1.9, 1.4)};
    request.limits.lowest_bass = mm(floor_at(request.limits.floors, relief_mm).bass_mm);
    request.limits.lowest_treble = mm(floor_at(request.limits.floors, relief_mm).treble_mm);
    year.relief_mm = relief_mm;
    for (YearPath& path : year.home.paths) path.above_reference_percent.assign(365, 0.0);
    let_floor_move(year.home, {.readings = 1, .level_mm = relief_mm, .level_variance = 1e-4}, request.limits);
  }
};

TEST(Saddle, turns_the_rod_of_a_neck_that_is_too_straight_before_it_makes_a_saddle) {
  const WithRod straight(0.1, 1.95, 1.45);  // 0.1 mm under what it needs
  const SaddleResult result = choose_saddle(straight.request, straight.year, limits);
  const SaddleOption& turned = option(result, SaddleChoice::turn_rod);
  EXPECT_EQ(result.best, static_cast<int>(SaddleChoice::turn_rod)) << result.advice;
  ASSERT_TRUE(turned.relief_to_set.has_value());
  EXPECT_GE(in_mm(*turned.relief_to_set), 0.2);
  EXPECT_LE(in_mm(*turned.relief_to_set), 0.3);
  EXPECT_GT(option(result, SaddleChoice::leave).days.low_either.median, 300);
  EXPECT_LT(turned.days.low_either.median, 5);
  const double rise = 2.4 * (in_mm(*turned.relief_to_set) - 0.1);
  EXPECT_NEAR(in_mm(turned.set_bass_today), 1.95 + rise, 1e-9);
  EXPECT_TRUE(says(turned.cautions, "how this neck bends has not been read yet"));
  EXPECT_TRUE(says(turned.cautions, "A rod that turns hard is not forced"));
  EXPECT_TRUE(turned.reversible);
}

TEST(Saddle, does_not_bend_a_neck_straight_for_the_sake_of_the_action) {
  const WithRod high(0.2, 3.4, 2.9);
  const SaddleResult result = choose_saddle(high.request, high.year, limits);
  const SaddleOption& turned = option(result, SaddleChoice::turn_rod);
  EXPECT_GE(in_mm(turned.relief_to_set.value()), limits.rod_relief_least - 1e-9);
  EXPECT_EQ(result.best, static_cast<int>(SaddleChoice::one_saddle)) << result.advice;
}

TEST(Saddle, offers_no_turn_that_feelers_cannot_tell) {
  const WithRod right(0.2, 2.4, 1.9);
  const SaddleOption turned = option(choose_saddle(right.request, right.year, limits), SaddleChoice::turn_rod);
  EXPECT_FALSE(turned.possible);
  EXPECT_EQ(turned.why_not, "Not needed: no other relief from 0.08 to 0.30 mm serves the year better.");
}

TEST(Saddle, turns_no_rod_that_is_not_there_and_none_whose_relief_was_not_read) {
  WithRod none(0.1, 1.95, 1.45);
  none.request.rod.reset();
  EXPECT_EQ(option(choose_saddle(none.request, none.year, limits), SaddleChoice::turn_rod).why_not,
            "No rod that can be turned is recorded for this neck.");
  WithRod unread(0.1, 1.95, 1.45);
  unread.year.relief_mm.reset();
  EXPECT_EQ(option(choose_saddle(unread.request, unread.year, limits), SaddleChoice::turn_rod).why_not,
            "Read the relief first.");
}

TEST(Saddle, a_floor_that_rises_in_winter_asks_for_a_taller_saddle) {
  SaddleRequest request = drop_in();
  YearToServe still = serving({swinging(0.3)});
  YearToServe moving = still;
  for (YearPath& path : moving.home.paths) {
    for (int t = 0; t < 365; ++t) {
      path.floor_bass.rise_mm.push_back(0.25 * std::max(0.0, -testing::season(t, 365)));
      path.floor_bass.sd_mm.push_back(0.02);
    }
    path.floor_treble = path.floor_bass;
  }
  const auto raise = [&](const YearToServe& year) {
    const SaddleOption one = option(choose_saddle(request, year, limits), SaddleChoice::one_saddle);
    return in_mm(one.saddles.at(0).raise_bass);
  };
  EXPECT_GT(raise(moving), raise(still) + 0.1);
}

}  // namespace
}  // namespace tailblock

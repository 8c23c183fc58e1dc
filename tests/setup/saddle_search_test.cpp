#include "setup/saddle_search.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numbers>

#include "hand_made_year.h"

namespace tailblock {
namespace {

using testing::hand_made_year;
using testing::HandMade;

constexpr Stretch whole{0, 365};
const SaddleLimits limits = testing::usual_limits();

/// An end in the middle of a wide range of heights.
EndQuestion end_of(double floor_mm, double wanted_mm, double ceiling_mm) {
  return {.floor_mm = floor_mm,
          .ceiling_mm = ceiling_mm,
          .wanted_mm = wanted_mm,
          .action_per_saddle = 0.5,
          .exposure_mm = 3.2,
          .pull_to_usual = 20,
          .bounds = {.least_mm = 1.6,
                     .usual_least_mm = 1.6,
                     .usual_most_mm = 5,
                     .most_mm = 5,
                     .trade_least_mm = 1.6,
                     .least_because = {},
                     .most_because = {}}};
}

double best_raise_mm(const YearPaths& year, const EndQuestion& end, const SaddleLimits& rules = limits) {
  return best_steps(PooledAction(year, true, whole), end, rules).value() * rules.cut_precision;
}

SaddleLimits without_pulls() {
  SaddleLimits rules = limits;
  rules.pull_to_wanted = rules.least_gain = 0;
  return rules;
}

TEST(BestSteps, bring_a_year_that_never_moves_to_the_wanted_action) {
  // 0.25 mm too low at fret 12 is half a millimetre of saddle.
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 2.15}}), end_of(1.8, 2.4, 3.0)), 0.5, 1e-9);
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 2.60}}), end_of(1.8, 2.4, 3.0)), -0.4, 1e-9);
}

TEST(BestSteps, leave_an_end_alone_that_would_gain_hardly_anything) {
  // 0.1 mm from the wanted action costs 40 x 0.01 = 0.4 weighted days a year, 0.15 mm costs 0.9; half a day is let
  // pass.
  EXPECT_EQ(best_raise_mm(hand_made_year({{.bass_mm = 2.30}}), end_of(1.8, 2.4, 3.0)), 0);
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 2.25}}), end_of(1.8, 2.4, 3.0)), 0.3, 1e-9);
}

TEST(BestSteps, are_steps_of_what_a_file_holds) {
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 2.137}}), end_of(1.8, 2.4, 3.0)), 0.55, 1e-9);
}

TEST(BestSteps, stand_in_the_middle_of_a_range_that_is_even_on_both_sides) {
  for (const double swing : {0.2, 0.5, 0.9}) {  // under, near and over half the range
    SaddleLimits even = limits;
    even.weight_too_low = even.weight_too_high = 1;
    even.pull_to_wanted = 400;  // a swing over the range is dearest in the middle for the days alone
    const auto year =
        hand_made_year({{.bass_mm = 2.0, .swing_bass_mm = swing, .level_sd_mm = 0.1, .weather_sd_mm = 0.1}});
    EXPECT_NEAR(best_raise_mm(year, end_of(1.8, 2.4, 3.0), even), 0.8, 0.051) << swing;
  }
}

/// A sine of amplitude a dwells at its ends: with no pull and a wider swing than the range, the days are
/// N/pi [W_low acos((m + r - floor)/a) + W_high acos((ceiling - m - r)/a)], which is concave where both are inside, so
/// the best raise clears the dearer end exactly: m + r - a = floor. Derived here.
TEST(BestSteps, of_a_sine_wider_than_the_range_clear_the_dearer_end_exactly) {
  const double swing = 0.8, middle = 2.2, floor = 1.8;
  const double raise = best_raise_mm(hand_made_year({{.bass_mm = middle, .swing_bass_mm = swing}}),
                                     end_of(floor, 2.4, 3.0), without_pulls());
  EXPECT_NEAR(raise * 0.5, floor + swing - middle, 0.026);  // one step is 0.025 mm at fret 12
  SaddleLimits high_dearer = without_pulls();
  high_dearer.weight_too_low = 1;
  high_dearer.weight_too_high = 2;
  const double lowered = best_raise_mm(hand_made_year({{.bass_mm = middle, .swing_bass_mm = swing}}),
                                       end_of(floor, 2.4, 3.0), high_dearer);
  EXPECT_NEAR(lowered * 0.5, 3.0 - swing - middle, 0.026);
}

TEST(BestSteps, are_absent_when_the_bounds_leave_no_height) {
  EndQuestion end = end_of(1.8, 2.4, 3.0);
  end.bounds.least_mm = 4;
  end.bounds.most_mm = 3.9;
  EXPECT_FALSE(best_steps(PooledAction(hand_made_year({{}}), true, whole), end, limits).has_value());
}

TEST(BestSteps, stay_inside_the_bounds_and_reach_a_limit_exactly) {
  EndQuestion end = end_of(1.8, 2.4, 3.0);
  end.bounds.most_mm = 3.5;
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 1.5}}), end), 0.3, 1e-9);
  end.bounds.least_mm = 2.9;
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 3.5}}), end), -0.3, 1e-9);
}

TEST(BestSteps, leave_the_usual_exposure_only_when_it_saves_days) {
  EndQuestion end = end_of(1.8, 2.4, 3.0);
  end.bounds.usual_most_mm = 3.4;
  end.pull_to_usual = 20;
  EXPECT_NEAR(best_raise_mm(hand_made_year({{.bass_mm = 2.25, .level_sd_mm = 0.05}}), end), 0.2, 1e-9);
  EXPECT_GT(best_raise_mm(hand_made_year({{.bass_mm = 1.6, .level_sd_mm = 0.05}}), end), 0.5);
}

// ---- against the slow, obvious search ----

struct AnyYear {
  YearPaths year;
  SaddleQuestion question;
};

AnyYear any_year() {
  const auto tenths = [](int low, int high) { return *rc::gen::inRange(low, high) / 10.0; };
  const auto hundredths = [](int low, int high) { return *rc::gen::inRange(low, high) / 100.0; };
  const double swing = hundredths(0, 90);
  HandMade first{.bass_mm = 1.6 + tenths(0, 14),
                 .treble_mm = 1.2 + tenths(0, 12),
                 .swing_bass_mm = swing,
                 .swing_treble_mm = 0.8 * swing,
                 .level_sd_mm = hundredths(5, 25),
                 .weather_sd_mm = hundredths(3, 15),
                 .weight = 0.6};
  HandMade second = first;
  second.swing_bass_mm *= 1.5;
  second.swing_treble_mm *= 1.4;
  second.bass_mm += 0.05;
  second.weight = 0.4;
  EndQuestion treble = end_of(1.3, 1.9, 2.5);
  treble.exposure_mm = 2.6;
  return {hand_made_year({first, second}), {end_of(1.8, 2.4, 3.0), treble}};
}

/// Weighted days of one end, one error function a day and hypothesis, through a stretch.
double plain_cost(const YearPaths& year, bool bass, const EndQuestion& end, Stretch stretch, int steps) {
  double low = 0, high = 0, squares = 0, days = 0;
  const double raised = steps * limits.cut_precision * end.action_per_saddle;
  for (const YearPath& path : year.paths) {
    for_each_day(stretch, year.count, [&](std::size_t t) {
      const double mean = (bass ? path.bass_mm : path.treble_mm)[t] + raised;
      const double sd = std::hypot(bass ? path.level_sd_bass_mm : path.level_sd_treble_mm,
                                   (bass ? path.weather_sd_bass_mm : path.weather_sd_treble_mm)[t]);
      low += path.weight * std::erfc((mean - end.floor_mm) / sd / std::numbers::sqrt2) / 2;
      high += path.weight * std::erfc((end.ceiling_mm - mean) / sd / std::numbers::sqrt2) / 2;
      squares += path.weight * ((mean - end.wanted_mm) * (mean - end.wanted_mm) + sd * sd);
      days += path.weight;
    });
  }
  const double exposure = end.exposure_mm + steps * limits.cut_precision;
  const double out = std::max({0.0, end.bounds.usual_least_mm - exposure, exposure - end.bounds.usual_most_mm});
  return limits.weight_too_low * low + limits.weight_too_high * high + limits.pull_to_wanted * squares / 365 +
         end.pull_to_usual * out * days / 365;
}

double plain_best_cost(const YearPaths& year, bool bass, const EndQuestion& end, Stretch stretch) {
  double best = 1e300;
  for (int steps = -200; steps <= 200; ++steps) {
    const double exposure = end.exposure_mm + steps * limits.cut_precision;
    if (exposure < end.bounds.least_mm - 1e-9 || exposure > end.bounds.most_mm + 1e-9) continue;
    best = std::min(best, plain_cost(year, bass, end, stretch, steps));
  }
  return best;
}

RC_GTEST_PROP(BestSteps, cost_no_more_than_the_exhaustive_search_finds, ()) {
  const AnyYear any = any_year();
  SaddleLimits any_gain = limits;
  any_gain.least_gain = 0;
  for (const bool bass : {true, false}) {
    const EndQuestion& end = bass ? any.question.bass : any.question.treble;
    const int fast = best_steps(PooledAction(any.year, bass, whole), end, any_gain).value();
    const double found = plain_cost(any.year, bass, end, whole, fast);
    // In weighted days: 0.3 for the heap's own 0.1 a threshold, and what is let pass for leaving the saddle alone.
    const double let_pass = 0.3 + (fast == 0 ? limits.least_gain : 0);
    RC_ASSERT(found < plain_best_cost(any.year, bass, end, whole) + let_pass);
  }
}

RC_GTEST_PROP(BestSteps, never_raise_less_when_the_player_needs_more_height, ()) {
  AnyYear any = any_year();
  const PooledAction action(any.year, true, whole);
  const int before = best_steps(action, any.question.bass, limits).value();
  any.question.bass.floor_mm += 0.1;
  any.question.bass.wanted_mm += 0.1;
  any.question.bass.ceiling_mm += 0.1;
  RC_ASSERT(best_steps(action, any.question.bass, limits).value() >= before);
}

/// Every pair of dates a week apart, each part with its own exhaustive search: the dates, too, are nearly the best.
TEST(TwoSaddles, cost_hardly_more_than_every_pair_of_dates_searched_through) {
  const auto year = hand_made_year({{.bass_mm = 2.2,
                                     .treble_mm = 1.8,
                                     .swing_bass_mm = 0.7,
                                     .swing_treble_mm = 0.6,
                                     .level_sd_mm = 0.12,
                                     .weather_sd_mm = 0.08}});
  EndQuestion treble = end_of(1.3, 1.9, 2.5);
  treble.exposure_mm = 2.8;
  const SaddleQuestion question{end_of(1.8, 2.4, 3.0), treble};
  const auto both = [&](Stretch stretch) {
    return plain_best_cost(year, true, question.bass, stretch) + plain_best_cost(year, false, question.treble, stretch);
  };
  double best = 1e300;
  for (int from = 0; from < 364; from += 28) {
    for (int until = from + 56; until <= 364 && until - from <= 364 - 56; until += 28) {
      best = std::min(best, both({from, until}) + both({until % 365, from}));
    }
  }
  const auto two = best_two_saddles(year, question, limits);
  ASSERT_TRUE(two.has_value());
  const double found = both(two->taller.stretch) + both(two->lower.stretch);
  EXPECT_LT(found, best + 0.5);
}

TEST(TwoSaddles, put_the_taller_one_in_through_the_dry_half) {
  const auto year = hand_made_year({{.swing_bass_mm = 0.6, .swing_treble_mm = 0.5, .weather_sd_mm = 0.02}});
  EndQuestion treble = end_of(1.3, 1.9, 2.5);
  SaddleLimits even = limits;
  even.weight_too_low = even.weight_too_high;
  const auto two = best_two_saddles(year, {end_of(1.8, 2.4, 3.0), treble}, even);
  ASSERT_TRUE(two.has_value());
  // The year is lowest at its turn: the taller saddle comes in about day 274 and goes out about day 91.
  EXPECT_NEAR(two->taller.stretch.from, 274, 10);
  EXPECT_NEAR(two->taller.stretch.until, 91, 10);
  EXPECT_GT(two->taller.steps.bass, two->lower.steps.bass);
  // Each half of a sine has its mean 2/pi of the amplitude off the middle: 0.382 mm at fret 12, 0.764 mm at the saddle.
  EXPECT_NEAR(two->taller.steps.bass * limits.cut_precision, 2 * 0.6 * 2 / std::numbers::pi, 0.06);
  EXPECT_NEAR(two->lower.steps.bass * limits.cut_precision, -2 * 0.6 * 2 / std::numbers::pi, 0.06);
}

TEST(TwoSaddles, are_absent_in_a_year_that_does_not_move_or_is_too_short) {
  const SaddleQuestion question{end_of(1.8, 2.4, 3.0), end_of(1.3, 1.9, 2.5)};
  EXPECT_FALSE(best_two_saddles(hand_made_year({{.level_sd_mm = 0.1}}), question, limits).has_value());
  EXPECT_FALSE(best_two_saddles(hand_made_year({{.swing_bass_mm = 0.5}}, 100), question, limits).has_value());
}

}  // namespace
}  // namespace tailblock

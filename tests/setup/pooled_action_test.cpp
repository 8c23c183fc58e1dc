#include "setup/pooled_action.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numbers>

#include "hand_made_year.h"

namespace tailblock {
namespace {

using testing::hand_made_year;
using testing::HandMade;

constexpr Stretch whole{0, 365};

/// The slow, obvious count: every day under every hypothesis, one error function each.
double plain_days_under(const YearPaths& year, bool bass, Stretch stretch, double height_mm) {
  double days = 0;
  for (const YearPath& path : year.paths) {
    for (int t = 0; t < year.count; ++t) {
      const bool in = stretch.from < stretch.until ? stretch.from <= t && t < stretch.until
                                                   : t < stretch.until || t >= stretch.from;
      if (!in) continue;
      const auto i = static_cast<std::size_t>(t);
      const double level = bass ? path.level_sd_bass_mm * path.level_loading_bass[i]
                                : path.level_sd_treble_mm * path.level_loading_treble[i];
      const double weather = bass ? path.weather_sd_bass_mm[i] : path.weather_sd_treble_mm[i];
      const double deviations = (height_mm - (bass ? path.bass_mm[i] : path.treble_mm[i])) / std::hypot(level, weather);
      days += path.weight * std::erfc(-deviations / std::numbers::sqrt2) / 2;
    }
  }
  return days;
}

/// Two hypotheses of different response, level and spread, whose level is worth less in the first weeks.
YearPaths mixed_year(double swing_mm, double level_mm, double weather_mm) {
  YearPaths year = hand_made_year({{.swing_bass_mm = swing_mm,
                                    .swing_treble_mm = 0.8 * swing_mm,
                                    .level_sd_mm = level_mm,
                                    .weather_sd_mm = weather_mm,
                                    .weight = 0.7},
                                   {.bass_mm = 2.33,
                                    .swing_bass_mm = 1.6 * swing_mm,
                                    .swing_treble_mm = 1.1 * swing_mm,
                                    .level_sd_mm = 1.3 * level_mm,
                                    .weather_sd_mm = 1.7 * weather_mm,
                                    .weight = 0.3}});
  for (YearPath& path : year.paths) {
    for (std::size_t t = 0; t < 60; ++t) path.level_loading_bass[t] = 0.5 + static_cast<double>(t) / 120;
  }
  return year;
}

RC_GTEST_PROP(PooledAction, counts_as_the_plain_sum_does, ()) {
  const double swing = *rc::gen::inRange(0, 100) / 100.0;
  const double level = 0.05 + *rc::gen::inRange(0, 30) / 100.0;
  const double weather = 0.02 + *rc::gen::inRange(0, 20) / 100.0;
  const int from = *rc::gen::inRange(0, 365);
  const int until = *rc::gen::inRange(1, 366);
  const bool bass = *rc::gen::arbitrary<bool>();
  const YearPaths year = mixed_year(swing, level, weather);
  const Stretch stretch{from, until};
  const PooledAction pooled(year, bass, stretch);
  for (double height = 0.5; height < 4.5; height += 0.0731) {
    const double deviation = pooled.days_under(height) - plain_days_under(year, bass, stretch, height);
    RC_ASSERT(std::abs(deviation) < 0.1);
  }
}

TEST(PooledAction, counts_days_under_a_moving_floor_and_over_a_ceiling_that_stands) {
  YearPaths year = mixed_year(0.4, 0.1, 0.1);
  YearPaths less_rise = year;  // the same count by lowering the strings by what the floor rises
  for (std::size_t i = 0; i < year.paths.size(); ++i) {
    for (std::size_t t = 0; t < 365; ++t) {
      const double rise = 0.2 - 0.0007 * static_cast<double>(t);
      year.paths[i].floor_bass.rise_mm.push_back(rise);
      year.paths[i].floor_bass.sd_mm.push_back(0.12);
      less_rise.paths[i].bass_mm[t] -= rise;
      less_rise.paths[i].weather_sd_bass_mm[t] = std::hypot(0.12, 0.7 * less_rise.paths[i].weather_sd_bass_mm[t]);
    }
    year.paths[i].floor_bass.weather_share = 0.7;
  }
  const PooledAction pooled(year, true, whole);
  for (double height = 1.2; height < 3.5; height += 0.1) {
    EXPECT_NEAR(pooled.days_under(height), plain_days_under(less_rise, true, whole, height), 0.1);
    EXPECT_NEAR(pooled.days_over(height), 365 - plain_days_under(year, true, whole, height), 0.1);
  }
}

TEST(PooledAction, knows_days_mean_and_variance_exactly) {
  const PooledAction action(hand_made_year({{.swing_bass_mm = 0.5, .level_sd_mm = 0.3, .weather_sd_mm = 0.4}}), true,
                            whole);
  EXPECT_NEAR(action.days(), 365, 1e-9);
  EXPECT_NEAR(action.mean_mm(), 2.4, 1e-12);
  EXPECT_NEAR(action.variance_mm2(), 0.5 * 0.5 / 2 + 0.3 * 0.3 + 0.4 * 0.4, 1e-9);
}

TEST(PooledAction, of_a_year_that_never_moves_is_a_step) {
  const PooledAction action(hand_made_year({{}}), true, whole);
  EXPECT_NEAR(action.days_under(2.389), 0, 1e-9);
  EXPECT_NEAR(action.days_under(2.411), 365, 1e-9);
  EXPECT_NEAR(action.days_over(2.389), 365, 1e-9);
}

TEST(PooledAction, of_a_sine_follows_the_arc_cosine) {
  const PooledAction action(hand_made_year({{.swing_bass_mm = 0.6}}), true, whole);
  for (const double height :
       {1.9, 2.1, 2.4, 2.7, 2.95}) {  // an eighth of a day's step of the sampled sine, and the grid
    const double expected = 365 * (1 - std::acos((height - 2.4) / 0.6) / std::numbers::pi);
    EXPECT_NEAR(action.days_under(height), expected, 1.2) << height;
  }
}

TEST(PooledAction, takes_a_stretch_over_the_turn_of_the_year) {
  const YearPaths year = hand_made_year({{.swing_bass_mm = 0.6}});
  const PooledAction winter(year, true, {300, 60});
  const PooledAction summer(year, true, {60, 300});
  EXPECT_NEAR(winter.days(), 125, 1e-9);
  EXPECT_NEAR(summer.days(), 240, 1e-9);
  EXPECT_LT(winter.mean_mm(), summer.mean_mm());
}

TEST(NormalDays, agree_with_the_heap_when_a_week_is_one_normal) {
  const YearPaths year = hand_made_year({{.level_sd_mm = 0.15, .weather_sd_mm = 0.1}});
  const PooledAction pooled(year, true, {7, 14});
  const NormalDays normal(year, true, {7, 14});
  EXPECT_NEAR(normal.days(), 7, 1e-12);
  for (const double height : {2.0, 2.3, 2.5}) EXPECT_NEAR(normal.days_under(height), pooled.days_under(height), 0.01);
}

}  // namespace
}  // namespace tailblock

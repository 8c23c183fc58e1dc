#include "season/moving_floor.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <random>

#include "drawn_year.h"
#include "season/outside.h"
#include "season_bench.h"

namespace tailblock {
namespace {

using testing::day;
using testing::read;
using testing::read_both;
using testing::season_tables;

template <class Ask>
void expect_refused(Ask ask, const std::string& line) {
  try {
    ask();
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

const Date today = day("2026-02-15");

FloorAtRelief floor(double relief_mm, double bass_mm, double treble_mm) {
  return {.relief = mm(relief_mm), .lowest_bass = mm(bass_mm), .lowest_treble = mm(treble_mm)};
}

/// More relief lets the strings come lower, by 2.4 mm a mm at the bass and 2 mm at the treble.
const std::vector<FloorAtRelief> falling{floor(-0.2, 3.15, 2.60), floor(0.8, 0.75, 0.60)};

/// Two years of visits to a guitar whose relief follows its moisture by so much, read with fine feelers.
ResponseRequest relief_follows(double mm_per_percent) {
  ResponseRequest request;
  request.today = today;
  request.home = testing::heated_home("Washington-Dulles VA", 2, 0);
  for (const char* date : {"2024-02-10", "2024-08-12", "2025-02-12", "2025-08-14", "2026-02-14"}) {
    const bool summer = std::string_view(date).substr(5, 2) == "08";
    read_both(request, day(date), summer ? 2.5 : 2.1, summer ? 1.9 : 1.6, 0.05);
    // Wood in this home stands about 2 % apart between those two months.
    request.readings.push_back(read(day(date), HeightKind::relief, 0.2 + (summer ? 1 : -1) * mm_per_percent, 0.01));
  }
  return request;
}

TEST(MovingFloor, lies_on_straight_lines_between_the_given_ones_and_beyond_them) {
  const std::vector<FloorAtRelief> bent{floor(0, 2.4, 1.9), floor(0.2, 1.9, 1.5), floor(0.4, 2.1, 1.7)};
  const FloorLine half = floor_at(bent, 0.1);
  EXPECT_NEAR(half.bass_mm, 2.15, 1e-12);
  EXPECT_NEAR(half.treble_mm, 1.7, 1e-12);
  EXPECT_NEAR(half.bass_slope, -2.5, 1e-12);
  EXPECT_NEAR(floor_at(bent, -0.1).bass_mm, 2.65, 1e-12);
  EXPECT_NEAR(floor_at(bent, 0.5).bass_mm, 2.2, 1e-12);
}

TEST(MovingFloor, refuses_one_floor_and_floors_out_of_order) {
  expect_refused([] { (void)floor_at(std::vector{floor(0, 2, 2)}, 0); },
                 "limits.floors: 1 is outside 2..50, or none at all");
  expect_refused(
      [] {
        (void)floor_at(std::vector{floor(0.2, 2, 2), floor(0.1, 2, 2)}, 0);
      },
      "limits.floors[1].relief_mm: 0.1 mm does not rise over the one before it, 0.2 mm");
}

TEST(MovingFloor, relief_is_learnt_from_its_readings) {
  const ReliefBelief unread = calibrate(
                                  [] {
                                    ResponseRequest request = relief_follows(0);
                                    std::erase_if(request.readings, [](const HeightReading& reading) {
                                      return reading.kind == HeightKind::relief;
                                    });
                                    return request;
                                  }(),
                                  season_tables())
                                  .relief;
  EXPECT_EQ(unread.readings, 0);
  EXPECT_EQ(unread.mm_per_percent, 0);
  const ReliefBelief still = calibrate(relief_follows(0), season_tables()).relief;
  EXPECT_EQ(still.readings, 5);
  EXPECT_NEAR(still.mm_per_percent, 0, 0.003);
  EXPECT_NEAR(still.mean_mm(0), 0.2, 0.01);
  const ReliefBelief follows = calibrate(relief_follows(0.04), season_tables()).relief;
  EXPECT_GT(follows.mm_per_percent, 0.01);
  EXPECT_LT(follows.variance_mm2(0), unread.variance_mm2(0) / 20);
}

TEST(MovingFloor, work_on_the_neck_loosens_what_earlier_readings_said_and_a_saddle_does_not) {
  ResponseRequest request = relief_follows(0);
  request.changes.push_back({.date = day("2026-02-15"), .what = "saddle lowered", .moves_relief = false});
  const double after_saddle = calibrate(request, season_tables()).relief.variance_mm2(0);
  request.changes.back().moves_relief = true;
  const double after_rod = calibrate(request, season_tables()).relief.variance_mm2(0);
  EXPECT_GT(after_rod, after_saddle + 0.05);
}

TEST(MovingFloor, stands_still_when_the_relief_was_never_read) {
  ResponseRequest request = relief_follows(0);
  std::erase_if(request.readings, [](const HeightReading& one) { return one.kind == HeightKind::relief; });
  const Calibration calibration = calibrate(request, season_tables());
  YearPaths year = year_paths(calibration, request.home, today, 365);
  let_floor_move(year, calibration.relief, {.floors = falling});
  EXPECT_TRUE(year.paths.at(0).floor_bass.rise_mm.empty());
}

/// Days too low by plain drawing: in every draw the relief has a level, a response and the same weather as the strings.
TEST(MovingFloor, days_too_low_agree_with_plain_drawing) {
  constexpr int draws = 4000;
  for (const double mm_per_percent : {0.04, -0.03}) {
    const ResponseRequest request = relief_follows(mm_per_percent);
    const Calibration calibration = calibrate(request, season_tables());
    const ReliefBelief& relief = calibration.relief;
    const double lowest = floor_at(falling, 0.2).bass_mm;
    const ActionLimits limits{.lowest_bass = mm(lowest), .lowest_treble = mm(0), .floors = falling};
    YearPaths year = year_paths(calibration, request.home, today, 365);
    const Estimate at_rest = days_outside(year, limits).low_bass;
    let_floor_move(year, relief, limits);
    const Estimate moving = days_outside(year, limits).low_bass;

    std::mt19937_64 random(5);
    const testing::DrawnYear drawn = testing::drawn_year(calibration, request.home, 365, draws, random);
    std::normal_distribution<double> normal;
    std::vector<double> counts(draws, 0.0);
    double mean = 0;
    for (std::size_t i = 0; i < draws; ++i) {
      const double along = normal(random), across = normal(random);
      const double level_sd = std::sqrt(relief.level_variance);
      const double of_level = relief.covariance / level_sd;
      const double level = relief.level_mm + level_sd * along;
      const double response = relief.mm_per_percent + of_level * along +
                              std::sqrt(std::max(0.0, relief.response_variance - of_level * of_level)) * across;
      for (std::size_t d = 0; d < 365; ++d) {
        counts[i] += drawn.bass[d][i] < floor_at(falling, level + response * drawn.above_reference[d][i]).bass_mm;
      }
      mean += counts[i] / draws;
    }
    std::printf(
        "  %+.2f mm a percent: %.0f (%.0f to %.0f) days too low, drawn %.0f (%.0f to %.0f); floor at rest %.0f\n",
        mm_per_percent, moving.median, moving.low, moving.high, testing::quantile_of(counts, 0.5),
        testing::quantile_of(counts, 0.05), testing::quantile_of(counts, 0.95), at_rest.median);
    // As for a floor at rest (year_test): ten days of a year, where the count's own spread is taken as normal.
    EXPECT_NEAR(moving.median, testing::quantile_of(counts, 0.5), 10);
    EXPECT_NEAR(moving.low, testing::quantile_of(counts, 0.05), 10);
    EXPECT_NEAR(moving.high, testing::quantile_of(counts, 0.95), 10);
    EXPECT_GT(std::abs(moving.median - at_rest.median), 15) << "the floor moves the answer";
  }
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <random>

#include "season/learning.h"
#include "season/response_prior.h"
#include "season_bench.h"

namespace tailblock::testing {
namespace {

const Date august = day("2025-08-14");
const Date february = day("2026-02-15");

ResponseRequest asked(Date today = february) {
  return {.today = today,
          .design = {},
          .home = heated_home("Winnipeg MB", 3, 0.28),
          .readings = {},
          .changes = {},
          .kindred = {}};
}

/// Three years of good readings: summer 2.50, winter 2.00, treble 1.90 and 1.45.
ResponseRequest well_known() {
  ResponseRequest request = asked();
  for (const char* summer : {"2023-08-10", "2024-08-12", "2025-08-14"})
    read_both(request, day(summer), 2.50, 1.90, 0.05);
  for (const char* winter : {"2023-02-12", "2024-02-10", "2025-02-20"})
    read_both(request, day(winter), 2.00, 1.45, 0.05);
  return request;
}

ResponseResult answer(const ResponseRequest& request) { return response(request, season_tables()); }

double width(const Estimate& e) { return e.high - e.low; }

void same(const Estimate& a, const Estimate& b, double tolerance) {
  EXPECT_NEAR(a.median, b.median, tolerance);
  EXPECT_NEAR(a.low, b.low, tolerance);
  EXPECT_NEAR(a.high, b.high, tolerance);
}

TEST(Response, a_heated_home_of_a_cold_winter_drops_an_unread_mid_size_as_the_trade_sees) {
  // 0.35 to 0.7 mm: common practice, no source. Winnipeg, typical year (tests/published/climate.csv, read), 21 C,
  // 3 g/m3 gained indoors, never under 28 % (a small humidifier).
  const Estimate drop = answer(asked()).summer_to_winter_drop_mm;
  std::printf("  drop at fret 12: %.2f mm, 90 %% between %.2f and %.2f\n", drop.median, drop.low, drop.high);
  EXPECT_GT(drop.median, 0.35);
  EXPECT_LT(drop.median, 0.70);
  EXPECT_GT(drop.low, 0.2);  // wide, but not useless: a factor of about two either way
  EXPECT_LT(drop.high, 1.15);
}

TEST(Response, the_prior_is_that_of_its_body_size_and_bracing) {
  ResponseRequest request = asked();
  const double mid = answer(request).response_bass_mm_per_percent.median;
  const auto top_mm = [](BodySize size) {
    const TopMovements& rows = *season_tables().movements;
    return std::sqrt(rows.of(size, "x_braced").top_mm * rows.of(size, "x_scalloped").top_mm);
  };
  const auto top_part = [&] { return answer(request).first_guess.parts.at(0).value.median; };
  const double mid_top = top_part();
  request.design.body_size = BodySize::parlour;
  EXPECT_NEAR(top_part() / mid_top, top_mm(BodySize::parlour) / top_mm(BodySize::mid_size), 1e-9);
  request.design = {};
  request.design.bracing = Bracing::fan;
  EXPECT_LT(answer(request).response_bass_mm_per_percent.median, 0.75 * mid);
  request.design.bracing = Bracing::other;
  const Estimate other = answer(request).response_bass_mm_per_percent;
  EXPECT_NEAR(other.median, mid, 0.02 * mid);
  EXPECT_GT(width(other), 1.05 * width(answer(asked()).response_bass_mm_per_percent))
      << "a bracing that is not calculated";
}

TEST(Response, the_first_guess_says_what_it_assumed_and_its_parts_add_up) {
  const FirstGuess guess = answer(asked()).first_guess;
  EXPECT_EQ(guess.body_size, BodySize::mid_size);
  EXPECT_EQ(guess.bracing, Bracing::x_braced);
  EXPECT_EQ(guess.top_species, "Sitka spruce");
  EXPECT_EQ(guess.lower_bout_width, mm(385));
  EXPECT_EQ(guess.top_thickness, mm(2.7));
  ASSERT_EQ(guess.parts.size(), 6U);
  for (const GuessPart& part : guess.parts) {
    std::printf("  %-66s %7.4f (%.4f to %.4f) %s\n", part.what.c_str(), part.value.median, part.value.low,
                part.value.high, part.unit.c_str());
  }
  const double sum = guess.parts[0].value.median + guess.parts[1].value.median + guess.parts[2].value.median;
  // Medians do not add up as means do: a skewed sum lies a little above.
  EXPECT_NEAR(guess.parts[5].value.median / sum, 1, 0.03);
}

TEST(Response, kindred_instruments_sharpen_it_by_precision) {
  ResponseRequest request = asked();
  for (int i = 0; i < 200; ++i) request.kindred.push_back({.response_mm_per_percent = 0.12, .log_sd = 0.1});
  const double instrument_log_sd = response_prior(request.design, {}, season_tables()).instrument_log_sd;
  const Estimate found = answer(request).response_bass_mm_per_percent;
  // Many of them fix the kind's mean; what is left is the spread between instruments.
  EXPECT_NEAR(std::log(found.median), std::log(0.12), 0.02);
  EXPECT_NEAR(std::log(found.high / found.low) / (2 * 1.645), instrument_log_sd, 0.01);
}

TEST(Response, with_everything_else_fixed_the_level_is_the_precision_weighted_mean) {
  // Worked by hand. A home of constant air, so that the season says nothing: prior 2.4 +- 1 mm, readings 2.5 +- 0.1
  // and 2.4 +- 0.2 on one day, nothing shared: precision 1 + 100 + 25 = 126, mean (2.4 + 250 + 60)/126.
  SeasonPrior p = *season_tables().prior;
  p.set_sd = 0;
  p.drift_sd = 1e-4;
  p.drift = 0;
  p.logged_floor = 0.001;
  SeasonTables tables = season_tables();
  tables.prior = &p;
  ResponseRequest request = asked();
  request.home = HomeAir{};
  request.home.weather_sd_relative_humidity = 0;
  request.readings = {read(february, HeightKind::action12_bass, 2.5, 0.1),
                      read(february, HeightKind::action12_bass, 2.4, 0.2)};
  for (const Hypothesis& h : calibrate(request, tables).hypotheses) {
    EXPECT_NEAR(h.level_bass_mm, 312.4 / 126, 1e-6);
    EXPECT_NEAR(h.level_sd_bass_mm, 1 / std::sqrt(126.0), 1e-6);
  }
  EXPECT_NEAR(response(request, tables).prior_weight, 1, 0.01);
}

TEST(Response, given_lag_and_response_the_treble_is_a_linear_regression) {
  // Unknown level and ratio, y = level + ratio r x + error: normal equations of two unknowns with prior, by hand.
  SeasonPrior p = *season_tables().prior;
  p.set_sd = 0;
  p.drift = 0;
  p.drift_sd = 1e-4;
  p.logged_floor = 0.001;
  p.step_probability = 0;
  SeasonTables tables = season_tables();
  tables.prior = &p;
  ResponseRequest request = asked();
  request.home.weather_sd_relative_humidity = 0;
  const std::vector<std::pair<const char*, double>> readings{
      {"2025-02-10", 1.50}, {"2025-05-01", 1.71}, {"2025-08-14", 2.02}, {"2025-11-20", 1.62}, {"2026-02-15", 1.47}};
  for (const auto& [date, value] : readings) {
    request.readings.push_back(read(day(date), HeightKind::action12_treble, value, 0.1));
  }
  const Calibration calibration = calibrate(request, tables);
  const Learnt learnt = learn(request, tables);
  const double level_variance = p.level_sd * p.level_sd + p.level_side_sd * p.level_side_sd;
  for (const Hypothesis& h : calibration.hypotheses) {
    const auto node =
        std::find_if(learnt.lags.begin(), learnt.lags.end(), [&](const LagNode& one) { return one.lag == h.lag; });
    double a11 = 1 / level_variance, a12 = 0, a22 = 1 / (p.treble_ratio_sd * p.treble_ratio_sd);
    double b1 = p.level_treble * a11, b2 = p.treble_ratio * a22;
    for (const auto& [date, value] : readings) {
      const auto place = static_cast<std::size_t>(days_between(node->path.first, day(date)));
      const double x =
          h.response_mm_per_percent * (node->path.moisture_percent[place] - calibration.reference_moisture_percent);
      a11 += 100;
      a12 += 100 * x;
      a22 += 100 * x * x;
      b1 += 100 * value;
      b2 += 100 * x * value;
    }
    const double det = a11 * a22 - a12 * a12;
    EXPECT_NEAR(h.level_treble_mm, (b1 * a22 - b2 * a12) / det, 1e-5);
    EXPECT_NEAR(h.treble_ratio, (b2 * a11 - b1 * a12) / det, 1e-5);
    EXPECT_NEAR(h.level_sd_treble_mm, std::sqrt(a22 / det), 1e-5);
  }
}

TEST(Response, a_precise_gauge_and_many_visits_recover_the_truth) {
  SeasonPrior p = *season_tables().prior;
  p.set_sd = 0;
  SeasonTables tables = season_tables();
  tables.prior = &p;
  for (const double truth : {0.03, 0.08, 0.2}) {
    ResponseRequest request = asked();
    request.home.weather_sd_relative_humidity = 0;
    const AirSeries air = air_series(request.home, day("2023-01-01"), 1142);
    const WoodPath path = wood_path(air, typical_year_before(request.home, day("2023-01-01")), days(12));
    for (int i = 30; i < 1142; i += 45) {
      const double moved = truth * path.moisture_percent[static_cast<std::size_t>(i)];
      read_both(request, day("2023-01-01") + std::chrono::days(i), 1.5 + moved, 1.1 + 0.85 * moved, 0.002);
    }
    const ResponseResult result = response(request, tables);
    EXPECT_NEAR(result.response_bass_mm_per_percent.median / truth, 1, 0.03);
    EXPECT_NEAR(result.response_treble_mm_per_percent.median / truth, 0.85, 0.03);
    EXPECT_NEAR(result.lag_days.median / 12, 1, 0.2);
    EXPECT_LT(result.prior_weight, 0.01);
  }
}

TEST(Response, raising_every_reading_raises_the_level_and_nothing_else) {
  const ResponseResult before = answer(well_known());
  ResponseRequest request = well_known();
  for (HeightReading& reading : request.readings) reading.value += mm(0.3);
  const ResponseResult after = answer(request);
  // Only the wide prior of the level sees the difference.
  same(after.response_bass_mm_per_percent, before.response_bass_mm_per_percent,
       0.01 * width(before.response_bass_mm_per_percent));
  EXPECT_NEAR(after.action12_bass_today_mm.median - before.action12_bass_today_mm.median, 0.3, 0.003);
}

TEST(Response, neither_the_unit_nor_the_order_of_the_readings_matters) {
  const ResponseResult before = answer(well_known());
  ResponseRequest request = well_known();
  for (HeightReading& reading : request.readings) reading.value = inches(in_mm(reading.value) / 25.4);
  std::mt19937_64 random(5);
  std::shuffle(request.readings.begin(), request.readings.end(), random);
  const ResponseResult after = answer(request);
  same(after.response_bass_mm_per_percent, before.response_bass_mm_per_percent, 1e-9);
  same(after.action12_treble_today_mm, before.action12_treble_today_mm, 1e-9);
  EXPECT_EQ(after.last_change[0].verdict, before.last_change[0].verdict);
}

TEST(Response, a_reading_written_twice_counts_once) {
  ResponseRequest request = well_known();
  const ResponseResult before = answer(request);
  request.readings.push_back(request.readings.front());
  const ResponseResult after = answer(request);
  same(after.response_bass_mm_per_percent, before.response_bass_mm_per_percent, 1e-12);
  EXPECT_EQ(after.readings_used, before.readings_used);
}

TEST(Response, says_so_when_nothing_was_read) {
  const ResponseResult result = answer(asked());
  // Hypotheses that together weigh 0.1 % are dropped: of a normal prior cut at 3.29 sd that is 2 z phi(z) = 1.2 % of
  // its variance at the most.
  EXPECT_NEAR(result.prior_weight, 1, 0.012);
  EXPECT_EQ(result.readings_used, 0);
  EXPECT_TRUE(result.last_change.empty());
  EXPECT_NEAR(result.action12_bass_today_mm.median, 2.4 - 0.08 * 3.2, 0.15);
  const auto guesses = std::count_if(result.assumptions.begin(), result.assumptions.end(), [](const std::string& s) {
    return s.ends_with("has not been read: its height is a guess.");
  });
  EXPECT_EQ(guesses, 2);
}

TEST(Response, a_single_visit_sets_the_level_and_not_the_response) {
  ResponseRequest request = asked();
  read_both(request, february, 1.98, 1.45, 0.05);
  const ResponseResult result = answer(request);
  EXPECT_NEAR(result.action12_bass_today_mm.median, 1.98, 0.02);
  EXPECT_LT(width(result.action12_bass_today_mm), 4 * 0.1);
  EXPECT_GT(result.prior_weight, 0.9);
}

TEST(Response, two_visits_split_the_drop_of_a_winter) {
  ResponseRequest request = asked();
  read_both(request, august, 2.50, 1.90, 0.1);
  read_both(request, february, 1.98, 1.45, 0.1);
  const ResponseResult result = answer(request);
  ASSERT_EQ(result.last_change.size(), 1U);
  const ChangeShare& change = result.last_change[0];
  std::printf("  %s\n  %s\n", change.verdict.c_str(), change.better_reading.c_str());
  EXPECT_NEAR(change.measured_bass_mm.median, -0.52, 1e-9);
  EXPECT_LT(change.season_bass_mm.high, 0);
  EXPECT_FALSE(change.something_else);
  EXPECT_TRUE(change.verdict.starts_with("Down 0.52 mm on the bass since 14 Aug 2025; the season explains 0."))
      << change.verdict;
  EXPECT_TRUE(change.verdict.ends_with("Nothing else need have moved.")) << change.verdict;
}

TEST(Response, a_drop_that_earlier_winters_did_not_show_is_not_the_season) {
  ResponseRequest request = well_known();
  read_both(request, february, 1.45, 0.92, 0.05);
  const ChangeShare change = answer(request).last_change.at(0);
  std::printf("  %s\n", change.verdict.c_str());
  EXPECT_TRUE(change.something_else);
  EXPECT_GT(change.something_else_probability, 0.9);
  EXPECT_NEAR(change.season_bass_mm.median, -0.5, 0.08);
  EXPECT_NEAR(change.unexplained_bass_mm.median, -0.55, 0.1);
  EXPECT_TRUE(answer(request).flagged.empty()) << "a pair that moved together is not misread";
}

TEST(Response, one_misread_side_is_set_aside_and_not_obeyed) {
  for (const Date misread_on : {day("2024-08-12"), february}) {
    ResponseRequest request = well_known();
    read_both(request, february, 2.01, 1.46, 0.05);
    const ResponseResult right = answer(request);
    for (HeightReading& reading : request.readings) {
      if (reading.date == misread_on && reading.kind == HeightKind::action12_bass) reading.value += mm(0.8);
    }
    const ResponseResult result = answer(request);
    ASSERT_EQ(result.flagged.size(), 1U) << iso_date(misread_on);
    EXPECT_EQ(result.flagged[0].date, misread_on);
    EXPECT_EQ(result.flagged[0].kind, HeightKind::action12_bass);
    EXPECT_NEAR(in_mm(result.flagged[0].expected), in_mm(result.flagged[0].value) - 0.8, 0.1);
    EXPECT_NEAR(result.response_bass_mm_per_percent.median, right.response_bass_mm_per_percent.median,
                0.1 * right.response_bass_mm_per_percent.median);
    EXPECT_EQ(result.readings_used, right.readings_used - 1);
  }
}

TEST(Response, work_between_two_readings_of_a_day_is_not_a_misreading) {
  ResponseRequest request = well_known();
  const ResponseResult before = answer(request);
  read_both(request, february, 2.01, 1.46, 0.05);
  request.changes.push_back({.date = february,
                             .order = 1,
                             .what = "saddle lowered",
                             .action12_bass_change = mm(-0.4),
                             .action12_treble_change = mm(-0.3)});
  read_both(request, february, 1.61, 1.16, 0.05, 2);
  for (const bool known : {true, false}) {
    if (!known) request.changes[0].action12_bass_change.reset(), request.changes[0].action12_treble_change.reset();
    const ResponseResult result = answer(request);
    EXPECT_TRUE(result.flagged.empty());
    EXPECT_FALSE(result.last_change.at(0).something_else);
    EXPECT_NEAR(result.last_change[0].measured_bass_mm.median, -0.49, 1e-9) << "as found against as left";
    EXPECT_NEAR(result.action12_bass_today_mm.median, 1.61, 0.03);
    EXPECT_NEAR(result.response_bass_mm_per_percent.median, before.response_bass_mm_per_percent.median, 0.004);
  }
}

TEST(Response, recorded_work_between_two_visits_is_taken_out) {
  ResponseRequest request = asked();
  read_both(request, august, 2.50, 1.90, 0.05);
  request.changes.push_back({.date = day("2025-10-01"),
                             .order = 1,
                             .what = "new saddle",
                             .action12_bass_change = mm(0.5),
                             .action12_treble_change = mm(0.5)});
  read_both(request, february, 2.50, 1.95, 0.05);
  const ChangeShare change = answer(request).last_change.at(0);
  EXPECT_NEAR(change.measured_bass_mm.median, -0.5, 1e-9);
  EXPECT_FALSE(change.something_else);
  request.changes[0].action12_bass_change.reset();
  request.changes[0].action12_treble_change.reset();
  const ChangeShare unknown = answer(request).last_change.at(0);
  EXPECT_TRUE(unknown.verdict.find("work of unknown size") != std::string::npos) << unknown.verdict;
  EXPECT_NEAR(unknown.something_else_probability, season_tables().prior->step_probability, 0.02);
}

TEST(Response, an_earlier_move_that_nobody_recorded_is_found_and_kept_apart) {
  ResponseRequest request = asked();
  read_both(request, day("2023-02-12"), 2.60, 2.05, 0.05);
  read_both(request, day("2023-08-10"), 3.10, 2.50, 0.05);
  for (const char* summer : {"2024-08-12", "2025-08-14"}) read_both(request, day(summer), 2.50, 1.90, 0.05);
  for (const char* winter : {"2024-02-10", "2025-02-20", "2026-02-15"})
    read_both(request, day(winter), 2.00, 1.45, 0.05);
  const ResponseResult result = answer(request);
  EXPECT_TRUE(result.flagged.empty());
  EXPECT_TRUE(std::any_of(result.assumptions.begin(), result.assumptions.end(), [](const std::string& s) {
    return s.starts_with("Something moved between 10 Aug 2023 and 10 Feb 2024");
  }));
  EXPECT_NEAR(result.action12_bass_today_mm.median, 2.0, 0.05);
  EXPECT_FALSE(result.last_change.at(0).something_else);
}

TEST(Response, a_misread_relief_is_flagged_and_leaves_the_action_alone) {
  ResponseRequest request = well_known();
  const ResponseResult before = answer(request);
  for (const char* date : {"2023-02-12", "2023-08-10", "2024-02-10", "2024-08-12", "2025-08-14"}) {
    request.readings.push_back(read(day(date), HeightKind::relief, 0.2, 0.03));
  }
  EXPECT_TRUE(answer(request).flagged.empty());
  request.readings.back().value = mm(0.9);
  const ResponseResult result = answer(request);
  ASSERT_EQ(result.flagged.size(), 1U);
  EXPECT_EQ(result.flagged[0].kind, HeightKind::relief);
  same(result.response_bass_mm_per_percent, before.response_bass_mm_per_percent, 1e-9);
}

TEST(Response, a_hygrometer_log_sharpens_the_forecast) {
  ResponseRequest request = well_known();
  request.home.weather_sd_relative_humidity = 0.1;
  read_both(request, february, 2.00, 1.45, 0.03);
  const double without = width(answer(request).response_bass_mm_per_percent);
  const std::vector<HomeDay> air =
      home_days(request.home, day("2022-11-01"), days_between(day("2022-11-01"), february) + 1);
  for (std::size_t i = 0; i < air.size(); ++i) {
    request.home.log.push_back({.date = day("2022-11-01") + std::chrono::days(static_cast<int>(i)),
                                .temperature_c = air[i].temperature_c,
                                .relative_humidity = air[i].relative_humidity});
  }
  EXPECT_LT(width(answer(request).response_bass_mm_per_percent), 0.95 * without);
}

TEST(Response, two_hundred_readings_are_no_trouble) {
  ResponseRequest request = asked();
  for (int i = 0; i < 100; ++i) {
    const double season =
        0.25 * std::cos(2 * 3.14159265 *
                        (days_between(day("2016-08-01"), day("2016-08-01") + std::chrono::days(34 * i)) / 365.25));
    read_both(request, day("2016-08-01") + std::chrono::days(34 * i), 2.25 + season, 1.7 + 0.9 * season, 0.1);
  }
  const ResponseResult result = answer(request);
  EXPECT_EQ(result.readings_used, 200);
  EXPECT_TRUE(result.flagged.empty());
  EXPECT_LT(result.prior_weight, 0.05);
}

void refuses(const ResponseRequest& request, const std::string& line) {
  try {
    (void)answer(request);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(Response, refuses_what_lies_in_the_future_or_outside_reason) {
  ResponseRequest request = asked();
  request.readings = {read(day("2026-02-16"), HeightKind::action12_bass, 2, 0.1)};
  refuses(request, "readings[0].date: 2026-02-16 is after today, 2026-02-15");
  request = asked();
  request.changes = {{.date = day("2026-03-01"),
                      .order = 1,
                      .what = "",
                      .action12_bass_change = {},
                      .action12_treble_change = {},
                      .change_sd = mm(0.05)}};
  refuses(request, "changes[0].date: 2026-03-01 is after today, 2026-02-15");
  request = asked();
  request.readings = {read(february, HeightKind::action12_bass, 22, 0.1)};
  refuses(request, "readings[0].value_mm: 22 mm is outside -3..15 mm");
  request = asked();
  request.readings = {read(february, HeightKind::action12_bass, 2, 0)};
  refuses(request, "readings[0].gauge_sd_mm: 0 mm is outside 0.001..2 mm");
  request = asked();
  request.design.top_species = "balsa of the moon";
  EXPECT_THROW((void)answer(request), Refused);
}

}  // namespace
}  // namespace tailblock::testing

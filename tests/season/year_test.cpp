#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

#include "drawn_year.h"
#include "season_bench.h"

namespace tailblock::testing {
namespace {

const Date today = day("2026-02-15");

YearRequest asked() {
  return {.instrument = {.today = today,
                         .design = {},
                         .home = heated_home("Winnipeg MB", 3, 0.28),
                         .readings = {},
                         .changes = {},
                         .kindred = {}},
          .first = today,
          .count = 365,
          .limits = {}};
}

/// Read once, twice with rulers, or for years with feelers.
YearRequest read_for(int years) {
  YearRequest request = asked();
  if (years > 0) read_both(request.instrument, today, 1.98, 1.45, 0.1);
  if (years > 1) read_both(request.instrument, day("2025-08-14"), 2.50, 1.90, 0.1);
  for (int y = 2024; y > 2026 - years; --y) {
    read_both(request.instrument, day(std::to_string(y) + "-08-01"), 2.52, 1.92, 0.05);
    read_both(request.instrument, day(std::to_string(y) + "-02-01"), 2.02, 1.45, 0.05);
  }
  return request;
}

#ifdef __OPTIMIZE__
constexpr int draws = 100000;  // an error of the drawn quantiles of at most 0.3 % of the band
#else
constexpr int draws = 2000;
#endif

struct Deviation {
  double of_band = 0;          ///< largest, as a share of the day's 90 % band
  double standard_errors = 0;  ///< largest, in standard errors of the drawn quantile
};

/// One side against plain drawing, every seventh day. The error of a drawn quantile is sqrt(p (1 - p)/draws) over the
/// density there, which the mixture itself tells.
Deviation deviation(const YearPaths& paths, const ActionBand& band, bool bass,
                    std::vector<std::vector<double>>& drawn) {
  Deviation worst;
  for (std::size_t d = 0; d < drawn.size(); d += 7) {
    const std::array<std::pair<double, double>, 5> quantiles{{{0.05, band.low_mm[d]},
                                                              {0.25, band.lower_mm[d]},
                                                              {0.50, band.median_mm[d]},
                                                              {0.75, band.upper_mm[d]},
                                                              {0.95, band.high_mm[d]}}};
    for (const auto& [p, value] : quantiles) {
      const auto at = [&](double share) { return action_quantile_mm(paths, bass, static_cast<int>(d), share); };
      const double error = std::sqrt(p * (1 - p) / draws) * (at(p + 0.005) - at(p - 0.005)) / 0.01;
      const double off = std::abs(quantile_of(drawn[d], p) - value);
      worst.of_band = std::max(worst.of_band, off / (band.high_mm[d] - band.low_mm[d]));
      worst.standard_errors = std::max(worst.standard_errors, off / error);
    }
  }
  return worst;
}

TEST(Year, agrees_with_plain_drawing_of_the_same_model) {
  for (const int years : {0, 1, 2, 4}) {
    const YearRequest request = read_for(years);
    const YearResult result = year(request, season_tables());
    const Calibration calibration = calibrate(request.instrument, season_tables());
    const YearPaths paths = year_paths(calibration, request.instrument.home, today, 365);
    std::mt19937_64 random(11);
    DrawnYear drawn = drawn_year(calibration, request.instrument.home, 365, draws, random);
    for (const bool bass : {true, false}) {
      const Deviation worst =
          deviation(paths, bass ? result.bass : result.treble, bass, bass ? drawn.bass : drawn.treble);
      std::printf("  read for %d years, %s: largest deviation %.2f %% of the band, %.1f standard errors\n", years,
                  bass ? "bass" : "treble", 100 * worst.of_band, worst.standard_errors);
      EXPECT_LT(worst.standard_errors, 4.5);  // the largest of 265
      if (draws >= 100000) {
        EXPECT_LT(worst.of_band, 0.01);
      }
    }
  }
}

TEST(Year, days_outside_agree_with_plain_drawing) {
  YearRequest request = read_for(2);
  request.limits = ActionLimits{
      .lowest_bass = mm(2.05), .lowest_treble = mm(1.5), .highest_bass = mm(2.45), .highest_treble = mm(1.9)};
  const DaysOutside ours = year(request, season_tables()).days_outside.at(0);
  std::mt19937_64 random(12);
  const DrawnYear drawn =
      drawn_year(calibrate(request.instrument, season_tables()), request.instrument.home, 365, draws, random);
  std::array<std::vector<double>, 4> counts;
  counts.fill(std::vector<double>(draws, 0.0));
  for (std::size_t d = 0; d < 365; ++d) {
    for (std::size_t i = 0; i < static_cast<std::size_t>(draws); ++i) {
      const double bass = drawn.bass[d][i];
      const double treble = drawn.treble[d][i];
      counts[0][i] += bass < 2.05;
      counts[1][i] += treble > 1.9;
      counts[2][i] += bass < 2.05 || treble < 1.5;
      counts[3][i] += bass > 2.45 || treble > 1.9;
    }
  }
  // The count's own spread is taken as normal and spells as independent: ten days of a year.
  const std::array<Estimate, 4> estimates{ours.low_bass, ours.high_treble, ours.low_either, ours.high_either};
  for (std::size_t k = 0; k < 4; ++k) {
    std::printf("  %3.0f (%3.0f to %3.0f) days, drawn %3.0f (%3.0f to %3.0f)\n", estimates[k].median, estimates[k].low,
                estimates[k].high, quantile_of(counts[k], 0.5), quantile_of(counts[k], 0.05),
                quantile_of(counts[k], 0.95));
    EXPECT_NEAR(estimates[k].median, quantile_of(counts[k], 0.5), 10);
    EXPECT_NEAR(estimates[k].low, quantile_of(counts[k], 0.05), 10);
    EXPECT_NEAR(estimates[k].high, quantile_of(counts[k], 0.95), 10);
  }
}

TEST(Year, side_days_agree_with_all_counts_at_once) {
  const YearRequest request = read_for(2);
  const YearPaths paths =
      year_paths(calibrate(request.instrument, season_tables()), request.instrument.home, today, 365);
  const ActionLimits limits{
      .lowest_bass = mm(1.95), .lowest_treble = mm(1.5), .highest_bass = mm(2.35), .highest_treble = mm(1.9)};
  const DaysOutside all = days_outside(paths, limits);
  const SideDays bass = days_outside(paths, true, 0.1, 2.05, 2.45);
  EXPECT_NEAR(bass.low.median, all.low_bass.median, 1e-6) << "raising the strings is lowering the limits";
  EXPECT_NEAR(bass.high.high, all.high_bass.high, 1e-6);
}

TEST(Year, bands_are_the_mixture_to_a_ten_thousandth_of_a_millimetre) {
  for (const int years : {0, 2, 5}) {
    const YearRequest request = read_for(years);
    const YearResult result = year(request, season_tables());
    const YearPaths paths =
        year_paths(calibrate(request.instrument, season_tables()), request.instrument.home, today, 365);
    for (int d = 0; d < 365; d += 13) {
      const auto i = static_cast<std::size_t>(d);
      EXPECT_NEAR(result.bass.low_mm[i], action_quantile_mm(paths, true, d, 0.05), 1e-4);
      EXPECT_NEAR(result.treble.upper_mm[i], action_quantile_mm(paths, false, d, 0.75), 1e-4);
    }
  }
}

TEST(Year, the_band_opens_from_what_was_read_today) {
  const YearResult result = year(read_for(1), season_tables());
  const auto band = [&](std::size_t d) { return result.bass.high_mm[d] - result.bass.low_mm[d]; };
  EXPECT_LT(band(0), band(20));
  EXPECT_LT(band(20), band(150));
  EXPECT_NEAR(result.bass.median_mm[0], 1.98, 0.02);
}

TEST(Year, an_instrument_that_is_known_stays_in_a_narrow_band) {
  const YearResult result = year(read_for(6), season_tables());
  std::printf("  %s\n", result.verdict.c_str());
  for (std::size_t d = 0; d < 365; ++d) EXPECT_LT(result.bass.high_mm[d] - result.bass.low_mm[d], 0.35);
  EXPECT_TRUE(result.lowest_day.starts_with("2026-02") || result.lowest_day.starts_with("2026-12") ||
              result.lowest_day.starts_with("2027-0"))
      << result.lowest_day;
  EXPECT_TRUE(result.highest_day.starts_with("2026-07") || result.highest_day.starts_with("2026-08"))
      << result.highest_day;
}

TEST(Year, a_humidified_room_keeps_the_strings_from_falling) {
  const YearRequest request = read_for(3);
  const Calibration calibration = calibrate(request.instrument, season_tables());
  HomeAir humid = request.instrument.home;
  humid.humidifier_floor = humidity_fraction(0.42);
  const YearPaths as_it_is = year_paths(calibration, request.instrument.home, today, 365);
  const YearPaths kept = year_paths(calibration, humid, today, 365);
  EXPECT_NEAR(action_quantile_mm(kept, true, 0, 0.5), action_quantile_mm(as_it_is, true, 0, 0.5), 1e-3)
      << "today is today";
  EXPECT_GT(action_quantile_mm(kept, true, 330, 0.5), action_quantile_mm(as_it_is, true, 330, 0.5) + 0.1);
  EXPECT_NEAR(action_quantile_mm(kept, true, 160, 0.5), action_quantile_mm(as_it_is, true, 160, 0.5), 0.02)
      << "summer is summer";
}

TEST(Year, knows_the_weather_of_a_home_that_is_logged_to_today) {
  YearRequest request = read_for(4);
  HomeAir& home = request.instrument.home;
  home.weather_sd_relative_humidity = 0.1;
  const YearResult before = year(request, season_tables());
  const std::vector<HomeDay> air = home_days(home, today - std::chrono::days(120), 121);
  for (std::size_t i = 0; i < air.size(); ++i) {
    home.log.push_back({.date = today - std::chrono::days(120 - static_cast<int>(i)),
                        .temperature_c = air[i].temperature_c,
                        .relative_humidity = air[i].relative_humidity + 0.1});
  }
  const YearResult after = year(request, season_tables());
  EXPECT_LT(after.bass.high_mm[4] - after.bass.low_mm[4], before.bass.high_mm[4] - before.bass.low_mm[4]);
  // A damp spell is carried on into the days to come, and forgotten by the summer.
  EXPECT_GT(after.moisture_percent[0], before.moisture_percent[0] + 0.8);
  EXPECT_GT(after.moisture_percent[10], before.moisture_percent[10] + 0.3);
  EXPECT_NEAR(after.moisture_percent[150], before.moisture_percent[150], 0.02);
}

TEST(Year, may_begin_before_or_long_after_today) {
  YearRequest request = read_for(3);
  request.first = day("2025-02-15");
  const YearResult past = year(request, season_tables());
  EXPECT_NEAR(past.bass.median_mm[180], 2.5, 0.06) << "14 August 2025 was read";
  request.first = day("2028-02-15");
  const YearResult later = year(request, season_tables());
  EXPECT_GT(later.bass.high_mm[0] - later.bass.low_mm[0], past.bass.high_mm[350] - past.bass.low_mm[350]);
}

void refuses(const YearRequest& request, const std::string& line) {
  try {
    (void)year(request, season_tables());
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(Year, refuses_a_year_too_far_away) {
  YearRequest request = asked();
  request.first = day("2040-01-01");
  refuses(request, "first: 2040-01-01 is outside two years before to ten years after today, 2026-02-15");
  request = asked();
  request.count = 0;
  refuses(request, "count: 0 days is outside 1..1100 days");
}

}  // namespace
}  // namespace tailblock::testing

#include <gtest/gtest.h>

#include <cmath>

#include "cli/demo_calendar.h"
#include "cli/demo_hand.h"
#include "cli/demo_log.h"
#include "demo_book.h"

namespace tailblock {
namespace {

using std::chrono::days;
using testing::kept_file;

DemoGauge sure_hand(Notation notation, double step) {
  return {.kit = "kit", .measure = "action12_bass", .gauge = "any", .notation = notation, .step = step, .hand_sd = 0};
}

void is_written(const DemoGauge& gauge, double truth, const std::string& typed, double value) {
  NamedChance chance(1, "hand");
  const WrittenReading written = read_off(gauge, truth, chance);
  EXPECT_EQ(written.typed, typed);
  EXPECT_NEAR(written.value, value, 1e-9);
}

TEST(DemoHand, writes_what_a_hand_writes) {
  const DemoGauge ruler = sure_hand(Notation::sixty_fourths, 0.5);
  is_written(ruler, 2.0, "5/64", 1.984375);
  is_written(ruler, 2.18, "5 1/2 64ths", 2.1828125);
  is_written(ruler, 2.4, "3/32", 2.38125);
  const DemoGauge plugs = sure_hand(Notation::sixty_fourths_and_thousandths, 1);
  is_written(plugs, 2.07, "5/64 + .003", 2.060575);
  is_written(plugs, 2.38125, "3/32", 2.38125);
  is_written(sure_hand(Notation::thousandths, 1), 1.98, ".078", 1.9812);
  is_written(sure_hand(Notation::millimetres, 0.05), 2.06, "2.05 mm", 2.05);
  is_written(sure_hand(Notation::millimetres, 0.25), -0.8, "-0.75 mm", -0.75);
  is_written(sure_hand(Notation::plain, 1), 38.4, "38", 38);
}

TEST(DemoHand, strays_by_the_hand_and_the_step) {
  DemoGauge gauge = sure_hand(Notation::millimetres, 0.05);
  gauge.hand_sd = 0.04;
  NamedChance chance(7, "strays");
  double sum = 0, squares = 0;
  constexpr int count = 20000;
  for (int i = 0; i < count; ++i) {
    const double truth = 2 + 0.5 * i / count;  // over many steps, so that rounding is even
    const double off = read_off(gauge, truth, chance).value - truth;
    sum += off;
    squares += off * off;
  }
  EXPECT_NEAR(sum / count, 0, 0.002);
  EXPECT_NEAR(std::sqrt(squares / count), std::hypot(0.04, 0.05 / std::sqrt(12.0)), 0.001);
}

Date day(const char* iso) { return date_from_iso("day", iso); }

void is_on(const DemoWhen& when, const char* today, const char* expected) {
  EXPECT_EQ(iso_date(visit_day(when, day(today), 60)), expected) << "today " << today;
}

TEST(DemoCalendar, the_newest_such_day_that_is_old_enough_and_never_a_sunday) {
  is_on({.days_ago = 4}, "2026-02-16", "2026-02-12");
  is_on({.days_ago = 1}, "2026-02-16", "2026-02-14");  // the 15th is a Sunday
  is_on({.month = 2, .day = 10}, "2026-02-16", "2025-02-10");
  is_on({.month = 2, .day = 10}, "2026-04-11", "2026-02-10");
  is_on({.month = 2, .day = 10}, "2026-04-10", "2025-02-10");
  is_on({.month = 8, .day = 14, .years_back = 1}, "2026-02-16", "2024-08-14");
}

TEST(DemoCalendar, a_heated_home_is_dry_in_february_and_damp_in_august) {
  HomeAir home;
  home.relative_humidity = {0.25, 0.25, 0.3, 0.35, 0.45, 0.55, 0.6, 0.6, 0.5, 0.42, 0.35, 0.28};
  EXPECT_EQ(third_of_the_range(home, day("2026-02-12")), DemoAir::dry);
  EXPECT_EQ(third_of_the_range(home, day("2026-08-12")), DemoAir::damp);
  EXPECT_EQ(third_of_the_range(home, day("2026-05-12")), DemoAir::middling);
}

TEST(DemoTruth, weather_departs_by_the_size_and_memory_of_the_home) {
  HomeAir home;
  home.weather_sd_relative_humidity = 0.05;
  home.weather_memory = tailblock::days(6);
  const auto air = lived_air(home, day("2000-01-01"), 40000, NamedChance(3, "weather"));
  double squares = 0, lagged = 0;
  constexpr std::size_t memory = 6;
  for (std::size_t i = 0; i + memory < air.size(); ++i) {
    const double now = air[i].relative_humidity - 0.45;
    squares += now * now;
    lagged += now * (air[i + memory].relative_humidity - 0.45);
  }
  const auto count = static_cast<double>(air.size() - memory);
  EXPECT_NEAR(std::sqrt(squares / count), 0.05, 0.001);
  EXPECT_NEAR(lagged / squares, std::exp(-1.0), 0.03);
}

TEST(DemoTruth, strings_answer_the_wood_and_keep_what_work_moved) {
  const HiddenNature nature{.instrument = "any",
                            .reference_moisture_percent = 8,
                            .action12_bass_mm = 2.4,
                            .action12_treble_mm = 1.9,
                            .response_bass = 0.1,
                            .response_treble = 0.08,
                            .drift_mm_per_year = 0.05,
                            .saddle_exposure_bass_mm = 3};
  const TrueHeights now = true_heights(nature, 8, 0, {});
  EXPECT_DOUBLE_EQ(now.action12_bass, 2.4);
  EXPECT_NEAR(true_heights(nature, 5, 0, {}).action12_bass, 2.1, 1e-12);
  EXPECT_NEAR(true_heights(nature, 5, 0, {}).action12_treble, 1.66, 1e-12);
  EXPECT_NEAR(true_heights(nature, 8, 2, {}).action12_bass, 2.3, 1e-12);
  const TrueHeights lowered = true_heights(nature, 8, 0, {.action12_bass_mm = -0.4, .saddle_bass_mm = -0.8});
  EXPECT_NEAR(lowered.action12_bass, 2.0, 1e-12);
  EXPECT_NEAR(lowered.saddle_exposure_bass, 2.2, 1e-12);
}

TEST(DemoLog, leaves_the_missed_days_out_and_ends_when_told) {
  DemoHome home;
  home.log = {.first_days_ago = 20, .last_days_ago = 2};
  home.gaps = {{.from_days_ago = 10, .days = 3}};
  const std::vector<HomeDay> air(50, {.temperature_c = 20, .relative_humidity = 0.4, .logged = false});
  const Date today = day("2026-02-16");
  const auto log = hygrometer_log(home, air, today, NamedChance(1, "log"));
  ASSERT_EQ(log.size(), 16U);
  EXPECT_EQ(log.front().date, today - days(20));
  EXPECT_EQ(log.back().date, today - days(2));
  for (const LoggedDay& logged : log) {
    const int ago = days_between(logged.date, today);
    EXPECT_FALSE(8 <= ago && ago <= 10) << ago;
    EXPECT_NEAR(logged.relative_humidity, 0.4, 0.05);
  }
}

/// The repository's own tables, with one file's text changed.
void is_refused(const std::string& file, const std::string& from, const std::string& into, const std::string& line) {
  std::string changed(kept_file("data/demo/" + file));
  const auto at = changed.find(from);
  ASSERT_NE(at, std::string::npos) << from;
  changed.replace(at, from.size(), into);
  const auto text = [&](std::string_view path) {
    return path == "data/demo/" + file ? std::string_view(changed) : kept_file(path);
  };
  try {
    (void)demo_tables(text);
    ADD_FAILURE() << file << " was taken with " << into;
  } catch (const Refused& refusal) {
    EXPECT_EQ(refusal.what(), line);
  }
}

TEST(DemoTables, names_the_cell_it_refuses) {
  is_refused("instruments.csv", "sunburst,marta,", "sunburst,martha,",
             "instruments.csv line 3, owner: there is no martha");
  is_refused("visits.csv", "rule,heights relief saddle air,", "rule,heights belly,",
             "visits.csv line 5, found: no group belly");
  is_refused("visits.csv", "sunburst,latest,4,,,,damp,", "sunburst,latest,4,,,,dry,",
             "visits.csv, sunburst, latest: is not told for every third of the year's moisture");
  is_refused("slips.csv", "cedar_fan,3,", "cedar_fan,30,",
             "slips.csv line 3, visit: that instrument has no such visit");
  is_refused("shop.csv", "\nseed,", "\nsown,", "shop.csv: has no row seed");
}

}  // namespace
}  // namespace tailblock

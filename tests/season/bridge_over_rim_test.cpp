#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

#include "made_up_instrument.h"
#include "season/response_prior.h"

namespace tailblock::testing {
namespace {

#if defined(__SANITIZE_ADDRESS__) || !defined(__OPTIMIZE__)
constexpr int instruments = 30;
constexpr bool enough = false;
#else
constexpr int instruments = 300;
constexpr bool enough = true;
#endif

constexpr std::uint64_t seed = 20261125;

bool holds(const Estimate& e, double truth) { return e.low <= truth && truth <= e.high; }
double width(const Estimate& e) { return e.high - e.low; }

ResponseRequest without_bridge(ResponseRequest request) {
  std::erase_if(request.readings, [](const HeightReading& one) { return one.kind == HeightKind::bridge_over_rim; });
  return request;
}

/// What comes out of a set of instruments, with the bridge read and without.
struct Told {
  int top = 0, neck = 0, response_bass = 0, alarms = 0;
  double width_with = 0, width_without = 0;
};

Told told(int visits) {
  std::mt19937_64 random(seed + static_cast<std::uint64_t>(visits));
  Told all;
  for (int i = 0; i < instruments; ++i) {
    const MadeUp made = made_up_instrument(
        random, {.visits = visits, .ruler_share = 0.5, .hygrometer_log = i % 2 == 1, .straightedge = true});
    const ResponseResult seen = response(made.request, season_tables());
    const ResponseResult blind = response(without_bridge(made.request), season_tables());
    const double middle = made.truth.response * (1 + made.truth.treble_ratio) / 2;
    all.top += holds(seen.top_mm_per_percent, middle * made.truth.top_share);
    all.neck += holds(seen.neck_and_back_mm_per_percent, middle * (1 - made.truth.top_share));
    all.response_bass += holds(seen.response_bass_mm_per_percent, made.truth.response);
    all.width_with += width(seen.neck_and_back_mm_per_percent) / instruments;
    all.width_without += width(blind.neck_and_back_mm_per_percent) / instruments;
    all.alarms += !seen.last_change.empty() && seen.last_change[0].something_else;
    EXPECT_EQ(blind.bridge_readings, 0);
  }
  return all;
}

// The instruments are drawn by code of its own (made_up_instrument.cpp), in dry and in even homes, and read with a
// straightedge good to 0.1 mm; the parts that come out are held against those that went in.
TEST(BridgeOverRim, tells_the_tops_part_from_that_of_neck_and_back) {
  for (const auto& [visits, most] : {std::pair{4, 0.9}, std::pair{10, 0.75}}) {
    const Told found = told(visits);
    std::printf(
        "  %d visits: top held %.1f %%, neck and back %.1f %%, response %.1f %% of %d; interval of neck and back %.4f "
        "mm/%% with the bridge read, %.4f without; false alarms %.1f %%\n",
        visits, 100.0 * found.top / instruments, 100.0 * found.neck / instruments,
        100.0 * found.response_bass / instruments, instruments, found.width_with, found.width_without,
        100.0 * found.alarms / instruments);
    if (!enough) continue;
    EXPECT_LT(found.width_with, most * found.width_without);
    for (const int held : {found.top, found.neck, found.response_bass}) {
      EXPECT_GE(held, 0.85 * instruments) << "seed " << seed;
      EXPECT_LE(held, 0.96 * instruments) << "seed " << seed;
    }
    EXPECT_LE(found.alarms, 0.05 * instruments);
  }
}

ResponseRequest three_winters(double bridge_drop_mm) {
  ResponseRequest request{.today = day("2026-02-15"),
                          .design = {},
                          .home = heated_home("Winnipeg MB", 3, 0.28),
                          .readings = {},
                          .changes = {},
                          .kindred = {}};
  for (const char* summer : {"2023-08-10", "2024-08-12", "2025-08-14"}) {
    read_both(request, day(summer), 2.50, 2.00, 0.03);
    request.readings.push_back(read(day(summer), HeightKind::bridge_over_rim, 12.0, 0.05));
  }
  for (const char* winter : {"2024-02-10", "2025-02-20", "2026-02-15"}) {
    read_both(request, day(winter), 2.00, 1.55, 0.03);
    request.readings.push_back(read(day(winter), HeightKind::bridge_over_rim, 12.0 - bridge_drop_mm, 0.05));
  }
  return request;
}

TEST(BridgeOverRim, a_top_that_falls_by_twice_the_strings_does_it_all) {
  // The strings' middle falls by 0.475 mm: a bridge that sinks by 0.95 accounts for it, one that sinks by 0.475 for
  // half.
  for (const auto& [drop, share] : {std::pair{0.95, 1.0}, std::pair{0.475, 0.5}}) {
    const ResponseResult result = response(three_winters(drop), season_tables());
    const double found = result.top_mm_per_percent.median /
                         (result.top_mm_per_percent.median + result.neck_and_back_mm_per_percent.median);
    std::printf("  bridge down %.3f mm: the top does %.2f of it, %.4f and %.4f mm per percent\n", drop, found,
                result.top_mm_per_percent.median, result.neck_and_back_mm_per_percent.median);
    EXPECT_NEAR(found, share, 0.12);
  }
}

TEST(BridgeOverRim, without_a_reading_the_parts_are_those_of_the_first_guess) {
  ResponseRequest request = three_winters(1);
  request.readings.clear();
  const ResponseResult result = response(request, season_tables());
  const ResponsePrior prior = response_prior({}, {}, season_tables());
  const double both = result.top_mm_per_percent.median + result.neck_and_back_mm_per_percent.median;
  EXPECT_NEAR(result.top_mm_per_percent.median / both, prior.top_share, 0.05);
  EXPECT_TRUE(std::ranges::any_of(result.assumptions, [](const std::string& s) {
    return s.starts_with("What the top does and what neck and back do is guessed");
  }));
}

TEST(BridgeOverRim, says_nothing_of_the_strings_level) {
  const ResponseResult low = response(three_winters(0.9), season_tables());
  ResponseRequest raised = three_winters(0.9);
  for (HeightReading& one : raised.readings) {
    if (one.kind == HeightKind::bridge_over_rim) one.value += mm(1.5);
  }
  const ResponseResult high = response(raised, season_tables());
  EXPECT_NEAR(low.action12_bass_today_mm.median, high.action12_bass_today_mm.median, 1e-3);
  EXPECT_NEAR(low.response_bass_mm_per_percent.median, high.response_bass_mm_per_percent.median, 1e-3);
}

TEST(BridgeOverRim, work_on_the_bridge_parts_the_readings_before_from_those_after) {
  ResponseRequest request = three_winters(0.9);
  const double before = response(request, season_tables()).top_mm_per_percent.median;
  for (HeightReading& one : request.readings) {
    if (one.kind == HeightKind::bridge_over_rim && one.date > day("2025-06-01")) one.value -= mm(1.2);
  }
  request.changes.push_back({.date = day("2025-06-01"),
                             .what = "bridge renewed",
                             .action12_bass_change = mm(0),
                             .action12_treble_change = mm(0),
                             .moves_bridge = true});
  EXPECT_NEAR(response(request, season_tables()).top_mm_per_percent.median, before, 0.15 * before);
}

TEST(BridgeOverRim, may_be_as_high_as_no_string_is) {
  ResponseRequest request = three_winters(0.9);
  for (HeightReading& one : request.readings) {
    if (one.kind == HeightKind::bridge_over_rim) one.value += mm(10);
  }
  EXPECT_NO_THROW((void)response(request, season_tables()));
}

}  // namespace
}  // namespace tailblock::testing

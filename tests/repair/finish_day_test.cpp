#include "repair/finish_day.h"

#include <gtest/gtest.h>

#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::Published;
using testing::refusal;
using testing::repository_repairs;

const Date today{std::chrono::year(2026) / 2 / 20};

FinishDayRequest in_air(double celsius_value, double percent) {
  FinishDayRequest request;
  request.air_temperature = celsius(celsius_value);
  request.relative_humidity = humidity_percent(percent);
  request.today = today;
  return request;
}
FinishDayResult asked(const FinishDayRequest& request) {
  return finish_day(request, repository_repairs().materials, repository_repairs().figures);
}

TEST(FinishDay, spread_agrees_with_published_dew_points) {
  Published table("dew_point_spread.csv");
  for (const CsvRow& row : table.rows()) {
    const double air = row.number("air_c", {0, 50, "C"}), humidity = row.number("humidity_percent", {1, 100, ""});
    table.check(row, asked(in_air(air, humidity)).spread_c, "expected_c", "tolerance_c");
  }
}

TEST(FinishDay, stops_near_the_dew_point_and_goes_far_from_it) {
  EXPECT_EQ(asked(in_air(21, 72)).verdict, CoatVerdict::stop);
  EXPECT_EQ(asked(in_air(21, 64)).verdict, CoatVerdict::too_near);  // 7 C of spread
  EXPECT_EQ(asked(in_air(21, 55)).verdict, CoatVerdict::trial);
  EXPECT_EQ(asked(in_air(21, 44)).verdict, CoatVerdict::free);
  EXPECT_EQ(asked(in_air(21, 72)).coats_today, 0);
  EXPECT_EQ(asked(in_air(21, 64)).coats_today, 0);
  EXPECT_EQ(asked(in_air(21, 44)).coats_today, 4);
}

TEST(FinishDay, the_spread_has_the_uncertainty_of_its_gauges) {
  FinishDayRequest request = in_air(21, 50);
  request.humidity_sd_percent = 2;
  request.temperature_sd_c = 0;
  const double low = asked(in_air(21, 52)).spread_c, high = asked(in_air(21, 48)).spread_c;
  EXPECT_NEAR(asked(request).spread_sd_c, (high - low) / 2, 0.01);
  request.humidity_sd_percent = 0;
  request.temperature_sd_c = 1;
  EXPECT_NEAR(asked(request).spread_sd_c, std::abs(asked(in_air(22, 50)).spread_c - asked(in_air(20, 50)).spread_c) / 2,
              0.005);
}

TEST(FinishDay, cold_work_counts_and_waits_on_the_rack) {
  FinishDayRequest request = in_air(21, 44);
  request.work_temperature = celsius(12);
  const FinishDayResult result = asked(request);
  EXPECT_NEAR(result.spread_c, asked(in_air(21, 44)).spread_c - 9, 1e-9);
  EXPECT_EQ(result.coats_today, 0);
  EXPECT_EQ(result.reasons.front(), "The work is colder than the air: an hour on the rack first.");
}

TEST(FinishDay, the_window_opens_and_closes) {
  FinishDayRequest request = in_air(21, 44);
  request.coats_done = 3;
  request.hours_since_last_coat = 0.5;
  EXPECT_EQ(asked(request).window, "The next coat in 0.5 h.");
  request.hours_since_last_coat = 20;
  EXPECT_EQ(asked(request).window, "The next coat may go on for 148 h yet.");
  request.hours_since_last_coat = 200;
  EXPECT_EQ(asked(request).window, "The window closed 32 h ago: scuff fine, then the new coat bites in again.");
  request.coats_done = request.coats_wanted;
  EXPECT_EQ(asked(request).window, "All coats are on.");
}

TEST(FinishDay, the_calendar_adds_up) {
  const FinishDayResult result = asked(in_air(21, 44));  // 8 coats: 4 today and 4 tomorrow, or one a day
  ASSERT_EQ(result.calendar.size(), 4U);
  EXPECT_EQ(days_between(today, result.calendar[0].earliest), 1);
  EXPECT_EQ(days_between(today, result.calendar[0].latest), 7);
  EXPECT_EQ(days_between(today, result.calendar[2].earliest), 1 + 14);
  EXPECT_EQ(days_between(today, result.calendar[3].latest), 7 + 42);
  FinishDayRequest damp = in_air(21, 72);
  EXPECT_EQ(days_between(today, asked(damp).calendar[0].earliest), 2);  // none today, 4 on each of two days
  FinishDayRequest late = in_air(21, 44);
  late.hours_left_today = 2;
  EXPECT_EQ(asked(late).coats_today, 3);  // now, and after one hour and two
}

TEST(FinishDay, what_may_still_come_off_keeps_the_least_and_the_gauge_error) {
  FinishDayRequest request = in_air(21, 44);
  request.thickness = {{.where = "lower bout", .now = mm(2.36), .before = {}, .sd = mm(0.05)},
                       {.where = "by the hole", .now = mm(2.6), .before = mm(2.68), .sd = mm(0.02)},
                       {.where = "edge", .now = mm(2.1), .before = {}, .sd = mm(0.05)},
                       {.where = "waist", .now = mm(3.2), .before = {}, .sd = mm(0.05)}};
  const FinishDayResult result = asked(request);
  EXPECT_NEAR(in_mm(result.thickness[0].may_come_off), 0.11, 1e-9);
  EXPECT_NEAR(in_mm(result.thickness[1].may_come_off), 0.05, 1e-9);
  EXPECT_EQ(in_mm(result.thickness[2].may_come_off), 0);
  EXPECT_NEAR(in_mm(result.thickness[3].may_come_off), 0.15, 1e-9);
  EXPECT_EQ(result.thickness[1].limited_by, "0.15 mm lost in one job");
}

TEST(FinishDay, oil_carries_the_caution_of_its_rags) {
  FinishDayRequest request = in_air(21, 44);
  request.finish = "oil_varnish";
  const std::vector<std::string> cautions = asked(request).cautions;
  EXPECT_TRUE(std::any_of(cautions.begin(), cautions.end(), [](const std::string& one) {
    return one.find("heat themselves and burn within hours") != std::string::npos;
  }));
}

TEST(FinishDay, refuses_in_one_line) {
  FinishDayRequest request = in_air(21, 44);
  request.finish = "miracle";
  EXPECT_EQ(refusal([&] { (void)asked(request); }).rfind("finish: \"miracle\" is none of shellac_pad, ", 0), 0U);
  request = in_air(60, 44);
  EXPECT_EQ(refusal([&] { (void)asked(request); }), "air_temperature_c: 60 C is outside 0..45 C");
}

}  // namespace
}  // namespace tailblock

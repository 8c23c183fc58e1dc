#include "air/home.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>
#include <numeric>

#include "air/home_air.h"
#include "air/saturation.h"
#include "published.h"

namespace tailblock {
namespace {

const Date new_year = date_from_iso("first", "2024-01-01");  // a leap year

HomeAir outdoors(std::vector<double> temperature_c, std::vector<double> dew_point_c) {
  HomeAir home;
  home.kind = HomeKind::outdoor_months;
  home.temperature_c = std::move(temperature_c);
  home.dew_point_c = std::move(dew_point_c);
  home.heating_set_point = celsius(21);
  home.moisture_gain_g_per_m3 = 0;
  return home;
}

/// The places of tests/published/climate.csv, each with its twelve months.
std::map<std::string, HomeAir> places() {
  const CsvTable table("climate.csv", testing::repository_file("tests/published/climate.csv"));
  std::map<std::string, HomeAir> found;
  for (const CsvRow& row : table.rows()) {
    auto [place, is_new] = found.try_emplace(std::string(row.name("table")), outdoors({}, {}));
    place->second.temperature_c.push_back(row.number("temperature_c", {-60, 60, "C"}));
    place->second.dew_point_c.push_back(row.number("dew_point_c", {-60, 60, "C"}));
  }
  return found;
}

Date middle_of(int month) { return Date(std::chrono::year(2024) / month / 16); }

TEST(Home, brings_typical_years_indoors_as_worked_by_hand) {
  testing::Published table("climate.csv");
  const auto homes = places();
  for (const CsvRow& row : table.rows()) {
    const int month = row.whole_number("month", {1, 12, ""});
    // The curve passes through a month's value at its middle, which is a whole day in a month of 31.
    const bool has_middle_day = month != 2 && month != 4 && month != 6 && month != 9 && month != 11;
    if (!has_middle_day || row.text("rh_in_21c_percent").empty()) continue;
    const HomeDay day = home_days(homes.at(std::string(row.name("table"))), middle_of(month), 1)[0];
    table.check(row, 100 * day.relative_humidity, "rh_in_21c_percent", "tolerance_percent");
    EXPECT_EQ(day.temperature_c, 21);
  }
}

HomeAir indoors(std::vector<double> relative_humidity) {
  HomeAir home;
  home.relative_humidity = std::move(relative_humidity);
  return home;
}

TEST(Home, the_curve_keeps_the_means_of_the_months_near) {
  double worst = 0;
  for (const auto& [place, outdoor] : places()) {
    HomeAirRequest request{.home = {}, .first = new_year, .count = 366};
    request.home.temperature_c = outdoor.temperature_c;
    const auto [low, high] = std::minmax_element(outdoor.temperature_c.begin(), outdoor.temperature_c.end());
    for (const MonthOfAir& month : home_air(request).months) {
      const double off = month.temperature_c - outdoor.temperature_c[static_cast<std::size_t>(month.month) - 1];
      worst = std::max(worst, std::abs(off) / (*high - *low));
    }
  }
  std::printf("  a month's mean is off by at most %.1f %% of the year's range\n", 100 * worst);
  // A smooth year of swing A has 1 - sin(pi/12)/(pi/12) = 1.1 % of A between a peak month's middle and its mean; months
  // taken one by one are rougher than that.
  EXPECT_LT(worst, 0.05);
}

RC_GTEST_PROP(Home, the_curve_never_leaves_the_two_months_around_it, ()) {
  const auto tenths = *rc::gen::container<std::vector<int>>(12, rc::gen::inRange(0, 1000));
  std::vector<double> months(tenths.begin(), tenths.end());
  for (double& month : months) month /= 1000;
  const auto year = home_days(indoors(months), new_year, 366);
  for (int i = 0; i < 366; ++i) {
    const std::chrono::year_month_day day(new_year + std::chrono::days(i));
    const auto month = static_cast<unsigned>(day.month()) - 1;
    const unsigned half = static_cast<unsigned>(day.day()) <= 15 ? 11 : 1;  // the neighbour it leans to
    const double near = months[month];
    const double other = months[(month + half) % 12];
    const double value = year[static_cast<std::size_t>(i)].relative_humidity;
    RC_ASSERT(value >= std::min(near, other) - 1e-12);
    RC_ASSERT(value <= std::max(near, other) + 1e-12);
  }
}

TEST(Home, a_flat_year_stays_flat_and_the_year_closes_on_itself) {
  for (const HomeDay& day : home_days(indoors(std::vector<double>(12, 0.4)), new_year, 366)) {
    EXPECT_NEAR(day.relative_humidity, 0.4, 1e-15);
  }
  const HomeAir swinging = indoors({0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.65, 0.6, 0.5, 0.4, 0.3, 0.25});
  const auto days_of_air = home_days(swinging, date_from_iso("first", "2024-12-01"), 62);
  for (std::size_t i = 1; i < days_of_air.size(); ++i) {
    EXPECT_LT(std::abs(days_of_air[i].relative_humidity - days_of_air[i - 1].relative_humidity), 0.003) << i;
  }
}

TEST(Home, the_same_calendar_day_has_the_same_air_every_year) {
  const HomeAir home = indoors({0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.65, 0.6, 0.5, 0.4, 0.3, 0.25});
  for (const char* day : {"-01-01", "-02-28", "-03-01", "-12-31"}) {
    const double leap = home_days(home, date_from_iso("d", std::string("2024") + day), 1)[0].relative_humidity;
    const double common = home_days(home, date_from_iso("d", std::string("2025") + day), 1)[0].relative_humidity;
    EXPECT_EQ(leap, common) << day;
  }
}

TEST(Home, a_heated_room_is_warmed_and_a_summer_room_is_as_warm_as_outdoors) {
  const HomeAir home = outdoors({-10, -8, -2, 6, 13, 18, 24, 23, 17, 9, 2, -7}, std::vector<double>(12, -12));
  const auto year = home_days(home, new_year, 366);
  EXPECT_EQ(year[15].temperature_c, 21);
  EXPECT_EQ(year[197].temperature_c, 24);
}

/// What a gain of 3 g/m3 adds in January to a room of 21 C, with this outdoor temperature.
double points_gained(double outdoor_c) {
  HomeAir home = outdoors(std::vector<double>(12, outdoor_c), std::vector<double>(12, -25));
  const double without = home_days(home, middle_of(1), 1)[0].relative_humidity;
  home.moisture_gain_g_per_m3 = 3;
  return 100 * (home_days(home, middle_of(1), 1)[0].relative_humidity - without);
}

TEST(Home, three_grams_gained_are_sixteen_points_in_a_shut_house_and_none_in_an_open_one) {
  // 0.4615 x 3 x 294.15 = 407 Pa over the 2488 Pa of full air at 21 C: 16.4 points (worked apart from this program).
  EXPECT_NEAR(points_gained(-20), 16.4, 0.05);
  EXPECT_NEAR(points_gained(0), 16.4, 0.05);
  EXPECT_NEAR(points_gained(10), 8.2, 0.05);
  EXPECT_NEAR(points_gained(20), 0, 1e-9);
}

TEST(Home, indoor_humidity_does_not_depend_on_which_side_of_saturation_ice_stands) {
  // At -20 C, taking the dew point over ice would lose 18 % of the vapour (ice over water 0.822 there).
  const HomeAir home = outdoors(std::vector<double>(12, -18), std::vector<double>(12, -20));
  const double expected = saturation_pa_over_water(celsius(-20)) / saturation_pa_over_water(celsius(21));
  EXPECT_NEAR(home_days(home, middle_of(1), 1)[0].relative_humidity, expected, 1e-12);
}

TEST(Home, humidifier_and_dehumidifier_clip_the_typical_year_only) {
  HomeAir home = indoors({0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.65, 0.6, 0.5, 0.4, 0.3, 0.25});
  home.humidifier_floor = humidity_fraction(0.4);
  home.dehumidifier_ceiling = humidity_fraction(0.55);
  home.log = {{.date = new_year + std::chrono::days(3), .temperature_c = 18, .relative_humidity = 0.22}};
  const auto year = home_days(home, new_year, 366);
  for (const HomeDay& day : year) {
    if (day.logged) continue;
    EXPECT_GE(day.relative_humidity, 0.4);
    EXPECT_LE(day.relative_humidity, 0.55);
  }
  EXPECT_TRUE(year[3].logged);
  EXPECT_EQ(year[3].relative_humidity, 0.22);
  EXPECT_EQ(year[3].temperature_c, 18);
}

TEST(Home, a_later_line_of_the_log_stands_and_days_outside_are_left_out) {
  HomeAir home;
  const auto logged = [](int offset, double humidity) {
    return LoggedDay{.date = new_year + std::chrono::days(offset), .temperature_c = 20, .relative_humidity = humidity};
  };
  home.log = {logged(1, 0.3), logged(-1, 0.9), logged(5, 0.9), logged(1, 0.35)};
  const auto days_of_air = home_days(home, new_year, 5);
  ASSERT_EQ(days_of_air.size(), 5U);
  EXPECT_EQ(days_of_air[1].relative_humidity, 0.35);
  EXPECT_EQ(std::count_if(days_of_air.begin(), days_of_air.end(), [](const HomeDay& day) { return day.logged; }), 1);
}

TEST(Home, the_computation_gives_the_same_days_and_their_months) {
  HomeAirRequest request{.home = indoors({0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.65, 0.6, 0.5, 0.4, 0.3, 0.25}),
                         .first = date_from_iso("first", "2024-12-20"),
                         .count = 30};
  const HomeAirResult result = home_air(request);
  const auto days_of_air = home_days(request.home, request.first, request.count);
  ASSERT_EQ(result.relative_humidity.size(), 30U);
  double january = 0;
  for (std::size_t i = 0; i < 30; ++i) {
    EXPECT_EQ(result.relative_humidity[i], days_of_air[i].relative_humidity);
    if (i >= 12) january += days_of_air[i].relative_humidity / 18;
  }
  ASSERT_EQ(result.months.size(), 2U);
  EXPECT_EQ(result.months[0].month, 1);
  EXPECT_EQ(result.months[0].days, 18);
  EXPECT_NEAR(result.months[0].relative_humidity, january, 1e-12);
  EXPECT_EQ(result.months[1].days, 12);
}

void refuses(const HomeAirRequest& request, const std::string& line) {
  try {
    (void)home_air(request);
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(Home, refuses_what_no_home_can_be) {
  HomeAirRequest request{.home = {}, .first = new_year, .count = 10};
  request.home.relative_humidity[3] = 45;
  refuses(request, "home.relative_humidity[3]: 45 is outside 0..1");
  request.home = {};
  request.home.temperature_c.pop_back();
  refuses(request, "home.temperature_c: 11 items is outside 12..12");
  request.home = outdoors(std::vector<double>(12, 5), std::vector<double>(12, 6));
  refuses(request, "dew_point_c[0]: 6 C is above that month's temperature, 5 C");
  request.home = {};
  request.home.humidifier_floor = humidity_fraction(0.5);
  request.home.dehumidifier_ceiling = humidity_fraction(0.4);
  refuses(request, "humidifier_floor: 0.5 is above dehumidifier_ceiling, 0.4");
  request.home = {};
  request.count = 1101;
  refuses(request, "count: 1101 days is outside 1..1100 days");
  request.count = 10;
  request.home.log = {{.date = new_year, .temperature_c = 80, .relative_humidity = 0.5}};
  refuses(request, "home.log[0].temperature_c: 80 C is outside -40..60 C");
}

}  // namespace
}  // namespace tailblock

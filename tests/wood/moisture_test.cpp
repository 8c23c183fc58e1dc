#include "wood/moisture.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "wood/equilibrium.h"

namespace tailblock {
namespace {

const Date new_year = date_from_iso("first", "2025-01-01");

HomeAir heated_home() {
  HomeAir home;
  home.relative_humidity = {0.22, 0.22, 0.27, 0.33, 0.42, 0.52, 0.58, 0.57, 0.5, 0.4, 0.31, 0.24};
  return home;
}

MoistureRequest in_home(Days extra_lag) {
  MoistureRequest request;
  request.home = heated_home();
  request.first = new_year;
  request.plate.extra_lag = extra_lag;
  return request;
}

TEST(MoistureOfPlate, a_bare_top_follows_the_air_within_a_day) {
  const MoistureResult result = moisture(in_home(days(0)));
  ASSERT_TRUE(result.days);
  EXPECT_NEAR(result.slab_lag_days * 24, 8.83, 0.01);
  ASSERT_EQ(result.days->moisture_percent.size(), 365U);
  for (std::size_t i = 1; i < 365; ++i) {
    EXPECT_NEAR(result.days->moisture_percent[i], result.days->equilibrium_percent[i], 0.05) << i;
  }
}

TEST(MoistureOfPlate, what_stands_before_it_makes_it_later_and_its_swing_smaller) {
  const MoistureResult bare = moisture(in_home(days(0)));
  const MoistureResult cased = moisture(in_home(days(30)));
  const double bare_swing = bare.days->highest_percent - bare.days->lowest_percent;
  const double cased_swing = cased.days->highest_percent - cased.days->lowest_percent;
  // A yearly swing passes a stage of 30 days at 1/sqrt(1 + (2 pi 30/365)^2) = 0.89, were it a plain sine.
  EXPECT_NEAR(cased_swing / bare_swing, 0.89, 0.03);
}

TEST(MoistureOfPlate, the_year_closes_on_itself_so_the_start_is_forgotten) {
  MoistureRequest request = in_home(days(20));
  request.count = 366;
  const MoistureResult result = moisture(request);
  EXPECT_NEAR(result.days->moisture_percent[365], result.days->moisture_percent[0], 0.02);
}

TEST(MoistureOfPlate, asks_each_day_for_the_equilibrium_of_its_air) {
  const MoistureResult result = moisture(in_home(days(5)));
  const auto air = home_days(heated_home(), new_year, 365);
  for (const std::size_t i : {0U, 100U, 364U}) {
    const Moisture asked =
        equilibrium_moisture(celsius(air[i].temperature_c), humidity_fraction(air[i].relative_humidity));
    EXPECT_EQ(result.days->equilibrium_percent[i], in_percent(asked));
  }
}

TEST(MoistureOfPlate, still_air_gives_the_equilibrium_and_its_slope) {
  MoistureRequest request;
  request.still_air = StillAir{.temperature = celsius(21), .humidity = humidity_percent(45)};
  const MoistureResult result = moisture(request);
  ASSERT_TRUE(result.equilibrium);
  EXPECT_FALSE(result.days);
  EXPECT_NEAR(result.equilibrium->moisture_percent, 8.462, 0.0006);
  EXPECT_NEAR(result.equilibrium->percent_per_percent, 0.1537, 0.00006);
}

void refuses(const MoistureRequest& request, const std::string& line) {
  try {
    (void)moisture(request);
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(MoistureOfPlate, refuses_what_it_cannot_answer) {
  MoistureRequest request;
  refuses(request, "home, still_air: neither is given, and exactly one is due");
  request = in_home(days(0));
  request.still_air = StillAir{};
  refuses(request, "home, still_air: both are given, and exactly one is due");
  request = in_home(days(0));
  request.first.reset();
  refuses(request, "first: the first day is due with a home");
  request = in_home(days(61));
  refuses(request, "plate.extra_lag_days: 61 days is outside 0..60 days");
  request = in_home(days(0));
  request.plate.slab.thickness = mm(28);
  refuses(request, "plate.thickness_mm: 28 mm is outside 0.5..20 mm");
  request = in_home(days(0));
  request.plate.slab.faces_open = 3;
  refuses(request, "plate.faces_open: 3 is outside 1..2");
}

}  // namespace
}  // namespace tailblock

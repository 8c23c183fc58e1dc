#include "air/moist_air.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "air/saturation.h"
#include "published.h"

namespace tailblock {
namespace {

AirRequest by_humidity(double celsius_degrees, double fraction) {
  return {.temperature = celsius(celsius_degrees), .relative_humidity = humidity_fraction(fraction)};
}

double saturation_pa(double t, bool over_ice) {
  return over_ice && t <= 0 ? saturation_pa_over_ice(celsius(t)) : saturation_pa_over_water(celsius(t));
}

double computed(const CsvRow& row) {
  const std::string_view what = row.name("what");
  const double t = row.number("temperature_c", {-40, 60, "C"});
  const bool over_ice = row.name("over") == "ice";
  if (what == "saturation_pa") return saturation_pa(t, over_ice);
  AirRequest request = by_humidity(t, row.number("humidity_percent", {0, 100, "%"}) / 100);
  request.over_ice = over_ice;
  request.pressure_pa = row.number("pressure_pa", {50'000, 110'000, "Pa"});
  const AirResult result = air(request);
  if (what == "vapour_pa") return result.vapour_pressure_pa;
  if (what == "humidity_ratio") return result.humidity_ratio;
  if (what == "wet_bulb_c") return result.wet_bulb_c;
  if (what == "dew_or_frost_point_c") return *result.dew_point_c < 0 ? *result.frost_point_c : *result.dew_point_c;
  if (what == "indoor_percent") {
    const Temperature indoor = celsius(row.number("indoor_c", {0, 40, "C"}));
    return 100 * air({.temperature = indoor, .humidity_ratio = result.humidity_ratio}).relative_humidity;
  }
  throw Refused(row.where("what") + ": is not computed here");
}

TEST(MoistAir, agrees_with_the_psychrometric_tables) {
  testing::Published table("psychro.csv");
  for (const CsvRow& row : table.rows()) table.check(row, computed(row));
}

/// Vapour pressure over supercooled and warm water, another fit to other data, 123..332 K: Murphy & Koop, Q. J. R.
/// Meteorol. Soc. 131 (2005) 1539, eq. 10, read second-hand in two public source files that code it.
double murphy_koop_water_pa(double T) {
  return std::exp(54.842763 - 6763.22 / T - 4.210 * std::log(T) + 0.000367 * T +
                  std::tanh(0.0415 * (T - 218.8)) * (53.878 - 1331.22 / T - 9.44523 * std::log(T) + 0.014025 * T));
}

/// The same over ice, eq. 7, above 110 K.
double murphy_koop_ice_pa(double T) {
  return std::exp(9.550426 - 5723.265 / T + 3.53068 * std::log(T) - 0.00728332 * T);
}

/// The largest relative difference of two curves from `low_c` to `high_c`.
template <class Ours, class Theirs>
double worst(double low_c, double high_c, Ours ours, Theirs theirs) {
  double found = 0;
  for (double t = low_c; t <= high_c; t += 0.5) {
    found = std::max(found, std::abs(ours(celsius(t)) / theirs(t + 273.15) - 1));
  }
  return found;
}

TEST(MoistAir, saturation_agrees_with_an_unrelated_fit) {
  const double water = worst(-20, 58, saturation_pa_over_water, murphy_koop_water_pa);
  const double supercooled = worst(-40, -20, saturation_pa_over_water, murphy_koop_water_pa);
  const double ice = worst(-40, 0, saturation_pa_over_ice, murphy_koop_ice_pa);
  std::printf("  against Murphy & Koop: water %.3f %%, below -20 C %.3f %%, ice %.3f %%\n", 100 * water,
              100 * supercooled, 100 * ice);
  // A hygrometer is good to 2 in 50, 4 %: the formula may take a twentieth of that, and a quarter of it where it is
  // colder than any instrument is kept in.
  EXPECT_LT(water, 0.002);
  EXPECT_LT(supercooled, 0.01);
  EXPECT_LT(ice, 0.002);
}

TEST(MoistAir, ice_and_water_meet_at_the_triple_point) {
  EXPECT_NEAR(saturation_pa_over_ice(celsius(0)) / saturation_pa_over_water(celsius(0)), 1, 2e-4);
}

RC_GTEST_PROP(MoistAir, every_measure_leads_back_to_the_same_air, ()) {
  const double t = *rc::gen::inRange(-4000, 6000) / 100.0;
  const AirResult first = air(by_humidity(t, *rc::gen::inRange(100, 10'000) / 10'000.0));
  if (first.dew_point_c) {
    const AirResult by_dew_point =
        air({.temperature = celsius(t), .dew_point = celsius(std::min(t, *first.dew_point_c))});
    RC_ASSERT(std::abs(by_dew_point.relative_humidity - first.relative_humidity) < 1e-7);
  }
  const AirResult by_ratio = air({.temperature = celsius(t), .humidity_ratio = first.humidity_ratio});
  RC_ASSERT(std::abs(by_ratio.relative_humidity - first.relative_humidity) < 1e-9);
  if (first.wet_bulb_c > t || first.wet_bulb_c < -60) return;
  const AirResult by_bulb = air({.temperature = celsius(t), .wet_bulb = celsius(first.wet_bulb_c)});
  RC_ASSERT(std::abs(by_bulb.humidity_ratio - first.humidity_ratio) < 1e-9);
}

RC_GTEST_PROP(MoistAir, the_frost_point_lies_between_the_dew_point_and_freezing, ()) {
  const AirResult result = air(by_humidity(*rc::gen::inRange(-400, 600) / 10.0, *rc::gen::inRange(50, 1000) / 1000.0));
  if (!result.dew_point_c || !result.frost_point_c) return;
  RC_ASSERT(*result.dew_point_c <= *result.frost_point_c);
  RC_ASSERT(*result.frost_point_c <= 0);
}

TEST(MoistAir, full_air_has_dew_point_and_wet_bulb_at_its_own_temperature) {
  const AirResult result = air(by_humidity(18, 1));
  EXPECT_NEAR(*result.dew_point_c, 18, 1e-8);
  EXPECT_NEAR(result.wet_bulb_c, 18, 1e-8);
}

TEST(MoistAir, a_cubic_metre_of_full_air_at_20_C_holds_17_3_grams) {
  // 17.3 g/m3 is printed in every book of building physics (from memory, no table at hand).
  EXPECT_NEAR(air(by_humidity(20, 1)).absolute_humidity_g_per_m3, 17.3, 0.05);
}

TEST(MoistAir, dry_air_has_no_dew_point_and_a_bulb_all_the_same) {
  const AirResult result = air(by_humidity(20, 0));
  EXPECT_FALSE(result.dew_point_c);
  EXPECT_FALSE(result.frost_point_c);
  EXPECT_LT(result.wet_bulb_c, 10);
}

void refuses(const AirRequest& request, const std::string& line) {
  try {
    (void)air(request);
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(MoistAir, refuses_what_no_air_can_be) {
  const Temperature room = celsius(20);
  refuses({.temperature = room},
          "relative_humidity, dew_point_c, wet_bulb_c, humidity_ratio: 0 of them are given, "
          "and exactly one is due");
  refuses({.temperature = room, .relative_humidity = humidity_fraction(0.5), .dew_point = celsius(9)},
          "relative_humidity, dew_point_c, wet_bulb_c, humidity_ratio: 2 of them are given, and exactly one is due");
  refuses(by_humidity(20, 45), "relative_humidity: 45 is outside 0..1");
  refuses(by_humidity(61, 0.45), "temperature_c: 61 C is outside -40..60 C");
  refuses({.temperature = room, .dew_point = celsius(21)}, "dew_point_c: 21 C is above temperature_c");
  refuses({.temperature = room, .wet_bulb = celsius(21)}, "wet_bulb_c: 21 C is above temperature_c");
  refuses({.temperature = room, .wet_bulb = celsius(1)},
          "wet_bulb_c: 1 C is lower than air of 20 C can bring it, even when quite dry");
  refuses({.temperature = room, .humidity_ratio = 0.05},
          "humidity_ratio: 0.05 is more than air of 20 C can hold, 0.0147");
  AirRequest high = by_humidity(20, 0.5);
  high.pressure_pa = 1013;
  refuses(high, "pressure_pa: 1013 Pa is outside 50000..110000 Pa");
}

}  // namespace
}  // namespace tailblock

#include "air/home.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "air/saturation.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr int days_in_leap_year = 366;
constexpr int months = 12;
constexpr std::array<int, months> first_day{0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335};
constexpr std::array<int, months> length_of{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

constexpr Range indoor_temperatures{-40, 60, "C"};
constexpr Range temperatures{-60, 60, "C"};
constexpr Range humidities{0, 1, ""};

/// Place of a day among the 366 of a leap year; a common year has no day 59.
int day_of_leap_year(Date date) {
  const std::chrono::year_month_day day(date);
  return first_day[static_cast<unsigned>(day.month()) - 1] + static_cast<int>(static_cast<unsigned>(day.day())) - 1;
}

using Year = std::array<double, days_in_leap_year>;

/// A curve through the middle of the twelve months that closes on itself: cubic between the middles, with slopes chosen
/// (harmonic mean of the two sides, none at a peak) so that it never leaves the values on either side of it.
Year daily_curve(const std::vector<double>& monthly) {
  std::array<double, months> middle{};
  for (std::size_t m = 0; m < months; ++m) middle[m] = first_day[m] + (length_of[m] - 1) / 2.0;
  const auto gap_after = [&](std::size_t m) {
    return m + 1 < months ? middle[m + 1] - middle[m] : middle[0] + days_in_leap_year - middle[m];
  };
  const auto rise_after = [&](std::size_t m) { return (monthly[(m + 1) % months] - monthly[m]) / gap_after(m); };
  std::array<double, months> slope{};
  for (std::size_t m = 0; m < months; ++m) {
    const std::size_t before = (m + months - 1) % months;
    const double left = rise_after(before);
    const double right = rise_after(m);
    if (left * right <= 0) continue;
    const double w_left = 2 * gap_after(m) + gap_after(before);
    const double w_right = gap_after(m) + 2 * gap_after(before);
    slope[m] = (w_left + w_right) / (w_left / left + w_right / right);
  }
  Year year{};
  for (std::size_t m = 0; m < months; ++m) {
    const std::size_t next = (m + 1) % months;
    const double gap = gap_after(m);
    for (int day = static_cast<int>(std::ceil(middle[m])); day < middle[m] + gap; ++day) {
      const double t = (day - middle[m]) / gap;
      const double s = 1 - t;
      year[static_cast<std::size_t>(day % days_in_leap_year)] =
          s * s * ((1 + 2 * t) * monthly[m] + t * gap * slope[m]) +
          t * t * ((1 + 2 * s) * monthly[next] - s * gap * slope[next]);
    }
  }
  return year;
}

void require_sound(const HomeAir& home) {
  require_valid(home);
  if (home.humidifier_floor > home.dehumidifier_ceiling) {
    throw Refused("humidifier_floor: " + plain_number(in_fraction(home.humidifier_floor)) +
                  " is above dehumidifier_ceiling, " + plain_number(in_fraction(home.dehumidifier_ceiling)));
  }
  if (home.kind != HomeKind::outdoor_months) return;
  for (std::size_t m = 0; m < months; ++m) {
    if (home.dew_point_c[m] <= home.temperature_c[m]) continue;
    throw Refused("dew_point_c[" + std::to_string(m) + "]: " + plain_number(home.dew_point_c[m]) +
                  " C is above that month's temperature, " + plain_number(home.temperature_c[m]) + " C");
  }
}

/// Full moisture gain in a closed house, none in an open one: falls in a line from 0 C to 20 C outdoors.
double share_of_gain(double outdoor_c) { return std::clamp((20 - outdoor_c) / 20, 0.0, 1.0); }

struct TypicalYear {
  Year temperature_c, relative_humidity;
};

TypicalYear typical_year(const HomeAir& home) {
  TypicalYear year{.temperature_c = daily_curve(home.temperature_c), .relative_humidity = {}};
  const bool outdoor = home.kind == HomeKind::outdoor_months;
  year.relative_humidity = daily_curve(outdoor ? home.dew_point_c : home.relative_humidity);
  for (std::size_t day = 0; day < days_in_leap_year; ++day) {
    double& humidity = year.relative_humidity[day];
    if (outdoor) {
      const double outdoor_c = year.temperature_c[day];
      const double indoor_c = std::max(outdoor_c, in_celsius(home.heating_set_point));
      const double gain_pa =
          vapour_pa_of_density(home.moisture_gain_g_per_m3 * share_of_gain(outdoor_c), celsius(indoor_c));
      const double vapour_pa = saturation_pa_over_water(celsius(humidity)) + gain_pa;
      year.temperature_c[day] = indoor_c;
      humidity = std::min(1.0, vapour_pa / saturation_pa_over_water(celsius(indoor_c)));
    }
    humidity = std::clamp(humidity, in_fraction(home.humidifier_floor), in_fraction(home.dehumidifier_ceiling));
  }
  return year;
}

}  // namespace

void describe(FieldVisitor& visit, LoggedDay& day) {
  visit.date({"date", "the day"}, day.date);
  visit.number({"temperature_c", "mean air temperature of the day"}, day.temperature_c, indoor_temperatures);
  visit.number({"relative_humidity", "mean relative humidity of the day, 0..1, over liquid water"},
               day.relative_humidity, humidities);
}

void describe(FieldVisitor& visit, HomeAir& home) {
  static constexpr std::array<std::string_view, 2> kinds{"indoor_months", "outdoor_months"};
  constexpr Need free = Need::has_default;
  choice(visit, {"kind", "whether the months were read indoors, or outdoors and are brought in", free}, home.kind,
         kinds);
  visit.numbers({"temperature_c", "mean temperature of each month, January first", free}, home.temperature_c,
                indoor_temperatures, {12, 12});
  visit.numbers({"relative_humidity", "mean relative humidity of each month, 0..1; indoor_months", free},
                home.relative_humidity, humidities, {12, 12});
  visit.numbers({"dew_point_c", "mean dew point of each month, over liquid water; outdoor_months", free},
                home.dew_point_c, temperatures, {12, 12});
  temperature(visit, {"heating_set_point_c", "the room is warmed to this; outdoor_months", free},
              home.heating_set_point, {0, 35, "C"});
  visit.number(
      {"moisture_gain_g_per_m3",
       "water that people, cooking and plants add when the house is shut (0 C or colder outdoors); it falls to "
       "nothing at 20 C outdoors; outdoor_months",
       free},
      home.moisture_gain_g_per_m3, {0, 15, "g/m3"});
  relative_humidity(visit, {"humidifier_floor", "the room is never drier than this, 0..1", free},
                    home.humidifier_floor);
  relative_humidity(visit, {"dehumidifier_ceiling", "the room is never damper than this, 0..1", free},
                    home.dehumidifier_ceiling);
  visit.number({"weather_sd_relative_humidity", "standard deviation of the day-to-day departure, 0..1", free},
               home.weather_sd_relative_humidity, {0, 0.3, ""});
  span_of_days(visit, {"weather_memory_days", "time in which a departure falls to 1/e", free}, home.weather_memory,
               {0.1, 90, "days"});
  list(visit, {"log", "days read by a hygrometer in the home; of two for one day the later in the list stands", free},
       home.log, {0, 20000});
}

std::vector<HomeDay> home_days(const HomeAir& home, Date first, int count) {
  require_sound(home);
  require_within("count", count, {0, 40000, "days"});
  const TypicalYear year = typical_year(home);
  std::vector<HomeDay> days_of_air(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    const auto day = static_cast<std::size_t>(day_of_leap_year(first + std::chrono::days(i)));
    days_of_air[static_cast<std::size_t>(i)] = {
        .temperature_c = year.temperature_c[day], .relative_humidity = year.relative_humidity[day], .logged = false};
  }
  for (const LoggedDay& logged : home.log) {
    const int i = days_between(first, logged.date);
    if (i < 0 || i >= count) continue;
    days_of_air[static_cast<std::size_t>(i)] = {
        .temperature_c = logged.temperature_c, .relative_humidity = logged.relative_humidity, .logged = true};
  }
  return days_of_air;
}

}  // namespace tailblock

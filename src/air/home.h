#pragma once

#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// One day of air as a hygrometer saw it: daily means, already corrected for the hygrometer's own error.
struct LoggedDay {
  Date date;
  double temperature_c = 20;
  double relative_humidity = 0.45;
};
void describe(FieldVisitor&, LoggedDay&);

/// How the air of a home through the year is known.
enum class HomeKind {
  indoor_months,  ///< twelve monthly means read indoors
  outdoor_months  ///< twelve outdoor monthly means of temperature and dew point, brought indoors
};

/// The air an instrument lives in. The typical year comes from twelve months, January first; a log, where there is one,
/// replaces it day by day. Weather is a first-order autoregressive departure of the daily relative humidity.
struct HomeAir {
  HomeKind kind = HomeKind::indoor_months;
  std::vector<double> temperature_c = std::vector<double>(12, 20.0);      ///< indoors, or outdoors by kind
  std::vector<double> relative_humidity = std::vector<double>(12, 0.45);  ///< indoors; used by indoor_months
  std::vector<double> dew_point_c = std::vector<double>(12, 8.0);         ///< outdoors; used by outdoor_months
  Temperature heating_set_point = celsius(20);                            ///< outdoor_months: warmed to this
  double moisture_gain_g_per_m3 = 2;                                      ///< outdoor_months: people, cooking, plants
  RelativeHumidity humidifier_floor = humidity_fraction(0);               ///< the room is never drier than this
  RelativeHumidity dehumidifier_ceiling = humidity_fraction(1);           ///< nor damper than this
  double weather_sd_relative_humidity = 0.05;                             ///< size of the day-to-day departure
  Days weather_memory = days(6);                                          ///< time in which a departure falls to 1/e
  std::vector<LoggedDay> log;
};
void describe(FieldVisitor&, HomeAir&);

/// One day of air in a home, known from a log or expected from the typical year.
struct HomeDay {
  double temperature_c;
  double relative_humidity;
  bool logged;
};

/// The air of `count` days from `first` on: the log where it has the day, else the typical year (a periodic curve
/// through the monthly means, clipped by humidifier and dehumidifier, which clip the typical year only).
///
///     p_in = p_water(dew point) + R_v T_in g s(T_out)     s 1 at 0 C outdoors and below, 0 at 20 C and above
///     RH = p_in/p_water(T_in), T_in the heating set point, or the outdoor temperature where that is higher
///
/// Left out: what walls and furniture store, and cooling machines: enter a cooled house by its indoor months.
/// Source: derived here (docs/models/home-air.md); s after the moisture classes of EN ISO 13788 (from memory).
/// @throws Refused naming the field, as `dew_point_c[3]` when a dew point lies above its month's temperature.
[[nodiscard]] std::vector<HomeDay> home_days(const HomeAir& home, Date first, int count);

}  // namespace tailblock

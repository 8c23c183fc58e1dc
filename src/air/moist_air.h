#pragma once

#include <optional>

#include "quantity/fields.h"

namespace tailblock {

/// Moist air known by its temperature and one of four measures of the water in it; exactly one is given.
struct AirRequest {
  Temperature temperature = celsius(20);
  std::optional<RelativeHumidity> relative_humidity = {};
  std::optional<Temperature> dew_point = {};
  std::optional<Temperature> wet_bulb = {};
  std::optional<double> humidity_ratio = {};  ///< kg of water per kg of dry air
  double pressure_pa = 101325;
  bool over_ice = false;  ///< the humidity or dew point given is over ice where it is 0 C or colder
};
void describe(FieldVisitor&, AirRequest&);

/// Everything about that air. Humidity and dew point are over liquid water at every temperature, which is how weather
/// services and hygrometers give them; what they are over ice stands beside them where ice can be.
struct AirResult {
  double relative_humidity = 0;
  std::optional<double> relative_humidity_over_ice;  ///< at 0 C and below
  double vapour_pressure_pa = 0;
  double saturation_pressure_pa = 0;    ///< over liquid water, at the air's temperature
  std::optional<double> dew_point_c;    ///< absent below -60 C
  std::optional<double> frost_point_c;  ///< where it is from -100 to 0 C
  double wet_bulb_c =
      0;  ///< of an iced bulb below 0 C; may pass the air's temperature where the air is more than full over ice
  double humidity_ratio = 0;
  double absolute_humidity_g_per_m3 = 0;
};
void describe(FieldVisitor&, AirResult&);

/// What the air is like in every measure, from one of them.
///
///     W = 0.621945 p_v/(p - p_v)                         p_v vapour pressure, p pressure of the air
///     g/m3 = 1000 p_v/(R_v T)                            R_v = 461.52 J/(kg K), T in kelvin
///     W = ((2501 - 2.326 t*) W* - 1.006 (t - t*))/(2501 + 1.86 t - 4.186 t*)      wet bulb t* of 0 C and more
///     W = ((2830 - 0.24 t*) W* - 1.006 (t - t*))/(2830 + 1.86 t - 2.1 t*)         below: W* saturated over ice
///
/// A bulb just over 0 C that holds water and one just under it that holds ice can stand in the same air; the water one
/// is given. Left out: the few parts in a thousand by which air itself raises the saturation pressure. Valid -40..60 C,
/// 50000..110000 Pa. Source: ASHRAE Handbook Fundamentals 2017 ch. 1 eq. 20, 33, 35, as coded in an open-source
/// psychrometric library that cites them (read); R_v = R/M, 8.314462618/0.018015268.
/// @throws Refused unless exactly one measure is given, and when the air cannot hold that much water.
[[nodiscard]] AirResult air(const AirRequest& request);

}  // namespace tailblock

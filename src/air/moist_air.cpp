#include "air/moist_air.h"

#include <cmath>

#include "air/saturation.h"

namespace tailblock {
namespace {

constexpr double water_over_air = 0.621945;  ///< molar masses
constexpr Range air_temperatures{-40, 60, "C"};
constexpr Range any_number{-1e9, 1e9, ""};

double humidity_ratio_of(double vapour_pa, double pressure_pa) {
  return water_over_air * vapour_pa / (pressure_pa - vapour_pa);
}

double vapour_pa_of(double humidity_ratio, double pressure_pa) {
  return pressure_pa * humidity_ratio / (water_over_air + humidity_ratio);
}

/// The humidity ratio of air of `t` whose bulb stands at `bulb`, wet or iced.
double humidity_ratio_by_bulb(double t, double bulb, bool iced, double pressure_pa) {
  const double saturated = humidity_ratio_of(
      iced ? saturation_pa_over_ice(celsius(bulb)) : saturation_pa_over_water(celsius(bulb)), pressure_pa);
  if (iced) return ((2830 - 0.24 * bulb) * saturated - 1.006 * (t - bulb)) / (2830 + 1.86 * t - 2.1 * bulb);
  return ((2501 - 2.326 * bulb) * saturated - 1.006 * (t - bulb)) / (2501 + 1.86 * t - 4.186 * bulb);
}

/// The inverse by halving: both laws rise with the bulb. A bulb lies less than 60 K under the air, and less than 1 K
/// over it when the air is more than full over ice.
double wet_bulb_of(double t, double humidity_ratio, double pressure_pa) {
  const bool iced = t < 0 || humidity_ratio < humidity_ratio_by_bulb(t, 0, false, pressure_pa);
  double low = iced ? -100 : 0;
  double high = iced ? 0 : t;
  for (int step = 0; step < 60; ++step) {
    const double bulb = (low + high) / 2;
    (humidity_ratio_by_bulb(t, bulb, iced, pressure_pa) < humidity_ratio ? low : high) = bulb;
  }
  return (low + high) / 2;
}

[[noreturn]] void refuse_above(const char* field, double value) {
  throw Refused(std::string(field) + ": " + plain_number(value) + " C is above temperature_c");
}

double vapour_pa(const AirRequest& request) {
  const double t = in_celsius(request.temperature);
  if (request.relative_humidity) {
    const bool over_ice = request.over_ice && t <= 0;
    return in_fraction(*request.relative_humidity) *
           (over_ice ? saturation_pa_over_ice(request.temperature) : saturation_pa_over_water(request.temperature));
  }
  if (request.dew_point) {
    if (*request.dew_point > request.temperature) refuse_above("dew_point_c", in_celsius(*request.dew_point));
    const bool over_ice = request.over_ice && *request.dew_point <= celsius(0);
    return over_ice ? saturation_pa_over_ice(*request.dew_point) : saturation_pa_over_water(*request.dew_point);
  }
  if (request.wet_bulb) {
    const double bulb = in_celsius(*request.wet_bulb);
    if (bulb > t) refuse_above("wet_bulb_c", bulb);
    const double ratio = humidity_ratio_by_bulb(t, bulb, bulb < 0, request.pressure_pa);
    if (ratio < 0) {
      throw Refused("wet_bulb_c: " + plain_number(bulb) + " C is lower than air of " + plain_number(t) +
                    " C can bring it, even when quite dry");
    }
    return vapour_pa_of(ratio, request.pressure_pa);
  }
  const double vapour = vapour_pa_of(*request.humidity_ratio, request.pressure_pa);
  const double saturated = saturation_pa_over_water(request.temperature);
  // A ratio printed by this model for full air comes back with a rounding error, hence the last digits.
  if (vapour > saturated * (1 + 1e-9)) {
    throw Refused("humidity_ratio: " + plain_number(*request.humidity_ratio) + " is more than air of " +
                  plain_number(t) + " C can hold, " +
                  plain_number(std::round(humidity_ratio_of(saturated, request.pressure_pa) * 1e4) / 1e4));
  }
  return vapour;
}

void require_one_measure(const AirRequest& request) {
  const int given = (request.relative_humidity ? 1 : 0) + (request.dew_point ? 1 : 0) + (request.wet_bulb ? 1 : 0) +
                    (request.humidity_ratio ? 1 : 0);
  if (given == 1) return;
  throw Refused("relative_humidity, dew_point_c, wet_bulb_c, humidity_ratio: " + std::to_string(given) +
                " of them are given, and exactly one is due");
}

}  // namespace

void describe(FieldVisitor& visit, AirRequest& request) {
  temperature(visit, {"temperature_c", "temperature of the air"}, request.temperature, air_temperatures);
  maybe(visit, {"relative_humidity", "0..1; this or one of the next three"}, request.relative_humidity,
        [&](const Field& field, RelativeHumidity& value) { relative_humidity(visit, field, value); });
  maybe(visit, {"dew_point_c", "the temperature at which dew would form"}, request.dew_point,
        [&](const Field& field, Temperature& value) {
          temperature(visit, field, value, {-60, 60, "C"});
        });
  maybe(visit, {"wet_bulb_c", "what a moving thermometer in a wet sock reads, iced below 0 C"}, request.wet_bulb,
        [&](const Field& field, Temperature& value) {
          temperature(visit, field, value, {-60, 60, "C"});
        });
  maybe(visit, {"humidity_ratio", "kg of water per kg of dry air"}, request.humidity_ratio,
        [&](const Field& field, double& value) {
          visit.number(field, value, {0, 0.5, "kg/kg"});
        });
  visit.number({"pressure_pa", "pressure of the air; 101325 at sea level", Need::has_default}, request.pressure_pa,
               {50'000, 110'000, "Pa"});
  visit.flag({"over_ice", "the humidity or dew point given is over ice where it is 0 C or colder", Need::has_default},
             request.over_ice);
}

void describe(FieldVisitor& visit, AirResult& result) {
  const auto number = [&](const Field& field, double& value) { visit.number(field, value, any_number); };
  number({"relative_humidity", "0..1, over liquid water at every temperature"}, result.relative_humidity);
  maybe(visit, {"relative_humidity_over_ice", "0..1, at 0 C and below"}, result.relative_humidity_over_ice, number);
  number({"vapour_pressure_pa", "pressure of the water vapour"}, result.vapour_pressure_pa);
  number({"saturation_pressure_pa", "the most it could be, over liquid water"}, result.saturation_pressure_pa);
  maybe(visit, {"dew_point_c", "over liquid water; absent below -60 C"}, result.dew_point_c, number);
  maybe(visit, {"frost_point_c", "over ice, where it is from -100 to 0 C"}, result.frost_point_c, number);
  number({"wet_bulb_c", "iced below 0 C"}, result.wet_bulb_c);
  number({"humidity_ratio", "kg of water per kg of dry air"}, result.humidity_ratio);
  number({"absolute_humidity_g_per_m3", "grams of water in a cubic metre of the air"},
         result.absolute_humidity_g_per_m3);
}

AirResult air(const AirRequest& request) {
  require_valid(request);
  require_one_measure(request);
  const double t = in_celsius(request.temperature);
  const double pressure = request.pressure_pa;
  const double saturated = saturation_pa_over_water(request.temperature);
  const double vapour = vapour_pa(request);
  AirResult result{.relative_humidity = vapour / saturated,
                   .relative_humidity_over_ice = std::nullopt,
                   .vapour_pressure_pa = vapour,
                   .saturation_pressure_pa = saturated,
                   .dew_point_c = std::nullopt,
                   .frost_point_c = std::nullopt,
                   .wet_bulb_c = 0,
                   .humidity_ratio = humidity_ratio_of(vapour, pressure),
                   .absolute_humidity_g_per_m3 = vapour_g_per_m3(vapour, request.temperature)};
  if (t <= 0) result.relative_humidity_over_ice = vapour / saturation_pa_over_ice(request.temperature);
  if (vapour >= saturation_pa_over_water(celsius(-60))) result.dew_point_c = in_celsius(dew_point(vapour));
  if (saturation_pa_over_ice(celsius(-100)) <= vapour && vapour <= saturation_pa_over_ice(celsius(0))) {
    result.frost_point_c = in_celsius(frost_point(vapour));
  }
  result.wet_bulb_c = wet_bulb_of(t, result.humidity_ratio, pressure);
  return result;
}

}  // namespace tailblock

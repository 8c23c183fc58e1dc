#include "air/saturation.h"

#include <algorithm>
#include <cmath>

#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr double kelvin_at_0_c = 273.15;
constexpr double vapour_gas_constant = 8.314462618 / 0.018015268;  // J/(kg K)

struct Log {
  double value, slope;  // of ln p against T
};

Log log_over_water(double T) {
  return {
      .value = -5.8002206e3 / T + 1.3914993 + T * (-4.8640239e-2 + T * (4.1764768e-5 - T * 1.4452093e-8)) +
               6.5459673 * std::log(T),
      .slope = 5.8002206e3 / (T * T) - 4.8640239e-2 + T * (2 * 4.1764768e-5 - T * 3 * 1.4452093e-8) + 6.5459673 / T};
}

Log log_over_ice(double T) {
  return {.value = -5.6745359e3 / T + 6.3925247 +
                   T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13))) +
                   4.1635019 * std::log(T),
          .slope = 5.6745359e3 / (T * T) - 9.677843e-3 +
                   T * (2 * 6.2215701e-7 + T * (3 * 2.0747825e-9 - T * 4 * 9.484024e-13)) + 4.1635019 / T};
}

/// ln p is nearly straight against 1/T, so Newton from any point of the range arrives in a few steps.
template <class LogOfSaturation>
Temperature where_saturated(LogOfSaturation log_of_saturation, double vapour_pa, const Range& kelvin) {
  require_within("vapour_pa", vapour_pa,
                 {std::exp(log_of_saturation(kelvin.low).value), std::exp(log_of_saturation(kelvin.high).value), "Pa"});
  const double wanted = std::log(vapour_pa);
  double T = kelvin_at_0_c;
  for (int step = 0; step < 50; ++step) {
    const Log here = log_of_saturation(T);
    // Newton in 1/T: d(ln p)/d(1/T) = -T^2 d(ln p)/dT.
    const double next = std::clamp(1 / (1 / T - (wanted - here.value) / (T * T * here.slope)), kelvin.low, kelvin.high);
    const bool arrived = std::abs(next - T) < 1e-10;
    T = next;
    if (arrived) break;
  }
  return celsius(T - kelvin_at_0_c);
}

}  // namespace

double saturation_pa_over_water(Temperature air) {
  return std::exp(
      log_over_water(kelvin_at_0_c + require_within("temperature_c", in_celsius(air), {-60, 100, "C"})).value);
}

double saturation_pa_over_ice(Temperature air) {
  return std::exp(log_over_ice(kelvin_at_0_c + require_within("temperature_c", in_celsius(air), {-100, 0, "C"})).value);
}

Temperature dew_point(double vapour_pa) {
  return where_saturated(log_over_water, vapour_pa, {kelvin_at_0_c - 60, kelvin_at_0_c + 100, "K"});
}

Temperature frost_point(double vapour_pa) {
  return where_saturated(log_over_ice, vapour_pa, {kelvin_at_0_c - 100, kelvin_at_0_c, "K"});
}

double vapour_g_per_m3(double vapour_pa, Temperature air) {
  return 1000 * vapour_pa / (vapour_gas_constant * (in_celsius(air) + kelvin_at_0_c));
}

double vapour_pa_of_density(double g_per_m3, Temperature air) {
  return g_per_m3 / 1000 * vapour_gas_constant * (in_celsius(air) + kelvin_at_0_c);
}

}  // namespace tailblock

#include "wood/equilibrium.h"

#include <cmath>

#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr Range temperatures{-40, 60, "C"};
constexpr Range humidities{0, 1, ""};

struct Coefficients {
  double W, K, K1, K2;
};

Coefficients at(double T) {
  return {.W = 349 + T * (1.29 + T * 0.0135),
          .K = 0.805 + T * (0.000736 - T * 0.00000273),
          .K1 = 6.27 - T * (0.00938 + T * 0.000303),
          .K2 = 1.91 + T * (0.0407 - T * 0.000293)};
}

struct ValueAndSlope {
  double value, slope;  // percent, percent per unit of humidity
};

ValueAndSlope percent(const Coefficients& c, double h) {
  const double x = c.K * h;
  const double upper = c.K1 * x * (1 + 2 * c.K2 * x);
  const double lower = 1 + c.K1 * x * (1 + c.K2 * x);
  const double upper_slope = c.K1 * (1 + 4 * c.K2 * x);
  const double lower_slope = c.K1 * (1 + 2 * c.K2 * x);
  const double scale = 1800 / c.W;
  return {
      .value = scale * (x / (1 - x) + upper / lower),
      .slope = scale * c.K * (1 / ((1 - x) * (1 - x)) + (upper_slope * lower - upper * lower_slope) / (lower * lower))};
}

Coefficients checked(Temperature air) { return at(require_within("temperature_c", in_celsius(air), temperatures)); }

double checked(RelativeHumidity humidity) {
  return require_within("relative_humidity", in_fraction(humidity), humidities);
}

}  // namespace

Moisture equilibrium_moisture(Temperature air, RelativeHumidity humidity) {
  return moisture_percent(percent(checked(air), checked(humidity)).value);
}

double equilibrium_slope(Temperature air, RelativeHumidity humidity) {
  return percent(checked(air), checked(humidity)).slope / 100;
}

RelativeHumidity equilibrium_humidity(Temperature air, Moisture wood) {
  const Coefficients c = checked(air);
  const double wanted = require_within("moisture_percent", in_percent(wood), {0, 40, "%"});
  const double most = percent(c, 1).value;
  if (wanted > most) {
    throw Refused("moisture_percent: " + plain_number(wanted) + " % is more than wood of " +
                  plain_number(in_celsius(air)) + " C can take from the air, " +
                  plain_number(std::round(most * 10) / 10) + " %");
  }
  double low = 0;
  double high = 1;
  double h = wanted / most;
  // Newton kept inside a bracket; the curve rises everywhere, so the bracket always holds the answer.
  for (int step = 0; step < 100 && high - low > 1e-12; ++step) {
    const ValueAndSlope here = percent(c, h);
    (here.value < wanted ? low : high) = h;
    const double next = h - (here.value - wanted) / here.slope;
    if (std::abs(next - h) < 1e-13) break;
    h = low < next && next < high ? next : (low + high) / 2;
  }
  return humidity_fraction(h);
}

}  // namespace tailblock

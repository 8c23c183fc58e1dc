#include "wood/following.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double seconds_per_day = 86400;
constexpr Range lags{0, 10000, "days"};

/// Depth through which water has to travel, in metres.
double depth_of(const Slab& slab) {
  const double thickness_mm = require_within("thickness_mm", in_mm(slab.thickness), {0.1, 100, "mm"});
  const double faces = require_within("faces_open", slab.faces_open, {1, 2, ""});
  return thickness_mm / 1000 / faces;
}

double diffusion_of(const Slab& slab) {
  return require_within("diffusion_m2_per_s", slab.diffusion_m2_per_s, {1e-12, 1e-8, "m2/s"});
}

double checked_fourier(double fourier) { return require_within("fourier", fourier, {0, 1e9, ""}); }

/// (1 - exp(-z))/z, which is 1 at z = 0.
double mean_of_decay(double z) { return z == 0 ? 1 : -std::expm1(-z) / z; }

}  // namespace

Days slab_time_constant(const Slab& slab) {
  const double l = depth_of(slab);
  return days(4 * l * l / (pi * pi * diffusion_of(slab)) / seconds_per_day);
}

double fourier_number(const Slab& slab, Days time) {
  const double l = depth_of(slab);
  return diffusion_of(slab) * in_days(time) * seconds_per_day / (l * l);
}

double slab_uptake(double fourier) {
  checked_fourier(fourier);
  // The series needs ever more terms as Fo goes to 0; below 0.02 the uptake is that of a half-space, whose next term is
  // exp(-1/Fo), under 1e-21.
  if (fourier < 0.02) return 2 * std::sqrt(fourier / pi);
  double left = 0;
  for (int n = 0; n < 40; ++n) {
    const double odd = 2 * n + 1;
    const double term = 8 / (odd * odd * pi * pi) * std::exp(-odd * odd * pi * pi * fourier / 4);
    left += term;
    if (term < 1e-17) break;
  }
  return 1 - left;
}

double film_root(double biot, int n) {
  require_within("biot", biot, {1e-4, 1e4, ""});
  require_within("n", n, {0, 10000, ""});
  // b sin b - Bi cos b rises through zero once between n pi and n pi + pi/2: halve.
  double low = n * pi;
  double high = low + pi / 2;
  const double sign = n % 2 == 0 ? 1 : -1;
  for (int step = 0; step < 60; ++step) {
    const double b = (low + high) / 2;
    (sign * (b * std::sin(b) - biot * std::cos(b)) < 0 ? low : high) = b;
  }
  return (low + high) / 2;
}

double slab_uptake_through_film(double fourier, double biot) {
  checked_fourier(fourier);
  double left = 0;
  for (int n = 0; n < 2000; ++n) {
    const double b = film_root(biot, n);
    const double weight = 2 * biot * biot / (b * b * (b * b + biot * biot + biot));
    const double term = weight * std::exp(-b * b * fourier);
    left += term;
    if (term < 1e-14) break;
  }
  return std::clamp(1 - left, 0.0, 1.0);
}

std::vector<double> follow(std::span<const double> daily, Days lag, double start) {
  const double tau = require_within("lag_days", in_days(lag), lags);
  const double kept = tau > 0 ? std::exp(-1 / tau) : 0;
  const double behind = tau > 0 ? -tau * std::expm1(-1 / tau) : 0;
  std::vector<double> answer(daily.size());
  if (daily.empty()) return answer;
  answer[0] = start;
  for (std::size_t i = 1; i < daily.size(); ++i) {
    const double step = daily[i] - daily[i - 1];
    answer[i] = daily[i] - step * behind + (answer[i - 1] - daily[i - 1]) * kept;
  }
  return answer;
}

std::vector<double> follow_twice(std::span<const double> daily, Days first_lag, Days second_lag, TwoStageStart start) {
  const double a = require_within("first_lag_days", in_days(first_lag), lags);
  const double b = require_within("second_lag_days", in_days(second_lag), lags);
  if (a == 0) return follow(daily, second_lag, start.second);
  if (b == 0) return follow(daily, first_lag, start.first);
  const double kept_first = std::exp(-1 / a);
  const double kept_second = std::exp(-1 / b);
  // What one day of exp(-t/a) at the first stage adds to the second: (1/b) integral of exp(-t/a) exp(-(1-t)/b).
  const double slow = std::max(a, b);
  const double passed_on = std::exp(-1 / slow) / b * mean_of_decay(1 / std::min(a, b) - 1 / slow);
  std::vector<double> answer(daily.size());
  if (daily.empty()) return answer;
  double first = start.first;
  answer[0] = start.second;
  for (std::size_t i = 1; i < daily.size(); ++i) {
    const double s = daily[i] - daily[i - 1];
    // The first stage is the line less s a, plus an exponential; the second runs a further s b behind that line.
    const double exponential = first - daily[i - 1] + s * a;
    const double second_off_line = answer[i - 1] - (daily[i - 1] - s * (a + b));
    answer[i] = daily[i] - s * (a + b) + second_off_line * kept_second + exponential * passed_on;
    first = daily[i] - s * a + exponential * kept_first;
  }
  return answer;
}

double followed_weather_covariance(double sd, Days weather_memory, Days lag, Days separation) {
  const double T = require_within("weather_memory_days", in_days(weather_memory), {0.01, 1000, "days"});
  const double tau = require_within("lag_days", in_days(lag), lags);
  const double u = require_within("separation_days", std::abs(in_days(separation)), {0, 1e7, "days"});
  if (tau == 0) return sd * sd * std::exp(-u / T);
  const double x = u / std::max(T, tau);
  const double z = u / std::min(T, tau) - x;
  return sd * sd * std::exp(-x) * (1 + x * mean_of_decay(z)) / (1 + tau / T);
}

}  // namespace tailblock

#include "season/wood_path.h"

#include <cmath>

#include "wood/equilibrium.h"
#include "wood/following.h"

namespace tailblock {
namespace {

double asked(const HomeDay& day) {
  return in_percent(equilibrium_moisture(celsius(day.temperature_c), humidity_fraction(day.relative_humidity)));
}

/// Standard deviation of the equilibrium moisture, in percent, that the weather's spread of humidity is worth.
double weather(const HomeDay& day, const HomeAir& home) {
  return 100 * home.weather_sd_relative_humidity *
         equilibrium_slope(celsius(day.temperature_c), humidity_fraction(day.relative_humidity));
}

/// sinh(x)/sinh(x + y) for x, y >= 0 without overflow.
double sinh_share(double x, double y) { return std::exp(-y) * std::expm1(-2 * x) / std::expm1(-2 * (x + y)); }

/// Carries the logged departures over the days without a log.
void bridge(AirSeries& air) {
  const double T = in_days(air.weather_memory);
  const std::size_t count = air.unlogged.size();
  const auto departure = [&](std::size_t i) { return air.asked_percent[i] - air.typical_percent[i]; };
  std::size_t before = count;  // none yet
  for (std::size_t i = 0; i < count;) {
    if (air.unlogged[i] == 0) {
      before = i++;
      continue;
    }
    std::size_t after = i;
    while (after < count && air.unlogged[after] != 0) ++after;
    const double left = before < count ? departure(before) : 0;
    const double right = after < count ? departure(after) : 0;
    for (; i < after; ++i) {
      const double a = before < count ? static_cast<double>(i - before) / T : INFINITY;
      const double b = after < count ? static_cast<double>(after - i) / T : INFINITY;
      double carried = 0;
      if (std::isfinite(a)) carried += std::isfinite(b) ? left * sinh_share(b, a) : left * std::exp(-a);
      if (std::isfinite(b)) carried += std::isfinite(a) ? right * sinh_share(a, b) : right * std::exp(-b);
      air.asked_percent[i] += carried;
    }
  }
}

/// Where a list followed through one year over and over comes back to itself.
double periodic_state(const std::vector<double>& year, Days lag) {
  const double end = follow(year, lag, 0).back();
  const double kept = std::exp(-static_cast<double>(year.size() - 1) / in_days(lag));
  return end / (1 - kept);
}

}  // namespace

AirSeries air_series(const HomeAir& home, Date first, int count) {
  HomeAir without_log = home;
  without_log.log.clear();
  const std::vector<HomeDay> typical = home_days(without_log, first, count);
  const bool any_log = !home.log.empty();
  const std::vector<HomeDay> logged = any_log ? home_days(home, first, count) : std::vector<HomeDay>();
  const auto size = static_cast<std::size_t>(count);
  AirSeries air{.first = first,
                .asked_percent = std::vector<double>(size),
                .weather_percent = std::vector<double>(size),
                .unlogged = std::vector<double>(size, 1),
                .typical_percent = std::vector<double>(size),
                .weather_memory = home.weather_memory};
  for (std::size_t i = 0; i < size; ++i) {
    air.typical_percent[i] = air.asked_percent[i] = asked(typical[i]);
    air.weather_percent[i] = weather(typical[i], home);
    if (!any_log || !logged[i].logged) continue;
    air.asked_percent[i] = asked(logged[i]);
    air.unlogged[i] = 0;
  }
  if (any_log) bridge(air);
  return air;
}

AirSeries typical_year_before(const HomeAir& home, Date first) {
  HomeAir without_log = home;
  without_log.log.clear();
  return air_series(without_log, first - std::chrono::days(366), 367);
}

AirSeries typical_leap_year(const HomeAir& home) {
  HomeAir without_log = home;
  without_log.log.clear();
  return air_series(without_log, Date(std::chrono::year(2024) / std::chrono::January / 1), 366);
}

WoodPath wood_path(const AirSeries& air, const AirSeries& year_before, Days lag) {
  WoodPath path{.first = air.first,
                .moisture_percent = follow(air.asked_percent, lag, periodic_state(year_before.asked_percent, lag)),
                .weather_percent = follow(air.weather_percent, lag, periodic_state(year_before.weather_percent, lag)),
                .departure_percent = follow(air.unlogged, lag, 1)};
  for (std::size_t i = 0; i < path.departure_percent.size(); ++i) path.departure_percent[i] *= path.weather_percent[i];
  return path;
}

std::vector<double> typical_moisture(const AirSeries& leap_year, Days lag) {
  std::vector<double> closed = leap_year.asked_percent;
  closed.push_back(closed.front());
  std::vector<double> followed = follow(closed, lag, periodic_state(closed, lag));
  followed.pop_back();
  return followed;
}

}  // namespace tailblock

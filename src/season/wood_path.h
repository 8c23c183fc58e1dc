#pragma once

#include <vector>

#include "air/home.h"

namespace tailblock {

/// The air of a home as wood feels it, day by day: what moisture it asks for, and what is not known of that.
struct AirSeries {
  Date first;
  std::vector<double> asked_percent;    ///< equilibrium moisture: from the log, or expected
  std::vector<double> weather_percent;  ///< standard deviation of the day-to-day departure where nothing is logged
  std::vector<double> unlogged;         ///< 1 where the log has no such day, else 0
  std::vector<double> typical_percent;  ///< equilibrium moisture of the typical year
  Days weather_memory;
};

/// Air of `count` days from `first` on. A day without a log is expected to keep the nearest logged departures:
///
///     departure = [sinh(b/T) before + sinh(a/T) after]/sinh((a+b)/T)      a, b days to the logged ones, T memory
///
/// which after the last log is `before` exp(-a/T). Derived here: mean of an Ornstein-Uhlenbeck process between two
/// known values. Departures are of equilibrium moisture; its curvature over the weather's spread is left out.
[[nodiscard]] AirSeries air_series(const HomeAir& home, Date first, int count);

/// Moisture of wood that follows the air with a lag, day by day.
struct WoodPath {
  Date first;
  std::vector<double> moisture_percent;   ///< expected
  std::vector<double> weather_percent;    ///< followed standard deviation of the weather
  std::vector<double> departure_percent;  ///< scale of the unknown departure: that times the unlogged weight
};

/// Wood in that air, begun in the typical year's periodic state, which `year_before` (a typical year that ends where
/// the series begins) gives. The scale is (share of the filter's weight on days without a log) x (weather sd followed
/// at the same lag); multiply by `followed_weather_covariance` at unit sd. docs/models/response.md.
[[nodiscard]] WoodPath wood_path(const AirSeries& air, const AirSeries& year_before, Days lag);

/// A typical year that ends the day before `first`.
[[nodiscard]] AirSeries typical_year_before(const HomeAir& home, Date first);

/// Moisture of wood through a typical year that repeats for ever, 1 January first, 366 days.
[[nodiscard]] std::vector<double> typical_moisture(const AirSeries& leap_year, Days lag);

/// The typical year from 1 January of a leap year, without the log.
[[nodiscard]] AirSeries typical_leap_year(const HomeAir& home);

}  // namespace tailblock

#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

#include "season/calibration.h"
#include "season/outside.h"
#include "season/wood_path.h"

namespace tailblock::testing {

/// The year ahead by plain drawing: the slow and obvious counterpart of `year_paths`, and its peer in perf/.
/// `bass[day]` and `treble[day]` hold one height a draw.
struct DrawnYear {
  std::vector<std::vector<double>> bass, treble;
  std::vector<std::vector<double>> above_reference;  ///< moisture of the wood
};

/// One day of an Ornstein-Uhlenbeck air behind a first-order stage, exactly: (air, wood) -> F (air, wood) + noise of
/// covariance Q = S - F S F', S the stationary covariance. Variances in units of the air's.
struct WeatherDay {
  double air_kept, wood_kept, wood_from_air;
  double noise_air, noise_wood_along, noise_wood_across;

  WeatherDay(double tau, double T) {
    air_kept = std::exp(-1 / T);
    wood_kept = std::exp(-1 / tau);
    wood_from_air = std::abs(T - tau) < 1e-9 ? wood_kept / tau : T * (air_kept - wood_kept) / (T - tau);
    const double C = T / (T + tau);
    const double qaa = 1 - air_kept * air_kept;
    const double qaw = C - air_kept * (wood_kept * C + wood_from_air);
    const double qww =
        C - (wood_kept * wood_kept * C + 2 * wood_kept * wood_from_air * C + wood_from_air * wood_from_air);
    noise_air = std::sqrt(qaa);
    noise_wood_along = qaw / noise_air;
    noise_wood_across = std::sqrt(std::max(0.0, qww - noise_wood_along * noise_wood_along));
  }
};

/// What all draws of one hypothesis share.
struct DrawnHypothesis {
  Hypothesis h;
  std::array<std::array<double, 5>, 5> lower;  // Cholesky of its covariance
  std::vector<double> moisture, weather;
  double weather_today;
  WeatherDay step;
};

inline std::array<std::array<double, 5>, 5> cholesky(const std::array<std::array<double, 5>, 5>& c) {
  std::array<std::array<double, 5>, 5> l{};
  for (std::size_t i = 0; i < 5; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      double sum = c[i][j];
      for (std::size_t k = 0; k < j; ++k) sum -= l[i][k] * l[j][k];
      l[i][j] = i == j ? std::sqrt(std::max(1e-18, sum)) : sum / l[j][j];
    }
  }
  return l;
}

/// From today on, in a home without a log.
inline DrawnYear drawn_year(const Calibration& calibration, const HomeAir& home, int count, int draws,
                            std::mt19937_64& random) {
  std::vector<DrawnHypothesis> hypotheses;
  std::vector<double> weights;
  for (const Hypothesis& h : calibration.hypotheses) {
    const WoodPath path =
        wood_path(air_series(home, calibration.today, count), typical_year_before(home, calibration.today), h.lag);
    hypotheses.push_back({.h = h,
                          .lower = cholesky(h.covariance),
                          .moisture = expected_moisture(h, calibration.today, home, calibration.today, count),
                          .weather = path.weather_percent,
                          .weather_today = path.weather_percent[0],
                          .step = WeatherDay(in_days(h.lag), in_days(home.weather_memory))});
    weights.push_back(h.weight);
  }
  std::discrete_distribution<std::size_t> choose(weights.begin(), weights.end());
  std::normal_distribution<double> normal;
  const auto days_of_year = static_cast<std::size_t>(count);
  const auto size = static_cast<std::size_t>(draws);
  DrawnYear year{.bass = std::vector<std::vector<double>>(days_of_year, std::vector<double>(size)),
                 .treble = std::vector<std::vector<double>>(days_of_year, std::vector<double>(size)),
                 .above_reference = std::vector<std::vector<double>>(days_of_year, std::vector<double>(size))};
  for (std::size_t draw = 0; draw < size; ++draw) {
    const DrawnHypothesis& d = hypotheses[choose(random)];
    std::array<double, 5> z{};
    for (double& one : z) one = normal(random);
    std::array<double, 5> latent{d.h.level_bass_mm, d.h.level_treble_mm, d.h.treble_ratio, d.h.drift_mm_per_year,
                                 d.h.moisture_departure_percent};
    for (std::size_t i = 0; i < 5; ++i) {
      for (std::size_t j = 0; j <= i; ++j) latent[i] += d.lower[i][j] * z[j];
    }
    const double T = in_days(home.weather_memory);
    const double C = T / (T + in_days(d.h.lag));
    // Today's air given today's wood: regression 1, and what is left of the air's variance.
    double kept_air = latent[4];
    double kept_wood = latent[4];
    double new_air = std::sqrt(1 - C) * normal(random);
    double new_wood = 0;
    for (std::size_t i = 0; i < days_of_year; ++i) {
      if (i > 0) {
        kept_wood = d.step.wood_kept * kept_wood + d.step.wood_from_air * kept_air;
        kept_air *= d.step.air_kept;
        const double one = normal(random);
        const double other = normal(random);
        new_wood = d.step.wood_kept * new_wood + d.step.wood_from_air * new_air + d.step.noise_wood_along * one +
                   d.step.noise_wood_across * other;
        new_air = d.step.air_kept * new_air + d.step.noise_air * one;
      }
      const double w = kept_wood + d.weather[i] * new_wood;
      const double x = d.moisture[i] - calibration.reference_moisture_percent;
      const double drifted = latent[3] * static_cast<double>(i) / 365.25;
      const double r = d.h.response_mm_per_percent;
      year.above_reference[i][draw] = x + w;
      year.bass[i][draw] = latent[0] + r * (x + w) + drifted;
      year.treble[i][draw] = latent[1] + r * (latent[2] * x + d.h.treble_ratio * w) + drifted;
    }
  }
  return year;
}

inline double quantile_of(std::vector<double>& values, double p) {
  const auto place = values.begin() + static_cast<std::ptrdiff_t>(p * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), place, values.end());
  return *place;
}

}  // namespace tailblock::testing

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <numeric>
#include <random>

#include "season/normal.h"
#include "season/response_prior.h"
#include "season/wood_path.h"
#include "season_bench.h"

namespace tailblock::testing {
namespace {

#ifdef __OPTIMIZE__
constexpr int draws = 150000;
#else
constexpr int draws = 5000;
#endif
constexpr int instruments_a_lag = 5;

/// The whole posterior by drawing instruments from the prior and weighing each by how well it fits the readings: no
/// grid, no matrix, the weather day by day. Slow and obvious, and only good for coarse gauges.
struct Drawn {
  double weight, response, treble_response, lag, bass_later_mm;
};

double density(double x, double sd) { return std::exp(-x * x / (2 * sd * sd)) / sd; }

class PlainPosterior {
 public:
  PlainPosterior(const ResponseRequest& request, Date later) : request_(request), later_(later) {
    first_ = request.readings.front().date;
    const int count = days_between(first_, later) + 1;
    air_ = air_series(request.home, first_, count);
    before_ = typical_year_before(request.home, first_);
    const AirSeries typical = typical_leap_year(request.home);
    reference_ = std::accumulate(typical.asked_percent.begin(), typical.asked_percent.end(), 0.0) / 366;
  }

  std::vector<Drawn> draw(std::mt19937_64& random) const {
    const SeasonPrior& p = *season_tables().prior;
    std::normal_distribution<double> normal;
    const ResponsePrior prior = response_prior({}, {}, season_tables());
    const double T = in_days(request_.home.weather_memory);
    std::vector<Drawn> drawn;
    for (int lag_draw = 0; lag_draw < draws / instruments_a_lag; ++lag_draw) {
      const double lag = p.lag_median * std::exp(p.lag_log_sd * normal(random));
      const WoodPath path = wood_path(air_, before_, days(lag));
      const double wood_kept = std::exp(-1 / lag);
      const double air_kept = std::exp(-1 / T);
      const double passed = T * (air_kept - wood_kept) / (T - lag);
      for (int k = 0; k < instruments_a_lag; ++k) {
        const double r = std::exp(prior.log_response + prior.log_response_sd * normal(random));
        const double ratio = p.treble_ratio + p.treble_ratio_sd * normal(random);
        const double drift = p.drift + p.drift_sd * normal(random);
        const double common = p.level_sd * normal(random);
        const double bass = p.level_bass + common;
        const double treble = p.level_treble + common + p.level_side_sd * normal(random);
        double weight = 1;
        // The stage's own share of one day's fresh air is left to that day's end: short of exact by a percent.
        double air = normal(random);
        double wood = air * T / (T + lag) + std::sqrt(T / (T + lag) * (1 - T / (T + lag))) * normal(random);
        double later = 0;
        double set_noise = 0;
        std::size_t next = 0;
        for (std::size_t i = 0; i < path.moisture_percent.size(); ++i) {
          if (i > 0) {
            const double fresh = std::sqrt(1 - air_kept * air_kept) * normal(random);
            wood = wood_kept * wood + passed * air + fresh * -std::expm1(-1 / lag) / 2;
            air = air_kept * air + fresh;
          }
          const Date date = first_ + std::chrono::days(static_cast<int>(i));
          const double w = path.weather_percent[i] * wood;
          const double x = path.moisture_percent[i] - reference_;
          const double drifted = drift * days_between(request_.today, date) / 365.25;
          bool first_of_day = true;
          for (; next < request_.readings.size() && request_.readings[next].date == date; ++next) {
            if (first_of_day) set_noise = p.set_sd * normal(random);
            first_of_day = false;
            const HeightReading& reading = request_.readings[next];
            const double height =
                reading.kind == HeightKind::action12_bass ? bass + r * (x + w) : treble + r * ratio * (x + w);
            weight *= density(in_mm(reading.value) - height - drifted - set_noise, in_mm(reading.gauge_sd));
          }
          later = bass + r * (x + w) + drifted;
        }
        drawn.push_back({weight, r, r * ratio, lag, later});
      }
    }
    return drawn;
  }

 private:
  ResponseRequest request_;
  Date first_, later_;
  AirSeries air_, before_;
  double reference_ = 0;
};

Estimate weighted(std::vector<Drawn> drawn, double Drawn::*field) {
  std::sort(drawn.begin(), drawn.end(), [&](const Drawn& a, const Drawn& b) { return a.*field < b.*field; });
  double total = 0;
  for (const Drawn& one : drawn) total += one.weight;
  const auto quantile = [&](double p) {
    double below = 0;
    for (const Drawn& one : drawn) {
      below += one.weight;
      if (below >= p * total) return one.*field;
    }
    return drawn.back().*field;
  };
  return {.median = quantile(0.5), .low = quantile(0.05), .high = quantile(0.95)};
}

TEST(Posterior, agrees_with_instruments_drawn_from_the_prior_and_weighed) {
  SeasonPrior p = *season_tables().prior;
  p.step_probability = 0;  // the slow one knows no unrecorded moves
  SeasonTables tables = season_tables();
  tables.prior = &p;
  ResponseRequest request{.today = day("2026-02-15"),
                          .design = {},
                          .home = heated_home("Winnipeg MB", 3, 0.28),
                          .readings = {},
                          .changes = {},
                          .kindred = {}};
  read_both(request, day("2025-07-20"), 2.55, 1.95, 0.2);
  read_both(request, day("2025-11-10"), 2.00, 1.65, 0.2);
  read_both(request, day("2026-02-15"), 1.60, 1.20, 0.2);
  const Date later = day("2026-04-01");
  std::mt19937_64 random(21);
  const std::vector<Drawn> drawn = PlainPosterior(request, later).draw(random);
  double total = 0;
  double squares = 0;
  for (const Drawn& one : drawn) total += one.weight, squares += one.weight * one.weight;
  const double effective = total * total / squares;
  const ResponseResult ours = response(request, tables);
  const YearPaths paths = year_paths(calibrate(request, tables), request.home, later, 1);
  const Estimate ahead{.median = action_quantile_mm(paths, true, 0, 0.5),
                       .low = action_quantile_mm(paths, true, 0, 0.05),
                       .high = action_quantile_mm(paths, true, 0, 0.95)};
  std::printf("  %d drawn, worth %.0f\n", static_cast<int>(drawn.size()), effective);
  const auto compare = [&](const char* what, const Estimate& fast, const Estimate& slow) {
    const double wide = slow.high - slow.low;
    std::printf("  %-16s %.4f (%.4f to %.4f), drawn %.4f (%.4f to %.4f)\n", what, fast.median, fast.low, fast.high,
                slow.median, slow.low, slow.high);
    // Standard error of a drawn 5 % quantile: 0.64 of the band over the root of the number drawn; four of them.
    const double allowed = 4 * 0.64 * wide / std::sqrt(effective);
    EXPECT_NEAR(fast.median, slow.median, allowed) << what;
    EXPECT_NEAR(fast.low, slow.low, allowed) << what;
    EXPECT_NEAR(fast.high, slow.high, allowed) << what;
  };
  compare("response", ours.response_bass_mm_per_percent, weighted(drawn, &Drawn::response));
  compare("treble response", ours.response_treble_mm_per_percent, weighted(drawn, &Drawn::treble_response));
  compare("lag", ours.lag_days, weighted(drawn, &Drawn::lag));
  compare("six weeks ahead", ahead, weighted(drawn, &Drawn::bass_later_mm));
}

}  // namespace
}  // namespace tailblock::testing

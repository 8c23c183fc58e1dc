// Limits of the design: a calibrated instrument's `response` and `year` (365 days, two sides, five quantiles and the
// days outside) under 5 ms on one core, and at least 20 times as fast as plain drawing from the same model at the same
// quantiles within 1 % of the band. The peer draws 6,000 years: the error of a drawn 5 % quantile is 0.64 of the band
// over the root of the draws, 0.8 %, which is as close to 1 % as it is worth; the deviation is measured and shown.
#include <benchmark/benchmark.h>

#include <array>
#include <cmath>
#include <cstdio>

#include "../tests/season/drawn_year.h"
#include "../tests/season/season_bench.h"

namespace {

using namespace tailblock;
using namespace tailblock::testing;

constexpr int draws = 6000;
const Date today = day("2026-02-15");

/// Ten readings over three years with feelers, in a heated home of a cold winter; the player's limits are near.
YearRequest calibrated(int visits = 5) {
  YearRequest request{
      .instrument = {.today = today,
                     .design = {},
                     .home = heated_home("Winnipeg MB", 3, 0.28),
                     .readings = {},
                     .changes = {},
                     .kindred = {}},
      .first = today,
      .count = 365,
      .limits = ActionLimits{
          .lowest_bass = mm(2.1), .lowest_treble = mm(1.5), .highest_bass = mm(2.6), .highest_treble = mm(2.0)}};
  for (int i = 0; i < visits; ++i) {
    const int ago = 182 * (visits - 1 - i);
    const double summer = i % 2 == 0 ? 0 : 0.5;
    read_both(request.instrument, today - std::chrono::days(ago), 2.0 + summer, 1.45 + 0.9 * summer, 0.05);
  }
  return request;
}

void response_of_a_calibrated_instrument(benchmark::State& state) {
  const YearRequest request = calibrated();
  for (auto _ : state) benchmark::DoNotOptimize(response(request.instrument, season_tables()));
}
BENCHMARK(response_of_a_calibrated_instrument)->Unit(benchmark::kMillisecond);

void year_of_a_calibrated_instrument(benchmark::State& state) {
  const YearRequest request = calibrated();
  for (auto _ : state) benchmark::DoNotOptimize(year(request, season_tables()));
}
BENCHMARK(year_of_a_calibrated_instrument)->Unit(benchmark::kMillisecond);

void year_of_an_unread_instrument(benchmark::State& state) {
  const YearRequest request = calibrated(0);
  for (auto _ : state) benchmark::DoNotOptimize(year(request, season_tables()));
}
BENCHMARK(year_of_an_unread_instrument)->Unit(benchmark::kMillisecond);

void response_of_two_hundred_readings(benchmark::State& state) {
  const YearRequest request = calibrated(100);
  for (auto _ : state) benchmark::DoNotOptimize(response(request.instrument, season_tables()));
}
BENCHMARK(response_of_two_hundred_readings)->Unit(benchmark::kMillisecond);

void calibration(benchmark::State& state) {
  const YearRequest request = calibrated();
  for (auto _ : state) benchmark::DoNotOptimize(calibrate(request.instrument, season_tables()));
}
BENCHMARK(calibration)->Unit(benchmark::kMillisecond);

/// The peer: the same calibration, then drawn years, sorted as far as five quantiles a day need.
void plain_drawing_of_the_same_year(benchmark::State& state) {
  const YearRequest request = calibrated();
  const HomeAir& home = request.instrument.home;
  const YearResult ours = year(request, season_tables());
  double worst = 0;
  for (auto _ : state) {
    std::mt19937_64 random(1);
    DrawnYear drawn = drawn_year(calibrate(request.instrument, season_tables()), home, 365, draws, random);
    for (std::size_t d = 0; d < 365; ++d) {
      const std::array<const ActionBand*, 2> bands{&ours.bass, &ours.treble};
      for (std::size_t side = 0; side < 2; ++side) {
        const ActionBand& band = *bands[side];
        std::vector<double>& values = side == 0 ? drawn.bass[d] : drawn.treble[d];
        const double wide = band.high_mm[d] - band.low_mm[d];
        worst = std::max({worst, std::abs(quantile_of(values, 0.05) - band.low_mm[d]) / wide,
                          std::abs(quantile_of(values, 0.25) - band.lower_mm[d]) / wide,
                          std::abs(quantile_of(values, 0.50) - band.median_mm[d]) / wide,
                          std::abs(quantile_of(values, 0.75) - band.upper_mm[d]) / wide,
                          std::abs(quantile_of(values, 0.95) - band.high_mm[d]) / wide});
      }
    }
  }
  state.counters["largest deviation, % of band"] = 100 * worst;
}
BENCHMARK(plain_drawing_of_the_same_year)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

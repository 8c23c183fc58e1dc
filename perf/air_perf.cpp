// Limits of the design: `air` and `moisture` under 0.1 ms a call. The air of a home for three years is what the season
// model asks for at every question, so it is held to the same.
#include <benchmark/benchmark.h>

#include "air/home_air.h"
#include "air/moist_air.h"
#include "wood/equilibrium.h"
#include "wood/moisture.h"

namespace {

using namespace tailblock;

/// A cold-winter place with a heated house, invented.
HomeAir heated_home() {
  HomeAir home;
  home.kind = HomeKind::outdoor_months;
  home.temperature_c = {-10, -8, -2, 6, 13, 18, 21, 20, 15, 8, 1, -7};
  home.dew_point_c = {-14, -12, -7, -1, 5, 11, 14, 13, 9, 3, -3, -10};
  return home;
}

const Date new_year = date_from_iso("first", "2025-01-01");

void air_from_humidity(benchmark::State& state) {
  const AirRequest request{.temperature = celsius(21), .relative_humidity = humidity_percent(45)};
  for (auto _ : state) benchmark::DoNotOptimize(air(request));
}
BENCHMARK(air_from_humidity)->Unit(benchmark::kMicrosecond);

void home_of_three_years(benchmark::State& state) {
  const HomeAir home = heated_home();
  for (auto _ : state) benchmark::DoNotOptimize(home_days(home, new_year, 1096));
}
BENCHMARK(home_of_three_years)->Unit(benchmark::kMicrosecond);

void home_of_three_years_all_logged(benchmark::State& state) {
  HomeAir home = heated_home();
  for (int i = 0; i < 1096; ++i) {
    home.log.push_back({.date = new_year + std::chrono::days(i), .temperature_c = 20, .relative_humidity = 0.4});
  }
  for (auto _ : state) benchmark::DoNotOptimize(home_days(home, new_year, 1096));
}
BENCHMARK(home_of_three_years_all_logged)->Unit(benchmark::kMicrosecond);

void moisture_in_still_air(benchmark::State& state) {
  MoistureRequest request;
  request.still_air = StillAir{};
  for (auto _ : state) benchmark::DoNotOptimize(moisture(request));
}
BENCHMARK(moisture_in_still_air)->Unit(benchmark::kMicrosecond);

void moisture_through_a_year(benchmark::State& state) {
  MoistureRequest request;
  request.home = heated_home();
  request.first = new_year;
  request.plate.extra_lag = days(10);
  for (auto _ : state) benchmark::DoNotOptimize(moisture(request));
}
BENCHMARK(moisture_through_a_year)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();

// The saddle question, all five ways, on one core: design.md section 7 asks for under 30 ms. Two instruments: one with
// three visits and one that was read once, whose hypotheses are many more.

#include <benchmark/benchmark.h>

#include "season_tables.h"
#include "setup/saddle.h"
#include "setup/saddle_limits.h"

namespace {

using namespace tailblock;

Date day(const char* iso) { return date_from_iso("day", iso); }

SaddleRequest low_in_february(bool read_before) {
  SaddleRequest request;
  request.instrument.today = request.first = day("2026-02-14");
  HomeAir& home = request.instrument.home;
  home.temperature_c = {20, 20, 20, 21, 22, 24, 25, 25, 23, 21, 20, 20};
  home.relative_humidity = {.24, .25, .29, .36, .45, .54, .57, .57, .52, .43, .34, .27};
  const auto read = [&](const char* date, HeightKind kind, double height_mm) {
    HeightReading reading;
    reading.date = day(date);
    reading.kind = kind;
    reading.value = mm(height_mm);
    request.instrument.readings.push_back(reading);
  };
  if (read_before) {
    read("2025-02-20", HeightKind::action12_bass, 1.85);
    read("2025-02-20", HeightKind::action12_treble, 1.40);
    read("2025-08-20", HeightKind::action12_bass, 2.40);
    read("2025-08-20", HeightKind::action12_treble, 1.90);
  }
  read("2026-02-14", HeightKind::action12_bass, 1.75);
  read("2026-02-14", HeightKind::action12_treble, 1.35);
  // A player with little room, so that no way is refused early and every room is tried.
  request.limits = {
      .lowest_bass = mm(2.2), .lowest_treble = mm(1.7), .highest_bass = mm(2.6), .highest_treble = mm(2.1)};
  request.bridge.slot_depth = mm(5);
  request.bridge.break_angle = degrees(26);
  return request;
}

void all_choices(benchmark::State& state, bool read_before) {
  const SaddleLimits limits = saddle_limits(tailblock::testing::repository_file("data/saddle_limits.csv"));
  const SaddleRequest request = low_in_february(read_before);
  for (auto _ : state) benchmark::DoNotOptimize(saddle(request, tailblock::testing::season_tables(), limits));
  state.counters["limit_ms"] = 30;
}

BENCHMARK_CAPTURE(all_choices, three_visits, true)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(all_choices, read_once, false)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

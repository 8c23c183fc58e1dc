// Serial generation with justification on the PSPLIB selection (TAILBLOCK_PSPLIB names its folder; nothing runs
// without): mean deviation in percent after 1,000, 5,000 and 50,000 schedules. The published figures for whole classes
// stand in docs/models/bench.md beside what this printed. `best_known` counts the projects found at their best-known
// makespan.

#include <benchmark/benchmark.h>

#include <string>

#include "project_search.h"

namespace {

void whole_selection(benchmark::State& state, const char* set) {
  if (tailblock::testing::psplib_folder().empty()) {
    state.SkipWithError("TAILBLOCK_PSPLIB names no folder with the PSPLIB files");
    return;
  }
  const auto projects = tailblock::testing::projects_of(set);
  tailblock::testing::Deviations found;
  for (auto _ : state) found = tailblock::testing::deviations(projects, static_cast<int>(state.range(0)));
  state.counters["projects"] = found.projects;
  state.counters["over_best_known_percent"] = found.over_best_known;
  state.counters["over_critical_path_percent"] = found.over_critical_path;
  state.counters["faults"] = found.faults;
  state.counters["best_known"] = found.at_best_known;
}
BENCHMARK_CAPTURE(whole_selection, j30, "j30")
    ->Arg(1000)
    ->Arg(5000)
    ->Arg(50000)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);
BENCHMARK_CAPTURE(whole_selection, j60, "j60")
    ->Arg(1000)
    ->Arg(5000)
    ->Arg(50000)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);
BENCHMARK_CAPTURE(whole_selection, j90, "j90")
    ->Arg(1000)
    ->Arg(5000)
    ->Arg(50000)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);
BENCHMARK_CAPTURE(whole_selection, j120, "j120")
    ->Arg(1000)
    ->Arg(5000)
    ->Arg(50000)
    ->Iterations(1)
    ->Unit(benchmark::kSecond);

}  // namespace

BENCHMARK_MAIN();

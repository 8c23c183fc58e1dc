// Limit of the design: a whole question under 20 ms with its envelopes at hand. Beside it, in the same run, GLPK's
// glpsol on the same linear program, its own start and the file it reads included.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include "setup/fret_dress.h"
#include "setup/fret_limits.h"
#include "setup/least_metal.h"
#include "strings/string_tables.h"

namespace {

using namespace tailblock;

std::string text_of(const std::string& path) {
  std::ifstream file(TEST_SOURCE_DIR "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Light strings on 645 mm, every crown a little off, bass and treble read apart.
FretDressRequest uneven(bool apart) {
  FretDressRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.9)};
  request.strings = tuned(string_set_named(string_sets(text_of("data/string_sets.csv")), "light"),
                          tuning_named(tunings(text_of("data/tunings.csv")), "standard"));
  request.attack = attack_named(attack_levels(text_of("data/attacks.csv")), "medium");
  for (int fret = 1; fret <= 20; ++fret) {
    const double bass = 0.08 * std::sin(3.7 * fret), treble = 0.08 * std::cos(5.3 * fret);
    if (apart) {
      request.readings.push_back({.fret = fret, .side = FretSide::bass, .value = mm(bass)});
      request.readings.push_back({.fret = fret, .side = FretSide::treble, .value = mm(treble)});
    } else {
      request.readings.push_back({.fret = fret, .value = mm(bass)});
    }
    request.readings.push_back({.kind = FretReadingKind::over_board, .fret = fret, .value = mm(1)});
  }
  return request;
}

void whole_question(benchmark::State& state) {
  const FretDressRequest request = uneven(state.range(0) != 0);
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  const FretLimits limits = fret_limits(text_of("data/fret_limits.csv"));
  for (auto _ : state) benchmark::DoNotOptimize(fret_dress(request, envelopes, limits));
  state.SetLabel(
      std::string(fret_verdict_names[static_cast<std::size_t>(fret_dress(request, envelopes, limits).verdict)]));
}
BENCHMARK(whole_question)->ArgName("apart")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

MetalProgram program_of(const FretDressRequest& request) {
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  const FretLimits limits = fret_limits(text_of("data/fret_limits.csv"));
  const Crowns crowns = crowns_from_readings(request, limits);
  const FretNotes notes(request, envelopes, crowns);
  MetalBounds bounds;
  bounds.apart = crowns.apart;
  bounds.least = {std::vector<double>(20), std::vector<double>(20)};
  bounds.most = {std::vector<double>(20, 0.4), std::vector<double>(20, 0.4)};
  return metal_program(notes.over_frets({crowns.bass.departure, crowns.treble.departure},
                                        {.relief = crowns.relief, .action_raise_mm = 0, .margin_mm = 0.02}),
                       bounds);
}

void least_metal_alone(benchmark::State& state) {
  const MetalProgram metal = program_of(uneven(true));
  for (auto _ : state) benchmark::DoNotOptimize(least_cost(metal.program));
  state.SetLabel(std::to_string(metal.program.rows()) + " rows");
}
BENCHMARK(least_metal_alone)->Unit(benchmark::kMillisecond);

void glpsol_on_the_same_rows(benchmark::State& state) {
  const LinearProgram program = program_of(uneven(true)).program;
  const std::string question = "/tmp/fret_dress_perf.lp";
  {
    std::ofstream file(question);
    file.precision(17);
    file << "Minimize\n cost:";
    for (std::size_t i = 0; i < program.cost.size(); ++i) file << " + " << program.cost[i] << " x" << i << "\n";
    file << "Subject To\n";
    for (std::size_t row = 0; row < program.row_least.size(); ++row) {
      for (int k = program.start[row]; k < program.start[row + 1]; ++k) {
        const auto entry = static_cast<std::size_t>(k);
        file << (program.entry[entry] < 0 ? " - " : " + ") << std::abs(program.entry[entry]) << " x"
             << program.column[entry];
      }
      file << " >= " << program.row_least[row] << "\n";
    }
    file << "Bounds\n";
    for (std::size_t i = 0; i < program.lower.size(); ++i) {
      file << " " << program.lower[i] << " <= x" << i << " <= " << program.upper[i] << "\n";
    }
    file << "End\n";
  }
  for (auto _ : state) {
    if (std::system(("glpsol --lp " + question + " > /tmp/fret_dress_perf.txt 2>&1").c_str()) != 0) {
      state.SkipWithError("glpsol did not run");
      break;
    }
  }
  std::remove(question.c_str());
}
BENCHMARK(glpsol_on_the_same_rows)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

// Limits of the design: tension and string-line under 0.1 ms a call, the whole clearance map of 6 strings and 20 frets
// under 1 ms with its envelopes at hand. The envelopes themselves, once a string set: aimed at under 150 ms on one
// core.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "strings/clearance.h"
#include "strings/intonation.h"
#include "strings/string_tables.h"

namespace {

using namespace tailblock;

std::string text_of(const std::string& path) {
  std::ifstream file(TEST_SOURCE_DIR "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Light strings on 645 mm under a medium player.
ClearanceRequest well_set_up() {
  ClearanceRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.8)};
  request.strings = tuned(string_set_named(string_sets(text_of("data/string_sets.csv")), "light"),
                          tuning_named(tunings(text_of("data/tunings.csv")), "standard"));
  request.attack = attack_named(attack_levels(text_of("data/attacks.csv")), "medium");
  return request;
}

void tension_of_a_set(benchmark::State& state) {
  const TensionRequest request{.scale_length = mm(645), .strings = well_set_up().strings};
  for (auto _ : state) benchmark::DoNotOptimize(tension(request));
}
BENCHMARK(tension_of_a_set)->Unit(benchmark::kMicrosecond);

void string_line_of_six_strings(benchmark::State& state) {
  const ClearanceRequest set_up = well_set_up();
  StringLineRequest request;
  request.neck = set_up.neck;
  request.action = set_up.action;
  for (auto _ : state) benchmark::DoNotOptimize(string_line(request));
}
BENCHMARK(string_line_of_six_strings)->Unit(benchmark::kMicrosecond);

void intonation_of_six_strings(benchmark::State& state) {
  const ClearanceRequest set_up = well_set_up();
  IntonationRequest request;
  request.neck = set_up.neck;
  request.action = set_up.action;
  request.strings = set_up.strings;
  request.octave_errors = {{.string = 6, .cents = 3}};
  request.saddle = SaddleTop{.front_bass = mm(3), .front_treble = mm(1)};
  const IntonationLimits limits = intonation_limits(text_of("data/intonation_limits.csv"));
  for (auto _ : state) benchmark::DoNotOptimize(intonation(request, limits));
}
BENCHMARK(intonation_of_six_strings)->Unit(benchmark::kMicrosecond);

void clearance_map(benchmark::State& state) {
  const ClearanceRequest request = well_set_up();
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  const ClearanceVerdicts limits = clearance_verdicts(text_of("data/clearance_verdicts.csv"));
  for (auto _ : state) benchmark::DoNotOptimize(clearance(request, envelopes, limits));
}
BENCHMARK(clearance_map)->Unit(benchmark::kMicrosecond);

void least_clean_saddle(benchmark::State& state) {
  const ClearanceRequest request = well_set_up();
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  for (auto _ : state) benchmark::DoNotOptimize(least_clean_action(request, envelopes));
}
BENCHMARK(least_clean_saddle)->Unit(benchmark::kMicrosecond);

void envelopes_of_six_strings_cold(benchmark::State& state) {
  const EnvelopeRequest request = envelope_request(well_set_up());
  for (auto _ : state) benchmark::DoNotOptimize(unit_envelopes(request));
}
BENCHMARK(envelopes_of_six_strings_cold)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

// Limits of the design: contact at least 150 times faster than its sound, a core, at 88 to 96 kHz with 20 frets;
// 6 strings x 21 notes x 3 attacks x 0.25 s under 0.25 s on two cores. The peer in the same run is the plain string of
// tests/support: the same scheme, one pluck at a time, no vector registers. `times_real_time` counts seconds of sound a
// second of this core's time.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "models/do_each.h"
#include "plain_fretted_string.h"
#include "strings/bare_motion.h"
#include "strings/contact_map.h"
#include "strings/contact_note.h"
#include "strings/string_tables.h"

namespace {

using namespace tailblock;

constexpr double sound_s = 0.25;

std::string text_of(const std::string& path) {
  std::ifstream file(TEST_SOURCE_DIR "/" + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Light strings on 645 mm, left low enough that many notes buzz.
ClearanceRequest left_low(const char* attack) {
  ClearanceRequest request;
  request.neck.relief = mm(0.10);
  request.action = {.action12_bass = mm(1.6), .action12_treble = mm(1.3)};
  request.strings = tuned(string_set_named(string_sets(text_of("data/string_sets.csv")), "light"),
                          tuning_named(tunings(text_of("data/tunings.csv")), "standard"));
  request.attack = attack_named(attack_levels(text_of("data/attacks.csv")), attack);
  return request;
}

struct Bench {
  ClearanceRequest set_up = left_low("hard");
  Geometry g = geometry(set_up.neck, set_up.action);
  std::vector<MovingString> strings = envelope_request(set_up).strings;

  [[nodiscard]] ContactNote note(int string, int stopped) const {
    return contact_note(g, strings[static_cast<std::size_t>(string - 1)], string, stopped);
  }
  [[nodiscard]] HeldPluck pluck(const ContactNote& note, int string, int stopped, double times) const {
    return {pluck_place(set_up.attack, note.length), times * note_of(g, set_up.attack, string, stopped).amplitude};
  }
};

void count_sound(benchmark::State& state, double seconds_a_round) {
  state.counters["times_real_time"] =
      benchmark::Counter(seconds_a_round * static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

/// An open string plucked four ways at once: both directions, normally and hard; three of them strike frets.
void open_string_over_20_frets(benchmark::State& state) {
  const Bench bench;
  const auto string = static_cast<int>(state.range(0));
  const ContactNote note = bench.note(string, 0);
  const std::vector<HeldPluck> plucks{bench.pluck(note, string, 0, 1), bench.pluck(note, string, 0, -1),
                                      bench.pluck(note, string, 0, 1.3), bench.pluck(note, string, 0, 1.6)};
  for (auto _ : state) benchmark::DoNotOptimize(fretted_motion(note.string, note.frets, plucks, {.seconds = sound_s}));
  count_sound(state, sound_s * static_cast<double>(plucks.size()));
}
BENCHMARK(open_string_over_20_frets)->DenseRange(1, 6)->Unit(benchmark::kMillisecond);

/// The peer: the hardest of those plucks alone, plainly.
void open_string_over_20_frets_plain(benchmark::State& state) {
  const Bench bench;
  const auto string = static_cast<int>(state.range(0));
  const ContactNote note = bench.note(string, 0);
  const HeldPluck pluck = bench.pluck(note, string, 0, 1.3);
  testing::PlainString plain{.length = note.length,
                             .tension = note.string.tension,
                             .kg_per_metre = note.string.kg_per_metre,
                             .bending_stiffness = note.string.bending_stiffness,
                             .loss_per_s = note.string.loss_per_s,
                             .loss_m2_per_s = note.string.loss_m2_per_s,
                             .pluck_from_stop = pluck.place.from_stop,
                             .pluck_width = pluck.place.width,
                             .pluck_force = pluck.height / height_per_force(note.string, pluck.place),
                             .frets = {}};
  for (const FretPointUnder& fret : note.frets) plain.frets.push_back({fret.from_stop, fret.gap});
  const testing::PlainMotion held(plain, MotionWishes{}.least_steps_per_s);  // holding it is not what is compared
  for (auto _ : state) {
    testing::PlainMotion motion = held;
    benchmark::DoNotOptimize(motion.run(sound_s));
  }
  count_sound(state, sound_s);
}
BENCHMARK(open_string_over_20_frets_plain)->Arg(1)->Arg(6)->Unit(benchmark::kMillisecond);

/// Every note of six strings, frets 0 to 20, three attacks, every step stepped: nothing skipped because it is clear.
void six_strings_21_notes_3_attacks_all_stepped(benchmark::State& state) {
  const Bench bench;
  constexpr std::size_t notes = 21;
  const auto work = [&](std::size_t i) {
    const int string = 1 + static_cast<int>(i / notes), stopped = static_cast<int>(i % notes);
    const ContactNote note = bench.note(string, stopped);
    std::vector<HeldPluck> plucks;
    for (const double times : {0.57, 0.76, 1.0}) plucks.push_back(bench.pluck(note, string, stopped, times));
    benchmark::DoNotOptimize(fretted_motion(note.string, note.frets, plucks, {.seconds = sound_s}));
  };
  for (auto _ : state) do_each_on_threads(6 * notes, work);
}
BENCHMARK(six_strings_21_notes_3_attacks_all_stepped)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

/// What the page asks for: the whole map, both directions, normal and hard, clear notes skipped.
void contact_map_of_a_guitar(benchmark::State& state, double bass_mm, double treble_mm) {
  const ClearanceRequest normal = left_low("medium");
  const ContactMapRequest request{.neck = normal.neck,
                                  .action = {.action12_bass = mm(bass_mm), .action12_treble = mm(treble_mm)},
                                  .strings = normal.strings,
                                  .attack = normal.attack,
                                  .hard_attack = left_low("hard").attack};
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(normal));
  const ContactVerdicts limits = contact_verdicts(text_of("data/contact_verdicts.csv"));
  for (auto _ : state) {
    benchmark::DoNotOptimize(contact_map(request, {envelopes, envelopes}, limits, do_each_on_threads));
  }
}
BENCHMARK_CAPTURE(contact_map_of_a_guitar, low, 1.6, 1.3)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();
BENCHMARK_CAPTURE(contact_map_of_a_guitar, well_set_up, 2.2, 1.7)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

void one_note_reported(benchmark::State& state) {
  const ClearanceRequest low = left_low("hard");
  ContactRequest request;
  request.neck = low.neck;
  request.action = low.action;
  request.strings = low.strings;
  request.attack = low.attack;
  request.string = 6;
  const ContactVerdicts limits = contact_verdicts(text_of("data/contact_verdicts.csv"));
  for (auto _ : state) benchmark::DoNotOptimize(contact(request, limits));
}
BENCHMARK(one_note_reported)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

#include "strings/intonation.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>
#include <numbers>

#include "published.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

using std::numbers::pi;

IntonationLimits shop_limits() { return intonation_limits(testing::repository_file("data/intonation_limits.csv")); }

/// A string of the studies, on a level neck of 645 mm without setback, 2 mm over fret 12.
struct StudyString {
  GuitarString string;
  bool nut_over_plane;  ///< 0.45 mm over the fret plane at the nut, not over fret 1
};

StudyString study_string(std::string_view name) {
  const GuitarString plain{.pitch_hz = 329.6275569, .diameter = inches(0.012)};
  const GuitarString wrapped{.pitch_hz = 82.40688923, .diameter = inches(0.053), .core_diameter = inches(0.022)};
  if (name == "p12") return {plain, false};
  if (name == "p16") return {{.pitch_hz = 246.9416506, .diameter = inches(0.016)}, false};
  if (name == "w53") return {wrapped, false};
  if (name == "w32") {
    return {{.pitch_hz = 146.832384, .diameter = inches(0.032), .core_diameter = inches(0.015)}, false};
  }
  if (name == "E4") return {plain, true};
  // The second study's wrap is 8800 kg/m3 without the slope of its helix: its own mass is given.
  GuitarString weighed = wrapped;
  weighed.weighed_kg_per_metre = 0.01006759;
  return {weighed, true};
}

StoppedString speaking(const StudyString& of, Length dead = {}) {
  NeckLine neck;
  neck.setback_bass = neck.setback_treble = {};
  neck.nut_over_fret1_bass = neck.nut_over_fret1_treble = mm(0.45);
  if (of.nut_over_plane) neck.nut_over_frets_bass = neck.nut_over_frets_treble = mm(0.45);
  const StringAction action{.action12_bass = mm(2), .action12_treble = mm(2)};
  return stopped_string(neck, string_ends(neck, action)[5], of.string, dead);
}

StoppedString flexible(StoppedString string) {
  string.bending_n_m2 = 0;
  return string;
}

double stiff_cents(const StoppedString& string, double firm_ends) {
  return 1200 * std::log2(stiff_first_mode(std::sqrt(string.bending_n_m2 / string.pull_n), 0.3225, firm_ends));
}

double computed(const CsvRow& row) {
  const StudyString study = study_string(row.name("string"));
  const StoppedString string = speaking(study);
  const int fret = row.whole_number("fret", {1, 24, ""});
  const Stopped note = stopped(string, fret, {});
  const Length set_back = octave_setback(string, {});
  const double added = note.pull_n - string.pull_n;
  const std::map<std::string_view, std::function<double()>> quantities{
      {"longer_um", [&] { return note.longer_m * 1e6; }},
      {"added_pull_n", [&] { return added; }},
      {"tension_cents", [&] { return 600 * std::log2(1 + added / string.pull_n); }},
      {"finger_force_n", [&] { return in_newtons(least_finger_force(string, fret, {})); }},
      {"cents", [&] { return cents_sharp(string, fret, {}, {}); }},
      {"flexible_cents", [&] { return cents_sharp(flexible(string), fret, {}, {}); }},
      {"cents_set_back", [&] { return cents_sharp(string, fret, {.setback = set_back}, {}); }},
      {"octave_setback_mm", [&] { return in_mm(set_back); }},
      {"octave_setback_flexible_mm", [&] { return in_mm(octave_setback(flexible(string), {})); }},
      {"octave_setback_dead_mm", [&] { return in_mm(octave_setback(speaking(study, mm(120)), {})); }},
      {"octave_setback_clamped_mm",
       [&] {
         return in_mm(octave_setback(string, {.ends = {2, 2}}));
       }},
      {"octave_setback_open_pinned_mm",
       [&] {
         return in_mm(octave_setback(string, {.ends = {0, 1}}));
       }},
      {"both_setback_mm", [&] { return in_mm(nut_and_saddle(string, {}).place.setback); }},
      {"both_nut_shift_mm", [&] { return in_mm(nut_and_saddle(string, {}).place.nut_shift); }},
      {"firm_end_mm", [&] { return std::sqrt(string.bending_n_m2 / string.pull_n) * 1000; }},
      {"first_order_mm", [&] { return string.scale_m * added / (2 * string.pull_n) * 1000; }},
      {"stiff_cents_0", [&] { return stiff_cents(string, 0); }},
      {"stiff_cents_1", [&] { return stiff_cents(string, 1); }},
      {"stiff_cents_2", [&] { return stiff_cents(string, 2); }},
      {"cents_per_mm",
       [&] {
         StoppedString bare = flexible(string);
         bare.stretching_n = bare.nut_y = bare.line12_y = 0;
         return cents_sharp(bare, 12, {.setback = mm(1)}, {});
       }},
  };
  const auto found = quantities.find(row.name("quantity"));
  if (found == quantities.end()) throw Refused(row.where("quantity") + ": is not known to this test");
  return found->second();
}

TEST(Intonation, agrees_with_both_design_studies) {
  testing::Published table("strings_intonation.csv");
  for (const CsvRow& row : table.rows()) table.check(row, computed(row));
}

/// The first root of a function between two points where it changes sign.
template <class Function>
double root(double low, double high, Function f) {
  const bool rising = f(high) > 0;
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    ((f(middle) > 0) == rising ? high : low) = middle;
  }
  return (low + high) / 2;
}

/// First mode of a stiff string over a flexible one's, from the roots of its characteristic equation:
///
///     a^2 - b^2 = 1/e^2,   w/w_0 = a b e/pi... with b the wave and a the end layer, both times the length
///
///     pinned-pinned b = pi;  pinned-clamped a tan b = b tanh a;  clamped-clamped 2ab(1 - cos b cosh a) +
///     (a^2 - b^2) sin b sinh a = 0
///
/// Source: Euler beam under tension, first principles; the equations are those of the second design study (read).
double exact_first_mode(double e, int clamped) {
  const auto layer = [&](double b) { return std::sqrt(b * b + 1 / (e * e)); };
  double b = pi;
  if (clamped == 1) {
    b = root(pi, 1.4 * pi, [&](double x) { return layer(x) * std::tan(x) - x * std::tanh(layer(x)); });
  }
  if (clamped == 2) {
    b = root(0.99 * pi, 1.4 * pi, [&](double x) {  // divided by cosh a
      const double a = layer(x);
      return 2 * a * x * (1 / std::cosh(a) - std::cos(x)) + (a * a - x * x) * std::sin(x) * std::tanh(a);
    });
  }
  return b * std::sqrt(1 + e * e * b * b) / pi;
}

TEST(Intonation, the_stiff_first_mode_follows_the_exact_roots_to_a_tenth_of_a_cent) {
  double largest = 0;
  for (int clamped = 0; clamped <= 2; ++clamped) {
    for (const double e : {0.001, 0.002, 0.004, 0.006, 0.009}) {
      const double off = 1200 * std::log2(stiff_first_mode(e, 1, clamped) / exact_first_mode(e, clamped));
      largest = std::max(largest, std::abs(off));
      EXPECT_NEAR(off, 0, 0.1) << clamped << " clamped, e " << e;
    }
  }
  std::printf("  largest %.3g cents\n", largest);
}

// The pull is taken at the scale length; a crest set back then needs a little more. What that simplification costs.
TEST(Intonation, taking_the_pull_at_the_scale_length_costs_under_a_tenth_of_a_mm) {
  const StudyString study = study_string("w53");
  const StoppedString string = speaking(study);
  const Length plain = octave_setback(string, {});
  StoppedString tuned_again = string;
  for (int i = 0; i < 5; ++i) {
    const Length at = octave_setback(tuned_again, {});
    const double open = 0.645 + at.in_base();
    const double stiff = stiff_first_mode(std::sqrt(string.bending_n_m2 / tuned_again.pull_n), open, 1);
    tuned_again.pull_n = mass_per_metre(study.string) * std::pow(2 * open * study.string.pitch_hz / stiff, 2);
  }
  const double costs = in_mm(plain - octave_setback(tuned_again, {}));
  std::printf("  %.4f mm of %.2f mm\n", costs, in_mm(plain));
  EXPECT_LT(std::abs(costs), 0.1);
}

std::vector<GuitarString> set_named(std::string_view name) {
  return tuned(string_set_named(string_sets(testing::repository_file("data/string_sets.csv")), name),
               tuning_named(tunings(testing::repository_file("data/tunings.csv")), "standard"));
}

IntonationRequest light_guitar() {
  IntonationRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.9)};
  request.strings = set_named("light");
  return request;
}

RC_GTEST_PROP(Intonation, more_setback_lowers_every_fret_and_high_frets_more, ()) {
  const double setback = *rc::gen::inRange(-30, 90) / 10.0;
  const int string = *rc::gen::inRange(0, 6);
  const IntonationRequest request = light_guitar();
  const StoppedString of =
      stopped_string(request.neck, string_ends(request.neck, request.action)[static_cast<std::size_t>(string)],
                      request.strings[static_cast<std::size_t>(string)], {});
  double before = 0;
  for (int fret = 1; fret <= 20; ++fret) {
    const double change =
        cents_sharp(of, fret, {.setback = mm(setback + 0.5)}, {}) - cents_sharp(of, fret, {.setback = mm(setback)}, {});
    RC_ASSERT(change < before);
    before = change;
  }
}

RC_GTEST_PROP(Intonation, higher_action_pressing_and_firmer_ends_sharpen_every_fret, ()) {
  const int n = *rc::gen::inRange(0, 6);
  const auto i = static_cast<std::size_t>(n);
  const int fret = *rc::gen::inRange(1, 20);
  const double up = *rc::gen::inRange(1, 20) / 10.0;
  IntonationRequest request = light_guitar();
  const auto cents = [&](double firm, double press) {
    const StoppedString of =
        stopped_string(request.neck, string_ends(request.neck, request.action)[i], request.strings[i], {});
    return cents_sharp(of, fret, {.setback = mm(2)}, {firm, firm}, {.press_depth = mm(press)});
  };
  const double plain = cents(1, 0);
  RC_ASSERT(cents(1, up / 4) > plain);
  RC_ASSERT(cents(1 + up / 4, 0) > plain);
  request.action.action12_bass = *request.action.action12_bass + mm(up);
  request.action.action12_treble = *request.action.action12_treble + mm(up);
  // Fret 1 is held at its height, and the string leaves it more steeply: every fret goes up.
  if (fret > 1) RC_ASSERT(cents(1, 0) > plain);
}

RC_GTEST_PROP(Intonation, a_crest_where_it_is_wanted_reads_in_tune, ()) {
  const double firm = *rc::gen::inRange(0, 21) / 10.0;
  const int n = *rc::gen::inRange(0, 6);
  const auto i = static_cast<std::size_t>(n);
  const IntonationRequest request = light_guitar();
  const StoppedString of =
      stopped_string(request.neck, string_ends(request.neck, request.action)[i], request.strings[i], {});
  const Length wanted = octave_setback(of, {.ends = {firm, firm}});
  RC_ASSERT(std::abs(cents_sharp(of, 12, {.setback = wanted}, {firm, firm})) < 1e-9);
  // Read there, the ends are found again.
  const Length elsewhere = wanted - mm(1);
  const double read = cents_sharp(of, 12, {.setback = elsewhere}, {firm, firm});
  RC_ASSERT(std::abs(firmness_of(of, elsewhere, read, {}) - firm) < 1e-9);
}

// Gauss-Newton against a plain search over a grid of both places.
TEST(Intonation, no_place_of_nut_and_saddle_near_the_best_one_is_better) {
  const IntonationRequest request = light_guitar();
  const auto ends = string_ends(request.neck, request.action);
  for (std::size_t i = 0; i < 6; ++i) {
    const StoppedString of = stopped_string(request.neck, ends[i], request.strings[i], {});
    const Stopping stopping{.ends = {1, 1}, .last_fret = 15};
    const BothEnds best = nut_and_saddle(of, stopping);
    const auto rms = [&](double saddle, double nut) {
      double squares = 0;
      for (int fret = 1; fret <= 15; ++fret) {
        const double cents =
            cents_sharp(of, fret, {best.place.setback + mm(saddle), best.place.nut_shift + mm(nut)}, stopping.ends);
        squares += cents * cents;
      }
      return std::sqrt(squares / 15);
    };
    EXPECT_NEAR(rms(0, 0), best.rms_cents, 1e-12);
    for (int a = -10; a <= 10; ++a) {
      for (int b = -10; b <= 10; ++b) EXPECT_GE(rms(a * 0.02, b * 0.02), best.rms_cents - 1e-9) << i;
    }
  }
}

// Common practice, no source: on a guitar that is set up well a saddle has its crest 3 to 6 mm back at the low E and 1
// to 3 at the high E, with 2 to 3 mm between the two; the plain B stands furthest back of the plain strings, well
// behind the wound G. With high strings or a slack scale more is wanted, but the range must still reach what saddles
// are cut to. (Midway, one clamped end, the outer two are 3.0 to 4.0 mm apart: real ends hold a little less firmly than
// that.)
TEST(Intonation, realistic_guitars_want_what_saddles_are_cut_to) {
  struct Guitar {
    const char* set;
    double scale, bass, treble, relief;
    bool well_set_up;
  };
  for (const Guitar& guitar : {Guitar{"light", 645, 2.4, 1.9, 0.15, true},
                               {"light", 645, 2.0, 1.5, 0.05, true},
                               {"custom light", 632, 2.2, 1.7, 0.1, true},
                               {"custom light", 645, 2.4, 1.9, 0.15, true},
                               {"extra light", 632, 2.0, 1.6, 0.1, true},
                               {"light", 632, 2.8, 2.2, 0.25, false},
                               {"light trebles, medium basses", 648, 2.6, 2.0, 0.2, false},
                               {"medium", 645, 2.6, 2.0, 0.2, false},
                               {"medium", 628, 2.8, 2.3, 0.3, false},
                               {"heavy", 645, 2.8, 2.4, 0.2, false}}) {
    IntonationRequest request = light_guitar();
    request.neck.scale_length = mm(guitar.scale);
    request.neck.relief = mm(guitar.relief);
    request.action = {.action12_bass = mm(guitar.bass), .action12_treble = mm(guitar.treble)};
    request.strings = set_named(guitar.set);
    const IntonationResult result = intonation(request, shop_limits());
    std::printf("  %-30s %.0f mm:", guitar.set, guitar.scale);
    for (const auto& string : result.strings) {
      std::printf(" %.1f (%.1f..%.1f)", in_mm(string.wanted), in_mm(string.wanted_low), in_mm(string.wanted_high));
    }
    std::printf("\n");
    const StringIntonation &high_e = result.strings[0], &b = result.strings[1], &g = result.strings[2],
                           &low_e = result.strings[5];
    EXPECT_GT(b.wanted, high_e.wanted) << guitar.set;
    EXPECT_GT(b.wanted, g.wanted + mm(0.8)) << guitar.set;
    EXPECT_LE(in_mm(low_e.wanted_low), 6) << guitar.set;
    EXPECT_GE(in_mm(low_e.wanted_high), 3) << guitar.set;
    if (!guitar.well_set_up) continue;
    EXPECT_TRUE(3 <= in_mm(low_e.wanted) && in_mm(low_e.wanted) <= 6) << guitar.set << in_mm(low_e.wanted);
    EXPECT_TRUE(1 <= in_mm(high_e.wanted) && in_mm(high_e.wanted) <= 3) << guitar.set << in_mm(high_e.wanted);
    EXPECT_LE(in_mm(low_e.wanted_low - high_e.wanted_low), 3) << guitar.set;
    EXPECT_GE(in_mm(low_e.wanted_high - high_e.wanted_high), 2) << guitar.set;
  }
}

TEST(Intonation, stretch_is_certain_and_stiffness_a_range_of_two_firm_ends) {
  const IntonationResult result = intonation(light_guitar(), shop_limits());
  for (const StringIntonation& string : result.strings) {
    const double firm_end = in_mm(string.setback_a_firm_end);
    // Pinned ends ask for next to nothing: 3 pi^2/2 (E I/T)/L, the series' second order.
    const double pinned = 1.5 * pi * pi * firm_end * firm_end / 645;
    EXPECT_NEAR(in_mm(string.wanted_low - string.wanted_for_stretch) / pinned, 1, 0.05) << string.string;
    // First order: each clamped end asks for sqrt(E I/T).
    EXPECT_NEAR(in_mm(string.wanted_high - string.wanted_low) / firm_end, 2, 0.1) << string.string;
    EXPECT_LT(string.low_cents[11], string.high_cents[11]);
    EXPECT_NEAR(string.after_cents[11], 0, 1e-9);
  }
}

TEST(Intonation, one_octave_error_narrows_its_string_and_no_other) {
  IntonationRequest request = light_guitar();
  request.octave_errors = {{.string = 6, .cents = 3, .sd_cents = 0.5}};
  const IntonationResult open = intonation(light_guitar(), shop_limits());
  const IntonationResult read = intonation(request, shop_limits());
  const auto spread = [](const StringIntonation& string) { return in_mm(string.wanted_high - string.wanted_low); };
  EXPECT_LT(spread(read.strings[5]), spread(open.strings[5]) / 3);
  EXPECT_EQ(spread(read.strings[4]), spread(open.strings[4]));
  // The crest moves back by what the reading says, whatever the ends.
  EXPECT_NEAR(in_mm(read.strings[5].wanted - read.strings[5].setback), 3 / -read.strings[5].cents_per_mm, 0.02);
  EXPECT_NEAR(read.strings[5].low_cents[11], 2, 1e-6);
  EXPECT_NEAR(read.strings[5].high_cents[11], 4, 1e-6);
}

TEST(Intonation, an_octave_error_that_no_end_explains_is_not_believed) {
  IntonationRequest request = light_guitar();
  request.octave_errors = {{.string = 2, .cents = 40}};
  const IntonationResult result = intonation(request, shop_limits());
  EXPECT_FALSE(result.strings[1].believable);
  EXPECT_EQ(result.verdict,
            "String 2 reads 40 cents sharp at fret 12, which no saddle end explains: look at the string, the fret and "
            "where the crest was read first.");
}

TEST(Intonation, strings_that_all_read_in_tune_are_left_alone) {
  IntonationRequest request = light_guitar();
  for (int string = 1; string <= 6; ++string) request.octave_errors.push_back({.string = string, .cents = 1});
  EXPECT_EQ(intonation(request, shop_limits()).verdict,
            "Every string reads within 2 cents at fret 12: leave the saddle where it is.");
}

void refuses(const IntonationRequest& request, const std::string& line) {
  try {
    (void)intonation(request, shop_limits());
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}
TEST(Intonation, refuses_in_one_line) {
  IntonationRequest request = light_guitar();
  request.strings.pop_back();
  refuses(request, "strings: 5 items, the neck has 6 strings");
  request = light_guitar();
  request.setbacks_mm = {1, 2};
  refuses(request, "setbacks_mm: 2 items, the neck has 6 strings");
  request = light_guitar();
  request.octave_errors = {{.string = 7}};
  refuses(request, "octave_errors[0].string: 7 is outside 1..6");
  request.octave_errors = {{.string = 3}, {.string = 3}};
  refuses(request, "octave_errors[1].string: string 3 comes twice");
  request = light_guitar();
  request.last_fret = 22;
  refuses(request, "last_fret: 22 is outside 2..20");
  request = light_guitar();
  request.strings[0].diameter.reset();
  request.strings[0].weighed_kg_per_metre = 0.0006;
  refuses(request, "diameter_mm: is needed for the string's stiffness");
  request = light_guitar();
  request.press_depth = mm(3);
  refuses(request, "press_depth_mm: 3 mm is outside 0..1.5 mm");
}

}  // namespace
}  // namespace tailblock

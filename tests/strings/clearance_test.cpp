#include "strings/clearance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "published.h"
#include "slow_string.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

const ClearanceVerdicts& verdict_limits() {
  static const ClearanceVerdicts limits = clearance_verdicts(testing::repository_file("data/clearance_verdicts.csv"));
  return limits;
}

Attack attack_level(std::string_view name) {
  return attack_named(attack_levels(testing::repository_file("data/attacks.csv")), name);
}

/// A well set up flat-top: light strings, 645 mm, 14-fret joint, relief 0.15, nut 0.45/0.35 over fret 1.
ClearanceRequest well_set_up() {
  ClearanceRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.8)};
  request.strings = tuned(string_set_named(string_sets(testing::repository_file("data/string_sets.csv")), "light"),
                          tuning_named(tunings(testing::repository_file("data/tunings.csv")), "standard"));
  request.attack = attack_level("medium");
  return request;
}

const UnitEnvelopes& light_envelopes() {
  static const UnitEnvelopes envelopes = unit_envelopes(envelope_request(well_set_up()));
  return envelopes;
}

const NoteClearance& note_of(const ClearanceResult& result, int string, int stopped_fret) {
  constexpr std::size_t frets = 20;
  return result.notes[static_cast<std::size_t>(string - 1) * frets + static_cast<std::size_t>(stopped_fret)];
}

/// One low E on a neck without setback, as the design studies' runs had it.
ClearanceRequest lone_low_e() {
  ClearanceRequest request;
  request.neck.string_count = 1;
  request.neck.setback_bass = request.neck.setback_treble = {};
  request.neck.nut_over_fret1_treble = request.neck.nut_over_fret1_bass;
  request.action = {.action12_bass = mm(2), .action12_treble = mm(2)};
  request.strings = {{.pitch_hz = 82.4069, .diameter = inches(0.053), .core_diameter = inches(0.022)}};
  request.attack = {.amplitude_bass = mm(1), .amplitude_treble = mm(1), .stopped = StoppedPluck::same_amplitude};
  return request;
}

/// Envelopes in which only one note, plucked one way, reaches anywhere.
UnitEnvelopes only(UnitEnvelopes envelopes, int stopped_fret, bool away) {
  for (UnitEnvelope& note : envelopes.notes) {
    if (note.stopped_fret != stopped_fret || !away) std::fill(note.away.begin(), note.away.end(), 1e-9);
    if (note.stopped_fret != stopped_fret || away) std::fill(note.toward.begin(), note.toward.end(), 1e-9);
  }
  return envelopes;
}

/// Lowest clean action with the nut cut to a height over fret 1 whatever the saddle: the nut follows the action found.
double least_action12_with_nut_over_fret1(ClearanceRequest request, const UnitEnvelopes& envelopes) {
  for (int i = 0; i < 30; ++i) {
    const Length action = least_clean_action(request, envelopes).outer.action12_bass;
    request.action = {.action12_bass = action, .action12_treble = action};
  }
  return in_mm(request.action.action12_bass.value());
}

/// The amplitude at which one note first touches.
double limit_amplitude(const ClearanceRequest& request, const UnitEnvelopes& envelopes, int stopped_fret) {
  const ClearanceResult result = clearance(request, envelopes, verdict_limits());
  return result.notes[static_cast<std::size_t>(stopped_fret)].ratio * in_mm(request.attack.amplitude_bass);
}

TEST(Clearance, agrees_with_runs_with_contact) {
  const UnitEnvelopes first = unit_envelopes(envelope_request(lone_low_e()));
  // The second study: nut over the fret plane, 0.85 of the length, a pluck 10 mm wide, its own mass.
  ClearanceRequest second_request = lone_low_e();
  second_request.neck.nut_over_frets_bass = second_request.neck.nut_over_frets_treble = mm(0.45);
  second_request.attack.pluck_from_saddle = mm(0.15 * 645);
  second_request.attack.pluck_width = mm(10);
  second_request.strings[0].weighed_kg_per_metre = 0.01006759;
  const UnitEnvelopes second = unit_envelopes(envelope_request(second_request));

  testing::Published table("strings_clearance.csv");
  for (const CsvRow& row : table.rows()) {
    const int stopped = row.whole_number("stopped_fret", {0, 19, ""});
    const bool away = row.name("direction") == "away";
    const Length given = mm(row.number("given_mm", {0, 5, "mm"}));
    ClearanceRequest request = row.name("quantity") == "limit_amplitude" ? second_request : lone_low_e();
    request.neck.relief = mm(row.number("relief_mm", {0, 1, "mm"}));
    if (row.name("quantity") == "limit_amplitude") {
      request.action = {.action12_bass = given, .action12_treble = given};
      table.check(row, limit_amplitude(request, only(second, stopped, away), stopped));
    } else {
      request.attack.amplitude_bass = request.attack.amplitude_treble = given;
      table.check(row, least_action12_with_nut_over_fret1(request, only(first, stopped, away)));
    }
  }
}

// B04 to B06 of the second study: an ideal string plucked at 0.85 of its length stays in a parallelogram; over the neck
// of row H04 (nut 0.45 over the plane, relief 0.25, action 2.00) it first touches fret 3, at 1.087777 mm.
TEST(Clearance, a_parallelogram_over_the_neck_first_touches_fret_3) {
  ClearanceRequest request = lone_low_e();
  request.neck.nut_over_frets_bass = request.neck.nut_over_frets_treble = mm(0.45);
  request.neck.relief = mm(0.25);
  UnitEnvelopes ideal = only(unit_envelopes(envelope_request(request)), 0, true);
  for (int n = 1; n <= 20; ++n) {
    const double x = fret_from_nut(mm(1), n) / mm(1);
    ideal.notes[0].away[static_cast<std::size_t>(n - 1)] = std::min(x / 0.15, (1 - x) / 0.85);
  }
  EXPECT_NEAR(ideal.notes[0].away[2], 0.9892899, 1e-6);
  EXPECT_NEAR(limit_amplitude(request, ideal, 0), 1.087777, 1e-6);
  EXPECT_EQ(clearance(request, ideal, verdict_limits()).notes[0].limiting_fret, 3);
}

struct RandomSetUp {
  ClearanceRequest request;
  explicit RandomSetUp(std::mt19937& random) : request(well_set_up()) {
    auto between = [&](double low, double high) { return std::uniform_real_distribution(low, high)(random); };
    NeckLine& neck = request.neck;
    neck.relief = mm(between(-0.05, 0.4));
    neck.nut_over_fret1_bass = mm(between(0.2, 0.7));
    neck.nut_over_fret1_treble = mm(between(0.2, 0.6));
    if (between(0, 1) < 0.5) {
      for (int n = 0; n < neck.fret_count; ++n) neck.crown_departures_mm.push_back(between(-0.04, 0.04));
    }
    if (between(0, 1) < 0.5) {
      neck.board_radius = mm(between(300, 500));
      neck.saddle_radius = mm(between(300, 600));
    }
    request.action = {.action12_bass = mm(between(1.2, 3.2)), .action12_treble = mm(between(1, 2.8))};
    request.attack.amplitude_bass = mm(between(0.3, 1.6));
    request.attack.amplitude_treble = mm(between(0.3, 1.6));
    if (between(0, 1) < 0.3) request.attack.stopped = StoppedPluck::same_amplitude;
  }
};

/// The ratio of one note said again in the plainest way: heights from the drawn string line, the
/// deeper of both directions.
double plain_ratio(const ClearanceRequest& request, const UnitEnvelope& note) {
  const StringLineResult line = string_line({.neck = request.neck, .action = request.action});
  const StringPath& path = line.strings[static_cast<std::size_t>(note.string - 1)];
  const double S = in_mm(path.saddle_from_nut);
  const double across = (note.string - 1) / 5.0;
  double a = in_mm(request.attack.amplitude_treble) * (1 - across) + in_mm(request.attack.amplitude_bass) * across;
  double stop = 0;
  if (note.stopped_fret > 0) {
    const FretPoint& stopped = line.frets[static_cast<std::size_t>(note.stopped_fret - 1)];
    stop = in_mm(stopped.from_nut);
    if (request.attack.stopped == StoppedPluck::same_force) {
      const double d = std::min(in_mm(request.attack.pluck_from_saddle), 0.75 * (S - stop));
      const double d0 = in_mm(request.attack.pluck_from_saddle);
      a *= (d * (S - stop - d) / (S - stop)) / (d0 * (S - d0) / S);
    }
  }
  double least = 1e9;
  for (std::size_t i = 0; i < note.away.size(); ++i) {
    const auto n = static_cast<std::size_t>(note.stopped_fret) + i;  // index of the fret
    const FretPoint& fret = line.frets[n];
    double gap = path.over_fret_mm[n];
    if (note.stopped_fret > 0) {
      const double crown = in_mm(line.frets[static_cast<std::size_t>(note.stopped_fret - 1)].crown_over_plane);
      const double part = (in_mm(fret.from_nut) - stop) / (S - stop);
      gap = crown * (1 - part) + in_mm(path.saddle_over_frets) * part - in_mm(fret.crown_over_plane);
    }
    least = std::min(least, gap / (a * std::max(note.away[i], note.toward[i])));
  }
  return least;
}

TEST(Clearance, random_set_ups_agree_with_the_plainest_calculation) {
  const unsigned seed = 31;
  std::printf("  seed %u\n", seed);
  std::mt19937 random(seed);
  double largest = 0;
  for (int i = 0; i < 60; ++i) {
    const RandomSetUp set_up(random);
    const ClearanceResult result = clearance(set_up.request, light_envelopes(), verdict_limits());
    ASSERT_EQ(result.notes.size(), 120U);
    for (std::size_t k = 0; k < result.notes.size(); ++k) {
      const double plain = plain_ratio(set_up.request, light_envelopes().notes[k]);
      largest = std::max(largest, std::abs(result.notes[k].ratio - plain));
    }
  }
  std::printf("  largest difference in ratio %.2g\n", largest);
  EXPECT_LT(largest, 1e-9);
}

/// From the set-up to the verdict with nothing shared: the note stepped through time over the drawn frets.
void agrees_with_a_note_stepped_through_time(int string, int stopped) {
  const ClearanceRequest request = well_set_up();
  const EnvelopeRequest moving = envelope_request(request);
  const MovingString& m = moving.strings[static_cast<std::size_t>(string - 1)];
  const double stop = fret_from_nut(mm(645), stopped).in_base();
  testing::SlowString slow{.length = 0.645 + m.setback.in_base() - stop,
                           .tension = in_newtons(m.tension),
                           .kg_per_metre = m.kg_per_metre,
                           .bending_stiffness = m.bending_stiffness_n_m2,
                           .loss_per_s = m.loss_per_s,
                           .loss_m2_per_s = m.loss_m2_per_s};
  slow.pluck_from_stop = slow.length - std::min(0.12, 0.75 * slow.length);
  std::vector<double> frets;
  for (int n = stopped + 1; n <= 20; ++n) frets.push_back(fret_from_nut(mm(645), n).in_base() - stop);
  UnitEnvelope stepped{.string = string, .stopped_fret = stopped, .away = {}, .toward = {}};
  for (const testing::Reach& reach : testing::stepped(slow, frets, 0.003, 250e3)) {
    stepped.away.push_back(reach.away);
    stepped.toward.push_back(reach.toward);
  }
  const ClearanceResult fast = clearance(request, light_envelopes(), verdict_limits());
  const double ratio = note_of(fast, string, stopped).ratio;
  EXPECT_NEAR(ratio, plain_ratio(request, stepped), 0.005 * ratio);
}
TEST(Clearance, low_e_at_fret_1_agrees_with_the_note_stepped_through_time) {
  agrees_with_a_note_stepped_through_time(6, 1);
}
TEST(Clearance, g_open_agrees_with_the_note_stepped_through_time) { agrees_with_a_note_stepped_through_time(3, 0); }
TEST(Clearance, high_e_at_fret_10_agrees_with_the_note_stepped_through_time) {
  agrees_with_a_note_stepped_through_time(1, 10);
}

/// A saddle on the line through these ends, everything else as in the request.
ClearanceRequest with_saddle(const ClearanceRequest& request, Length bass, Length treble) {
  ClearanceRequest moved = request;
  moved.neck = with_nut_held(request.neck, request.action);
  moved.action = {.saddle_over_frets_bass = bass, .saddle_over_frets_treble = treble};
  return moved;
}

double least_ratio(const ClearanceRequest& request) {
  const ClearanceResult result = clearance(request, light_envelopes(), verdict_limits());
  return result.notes[static_cast<std::size_t>(result.worst_note)].ratio;
}

TEST(LeastCleanAction, random_set_ups_just_touch_there_and_nothing_lower_is_clean) {
  const unsigned seed = 77;
  std::printf("  seed %u\n", seed);
  std::mt19937 random(seed);
  for (int i = 0; i < 60; ++i) {
    const ClearanceRequest request = RandomSetUp(random).request;
    const LeastCleanAction least = least_clean_action(request, light_envelopes());
    const Length bass = least.outer.saddle_over_frets_bass, treble = least.outer.saddle_over_frets_treble;
    const ClearanceRequest there = with_saddle(request, bass, treble);
    EXPECT_NEAR(least_ratio(there), 1, 1e-9);
    const ClearanceResult map = clearance(there, light_envelopes(), verdict_limits());
    for (const DecidingNote& note : {least.bass, least.treble}) {
      const NoteClearance& found = note_of(map, note.string, note.stopped_fret);
      EXPECT_NEAR(found.ratio, 1, 1e-9);
      EXPECT_EQ(found.limiting_fret, note.fret);
      EXPECT_EQ(found.away, note.away);
    }
    EXPECT_GE(least.bass.string, 4);
    EXPECT_LE(least.treble.string, 3);
    // No saddle a hundredth lower in its middle is clean, however it is tilted.
    for (double tilt = -2; tilt <= 2; tilt += 0.05) {
      EXPECT_LT(least_ratio(with_saddle(request, bass - mm(0.01 - tilt), treble - mm(0.01 + tilt))), 1);
    }
    // The action it names is the action that saddle gives.
    const OuterHeights outer = outer_heights(there.neck, there.action);
    EXPECT_NEAR(in_mm(outer.action12_bass), in_mm(least.outer.action12_bass), 1e-9);
    EXPECT_NEAR(in_mm(outer.action12_treble), in_mm(least.outer.action12_treble), 1e-9);
  }
}

TEST(LeastCleanAction, each_string_by_itself_is_found_again_by_halving) {
  const ClearanceRequest request = well_set_up();
  const LeastCleanAction least = least_clean_action(request, light_envelopes());
  for (const LeastString& string : least.strings) {
    double low = 0, high = 10;  // saddle over the fret plane, mm
    for (int i = 0; i < 60; ++i) {
      const double middle = (low + high) / 2;
      const ClearanceResult map =
          clearance(with_saddle(request, mm(middle), mm(middle)), light_envelopes(), verdict_limits());
      double worst = 1e9;
      for (const NoteClearance& note : map.notes) {
        if (note.string == string.string) worst = std::min(worst, note.ratio);
      }
      (worst < 1 ? low : high) = middle;
    }
    EXPECT_NEAR(in_mm(string.saddle_over_frets), high, 1e-9) << "string " << string.string;
  }
}

TEST(LeastCleanAction, does_not_depend_on_the_action_it_started_from_when_the_nut_is_known) {
  ClearanceRequest request = well_set_up();
  request.neck = with_nut_held(request.neck, request.action);
  const LeastCleanAction from_high = least_clean_action(request, light_envelopes());
  request.action = {.action12_bass = mm(1.2), .action12_treble = mm(1.2)};
  const LeastCleanAction from_low = least_clean_action(request, light_envelopes());
  EXPECT_NEAR(in_mm(from_high.outer.action12_bass), in_mm(from_low.outer.action12_bass), 1e-12);
}

// The trade's sense of it. Common practice, no source: a .012 set on 645 mm with 0.15 mm of relief is left at about
// 2.0-2.4 mm bass and 1.5-1.8 mm treble for mixed playing; 1.5/1.0 mm buzzes under a hard player.
TEST(LeastCleanAction, medium_playing_asks_for_what_repairers_leave) {
  const LeastCleanAction least = least_clean_action(well_set_up(), light_envelopes());
  EXPECT_GE(in_mm(least.outer.action12_bass), 2.0);
  EXPECT_LE(in_mm(least.outer.action12_bass), 2.4);
  EXPECT_GE(in_mm(least.outer.action12_treble), 1.5);
  EXPECT_LE(in_mm(least.outer.action12_treble), 1.8);
}
TEST(Clearance, a_well_set_up_guitar_is_clear_under_a_medium_player) {
  const ClearanceResult result = clearance(well_set_up(), light_envelopes(), verdict_limits());
  EXPECT_EQ(result.clear, 120) << result.verdict;
  EXPECT_EQ(result.verdict.substr(0, 39), "Every note is clear at this attack; the");
}
TEST(Clearance, very_low_strings_touch_under_a_hard_player) {
  ClearanceRequest request = well_set_up();
  request.attack = attack_level("hard");
  request.action = {.action12_bass = mm(1.5), .action12_treble = mm(1.0)};
  const ClearanceResult result = clearance(request, light_envelopes(), verdict_limits());
  EXPECT_GT(result.touching, 60);
  EXPECT_EQ(result.clear + result.doubtful + result.touching, 120);
}
TEST(Clearance, more_relief_frees_the_low_frets_of_a_straight_neck) {
  ClearanceRequest straight = well_set_up(), bowed = well_set_up();
  straight.neck.relief = mm(0);
  bowed.neck.relief = mm(0.2);
  const double low_frets = clearance(straight, light_envelopes(), verdict_limits()).notes[101].ratio;
  EXPECT_GT(clearance(bowed, light_envelopes(), verdict_limits()).notes[101].ratio, low_frets);
}

TEST(Clearance, doubling_the_swing_halves_every_ratio) {
  ClearanceRequest request = well_set_up();
  const ClearanceResult once = clearance(request, light_envelopes(), verdict_limits());
  request.attack.amplitude_bass = 2 * request.attack.amplitude_bass;
  request.attack.amplitude_treble = 2 * request.attack.amplitude_treble;
  const ClearanceResult twice = clearance(request, light_envelopes(), verdict_limits());
  for (std::size_t i = 0; i < 120; ++i) EXPECT_NEAR(twice.notes[i].ratio, once.notes[i].ratio / 2, 1e-12);
}

TEST(Clearance, margin_is_gap_less_reach_over_the_limiting_fret) {
  const ClearanceRequest request = lone_low_e();
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  const NoteClearance open = clearance(request, envelopes, verdict_limits()).notes[0];
  const StringLineResult line = string_line({.neck = request.neck, .action = request.action});
  const auto fret = static_cast<std::size_t>(open.limiting_fret - 1);
  const double reach = std::max(envelopes.notes[0].away[fret], envelopes.notes[0].toward[fret]);
  EXPECT_NEAR(in_mm(open.margin), line.strings[0].over_fret_mm[fret] - reach, 1e-9);
  EXPECT_NEAR(open.ratio, line.strings[0].over_fret_mm[fret] / reach, 1e-9);
}

TEST(Clearance, computing_the_envelopes_itself_changes_nothing) {
  const ClearanceRequest request = lone_low_e();
  const ClearanceResult given = clearance(request, unit_envelopes(envelope_request(request)), verdict_limits());
  const ClearanceResult own = clearance(request, verdict_limits());
  EXPECT_EQ(given.verdict, own.verdict);
  EXPECT_EQ(given.notes[7].ratio, own.notes[7].ratio);
}

TEST(Clearance, envelopes_do_not_depend_on_the_set_up) {
  ClearanceRequest request = well_set_up();
  request.neck.relief = mm(0.3);
  request.action = {.action12_bass = mm(3), .action12_treble = mm(2)};
  request.attack.amplitude_bass = mm(1.5);
  const EnvelopeRequest a = envelope_request(well_set_up()), b = envelope_request(request);
  ASSERT_EQ(a.strings.size(), b.strings.size());
  for (std::size_t i = 0; i < a.strings.size(); ++i) {
    EXPECT_EQ(a.strings[i].tension, b.strings[i].tension);
    EXPECT_EQ(a.strings[i].setback, b.strings[i].setback);
  }
  EXPECT_EQ(a.pluck_from_saddle, b.pluck_from_saddle);
}

TEST(Clearance, strings_pull_as_long_as_they_sound) {
  const ClearanceRequest request = well_set_up();
  const EnvelopeRequest envelope = envelope_request(request);
  const MovingString& bass = envelope.strings[5];
  // Scale plus setback, 645 + 4.5 mm. Source: first principles.
  EXPECT_NEAR(in_newtons(bass.tension),
              mass_per_metre(request.strings[5]) * std::pow(2 * 0.6495 * request.strings[5].pitch_hz, 2), 1e-9);
  EXPECT_EQ(bass.setback, request.neck.setback_bass);
}

void refuses(const ClearanceRequest& request, const std::string& line) {
  try {
    (void)clearance(request, light_envelopes(), verdict_limits());
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}
TEST(Clearance, refuses_in_one_line) {
  ClearanceRequest request = well_set_up();
  request.attack.amplitude_bass = {};
  refuses(request, "attack.amplitude_bass_mm: 0 mm is outside 0.05..5 mm");
  request = well_set_up();
  request.strings.pop_back();
  refuses(request, "strings: 5 items, the neck has 6 strings");
  request = well_set_up();
  request.neck.fret_count = 19;
  refuses(request, "strings: the envelopes are not those of this request");
  request = well_set_up();
  request.action.action12_bass = mm(NAN);
  refuses(request, "action.action12_bass_mm: nan mm is outside -1..15 mm");
  request = well_set_up();
  request.strings[2].diameter.reset();
  request.strings[2].core_diameter.reset();
  request.strings[2].weighed_kg_per_metre = 0.002;
  EXPECT_THROW((void)envelope_request(request), Refused);
}

void refuses_limits(const std::string& csv, const std::string& line) {
  try {
    (void)clearance_verdicts(csv);
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}
TEST(Clearance, verdict_limits_are_refused_by_row) {
  const std::string header = "limit,ratio,reason,source,note\n";
  refuses_limits(header + "clear_from,9,because,practice,\n",
                 "clearance_verdicts.csv line 2, ratio: 9 is outside 0.5..3");
  refuses_limits(header + "clear_from,1.1,because,practice,\n",
                 "clearance_verdicts.csv: needs touches_below and, no lower, clear_from");
  refuses_limits(header + "maybe,1,because,practice,\n",
                 "clearance_verdicts.csv line 2, limit: \"maybe\" is not touches_below or clear_from");
}

}  // namespace
}  // namespace tailblock

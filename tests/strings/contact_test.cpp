#include "strings/contact.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "published.h"
#include "strings/contact_map.h"
#include "strings/contact_note.h"
#include "strings/note_sound.h"
#include "strings/string_tables.h"
#include "strings/thin_out.h"

namespace tailblock {
namespace {

const ContactVerdicts& limits() {
  static const ContactVerdicts kept = contact_verdicts(testing::repository_file("data/contact_verdicts.csv"));
  return kept;
}
const ClearanceVerdicts& clearance_limits() {
  static const ClearanceVerdicts kept = clearance_verdicts(testing::repository_file("data/clearance_verdicts.csv"));
  return kept;
}
Attack attack_level(std::string_view name) {
  return attack_named(attack_levels(testing::repository_file("data/attacks.csv")), name);
}

/// Light strings on 645 mm, relief 0.15, nut 0.45/0.35 over fret 1.
ClearanceRequest guitar(double bass_mm, double treble_mm) {
  ClearanceRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(bass_mm), .action12_treble = mm(treble_mm)};
  request.strings = tuned(string_set_named(string_sets(testing::repository_file("data/string_sets.csv")), "light"),
                          tuning_named(tunings(testing::repository_file("data/tunings.csv")), "standard"));
  request.attack = attack_level("medium");
  return request;
}
const UnitEnvelopes& light_envelopes() {
  static const UnitEnvelopes envelopes = unit_envelopes(envelope_request(guitar(2.4, 1.8)));
  return envelopes;
}

/// A guitar left far too low, under a hard player.
ClearanceRequest too_low() {
  ClearanceRequest request = guitar(1.2, 1);
  request.attack = attack_level("hard");
  return request;
}

ContactRequest one_note(const ClearanceRequest& set_up, int string, int stopped) {
  ContactRequest request;
  request.neck = set_up.neck;
  request.action = set_up.action;
  request.strings = set_up.strings;
  request.attack = set_up.attack;
  request.string = string;
  request.stopped_fret = stopped;
  return request;
}

ContactMapRequest map_of(const ClearanceRequest& set_up, const Attack& hard) {
  return {.neck = set_up.neck,
          .action = set_up.action,
          .strings = set_up.strings,
          .attack = set_up.attack,
          .hard_attack = hard};
}

void one_by_one(std::size_t count, const std::function<void(std::size_t)>& work) {
  for (std::size_t i = 0; i < count; ++i) work(i);
}

ContactMapResult mapped(const ContactMapRequest& request) {
  return contact_map(request, {light_envelopes(), light_envelopes()}, limits(), one_by_one);
}

TEST(Contact, a_high_guitar_touches_nothing) {
  const ContactResult result = contact(one_note(guitar(3, 2.4), 6, 0), limits());
  EXPECT_EQ(result.verdict, ContactVerdict::clean);
  EXPECT_TRUE(result.struck.empty());
  EXPECT_EQ(result.gain_db, 0);
  EXPECT_FALSE(result.first_touch_ms.has_value());
  EXPECT_LT(result.energy_balance, 1e-9);
}

TEST(Contact, a_low_guitar_buzzes_and_says_on_which_fret) {
  const ContactResult result = contact(one_note(too_low(), 6, 0), limits());
  EXPECT_EQ(result.verdict, ContactVerdict::buzzes);
  EXPECT_EQ(result.sentence.rfind("String 6 open buzzes on fret ", 0), 0U) << result.sentence;
  double sum = 0;
  for (const StruckFret& struck : result.struck) {
    EXPECT_GT(struck.impulse_mns, 0);
    sum += struck.impulse_mns;
  }
  EXPECT_NEAR(sum, result.impulse_mns, 1e-12);
  EXPECT_GT(result.gain_db, limits().buzz_from_gain_db);
  EXPECT_LT(result.energy_balance, 1e-9);
}

TEST(Contact, a_force_plucks_as_far_as_the_amplitude_it_gives) {
  ContactRequest request = one_note(guitar(1.6, 1.2), 5, 2);
  request.amplitude = mm(0.9);
  const ContactResult by_amplitude = contact(request, limits());
  request.amplitude.reset();
  request.pluck_force = by_amplitude.pluck_force;
  const ContactResult by_force = contact(request, limits());
  EXPECT_NEAR(in_mm(by_force.amplitude), 0.9, 1e-9);
  EXPECT_NEAR(by_force.impulse_mns, by_amplitude.impulse_mns, 0.02 * by_amplitude.impulse_mns + 1e-9);
}

TEST(Contact, a_string_that_dies_faster_is_struck_less) {
  ContactRequest request = one_note(too_low(), 6, 0);
  const double usual = contact(request, limits()).impulse_mns;
  request.decay = DecayTimes{.at_100_hz_s = 1, .at_2000_hz_s = 0.2};
  EXPECT_LT(contact(request, limits()).impulse_mns, 0.9 * usual);
}

// 60 dB are a factor of a thousand: sigma t = 3 ln 10.
TEST(Contact, decay_times_are_what_the_string_is_given) {
  ContactRequest request = one_note(guitar(2.4, 1.9), 6, 0);
  request.decay = DecayTimes{.at_100_hz_s = 5, .at_2000_hz_s = 0.7};
  const SpeakingString string = contact_motion(request, {.seconds = 0.05}, Compare::nothing).string;
  const auto seconds_to_fall = [&](double hz) {
    const double k = 2 * std::acos(-1) * hz * std::sqrt(string.kg_per_metre / string.tension);
    return 3 * std::log(10) / (string.loss_per_s + string.loss_m2_per_s * k * k);
  };
  EXPECT_NEAR(seconds_to_fall(100), 5, 1e-9);
  EXPECT_NEAR(seconds_to_fall(2000), 0.7, 1e-9);
}

std::string refusal(const ContactRequest& request) {
  try {
    (void)contact(request, limits());
    return "";
  } catch (const Refused& refused) {
    return refused.what();
  }
}
TEST(Contact, refuses_in_one_line) {
  ContactRequest request = one_note(guitar(2, 1.6), 6, 0);
  request.string = 7;
  EXPECT_EQ(refusal(request), "string: 7 is outside 1..6");
  request = one_note(guitar(2, 1.6), 6, 20);
  EXPECT_EQ(refusal(request), "stopped_fret: 20 is outside 0..19");
  request = one_note(guitar(2, 1.6), 6, 0);
  request.amplitude = mm(1);
  request.pluck_force = newtons(1);
  EXPECT_EQ(refusal(request), "amplitude_mm: give this or pluck_force_n, not both");
  request = one_note(guitar(2, 1.6), 6, 3);
  request.neck.crown_departures_mm.assign(20, 0);
  request.neck.crown_departures_mm[3] = 0.5;
  EXPECT_EQ(refusal(request), "action: String 6 at fret 3 lies on fret 4 before it is plucked");
  request = one_note(guitar(2, 1.6), 6, 0);
  request.decay = DecayTimes{.at_100_hz_s = 1, .at_2000_hz_s = 2};
  EXPECT_EQ(refusal(request),
            "decay: the losses at 2000 Hz must be larger than at 100 Hz, and less than 400 times as large");
}

TEST(ContactVerdicts, refuse_a_limit_nobody_knows) {
  EXPECT_THROW((void)contact_verdicts("limit,value,reason,source,note\nloudness,3,r,s,n\n"), Refused);
  EXPECT_THROW((void)contact_verdicts("limit,value,reason,source,note\nbuzz_from_gain_db,3,r,s,n\n"), Refused);
}
TEST(ContactVerdicts, call_a_graze_no_buzz) {
  EXPECT_EQ(verdict_of({.gain_db = 1, .energy_taken = 0.01, .impulse_mns = 0.1, .struck_fret = 3}, limits()),
            ContactVerdict::graze);
  EXPECT_EQ(verdict_of({.gain_db = 8, .energy_taken = 0.01, .impulse_mns = 0.1, .struck_fret = 3}, limits()),
            ContactVerdict::buzzes);
  EXPECT_EQ(verdict_of({.gain_db = -1, .energy_taken = 0.3, .impulse_mns = 0.1, .struck_fret = 3}, limits()),
            ContactVerdict::buzzes);
  EXPECT_EQ(verdict_of({}, limits()), ContactVerdict::clean);
}

// The map's shortcuts change nothing: every note again, one pluck at a time, at the map's own steps.
TEST(ContactMap, is_every_note_run_by_itself) {
  const ClearanceRequest set_up = guitar(1.5, 1.2);
  const Attack hard = attack_level("hard");
  const ContactMapResult map = mapped(map_of(set_up, hard));
  ASSERT_EQ(map.notes.size(), 120U);
  const Geometry g = geometry(set_up.neck, set_up.action);
  const std::vector<MovingString> strings = envelope_request(set_up).strings;
  for (std::size_t i = 0; i < map.notes.size(); i += 7) {
    const NoteContact& told = map.notes[i];
    const auto string = static_cast<std::size_t>(told.string - 1);
    const ContactNote note = contact_note(g, strings[string], told.string, told.stopped_fret);
    std::array<ContactVerdict, 2> worst{};
    std::array<double, 2> impulse{};
    for (std::size_t a = 0; a < 2; ++a) {
      const Attack& attack = a == 0 ? set_up.attack : hard;
      const double amplitude = note_of(g, attack, told.string, told.stopped_fret).amplitude;
      for (const double sign : {1.0, -1.0}) {
        const HeldPluck pluck{pluck_place(attack, note.length), sign * amplitude};
        const NoteMotions run = fretted_motion(note.string, note.frets, std::vector<HeldPluck>{pluck}, {});
        const BareMotion bare = bare_motion(note.string, finest_grid(note.string, 1 / run.step_s), pluck, 0.25);
        const Buzz buzz = buzz_of(run.plucks[0], bare, told.stopped_fret);
        const ContactVerdict verdict = verdict_of(buzz, limits());
        if (verdict > worst[a] || (verdict == worst[a] && buzz.impulse_mns > impulse[a])) {
          worst[a] = verdict;
          impulse[a] = buzz.impulse_mns;
        }
      }
    }
    const NoteVerdict expected = worst[0] == ContactVerdict::buzzes   ? NoteVerdict::on_normal_playing
                                 : worst[1] == ContactVerdict::buzzes ? NoteVerdict::on_hard_playing
                                                                      : NoteVerdict::clean;
    EXPECT_EQ(told.verdict, expected) << "string " << told.string << " fret " << told.stopped_fret;
    EXPECT_NEAR(told.impulse_normal_mns, impulse[0], 1e-6 + 1e-3 * impulse[0]);
    EXPECT_NEAR(told.impulse_hard_mns, impulse[1], 1e-6 + 1e-3 * impulse[1]);
  }
}

TEST(ContactMap, answers_only_what_was_asked_in_that_order) {
  ContactMapRequest request = map_of(guitar(1.5, 1.2), attack_level("hard"));
  const ContactMapResult all = mapped(request);
  request.notes = {{6, 1}, {1, 0}};
  const ContactMapResult two = mapped(request);
  ASSERT_EQ(two.notes.size(), 2U);
  EXPECT_EQ(two.notes[0].string, 6);
  EXPECT_EQ(two.notes[0].gain_db_hard, all.notes[101].gain_db_hard);
  EXPECT_EQ(two.notes[1].gain_db_hard, all.notes[0].gain_db_hard);
  request.notes = {{7, 1}};
  EXPECT_THROW((void)mapped(request), Refused);
  request.notes = {{6, 20}};
  EXPECT_THROW((void)mapped(request), Refused);
}

TEST(ContactMap, raising_the_action_never_makes_more_notes_buzz) {
  int before = 121;
  for (const double bass : {1.2, 1.5, 1.8, 2.2, 2.8}) {
    const ContactMapResult map = mapped(map_of(guitar(bass, bass - 0.4), attack_level("hard")));
    EXPECT_LE(map.on_normal_playing, before) << bass;
    EXPECT_EQ(map.clean + map.on_hard_playing + map.on_normal_playing, 120);
    before = map.on_normal_playing;
  }
  EXPECT_EQ(before, 0);
}

// Over a tongue that has risen, near the pluck, an open string drawn toward the board comes twice as deep as one drawn
// away.
TEST(ContactMap, tries_both_directions) {
  ClearanceRequest set_up = guitar(1.6, 1.3);
  set_up.attack.amplitude_bass = mm(0.5);
  set_up.neck.crown_departures_mm.assign(20, 0);
  const Geometry level = geometry(set_up.neck, set_up.action);
  const std::vector<MovingString> strings = envelope_request(set_up).strings;
  const double amplitude = note_of(level, set_up.attack, 6, 0).amplitude;
  const double gap = contact_note(level, strings[5], 6, 0).frets[19].gap;
  set_up.neck.crown_departures_mm[19] = 1e3 * (gap - 0.6 * amplitude);
  ContactMapRequest request = map_of(set_up, set_up.attack);
  request.notes = {{6, 0}};
  const NoteContact note = mapped(request).notes[0];
  EXPECT_EQ(note.struck_fret, 20);
  EXPECT_EQ(note.verdict, NoteVerdict::on_normal_playing);
  ContactRequest one = one_note(set_up, 6, 0);
  EXPECT_EQ(contact(one, limits()).verdict, ContactVerdict::clean);
  one.direction = PluckDirection::toward;
  EXPECT_EQ(contact(one, limits()).verdict, ContactVerdict::buzzes);
}

TEST(ContactMap, a_string_that_lies_on_a_fret_is_named_and_not_run) {
  ContactMapRequest request = map_of(guitar(2, 1.6), attack_level("hard"));
  request.neck.crown_departures_mm.assign(20, 0);
  request.neck.crown_departures_mm[4] = 0.6;
  const ContactMapResult map = mapped(request);
  const NoteContact& note = map.notes[5 * 20 + 4];
  EXPECT_TRUE(note.lies_on_fret);
  EXPECT_EQ(note.struck_fret, 5);
  EXPECT_EQ(note.verdict, NoteVerdict::on_normal_playing);
}

struct Judged {
  ClearanceVerdict clearance;
  ContactVerdict contact;
  double ratio;
};

/// One note of one random set-up by both, the amplitude drawn round its limit.
Judged judged(std::mt19937& random, int string) {
  const auto between = [&](double low, double high) { return std::uniform_real_distribution(low, high)(random); };
  ClearanceRequest set_up = guitar(between(1.2, 3), between(1, 2.6));
  set_up.neck.relief = mm(between(0, 0.35));
  set_up.neck.nut_over_fret1_bass = mm(between(0.25, 0.6));
  set_up.neck.nut_over_fret1_treble = mm(between(0.25, 0.5));
  if (between(0, 1) < 0.3) {
    set_up.neck.crown_departures_mm.assign(20, 0);
    set_up.neck.crown_departures_mm[static_cast<std::size_t>(between(0, 20))] = between(0.03, 0.1);
  }
  const int stopped = between(0, 1) < 0.25 ? 0 : static_cast<int>(between(1, 16));
  const double wanted = between(0.6, 1.4);
  const auto index = static_cast<std::size_t>(string - 1) * 20 + static_cast<std::size_t>(stopped);
  const auto ratio_now = [&] { return clearance(set_up, light_envelopes(), clearance_limits()).notes[index].ratio; };
  const double harder = std::clamp(ratio_now() / wanted, 0.1, 4.0);
  set_up.attack.amplitude_bass = harder * set_up.attack.amplitude_bass;
  set_up.attack.amplitude_treble = harder * set_up.attack.amplitude_treble;
  const NoteClearance clear = clearance(set_up, light_envelopes(), clearance_limits()).notes[index];
  Judged both{.clearance = clear.verdict, .contact = ContactVerdict::clean, .ratio = clear.ratio};

  const Geometry g = geometry(set_up.neck, set_up.action);
  const ContactNote note =
      contact_note(g, envelope_request(set_up).strings[static_cast<std::size_t>(string - 1)], string, stopped);
  if (fret_lain_on(note, stopped) > 0) {
    both.contact = ContactVerdict::buzzes;
    return both;
  }
  const double amplitude = note_of(g, set_up.attack, string, stopped).amplitude;
  const PluckPlace place = pluck_place(set_up.attack, note.length);
  const std::vector<HeldPluck> plucks{{place, amplitude}, {place, -amplitude}};
  const NoteMotions run = fretted_motion(note.string, note.frets, plucks, {});
  for (std::size_t i = 0; i < plucks.size(); ++i) {
    const BareMotion bare = bare_motion(note.string, finest_grid(note.string, 1 / run.step_s), plucks[i], 0.25);
    both.contact = std::max(both.contact, verdict_of(buzz_of(run.plucks[i], bare, stopped), limits()));
  }
  return both;
}

TEST(Contact, never_buzzes_where_clearance_said_clear) {
  const unsigned seed = 2024;
  constexpr int set_ups_a_string = 100;
  std::mt19937 random(seed);
  std::array<std::array<int, 3>, 3> table{};
  double lowest_untouched = 1e9, highest_touched = 0;
  for (int i = 0; i < set_ups_a_string; ++i) {
    for (int string = 1; string <= 6; ++string) {
      const Judged both = judged(random, string);
      ++table[static_cast<std::size_t>(both.clearance)][static_cast<std::size_t>(both.contact)];
      const bool touched = both.contact != ContactVerdict::clean;
      (touched ? highest_touched : lowest_untouched) =
          touched ? std::max(highest_touched, both.ratio) : std::min(lowest_untouched, both.ratio);
    }
  }
  std::printf("  seed %u, %d set-ups, six strings\n  %-22s %6s %6s %6s\n", seed, 6 * set_ups_a_string,
              "clearance \\ contact", "clean", "graze", "buzzes");
  constexpr std::array<const char*, 3> names{"clear", "doubtful", "touches"};
  for (std::size_t row = 0; row < 3; ++row) {
    std::printf("  %-22s %6d %6d %6d\n", names[row], table[row][0], table[row][1], table[row][2]);
  }
  std::printf("  highest ratio that touched %.4f, lowest that did not %.4f\n", highest_touched, lowest_untouched);
  EXPECT_EQ(table[0][2], 0) << "clear by clearance, buzzing by contact";
  EXPECT_LT(highest_touched, 1.03) << "the map would be wrong to skip it";
  for (std::size_t row = 0; row < 3; ++row) EXPECT_GT(table[row][0] + table[row][1] + table[row][2], 20);
  EXPECT_GT(table[2][2], 40);
}

TEST(NoteSound, a_note_that_touches_nothing_sounds_the_same_without_frets) {
  NoteSoundRequest request{.note = one_note(guitar(3, 2.4), 6, 0)};
  request.note.seconds = 0.5;
  const auto fretted = note_sound(request);
  request.with_frets = false;
  EXPECT_EQ(note_sound(request), fretted);
  EXPECT_NEAR(static_cast<double>(fretted.size()), 0.5 * sound_samples_per_s, 2);
}

TEST(NoteSound, a_buzz_is_heard_at_the_same_scale_and_nothing_clips) {
  NoteSoundRequest request{.note = one_note(too_low(), 6, 0)};
  request.note.seconds = 0.5;
  const auto buzzing = note_sound(request);
  request.with_frets = false;
  const auto clean = note_sound(request);
  EXPECT_NE(buzzing, clean);
  int loudest = 0;
  for (const auto* sound : {&buzzing, &clean}) {
    for (const std::int16_t sample : *sound) loudest = std::max(loudest, std::abs(int{sample}));
  }
  EXPECT_NEAR(loudest, 0.9 * 32767, 0.02 * 32767);
  for (std::size_t i = 0; i < 60; ++i)
    EXPECT_NEAR(buzzing[i], clean[i], 1);  // before the first touch they are one sound
  EXPECT_LT(std::abs(buzzing.back()), 4);
}

/// The loudest a tone comes out, its ends aside.
double thinned_tone(double hz) {
  std::vector<double> tone;
  for (int i = 0; i < 20000; ++i) tone.push_back(std::sin(2 * std::acos(-1) * hz * i / 88200));
  const std::vector<double> thin = thinned_out(tone, 2);
  double loudest = 0;
  for (std::size_t i = 500; i + 500 < thin.size(); ++i) loudest = std::max(loudest, std::abs(thin[i]));
  return loudest;
}
TEST(ThinOut, keeps_what_is_heard_and_takes_out_what_would_fold_back) {
  for (const double hz : {100.0, 1000.0, 10000.0, 20000.0}) EXPECT_NEAR(thinned_tone(hz), 1, 1e-3) << hz;
  for (const double hz : {23500.0, 30000.0, 43000.0}) EXPECT_LT(thinned_tone(hz), 5e-5) << hz;
}

}  // namespace
}  // namespace tailblock

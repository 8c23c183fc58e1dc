#include "strings/least_cure.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "published.h"
#include "strings/note_swing.h"
#include "strings/relief_change.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

const ClearanceVerdicts& limits() {
  static const ClearanceVerdicts read = clearance_verdicts(testing::repository_file("data/clearance_verdicts.csv"));
  return read;
}

const std::vector<AttackLevelRow>& levels() {
  static const std::vector<AttackLevelRow> read = attack_levels(testing::repository_file("data/attacks.csv"));
  return read;
}

/// Light strings on 645 mm, ends held, so that neither crowns nor saddle move the other end.
ClearanceRequest set_up(double bass_mm, double treble_mm) {
  ClearanceRequest request;
  request.neck.relief = mm(0.15);
  const HeldSetUp held = held_set_up(request.neck, {.action12_bass = mm(bass_mm), .action12_treble = mm(treble_mm)});
  request.neck = held.neck;
  request.neck.crown_departures_mm.assign(20, 0);
  request.action = held.action;
  request.strings = tuned(string_set_named(string_sets(testing::repository_file("data/string_sets.csv")), "light"),
                          tuning_named(tunings(testing::repository_file("data/tunings.csv")), "standard"));
  request.attack = attack_named(levels(), "medium");
  return request;
}

const UnitEnvelopes& light_envelopes() {
  static const UnitEnvelopes envelopes = unit_envelopes(envelope_request(set_up(2.4, 1.8)));
  return envelopes;
}

LeastCure cure_of(const ClearanceRequest& request) { return least_cure(request, light_envelopes(), limits()); }

ClearanceRequest raised(ClearanceRequest request, const LeastCure& cure, double share) {
  *request.action.saddle_over_frets_bass += share * cure.saddle_raise_bass;
  *request.action.saddle_over_frets_treble += share * cure.saddle_raise_treble;
  return request;
}

TEST(LeastCure, asks_nothing_of_a_guitar_that_is_clean) {
  const LeastCure cure = cure_of(set_up(2.8, 2.4));
  EXPECT_EQ(cure.touching, 0);
  EXPECT_EQ(in_mm(cure.saddle_raise_bass), 0);
  EXPECT_FALSE(cure.high_crown);
}

void frees_every_note_and_nine_tenths_do_not(double bass_mm, double treble_mm) {
  const ClearanceRequest low = set_up(bass_mm, treble_mm);
  const LeastCure cure = cure_of(low);
  ASSERT_GT(cure.touching, 0);
  EXPECT_FALSE(cure.high_crown) << "level crowns, yet fret " << cure.high_crown->fret << " is blamed";
  const auto reaching = [&](double share) {
    int notes = 0;
    for (const auto& note : clearance(raised(low, cure, share), light_envelopes(), limits()).notes) {
      notes += note.ratio < 1 - 1e-9;
    }
    return notes;
  };
  EXPECT_EQ(reaching(1), 0);
  EXPECT_GT(reaching(0.9), 0);
}
TEST(LeastCure, raises_the_saddle_just_enough) { frees_every_note_and_nine_tenths_do_not(1.5, 1.2); }
TEST(LeastCure, raises_the_treble_end_alone_just_enough) { frees_every_note_and_nine_tenths_do_not(2.8, 1.1); }
TEST(LeastCure, raises_the_bass_end_alone_just_enough) { frees_every_note_and_nine_tenths_do_not(1.4, 2.4); }

TEST(LeastCure, never_takes_bone_off) {
  const LeastCure cure = cure_of(set_up(3.5, 1.1));
  EXPECT_GE(in_mm(cure.saddle_raise_bass), 0);
  EXPECT_GT(in_mm(cure.saddle_raise_treble), 0);
}

TEST(LeastCure, names_the_one_high_crown_and_what_comes_off_it) {
  ClearanceRequest request = set_up(2.6, 2.2);
  ASSERT_EQ(cure_of(request).touching, 0);
  request.neck.crown_departures_mm[6 - 1] = 0.15;
  const LeastCure cure = cure_of(request);
  ASSERT_GT(cure.touching, 0);
  ASSERT_TRUE(cure.high_crown);
  EXPECT_EQ(cure.high_crown->fret, 6);
  EXPECT_EQ(cure.high_crown->cures, cure.touching);
  EXPECT_NEAR(in_mm(cure.high_crown->over_neighbours), 0.15, 1e-9);
  EXPECT_LE(in_mm(cure.high_crown->lower_by), 0.15);
  request.neck.crown_departures_mm[6 - 1] -= in_mm(cure.high_crown->lower_by);
  EXPECT_EQ(clearance(request, light_envelopes(), limits()).touching, 0);
}

TEST(LeastCure, blames_no_crown_for_a_board_that_is_evenly_higher) {
  ClearanceRequest request = set_up(1.5, 1.2);
  for (double& departure : request.neck.crown_departures_mm) departure = 0.1;
  EXPECT_FALSE(cure_of(request).high_crown);
}

// The swing of a note is the map's own gaps and reaches, one fret at a time.
TEST(NoteSwing, has_the_ratio_that_the_map_has) {
  const ClearanceRequest request = set_up(1.9, 1.5);
  for (const NoteClearance& note : clearance(request, light_envelopes(), limits()).notes) {
    const NoteSwing swing = note_swing(request, light_envelopes(), limits(), note.string, note.stopped_fret);
    double least = 1e9;
    for (const SwingOverFret& over : swing.frets) least = std::min(least, over.ratio);
    EXPECT_DOUBLE_EQ(least, note.ratio) << "string " << note.string << " at " << note.stopped_fret;
    EXPECT_EQ(swing.saddle_raise.has_value(), note.ratio < 1);
  }
}

TEST(NoteSwing, is_just_free_on_the_saddle_it_asks_for) {
  ClearanceRequest request = set_up(1.5, 1.2);
  const NoteSwing swing = note_swing(request, light_envelopes(), limits(), 6, 1);
  ASSERT_TRUE(swing.saddle_raise);
  *request.action.saddle_over_frets_bass += *swing.saddle_raise;
  double least = 1e9;
  for (const SwingOverFret& over : note_swing(request, light_envelopes(), limits(), 6, 1).frets) {
    least = std::min(least, over.ratio);
  }
  EXPECT_NEAR(least, 1, 1e-9);
}

TEST(NoteSwing, refuses_a_note_that_is_not_there) {
  const ClearanceRequest request = set_up(2.4, 1.8);
  try {
    (void)note_swing(request, light_envelopes(), limits(), 7, 0);
    FAIL() << "a seventh string was drawn";
  } catch (const Refused& refused) {
    EXPECT_STREQ(refused.what(), "string: 7 is outside 1..6");
  }
}

TEST(Attack, between_two_levels_lies_between_them) {
  const Attack own = attack_named(levels(), "medium");
  EXPECT_NEAR(in_mm(attack_of(levels(), own, mm(0.60)).amplitude_treble), 0.48, 1e-12);
  EXPECT_NEAR(in_mm(attack_of(levels(), own, mm(0.70)).amplitude_treble), 0.56, 1e-12);
  EXPECT_NEAR(in_mm(attack_of(levels(), own, mm(1.05)).amplitude_treble), 0.84, 1e-12);
}

TEST(Attack, of_a_medium_player_is_hard_at_its_hardest) {
  const Attack hardest = hardest_of(levels(), attack_named(levels(), "medium"));
  EXPECT_NEAR(in_mm(hardest.amplitude_bass), 1.05, 1e-12);
  EXPECT_NEAR(in_mm(hardest.amplitude_treble), 0.84, 1e-12);
}

TEST(Attack, beyond_the_levels_keeps_their_proportion) {
  const Attack own = attack_named(levels(), "medium");
  EXPECT_NEAR(in_mm(attack_of(levels(), own, mm(0.30)).amplitude_treble), 0.24, 1e-12);
  EXPECT_NEAR(in_mm(attack_of(levels(), own, mm(2.10)).amplitude_treble), 1.68, 1e-12);
}

}  // namespace
}  // namespace tailblock

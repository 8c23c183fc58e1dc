#include "strings/relief_change.h"

#include <gtest/gtest.h>

#include <cmath>

#include "published.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

NeckLine measured_neck(int joint) {
  NeckLine neck;
  neck.body_joint_fret = joint;
  neck.relief = mm(0.2);
  neck.setback_bass = neck.setback_treble = mm(3);
  return neck;
}
const StringAction usual{.action12_bass = mm(2.3), .action12_treble = mm(1.8)};

/// The tangent at the body joint held.
HeldSetUp turned(const HeldSetUp& before, Length change) {
  return with_relief_changed(before, change, in_mm(relief_effect(before.neck, mm(1)).at_held_joint));
}

/// Action at fret 12 gained by turning the rod, in mm.
double gained_at_12(int joint, Length change) {
  const HeldSetUp before = held_set_up(measured_neck(joint), usual);
  const HeldSetUp after = turned(before, change);
  return in_mm(outer_heights(after.neck, after.action).action12_bass - *usual.action12_bass);
}

// Source: the same bow laid out from the body's side, relief_effect (checked against the second design study's H06,
// H07).
TEST(ReliefChange, moves_fret_12_as_the_held_joint_says) {
  for (const int joint : {12, 13, 14}) {
    for (const double change : {-0.15, 0.1, 0.3}) {
      EXPECT_NEAR(gained_at_12(joint, mm(change)), in_mm(relief_effect(measured_neck(joint), mm(change)).at_held_joint),
                  1e-9)
          << "joint at " << joint << ", relief " << change;
    }
  }
}

// Source: second design study, H07: 0.15 mm less relief takes 0.364 mm off the action (no setback).
TEST(ReliefChange, takes_off_what_the_second_study_printed) {
  NeckLine neck = measured_neck(14);
  neck.setback_bass = neck.setback_treble = {};
  const HeldSetUp after = turned(held_set_up(neck, usual), mm(-0.15));
  EXPECT_NEAR(in_mm(outer_heights(after.neck, after.action).action12_bass), 2.3 - 0.364, 0.0006);
}

/// Whatever lies on the body keeps its distance from the rest of the body.
TEST(ReliefChange, leaves_frets_on_the_body_and_the_saddle_to_each_other) {
  const HeldSetUp before = held_set_up(measured_neck(14), usual);
  const HeldSetUp after = turned(before, mm(0.25));
  const auto over_line_from_joint_to_saddle = [](const HeldSetUp& set_up, int fret) {
    const Length saddle_x = set_up.neck.scale_length + set_up.neck.setback_bass;
    const Length xj = fret_from_nut(set_up.neck.scale_length, 14);
    const std::vector<Length> crown = crowns_over_plane(set_up.neck);
    const double share = (fret_from_nut(set_up.neck.scale_length, fret) - xj) / (saddle_x - xj);
    const Length line = crown[13] + share * (*set_up.action.saddle_over_frets_bass - crown[13]);
    return in_mm(line - crown[static_cast<std::size_t>(fret - 1)]);
  };
  for (int fret = 15; fret <= 20; ++fret) {
    EXPECT_NEAR(over_line_from_joint_to_saddle(after, fret), over_line_from_joint_to_saddle(before, fret), 1e-9)
        << "fret " << fret;
  }
}

/// The nut rides on the neck: the bow carried on past fret 1 passes under it at the same distance.
TEST(ReliefChange, carries_the_nut_on_the_bow) {
  const HeldSetUp before = held_set_up(measured_neck(14), usual);
  const HeldSetUp after = turned(before, mm(0.25));
  const auto bow_at_nut = [](const NeckLine& neck) {
    const double x1 = in_mm(fret_from_nut(neck.scale_length, 1));
    const double xj = in_mm(fret_from_nut(neck.scale_length, 14));
    return -4 * in_mm(neck.relief) * (0 - x1) * (xj - 0) / ((xj - x1) * (xj - x1));
  };
  EXPECT_NEAR(in_mm(*after.neck.nut_over_frets_bass) - bow_at_nut(after.neck),
              in_mm(*before.neck.nut_over_frets_bass) - bow_at_nut(before.neck), 1e-12);
}

// Source: the figure is by its meaning mm at fret 12 for a mm of relief, and the nut rides on the bow.
TEST(ReliefChange, moves_strings_by_the_figure_a_neck_has_shown) {
  const NeckLine neck = measured_neck(14);
  const HeldSetUp before = held_set_up(neck, usual);
  const double x1 = in_mm(fret_from_nut(mm(645), 1)), xj = in_mm(fret_from_nut(mm(645), 14));
  for (const double figure : {1.6, 2.4, 3.1}) {
    const HeldSetUp after = with_relief_changed(before, mm(0.12), figure);
    EXPECT_NEAR(in_mm(outer_heights(after.neck, after.action).action12_bass), 2.3 + 0.12 * figure, 1e-9) << figure;
    EXPECT_NEAR(in_mm(*after.neck.nut_over_frets_bass - *before.neck.nut_over_frets_bass),
                0.12 * 4 * x1 * xj / ((xj - x1) * (xj - x1)), 1e-9)
        << figure;
  }
}

TEST(ReliefChange, by_the_held_joint_turns_the_body_by_the_parabolas_own_tangent) {
  const HeldSetUp before = held_set_up(measured_neck(14), usual);
  const HeldSetUp after = turned(before, mm(0.25));
  const Length run = fret_from_nut(mm(645), 14) - fret_from_nut(mm(645), 1);
  EXPECT_NEAR(after.neck.crown_departures_mm[19],
              4 * 0.25 / in_mm(run) * in_mm(fret_from_nut(mm(645), 20) - fret_from_nut(mm(645), 14)), 1e-9);
}

TEST(ReliefChange, turned_back_is_as_it_was) {
  const HeldSetUp before = held_set_up(measured_neck(14), usual);
  const HeldSetUp after = turned(turned(before, mm(0.2)), mm(-0.2));
  EXPECT_NEAR(in_mm(*after.action.saddle_over_frets_bass - *before.action.saddle_over_frets_bass), 0, 1e-12);
  EXPECT_NEAR(in_mm(*after.neck.nut_over_frets_treble - *before.neck.nut_over_frets_treble), 0, 1e-12);
  for (const double departure : after.neck.crown_departures_mm) EXPECT_NEAR(departure, 0, 1e-12);
}

TEST(ReliefChange, the_least_clean_action_at_its_own_relief_is_the_least_clean_action) {
  ClearanceRequest request{.neck = measured_neck(14),
                           .action = {.action12_bass = mm(2.2), .action12_treble = mm(1.7)},
                           .strings = {},
                           .attack = {.amplitude_bass = mm(0.8), .amplitude_treble = mm(0.64)}};
  const auto sets = string_sets(testing::repository_file("data/string_sets.csv"));
  const auto standard = tunings(testing::repository_file("data/tunings.csv"));
  request.strings = tuned(sets.front(), standard.front());
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  const std::vector<Length> reliefs{mm(0.1), mm(0.2), mm(0.3)};
  const auto clean = least_clean_by_relief(request, envelopes, reliefs);
  const OuterHeights own = least_clean_action(request, envelopes).outer;
  EXPECT_NEAR(in_mm(clean[1].outer.action12_bass), in_mm(own.action12_bass), 1e-9);
  EXPECT_NEAR(in_mm(clean[1].outer.action12_treble), in_mm(own.action12_treble), 1e-9);
  EXPECT_GT(clean[0].outer.action12_bass, clean[1].outer.action12_bass) << "a straighter neck needs more height";
}

}  // namespace
}  // namespace tailblock

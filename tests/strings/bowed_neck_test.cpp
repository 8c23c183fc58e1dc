#include "strings/bowed_neck.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "published.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

NeckLine neck_of_645(double relief_mm) {
  NeckLine neck;
  neck.relief = mm(relief_mm);
  neck.setback_bass = neck.setback_treble = mm(0);
  return neck;
}

/// All the bend of the neck at one fret: how far fret 12 rises for a mm of relief as read at fret 7, by points. The
/// body side of the bend stays; the nut side turns by a small angle.
double figure_of_bend_at(int fret) {
  const auto x = [](int n) { return in_mm(fret_from_nut(mm(645), n)); };
  const double angle = 1e-4;
  const auto lift = [&](double place) { return std::max(0.0, x(fret) - place) * angle; };
  const double chord_at_7 = lift(x(1)) * (x(14) - x(7)) / (x(14) - x(1));
  const double action = lift(0) * (1 - x(12) / 645) - lift(x(12));
  return action / (chord_at_7 - lift(x(7)));
}

TEST(BowedNeck, the_spread_of_the_figure_spans_bends_at_fret_5_and_at_fret_10) {
  EXPECT_NEAR(figure_of_bend_at(5), 1.45, 0.005);
  EXPECT_NEAR(figure_of_bend_at(10), 3.42, 0.005);
  const RodFigure even = rod_figure(neck_of_645(0), 0.6, {});
  EXPECT_NEAR(even.action12_per_relief, 2.43, 0.005);  // the second study's rule, H06 of checks-second-study.csv
  EXPECT_EQ(even.turns, 0);
  EXPECT_NEAR(even.action12_per_relief - 1.645 * even.sd, 1.45, 0.02);
  EXPECT_NEAR(even.action12_per_relief + 1.645 * even.sd, 3.42, 0.02);
}

TEST(BowedNeck, a_turn_read_well_decides_the_figure_and_a_tiny_one_says_nothing) {
  const RodTurn turn{.relief_change = mm(-0.2),
                     .action12_change = mm(-0.36),
                     .relief_change_sd = mm(0.002),
                     .action12_change_sd = mm(0.002)};
  const RodFigure known = rod_figure(neck_of_645(0), 0.6, std::vector{turn});
  EXPECT_NEAR(known.action12_per_relief, 1.8, 0.01);
  EXPECT_LT(known.sd, 0.03);
  EXPECT_EQ(known.turns, 1);
  RodTurn tiny = turn;
  tiny.relief_change = mm(0.02);
  EXPECT_EQ(rod_figure(neck_of_645(0), 0.6, std::vector{tiny}).turns, 0);
}

TEST(BowedNeck, the_same_relief_changes_nothing) {
  const NeckLine neck = neck_of_645(0.15);
  const StringAction action{.action12_bass = mm(2.3), .action12_treble = mm(1.8)};
  const BowedNeck same = bowed_to(neck, action, mm(0.15), 2.43);
  EXPECT_NEAR(in_mm(outer_heights(same.neck, same.action).saddle_over_frets_bass),
              in_mm(outer_heights(neck, action).saddle_over_frets_bass), 1e-12);
}

/// The whole line laid out again after the bow: the saddle must stand where the body holds it.
TEST(BowedNeck, with_the_even_figure_the_saddle_stays_with_the_body) {
  const NeckLine neck = neck_of_645(0.1);
  const StringAction action{.action12_bass = mm(2.3), .action12_treble = mm(1.8)};
  const double figure = in_mm(relief_effect(neck, mm(1)).at_held_joint);
  const BowedNeck bowed = bowed_to(neck, action, mm(0.3), figure);
  const double x1 = in_mm(fret_from_nut(mm(645), 1)), xj = in_mm(fret_from_nut(mm(645), 14));
  // The chord of frets 1 and 14 turns about the joint: fret 1 rises by k (xj - x1)^2/2, so beyond the joint it falls.
  const double k = 8 * 0.2 / ((xj - x1) * (xj - x1));
  const double chord_slope = k * (xj - x1) / 2;
  const double chord_falls = chord_slope * (645 - xj);
  EXPECT_NEAR(in_mm(outer_heights(bowed.neck, bowed.action).saddle_over_frets_bass),
              in_mm(outer_heights(neck, action).saddle_over_frets_bass) + chord_falls, 1e-9);
}

TEST(BowedNeck, the_least_clean_action_at_its_own_relief_is_the_least_clean_action) {
  ClearanceRequest request{.neck = neck_of_645(0.15),
                           .action = {.action12_bass = mm(2.2), .action12_treble = mm(1.7)},
                           .strings = {},
                           .attack = {.amplitude_bass = mm(0.8), .amplitude_treble = mm(0.64)}};
  const auto sets = string_sets(testing::repository_file("data/string_sets.csv"));
  const auto standard = tunings(testing::repository_file("data/tunings.csv"));
  request.strings = tuned(sets.front(), standard.front());
  const UnitEnvelopes envelopes = unit_envelopes(envelope_request(request));
  const std::vector<Length> reliefs{mm(0.05), mm(0.15), mm(0.25)};
  const auto clean = least_clean_by_relief(request, envelopes, reliefs);
  const OuterHeights own = least_clean_action(request, envelopes).outer;
  EXPECT_NEAR(in_mm(clean[1].outer.action12_bass), in_mm(own.action12_bass), 1e-9);
  EXPECT_NEAR(in_mm(clean[1].outer.action12_treble), in_mm(own.action12_treble), 1e-9);
  EXPECT_GT(clean[0].outer.action12_bass, clean[1].outer.action12_bass) << "a straighter neck needs more height";
}

}  // namespace
}  // namespace tailblock

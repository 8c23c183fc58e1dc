#include "strings/rod_figure.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

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

TEST(RodFigure, the_spread_of_the_figure_spans_bends_at_fret_5_and_at_fret_10) {
  EXPECT_NEAR(figure_of_bend_at(5), 1.45, 0.005);
  EXPECT_NEAR(figure_of_bend_at(10), 3.42, 0.005);
  const RodFigure even = rod_figure(neck_of_645(0), 0.6, {});
  EXPECT_NEAR(even.action12_per_relief, 2.43, 0.005);  // the second study's rule, H06 of checks-second-study.csv
  EXPECT_EQ(even.turns, 0);
  EXPECT_NEAR(even.action12_per_relief - 1.645 * even.sd, 1.45, 0.02);
  EXPECT_NEAR(even.action12_per_relief + 1.645 * even.sd, 3.42, 0.02);
}

TEST(RodFigure, a_turn_read_well_decides_the_figure_and_a_tiny_one_says_nothing) {
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

}  // namespace
}  // namespace tailblock

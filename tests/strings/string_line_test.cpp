#include "strings/string_line.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "published.h"

namespace tailblock {
namespace {

/// 645 mm, both sides alike, no setback, frets level.
StringLineRequest plain_neck() {
  StringLineRequest request;
  request.neck.setback_bass = request.neck.setback_treble = {};
  request.neck.nut_over_fret1_treble = request.neck.nut_over_fret1_bass;
  request.action.action12_bass = request.action.action12_treble = mm(2);
  return request;
}

StringLineRequest request_of(const CsvRow& row) {
  StringLineRequest request = plain_neck();
  NeckLine& neck = request.neck;
  neck.setback_bass = neck.setback_treble = mm(row.number("setback_mm", {0, 10, "mm"}));
  const double relief = row.number("relief_mm", {-1, 1, "mm"});
  neck.relief = mm(relief);
  if (const auto nut = row.number_if_given("nut_over_fret1_mm", {0, 2, "mm"})) {
    neck.nut_over_fret1_bass = neck.nut_over_fret1_treble = mm(*nut);
  }
  if (const auto nut = row.number_if_given("nut_over_frets_mm", {0, 2, "mm"})) {
    neck.nut_over_frets_bass = neck.nut_over_frets_treble = mm(*nut);
  }
  return request;
}

double computed(const CsvRow& row) {
  const StringLineRequest request = request_of(row);
  const NeckLine& neck = request.neck;
  const StringLineResult line = string_line(request);
  const StringPath& bass = line.strings.back();
  const std::string_view quantity = row.name("quantity");
  const auto fret = static_cast<std::size_t>(row.number_if_given("fret", {1, 24, ""}).value_or(1));
  const Length by = mm(row.number_if_given("action12_mm", {0, 5, "mm"}).value_or(0));
  if (quantity == "from_nut") return in_mm(line.frets.at(fret - 1).from_nut);
  if (quantity == "over_fret") return bass.over_fret_mm.at(fret - 1);
  if (quantity == "over_next_fret") return bass.over_next_fret_mm.at(fret - 1);
  if (quantity == "depth") return -in_mm(line.frets.at(fret - 1).crown_over_plane);
  if (quantity == "nut") return in_mm(bass.nut_over_frets);
  if (quantity == "saddle") return in_mm(bass.saddle_over_frets);
  if (quantity == "saddle_for_action12") return in_mm(saddle_move(neck, by, by).bass);
  if (quantity == "action12_for_saddle") return in_mm(by) / line.saddle_per_action12_bass;
  if (quantity == "over_fret_per_saddle") return line.frets.at(fret - 1).from_nut / bass.saddle_from_nut;
  if (quantity == "action12_for_relief_at_held_ends") return in_mm(relief_effect(neck, neck.relief).at_held_ends);
  if (quantity == "action12_for_relief_at_held_joint") return in_mm(relief_effect(neck, neck.relief).at_held_joint);
  if (quantity == "sag") return in_mm(string_sag(82.4068892));
  throw Refused(row.where("quantity") + ": is not known to this test");
}

TEST(StringLine, agrees_with_published_values) {
  testing::Published table("strings_line.csv");
  for (const CsvRow& row : table.rows()) table.check(row, computed(row));
}

void saddle_raise_moves_every_string(Length raise) {
  StringLineRequest request = plain_neck();
  const OuterHeights before = outer_heights(request.neck, request.action);
  request.neck = with_nut_held(request.neck, request.action);
  request.action = {.saddle_over_frets_bass = before.saddle_over_frets_bass + raise,
                    .saddle_over_frets_treble = before.saddle_over_frets_treble + raise};
  const StringLineResult after = string_line(request);
  for (const StringPath& string : after.strings) {
    EXPECT_NEAR(string.over_fret_mm[11] - 2, in_mm(raise) / 2, 1e-12) << "string " << string.string;
  }
}
// Source: similar triangles, fret 12 being half way (nominal scale, no setback).
TEST(StringLine, raising_the_saddle_by_a_32nd_raises_fret_12_by_a_64th) {
  saddle_raise_moves_every_string(sixty_fourths(2));
  EXPECT_NEAR(in_mm(sixty_fourths(2)) / 2, in_mm(sixty_fourths(1)), 1e-12);
}
TEST(StringLine, lowering_the_saddle_lowers_fret_12_by_half) { saddle_raise_moves_every_string(mm(-0.7)); }

// A random neck, measured, must come out as it was made: heights at 1 and 12 give back nut and saddle.
TEST(StringLine, measured_heights_give_back_the_nut_and_saddle_that_made_them) {
  const unsigned seed = 20240617;
  std::printf("  seed %u\n", seed);
  std::mt19937 random(seed);
  auto between = [&](double low, double high) { return std::uniform_real_distribution(low, high)(random); };
  for (int i = 0; i < 200; ++i) {
    NeckLine neck;
    neck.scale_length = mm(between(600, 660));
    neck.relief = mm(between(-0.1, 0.4));
    neck.body_joint_fret = i % 2 == 0 ? 14 : 12;
    for (int n = 0; n < neck.fret_count; ++n) neck.crown_departures_mm.push_back(between(-0.05, 0.05));
    neck.nut_over_frets_bass = mm(between(0.1, 0.6));
    neck.nut_over_frets_treble = mm(between(0.1, 0.6));
    const StringAction made{.saddle_over_frets_bass = mm(between(2, 6)), .saddle_over_frets_treble = mm(between(2, 5))};
    const StringLineResult line = string_line({.neck = neck, .action = made});
    NeckLine measured = neck;
    measured.nut_over_frets_bass.reset();
    measured.nut_over_frets_treble.reset();
    measured.nut_over_fret1_bass = mm(line.strings[5].over_fret_mm[0]);
    measured.nut_over_fret1_treble = mm(line.strings[0].over_fret_mm[0]);
    const StringAction action{.action12_bass = mm(line.strings[5].over_fret_mm[11]),
                              .action12_treble = mm(line.strings[0].over_fret_mm[11])};
    const StringLineResult again = string_line({.neck = measured, .action = action});
    for (std::size_t s = 0; s < 6; ++s) {
      EXPECT_NEAR(in_mm(again.strings[s].nut_over_frets), in_mm(line.strings[s].nut_over_frets), 1e-9);
      EXPECT_NEAR(in_mm(again.strings[s].saddle_over_frets), in_mm(line.strings[s].saddle_over_frets), 1e-9);
      for (std::size_t n = 0; n < 20; ++n) {
        EXPECT_NEAR(again.strings[s].over_fret_mm[n], line.strings[s].over_fret_mm[n], 1e-9);
      }
    }
  }
}

TEST(StringLine, holding_the_nut_changes_nothing_until_the_saddle_moves) {
  StringLineRequest request;
  request.neck.relief = mm(0.2);
  request.neck.nut_over_fret1_bass = mm(0.55);
  request.neck.nut_over_fret1_treble = mm(0.3);
  request.action = {.action12_bass = mm(2.6), .action12_treble = mm(1.7)};
  StringLineRequest held = request;
  held.neck = with_nut_held(request.neck, request.action);
  const StringLineResult before = string_line(request), after = string_line(held);
  for (std::size_t s = 0; s < 6; ++s) {
    for (std::size_t n = 0; n < 20; ++n) {
      EXPECT_NEAR(after.strings[s].over_fret_mm[n], before.strings[s].over_fret_mm[n], 1e-12);
    }
  }
  EXPECT_NEAR(before.strings[5].over_fret_mm[0], 0.55, 1e-12);
  EXPECT_NEAR(before.strings[0].over_fret_mm[0], 0.3, 1e-12);
}

// A slow check of what a bow does: the bent neck is laid out point by point and the string drawn over it.
TEST(StringLine, relief_from_a_held_joint_agrees_with_a_neck_bent_point_by_point) {
  const NeckLine neck = plain_neck().neck;
  const double L = 645, R = 0.1;
  const double x1 = in_mm(fret_from_nut(mm(L), 1)), x12 = L / 2, xj = in_mm(fret_from_nut(mm(L), 14));
  // Bend the neck upward from the joint by small equal turns; the body line is zero.
  auto height = [&](double x) {
    const int pieces = 200000;
    const double curvature = 8 * R / ((xj - x1) * (xj - x1));
    const double step = (xj - x) / pieces;
    double slope = 0, rise = 0;
    for (int i = 0; i < pieces; ++i) {
      rise += slope * step + curvature * step * step / 2;
      slope += curvature * step;
    }
    return rise;
  };
  const double string_change = height(0) * (1 - x12 / L);
  EXPECT_NEAR(in_mm(relief_effect(neck, mm(R)).at_held_joint), string_change - height(x12), 1e-6);
  // The dip below the chord of frets 1 and 14 that this bow makes is R.
  const double middle = (x1 + xj) / 2;
  EXPECT_NEAR(height(x1) / 2 - height(middle), R, 1e-6);
}

TEST(StringLine, a_measured_profile_equal_to_the_bow_changes_nothing) {
  StringLineRequest bowed = plain_neck();
  bowed.neck.relief = mm(0.2);
  StringLineRequest measured = plain_neck();
  for (const Length crown : crowns_over_plane(bowed.neck)) measured.neck.crown_departures_mm.push_back(in_mm(crown));
  const StringLineResult a = string_line(bowed), b = string_line(measured);
  for (std::size_t n = 0; n < 20; ++n) {
    EXPECT_NEAR(a.strings[2].over_fret_mm[n], b.strings[2].over_fret_mm[n], 1e-12);
  }
}

TEST(StringLine, a_high_fret_takes_its_height_from_the_gap_above_it_alone) {
  StringLineRequest request = plain_neck();
  const StringLineResult level = string_line(request);
  request.neck.crown_departures_mm.assign(20, 0);
  request.neck.crown_departures_mm[4] = 0.05;  // fret 5
  const StringLineResult high = string_line(request);
  EXPECT_NEAR(high.strings[3].over_fret_mm[4], level.strings[3].over_fret_mm[4] - 0.05, 1e-12);
  EXPECT_NEAR(high.strings[3].over_fret_mm[6], level.strings[3].over_fret_mm[6], 1e-12);
  EXPECT_LT(high.strings[3].over_next_fret_mm[3], level.strings[3].over_next_fret_mm[3]);
  EXPECT_GT(high.strings[3].over_next_fret_mm[4], level.strings[3].over_next_fret_mm[4]);
}

// A-16 of the design study: a 16 in circle drops 0.832546 mm at 26 mm from its middle.
TEST(StringLine, a_flat_saddle_on_a_16_inch_board_leaves_the_middle_strings_low) {
  StringLineRequest request = plain_neck();
  request.neck.string_count = 3;  // the middle one lies on the crown of the arc
  request.neck.string_spread_at_saddle = mm(52);
  request.neck.board_radius = inches(16);
  request.neck.saddle_radius = mm(5000);
  const StringLineResult line = string_line(request);
  const double flat_arc = 5000 - std::sqrt(5000.0 * 5000 - 26 * 26);
  EXPECT_NEAR(in_mm(line.strings[1].saddle_over_frets - line.strings[0].saddle_over_frets), flat_arc - 0.832546, 1e-6);
  request.neck.saddle_radius = inches(16);
  EXPECT_NEAR(in_mm(string_line(request).strings[1].saddle_over_frets), in_mm(line.strings[0].saddle_over_frets),
              1e-12);
}

TEST(StringLine, exposure_is_the_saddle_over_the_bridge) {
  StringLineRequest request = plain_neck();
  EXPECT_FALSE(string_line(request).strings[0].exposure.has_value());
  request.bridge_top_over_frets_bass = mm(0.5);
  request.bridge_top_over_frets_treble = mm(0.9);
  const StringLineResult line = string_line(request);
  EXPECT_NEAR(in_mm(line.strings[5].exposure.value()), in_mm(line.strings[5].saddle_over_frets) - 0.5, 1e-12);
  EXPECT_NEAR(in_mm(line.strings[0].exposure.value()), in_mm(line.strings[0].saddle_over_frets) - 0.9, 1e-12);
  // On a 16 in board the middle strings stand higher over a flat bridge.
  request.neck.board_radius = inches(16);
  request.neck.string_count = 3;
  request.neck.string_spread_at_saddle = mm(52);
  const StringLineResult arched = string_line(request);
  EXPECT_NEAR(in_mm(arched.strings[1].exposure.value()), in_mm(arched.strings[1].saddle_over_frets) + 0.832546 - 0.7,
              1e-6);
}

TEST(StringLine, says_which_string_lies_on_a_fret) {
  StringLineRequest request = plain_neck();
  request.neck.nut_over_frets_bass = mm(-0.3);
  request.neck.nut_over_frets_treble = mm(0.2);
  const StringLineResult line = string_line(request);
  ASSERT_FALSE(line.cautions.empty());
  EXPECT_EQ(line.cautions[0], "String 6 lies on fret 1 when open: check the readings.");
}

void refuses(const StringLineRequest& request, const std::string& text) {
  try {
    (void)string_line(request);
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), text);
  }
}
TEST(StringLine, refuses_in_one_line) {
  StringLineRequest request = plain_neck();
  request.action = {};
  const std::string one_pair =
      "action12_bass_mm: give action12_bass_mm and action12_treble_mm, or saddle_over_frets_bass_mm and "
      "saddle_over_frets_treble_mm, not both";
  refuses(request, one_pair);
  request.action.action12_bass = mm(2);
  refuses(request, one_pair);
  request.action.saddle_over_frets_treble = mm(3);
  refuses(request, one_pair);
  request = plain_neck();
  request.neck.relief = mm(5);
  refuses(request, "neck.relief_mm: 5 mm is outside -1.5..3 mm");
  request = plain_neck();
  request.neck.crown_departures_mm = {0.1, 0.2};
  refuses(request, "crown_departures_mm: 2 items, the neck has 20 frets");
  request = plain_neck();
  request.neck.nut_over_frets_bass = mm(0.4);
  refuses(request, "nut_over_frets_bass_mm: give bass and treble, or neither");
  request = plain_neck();
  request.neck.fret_count = 12;
  refuses(request, "body_joint_fret: 14 is outside 10..12");
  request = plain_neck();
  request.action.action12_bass = mm(NAN);
  refuses(request, "action.action12_bass_mm: nan mm is outside -1..15 mm");
}

}  // namespace
}  // namespace tailblock

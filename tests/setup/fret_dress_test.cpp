#include "setup/fret_dress.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "fret_bench.h"
#include "setup/fret_readings.h"

namespace tailblock {
namespace {

using testing::dress;
using testing::guitar;
using testing::with_crowns;

double cut(const FretDressResult& result, int fret) {
  return in_mm(result.frets[static_cast<std::size_t>(fret - 1)].remove_bass);
}

/// The clearance model's own word on the dressed neck, with the nut where it was and the saddle cut to the wanted
/// action: the least room under any note.
double least_room(const FretDressRequest& request, const FretDressResult& result) {
  ClearanceRequest dressed{
      .neck = request.neck, .action = request.action, .strings = request.strings, .attack = request.attack};
  const std::size_t frets = result.frets.size();
  const Crowns crowns = crowns_from_readings(request, testing::usual_fret_limits());
  dressed.neck.relief = crowns.relief;
  dressed.neck.crown_departures_mm = crowns.bass.departure;
  dressed.neck = with_nut_held(dressed.neck, dressed.action);
  dressed.action = {.action12_bass = result.wanted_action12_bass, .action12_treble = result.wanted_action12_treble};
  for (std::size_t i = 0; i < frets; ++i) dressed.neck.crown_departures_mm[i] -= in_mm(result.frets[i].remove_bass);
  const ClearanceResult notes = clearance(dressed, testing::guitar_envelopes(), {0.95, 1.1, "", ""});
  double least = 1e9;
  for (const NoteClearance& note : notes.notes) least = std::min(least, in_mm(note.margin));
  return least;
}

TEST(FretDress, leaves_level_frets_alone) {
  const FretDressResult result = dress(with_crowns(guitar(), {}));
  EXPECT_EQ(result.verdict, FretVerdict::clean);
  EXPECT_EQ(in_mm(result.total_removed), 0);
  EXPECT_FALSE(result.cut_is_advised);
}

TEST(FretDress, takes_one_high_fret_down_and_says_for_which_note) {
  const FretDressResult result = dress(with_crowns(guitar(), {{9, 0.15}}));
  EXPECT_EQ(result.verdict, FretVerdict::spot);
  EXPECT_TRUE(result.cut_is_advised);
  EXPECT_GT(cut(result, 9), 0.08);
  EXPECT_LE(cut(result, 9), 0.15);
  EXPECT_NEAR(in_mm(result.total_removed), cut(result, 9), 1e-12);
  const FretToDress& fret = result.frets[8];
  ASSERT_FALSE(fret.forced_by.empty());
  EXPECT_EQ(fret.forced_by.front().stopped_fret, 8);
  EXPECT_NE(fret.reason.find("stopped at 8 would touch it"), std::string::npos) << fret.reason;
  EXPECT_NEAR(in_mm(*fret.left_bass), 1.15 - cut(result, 9), 1e-9);
}

TEST(FretDress, leaves_every_note_clean_by_the_clearance_models_own_word) {
  int cut_boards = 0;
  std::mt19937 random(5);
  for (int board = 0; board < 40; ++board) {
    std::vector<std::pair<int, double>> high;
    for (int fret = 1; fret <= 20; ++fret) {
      high.emplace_back(fret, 0.16 * (static_cast<double>(random()) / 4294967295.0 - 0.5));
    }
    const FretDressRequest request = with_crowns(guitar(), high);
    const FretDressResult result = dress(request);
    if (!result.cut_is_advised) continue;
    ++cut_boards;
    EXPECT_NEAR(least_room(request, result), in_mm(result.margin), 1e-6) << "board " << board;
  }
  EXPECT_GT(cut_boards, 30);
}

TEST(FretDress, does_not_care_about_a_straight_line_under_all_readings) {
  std::vector<std::pair<int, double>> high{{3, 0.08}, {7, 0.1}, {11, -0.06}, {16, 0.12}}, tilted;
  for (int fret = 1; fret <= 20; ++fret) tilted.emplace_back(fret, 0.1 + 2e-4 * in_mm(fret_from_nut(mm(645), fret)));
  for (const auto& [fret, by] : high) tilted[static_cast<std::size_t>(fret - 1)].second += by;
  FretDressRequest level = guitar(), on_a_slope = guitar();
  for (int fret = 1; fret <= 20; ++fret) {
    double by = 0;
    for (const auto& [f, b] : high) by = f == fret ? b : by;
    level.readings.push_back(testing::departure(fret, by));
    on_a_slope.readings.push_back(testing::departure(fret, tilted[static_cast<std::size_t>(fret - 1)].second));
    for (auto* request : {&level, &on_a_slope}) request->readings.push_back(testing::over_board(fret, 1));
  }
  const FretDressResult a = dress(level), b = dress(on_a_slope);
  EXPECT_EQ(a.verdict, b.verdict);
  for (int fret = 1; fret <= 20; ++fret) EXPECT_NEAR(cut(a, fret), cut(b, fret), 1e-6) << fret;
  EXPECT_NEAR(in_mm(a.total_to_level), in_mm(b.total_to_level), 1e-6);
}

TEST(FretDress, of_bass_and_treble_read_alike_is_that_of_one_reading) {
  FretDressRequest one = guitar(), apart = guitar();
  for (int fret = 1; fret <= 20; ++fret) {
    const double by = fret == 6 ? 0.14 : fret == 13 ? 0.1 : 0;
    one.readings.push_back(testing::departure(fret, by));
    apart.readings.push_back(testing::departure(fret, by, FretSide::bass));
    apart.readings.push_back(testing::departure(fret, by, FretSide::treble));
    for (auto* request : {&one, &apart}) request->readings.push_back(testing::over_board(fret, 1));
  }
  const FretDressResult a = dress(one), b = dress(apart);
  EXPECT_TRUE(b.apart);
  EXPECT_LE(in_mm(b.total_removed), in_mm(a.total_removed) + 1e-9);  // free to take less where no string asks for it
  for (int fret = 1; fret <= 20; ++fret) {
    EXPECT_LE(in_mm(b.frets[static_cast<std::size_t>(fret - 1)].remove_bass), cut(a, fret) + 1e-9);
  }
}

TEST(FretDress, of_a_fret_high_under_the_treble_takes_metal_there) {
  FretDressRequest request = guitar();
  for (int fret = 1; fret <= 20; ++fret) {
    request.readings.push_back(testing::departure(fret, 0, FretSide::bass));
    request.readings.push_back(testing::departure(fret, fret == 7 ? 0.16 : 0, FretSide::treble));
    request.readings.push_back(testing::over_board(fret, 1));
  }
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::spot);
  EXPECT_GT(in_mm(result.frets[6].remove_treble), 0.05);
  EXPECT_LT(in_mm(result.frets[6].remove_bass), 0.02);
}

TEST(FretDress, withholds_what_is_inside_the_readings_own_error) {
  FretDressRequest request = with_crowns(guitar(), {{9, 0.05}});
  EXPECT_EQ(dress(request).verdict, FretVerdict::withheld);
  for (FretReading& reading : request.readings) reading.sd = mm(0.003);  // the same neck, read ten times as well
  EXPECT_EQ(dress(request).verdict, FretVerdict::spot);
}

TEST(FretDress, seats_a_loose_crown_before_it_decides_anything) {
  FretDressRequest request = with_crowns(guitar(), {{7, 0.2}});
  request.readings.push_back({.kind = FretReadingKind::springs, .fret = 7, .value = mm(0.18)});
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::loose);
  EXPECT_TRUE(result.frets[6].loose);
  EXPECT_FALSE(result.cut_is_advised);
  EXPECT_EQ(result.touching_before, 0);  // pressed home it touches nothing
}

TEST(FretDress, turns_the_rod_of_a_flat_neck_rather_than_filing_it) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.neck.relief = mm(0);
  request.action = {.action12_bass = mm(2.35), .action12_treble = mm(1.85)};
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::relief);
  ASSERT_TRUE(result.relief_instead);
  EXPECT_GT(in_mm(result.relief_instead->change_least), 0);
  EXPECT_LE(in_mm(result.relief_instead->change_least), in_mm(result.relief_instead->change_most));
  // Turned that far, with the least lift a neck gives, nothing touches.
  request.neck.relief = result.relief_instead->relief_after_most;
  request.wanted_action12_bass = mm(2.35 + 1.5 * in_mm(result.relief_instead->change_most));
  request.wanted_action12_treble = mm(1.85 + 1.5 * in_mm(result.relief_instead->change_most));
  request.margin = mm(0);
  EXPECT_EQ(dress(request).touching_before, 0);
}

TEST(FretDress, knows_the_turn_more_closely_of_a_neck_that_has_shown_its_own_figure) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.neck.relief = mm(0);
  request.action = {.action12_bass = mm(2.2), .action12_treble = mm(1.7)};
  const auto usual = dress(request).relief_instead;
  request.rod = RodFigure{.action12_per_relief = 2.0, .sd = 0.05, .turns = 3};
  const auto own = dress(request).relief_instead;
  ASSERT_TRUE(usual && own);
  EXPECT_LE(in_mm(own->change_most - own->change_least), in_mm(usual->change_most - usual->change_least));
  EXPECT_GE(own->change_least, usual->change_least);
  EXPECT_LE(own->change_most, usual->change_most);
  request.rod->turns = 0;  // a figure nobody read is no figure
  EXPECT_EQ(dress(request).relief_instead->change_most, usual->change_most);
}

TEST(FretDress, tightens_a_neck_that_bows_too_much) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.neck.relief = mm(0.5);
  request.action = {.action12_bass = mm(2.2), .action12_treble = mm(1.7)};
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::relief);
  ASSERT_TRUE(result.relief_instead);
  EXPECT_LT(in_mm(result.relief_instead->change_most), 0);
}

TEST(FretDress, says_when_the_action_is_too_low_for_the_player_whatever_the_frets) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.action = {.action12_bass = mm(1.8), .action12_treble = mm(1.4)};
  request.attack = attack_named(attack_levels(testing::repository_file("data/attacks.csv")), "hard");
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::action);
  EXPECT_FALSE(result.cut_is_advised);
  ASSERT_TRUE(result.clean_action12_bass);
  request.action = {.action12_bass = *result.clean_action12_bass, .action12_treble = *result.clean_action12_treble};
  request.margin = mm(0);
  EXPECT_LE(in_mm(dress(request).worst_shortfall.value),
            0.002);  // the nut was found by today's action: it moves a hair
}

TEST(FretDress, sends_open_strings_to_the_nut) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.neck.nut_over_fret1_bass = mm(0.12);
  request.neck.nut_over_fret1_treble = mm(0.1);
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::nut);
  EXPECT_GT(in_mm(*result.nut_rise), 0.05);
}

TEST(FretDress, knows_a_hump_at_the_joint) {
  const FretDressRequest request = with_crowns(guitar(), {{13, 0.18}, {14, 0.34}, {15, 0.3}, {16, 0.1}});
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::hump);
  EXPECT_NEAR(in_mm(result.hump->value), 0.32, 0.02);
  FretDressRequest dry = request;
  dry.body_humidity = humidity_percent(34);
  EXPECT_FALSE(dress(dry).cut_is_advised);
  EXPECT_NE(dress(dry).sentence.find("Not today"), std::string::npos);
}

TEST(FretDress, knows_a_tongue_that_rises_from_a_kink) {
  std::vector<std::pair<int, double>> high;
  for (int fret = 15; fret <= 20; ++fret) high.emplace_back(fret, 0.17 * (fret - 14));
  FretDressRequest request = with_crowns(guitar(), high);
  request.neck_angle_changed = true;
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::kink);
  EXPECT_NEAR(in_mm(result.tongue_rise->value), 1.02, 0.1);
  EXPECT_FALSE(result.cut_is_advised);
}

TEST(FretDress, knows_the_kink_where_the_crowns_do_not_hold_the_cut_either) {
  FretDressRequest request = guitar();
  for (int fret = 1; fret <= 20; ++fret) {
    request.readings.push_back(testing::departure(fret, fret > 14 ? 0.17 * (fret - 14) : 0));
    request.readings.push_back(testing::over_board(fret, 0.8));
  }
  const FretDressResult result = dress(request);
  EXPECT_EQ(result.verdict, FretVerdict::kink) << result.sentence;
  EXPECT_FALSE(result.cut_is_advised);
  EXPECT_EQ(in_mm(result.total_removed), 0);
}

TEST(FretDress, renews_worn_frets_when_the_others_do_not_hold_the_cut) {
  std::vector<std::pair<int, double>> high{{1, -0.15}, {2, -0.35}, {3, -0.35}, {4, -0.15}};
  const FretDressResult result = dress(with_crowns(guitar(), high, 0.66));
  EXPECT_EQ(result.verdict, FretVerdict::refret);
  EXPECT_FALSE(result.cut_is_advised);
  EXPECT_TRUE(result.frets[1].renew);
  EXPECT_TRUE(result.frets[2].renew);
  EXPECT_FALSE(result.frets[10].renew);
  EXPECT_FALSE(result.unclean.empty());
  EXPECT_GT(*result.clean_action12_bass, result.wanted_action12_bass);
}

TEST(FretDress, refrets_an_uneven_board_that_has_no_metal_left) {
  std::vector<std::pair<int, double>> high;
  for (int fret = 1; fret <= 20; ++fret) high.emplace_back(fret, fret % 2 == 0 ? 0.08 : -0.08);
  const FretDressResult result = dress(with_crowns(guitar(), high, 0.6));
  EXPECT_EQ(result.verdict, FretVerdict::refret);
}

TEST(FretDress, levels_a_board_that_is_uneven_in_many_places) {
  std::vector<std::pair<int, double>> high;
  for (int fret = 1; fret <= 20; ++fret) high.emplace_back(fret, fret % 3 == 0 ? 0.1 : 0);
  const FretDressResult result = dress(with_crowns(guitar(), high));
  EXPECT_EQ(result.verdict, FretVerdict::level_all);
  EXPECT_LE(in_mm(result.total_removed), in_mm(result.total_to_level));
}

TEST(FretDress, cuts_the_fall_away_wanted_and_says_that_no_note_asks_for_it) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.fall_away = mm(0.3);
  request.fall_away_from = 15;
  const FretDressResult result = dress(request);
  EXPECT_NEAR(cut(result, 20), 0.3, 1e-3);
  EXPECT_EQ(cut(result, 15), 0);
  EXPECT_NE(result.sentence.find("No note asks for it"), std::string::npos) << result.sentence;
}

RC_GTEST_PROP(FretDress, never_takes_a_crown_under_its_least, ()) {
  const int seed = *rc::gen::inRange(1, 100000);
  std::mt19937 random(static_cast<unsigned>(seed));
  std::vector<std::pair<int, double>> high;
  for (int fret = 1; fret <= 20; ++fret)
    high.emplace_back(fret, 0.3 * (static_cast<double>(random()) / 4294967295.0 - 0.5));
  const FretDressResult result = dress(with_crowns(guitar(), high, 0.85));
  for (const FretToDress& fret : result.frets) {
    if (in_mm(fret.remove_bass) > 0) RC_ASSERT(in_mm(*fret.left_bass) >= 0.6 - 1e-9);
  }
}

void refuses(const FretDressRequest& request, const std::string& line) {
  try {
    (void)dress(request);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(FretDress, refuses_what_it_cannot_answer) {
  FretDressRequest request = with_crowns(guitar(), {});
  request.neck.crown_departures_mm.assign(20, 0);
  refuses(request, "neck.crown_departures_mm: leave it empty, the readings say how the crowns stand");
  request = with_crowns(guitar(), {});
  request.fall_away = mm(0.3);
  request.fall_away_from = 21;
  refuses(request, "fall_away_from_fret: 21 is outside 8..19");
}

}  // namespace
}  // namespace tailblock

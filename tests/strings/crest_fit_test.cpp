#include "strings/crest_fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "published.h"
#include "strings/intonation.h"

namespace tailblock {
namespace {

/// Crests a tenth of a mm sure, on a 3 mm saddle whose front face lies 1 mm behind the scale length.
struct Bench {
  SaddleTop top{.front_bass = mm(2), .front_treble = mm(1), .thickness = mm(3), .front_sd = mm(0)};
  IntonationLimits limits = intonation_limits(testing::repository_file("data/intonation_limits.csv"));
  std::vector<WantedCrest> crests;

  void want(double share, double setback, double off = 0.1, bool read = true) {
    crests.push_back({.string = static_cast<int>(crests.size()) + 1,
                      .share = share,
                      .setback = mm(setback),
                      .low = mm(setback - off),
                      .high = mm(setback + off),
                      .read = read});
  }
  [[nodiscard]] SlotFit fit() const { return slot_fit(top, crests, limits); }
};

TEST(CrestFit, crests_on_the_top_with_land_either_side_fit) {
  Bench bench;
  bench.want(0, 1.5);
  bench.want(1, 4);
  const SlotFit fit = bench.fit();
  EXPECT_EQ(fit.verdict, SlotVerdict::fits);
  EXPECT_EQ(fit.words, "Every crest fits on this saddle's top, at least 0.30 mm from its faces.");
  EXPECT_NEAR(in_mm(fit.crests[1].behind_front), 2, 1e-12);
}

TEST(CrestFit, a_range_over_an_edge_asks_for_the_reading_that_decides) {
  Bench bench;
  bench.want(0, 1.5);
  bench.want(1, 4, 2, false);
  const SlotFit fit = bench.fit();
  EXPECT_EQ(fit.verdict, SlotVerdict::cannot_tell);
  EXPECT_EQ(fit.words, "Whether the slot must move cannot be told yet: read the octave error of string 2 at fret 12.");
  bench.crests[1].read = true;
  EXPECT_EQ(bench.fit().words,
            "Too near the edge of the saddle's top to tell at string 2: read the octave there again, several times "
            "over.");
}

TEST(CrestFit, a_crest_a_little_behind_the_back_face_asks_for_a_wider_slot) {
  Bench bench;
  bench.want(0, 1.5);
  bench.want(1, 5.3);  // 3.3 behind the front; with its range and land 3.7
  const SlotFit fit = bench.fit();
  EXPECT_EQ(fit.verdict, SlotVerdict::widen);
  EXPECT_NEAR(in_mm(fit.widen_back), 0.7, 1e-9);
  EXPECT_EQ(fit.words, "The slot must be widened at its back wall by 0.70 mm, for a saddle 3.70 mm thick.");
}

TEST(CrestFit, crests_far_behind_ask_for_a_new_slot) {
  Bench bench;
  bench.want(0, 6);
  bench.want(1, 9);
  const SlotFit fit = bench.fit();
  EXPECT_EQ(fit.verdict, SlotVerdict::recut);
  // The back wall ends just behind each crest's range and land: front = crest + 0.1 + 0.3 - 3.
  EXPECT_NEAR(in_mm(fit.move_treble), 6 + 0.4 - 3 - 1, 0.051);
  EXPECT_NEAR(in_mm(fit.move_bass), 9 + 0.4 - 3 - 2, 0.051);
}

TEST(CrestFit, crests_far_in_front_ask_for_a_new_slot_further_forward) {
  Bench bench;
  bench.want(0, -1);
  bench.want(1, 1);
  bench.want(0.5, 5.2);  // with its land it just touches the new slot's back wall
  bench.top.thickness = mm(6);
  bench.top.front_bass = mm(2);
  const SlotFit fit = bench.fit();
  EXPECT_EQ(fit.verdict, SlotVerdict::recut);
  // The front wall ends just before each outer crest's range and land: front = crest - 0.1 - 0.3.
  EXPECT_NEAR(in_mm(fit.move_treble), -1 - 0.4 - 1, 0.051);
  EXPECT_NEAR(in_mm(fit.move_bass), 1 - 0.4 - 2, 0.051);
}

TEST(CrestFit, crests_too_far_apart_ask_for_a_thicker_saddle) {
  Bench bench;
  bench.want(0, 0.2);
  bench.want(0.5, 7);
  bench.want(1, 0.2);
  const SlotFit fit = bench.fit();
  EXPECT_EQ(fit.verdict, SlotVerdict::recut);
  // Narrowest strip: 0.1 mm before the outer crests to 0.1 mm behind the middle one, and two lands.
  EXPECT_NEAR(in_mm(fit.thickness_least), 6.8 + 0.2 + 0.6, 0.051);
  EXPECT_NE(fit.words.find("for a saddle 7.60 mm thick"), std::string::npos) << fit.words;
}

/// The slow, obvious way: every pair of wall moves on a grid.
std::optional<double> least_move_by_grid(const Bench& bench, double step) {
  std::optional<double> least;
  const double land = bench.limits.crest_land_least;
  for (double treble = -6; treble <= 6; treble += step) {
    for (double bass = -6; bass <= 6; bass += step) {
      bool holds = true;
      for (const WantedCrest& crest : bench.crests) {
        const double front =
            in_mm(bench.top.front_treble) + treble +
            crest.share * (in_mm(bench.top.front_bass) + bass - in_mm(bench.top.front_treble) - treble);
        holds = holds && in_mm(crest.low) - front >= land - 1e-9 &&
                front + in_mm(bench.top.thickness) - in_mm(crest.high) >= land - 1e-9;
      }
      const double move = std::hypot(treble, bass);
      if (holds && (!least || move < *least)) least = move;
    }
  }
  return least;
}

TEST(CrestFit, a_new_slot_moves_no_further_than_a_search_over_all_slots) {
  std::mt19937 random(20260220);
  std::printf("  seed 20260220\n");
  std::uniform_real_distribution<double> setback(3, 6.5);
  int recuts = 0;
  for (int i = 0; i < 40; ++i) {
    Bench bench;
    for (int string = 0; string < 6; ++string) bench.want(string / 5.0, setback(random) + string * 0.3, 0.02);
    const SlotFit fit = bench.fit();
    if (fit.verdict != SlotVerdict::recut) continue;
    if (std::abs(in_mm(fit.thickness_least) - in_mm(bench.top.thickness)) < 0.11) continue;  // finer than the grid
    const auto searched = least_move_by_grid(bench, 0.05);
    const bool holds_as_thick = in_mm(fit.thickness_least) <= in_mm(bench.top.thickness);
    EXPECT_EQ(searched.has_value(), holds_as_thick) << "case " << i;
    if (!searched) continue;
    ++recuts;
    EXPECT_NEAR(std::hypot(in_mm(fit.move_treble), in_mm(fit.move_bass)), *searched, 0.12) << "case " << i;
  }
  EXPECT_GT(recuts, 3);
}

TEST(CrestFit, the_shop_s_table_refuses_what_is_wrong_with_it) {
  const std::string table = testing::repository_file("data/intonation_limits.csv");
  const auto refused = [](const std::string& csv) -> std::string {
    try {
      (void)intonation_limits(csv);
    } catch (const Refused& why) {
      return why.what();
    }
    return "was not refused";
  };
  const auto replaced = [&](const std::string& from, const std::string& to) {
    std::string text = table;
    return text.replace(text.find(from), from.size(), to);
  };
  EXPECT_EQ(refused("name,value,unit,source,note\nspreads,2,,x,\n"),
            "intonation_limits.csv: firm_ends_least is missing");
  EXPECT_NE(refused(replaced("in_tune_cents,2", "in_tune_cents,200")).find("200"), std::string::npos);
  EXPECT_NE(refused(replaced("in_tune_cents", "in_tune")).find("\"in_tune\" is not a figure of this table"),
            std::string::npos);
  EXPECT_NE(refused(table + "spreads,2,,x,\n").find("comes twice"), std::string::npos);
  EXPECT_NE(refused(replaced("firm_ends_most,2", "firm_ends_most,0")).find("is not above"), std::string::npos);
}

}  // namespace
}  // namespace tailblock

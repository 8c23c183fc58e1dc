#include "setup/least_metal.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>

#include "fret_bench.h"

namespace tailblock {
namespace {

using testing::drawn_neck;
using testing::DrawnNeck;

/// What glpsol says of a program; absent when it finds it infeasible.
std::optional<double> cost_by_glpsol(const LinearProgram& program, const std::filesystem::path& folder) {
  const auto question = folder / "metal.lp", said = folder / "metal.txt";
  {
    std::ofstream file(question);
    file.precision(17);
    file << "Minimize\n cost:";
    for (std::size_t i = 0; i < program.cost.size(); ++i) file << " + " << program.cost[i] << " x" << i << "\n";
    file << "Subject To\n";
    for (std::size_t row = 0; row < program.row_least.size(); ++row) {
      for (int k = program.start[row]; k < program.start[row + 1]; ++k) {
        const auto entry = static_cast<std::size_t>(k);
        file << (program.entry[entry] < 0 ? " - " : " + ") << std::abs(program.entry[entry]) << " x"
             << program.column[entry];
      }
      file << " >= " << program.row_least[row] << "\n";
    }
    file << "Bounds\n";
    for (std::size_t i = 0; i < program.lower.size(); ++i) {
      file << " " << program.lower[i] << " <= x" << i << " <= " << program.upper[i] << "\n";
    }
    file << "End\n";
  }
  const std::string command = "glpsol --lp '" + question.string() + "' -o '" + said.string() + "' > /dev/null 2>&1";
  if (std::system(command.c_str()) != 0) throw std::runtime_error("glpsol did not run");
  std::ifstream answer(said);
  const std::string text{std::istreambuf_iterator<char>(answer), {}};
  std::smatch found;
  if (!std::regex_search(text, std::regex("Status: +OPTIMAL"))) return std::nullopt;
  if (!std::regex_search(text, found, std::regex("Objective: +cost = ([-0-9.e+]+)"))) {
    throw std::runtime_error("glpsol said: " + text.substr(0, 300));
  }
  return std::stod(found[1]);
}

TEST(LeastMetal, is_what_glpsol_finds_on_a_hundred_drawn_necks) {
  const auto folder = std::filesystem::temp_directory_path() / ("least_metal." + std::to_string(::getpid()));
  std::filesystem::create_directories(folder);
  int solved = 0, infeasible = 0, with_metal = 0;
  double largest = 0;
  for (unsigned seed = 1; seed <= 100; ++seed) {
    const DrawnNeck neck = drawn_neck(seed);
    const MetalProgram metal = metal_program(neck.notes(), neck.bounds);
    if (metal.program.rows() == 0) continue;
    const std::optional<double> peer = cost_by_glpsol(metal.program, folder);
    const LinearAnswer own = least_cost(metal.program);
    ASSERT_EQ(own.feasible, peer.has_value()) << "seed " << seed;
    ++(peer ? solved : infeasible);
    if (!peer) continue;
    with_metal += *peer > 0.01;
    largest = std::max(largest, std::abs(own.cost - *peer));
    EXPECT_NEAR(own.cost, *peer, 1e-7) << "seed " << seed;  // glpsol prints ten digits, its tolerance is 1e-7
  }
  std::filesystem::remove_all(folder);
  std::printf("  %d solved alike (%d with metal to take), %d infeasible alike, largest difference %.2g mm\n", solved,
              with_metal, infeasible, largest);
  EXPECT_GT(with_metal, 30);
  EXPECT_GT(infeasible, 3);
}

TEST(LeastMetal, is_what_trying_every_pair_of_cuts_finds) {
  FretDressRequest request = testing::with_crowns(testing::guitar(), {{5, 0.16}, {9, 0.2}});
  const Crowns crowns = crowns_from_readings(request, testing::usual_fret_limits());
  const FretNotes notes(request, testing::guitar_envelopes(), crowns);
  const FretSetting setting{.relief = crowns.relief, .action_raise_mm = 0, .margin_mm = 0.01};
  const CrownPair found{crowns.bass.departure, crowns.treble.departure};
  MetalBounds bounds;
  bounds.least = {std::vector<double>(20), std::vector<double>(20)};
  bounds.most = bounds.least;
  for (const std::size_t fret : {5U, 9U}) bounds.most.bass[fret - 1] = bounds.most.treble[fret - 1] = 0.4;
  const auto least = least_metal(notes.over_frets(found, setting), bounds);
  ASSERT_TRUE(least);
  constexpr double step = 0.005;
  double tried = 1e9;
  for (int i = 0; i <= 80; ++i) {
    for (int j = 0; j <= 80; ++j) {
      CrownPair cut = found;
      for (auto* side : {&cut.bass, &cut.treble}) (*side)[4] -= i * step, (*side)[8] -= j * step;
      if ((i + j) * step < tried && touching_notes(notes.over_frets(cut, setting)) == 0) tried = (i + j) * step;
    }
  }
  EXPECT_LE(least->total, tried + 1e-9);
  EXPECT_GE(least->total, tried - 2 * step);
  EXPECT_GT(least->total, 0.1);
}

TEST(LeastMetal, prices_say_what_a_row_costs) {
  int priced = 0;
  for (unsigned seed = 1; seed <= 30; ++seed) {
    const MetalProgram metal = metal_program(drawn_neck(seed).notes(), drawn_neck(seed).bounds);
    const LinearAnswer answer = least_cost(metal.program);
    if (!answer.feasible) continue;
    for (std::size_t row = 0; row < metal.row_note.size(); ++row) {
      if (answer.row_price[row] < 1e-6) continue;
      constexpr double nudge = 1e-6;
      const auto cost_at = [&](double by) {
        MetalProgram moved = metal;
        moved.program.row_least[row] += by;
        return least_cost(moved.program).cost;
      };
      const double up = (cost_at(nudge) - answer.cost) / nudge, down = (answer.cost - cost_at(-nudge)) / nudge;
      EXPECT_GE(answer.row_price[row], down - 1e-3) << "seed " << seed << " row " << row;
      EXPECT_LE(answer.row_price[row], up + 1e-3) << "seed " << seed << " row " << row;
      ++priced;
    }
  }
  EXPECT_GT(priced, 10);
}

RC_GTEST_PROP(LeastMetal, leaves_every_note_clean_and_every_crown_its_least, ()) {
  const DrawnNeck neck = drawn_neck(*rc::gen::inRange(1U, 100000U));
  const auto least = least_metal(neck.notes(), neck.bounds);
  if (!least) return;
  DrawnNeck cut = neck;
  for (std::size_t i = 0; i < 20; ++i) {
    RC_ASSERT(0 <= least->remove.bass[i] && least->remove.bass[i] <= neck.bounds.most.bass[i]);
    RC_ASSERT(0 <= least->remove.treble[i] && least->remove.treble[i] <= neck.bounds.most.treble[i]);
  }
  const FretNotes notes(neck.request, testing::guitar_envelopes(), neck.crowns);
  CrownPair left{neck.crowns.bass.departure, neck.crowns.treble.departure};
  for (std::size_t i = 0; i < 20; ++i) {
    left.bass[i] -= least->remove.bass[i];
    left.treble[i] -= least->remove.treble[i];
  }
  RC_ASSERT(touching_notes(notes.over_frets(left, neck.setting)) == 0);
}

RC_GTEST_PROP(LeastMetal, takes_nothing_where_every_note_is_clean_and_something_where_one_is_not, ()) {
  const DrawnNeck neck = drawn_neck(*rc::gen::inRange(1U, 100000U));
  const auto notes = neck.notes();
  const auto least = least_metal(notes, neck.bounds);
  if (touching_notes(notes) == 0) {
    RC_ASSERT(least && least->total == 0);
  } else {
    RC_ASSERT(!least || least->total > 0);
  }
}

RC_GTEST_PROP(LeastMetal, never_grows_with_the_action, ()) {
  DrawnNeck neck = drawn_neck(*rc::gen::inRange(1U, 100000U));
  const auto lower = least_metal(neck.notes(), neck.bounds);
  neck.setting.action_raise_mm = *rc::gen::inRange(0, 100) / 100.0;
  const auto higher = least_metal(neck.notes(), neck.bounds);
  if (lower) RC_ASSERT(higher && higher->total <= lower->total + 1e-7);
}

RC_GTEST_PROP(LeastMetal, infeasible_becomes_feasible_at_the_action_it_names, ()) {
  DrawnNeck neck = drawn_neck(*rc::gen::inRange(1U, 100000U));
  const auto notes = neck.notes();
  const double raise = least_action_raise(notes, neck.bounds);
  RC_ASSERT(least_metal(notes, neck.bounds).has_value() == (raise < 1e-7));
  if (raise < 1e-6) return;
  RC_ASSERT(!unclean_notes(notes, neck.bounds).empty());
  neck.setting.action_raise_mm = raise + 1e-6;
  RC_ASSERT(least_metal(neck.notes(), neck.bounds).has_value());
  neck.setting.action_raise_mm = raise - 1e-4;
  RC_ASSERT(!least_metal(neck.notes(), neck.bounds).has_value());
}

}  // namespace
}  // namespace tailblock

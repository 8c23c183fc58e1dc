#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <sstream>

#include "published.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

/// Displacement w of a node at every step of a deck of ours, run by CalculiX.
std::vector<double> w_by_calculix(const std::string& deck, int node) {
  const fs::path folder = fs::path(::testing::TempDir()) / ("plate_" + deck);
  fs::create_directories(folder);
  const std::string packed = TEST_SOURCE_DIR "/tests/body/decks/" + deck + ".inp.gz";
  const std::string run =
      "cd '" + folder.string() + "' && gzip -dc '" + packed + "' > run.inp && ccx run > run.log 2>&1";
  EXPECT_EQ(std::system(run.c_str()), 0) << deck;
  std::ifstream answers(folder / "run.dat");
  std::vector<double> w;
  for (std::string line; std::getline(answers, line);) {
    std::istringstream cells(line);
    int number = 0;
    double x = 0, y = 0, z = 0;
    if (cells >> number >> x >> y >> z && number == node) w.push_back(z);
  }
  fs::remove_all(folder);
  return w;
}

// The tables say what CalculiX answered on these decks; here it answers again. The whole braced top, which takes a
// quarter of a minute, is run by perf/plate_perf.cpp.
TEST(CalculiX, gives_what_the_tables_say) {
  if (std::system("command -v ccx > /dev/null") != 0) GTEST_SKIP() << "ccx (Debian: calculix-ccx) is not installed";
  struct Deck {
    std::string name;
    int node;
    std::vector<double> expected;
  };
  for (const Deck& deck :
       {Deck{"c1_ss_orthotropic_plate", 899, {-9.2991}}, Deck{"c2_eccentric_rib_plate", 4348, {-1.1782, -5.7775}},
        Deck{"c2b_eccentric_rib_plate_pinned", 4348, {-0.8118, 0.2201}}, Deck{"c3_bimaterial_strip", 1505, {17.0079}},
        Deck{"c4_shallow_dome_clamped", 899, {-0.20360, -2.5927}}}) {
    const std::vector<double> got = w_by_calculix(deck.name, deck.node);
    ASSERT_EQ(got.size(), deck.expected.size()) << deck.name;
    for (std::size_t step = 0; step < got.size(); ++step) {
      EXPECT_NEAR(std::abs(got[step]), std::abs(deck.expected[step]), 1e-4 * std::abs(deck.expected[step]) + 6e-5)
          << deck.name;
    }
  }
}

}  // namespace
}  // namespace tailblock

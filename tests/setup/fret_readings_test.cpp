#include "setup/fret_readings.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "fret_bench.h"

namespace tailblock {
namespace {

using testing::usual_fret_limits;

/// Heights of twenty crowns over the fret plane, as a straightedge or a rocker would find them.
struct TrueNeck {
  std::vector<double> z;

  [[nodiscard]] double x(int fret) const { return in_mm(fret_from_nut(mm(645), fret)); }
  [[nodiscard]] double height(int fret) const { return z[static_cast<std::size_t>(fret - 1)]; }
  [[nodiscard]] double line(int p, int q, int n) const {
    return height(p) + (height(q) - height(p)) * (x(n) - x(p)) / (x(q) - x(p));
  }
  [[nodiscard]] FretReading gap(int n, int p, int q) const {
    return {.kind = FretReadingKind::straightedge,
            .fret = n,
            .value = mm(line(p, q, n) - height(n)),
            .from_fret = p,
            .to_fret = q};
  }
  [[nodiscard]] FretReading rock(int n) const {
    const double gap_mm = line(n - 1, n, n + 1) - height(n + 1);
    return {.kind = FretReadingKind::rocker, .fret = n, .value = mm(std::max(0.0, gap_mm))};
  }
};

TrueNeck bowed_with(const std::vector<std::pair<int, double>>& high, double relief_mm) {
  NeckLine neck;
  neck.relief = mm(relief_mm);
  neck.crown_departures_mm = std::vector<double>(20);
  for (const auto& [fret, by] : high) neck.crown_departures_mm[static_cast<std::size_t>(fret - 1)] = by;
  TrueNeck made;
  for (const Length crown : crowns_over_plane(neck)) made.z.push_back(in_mm(crown));
  return made;
}

/// What the estimate has left over against the true crowns once the best straight line is taken out of the difference.
double largest_difference(const TrueNeck& made, const Crowns& read) {
  NeckLine neck;
  neck.relief = read.relief;
  neck.crown_departures_mm = read.bass.departure;
  std::vector<double> off;
  for (const Length crown : crowns_over_plane(neck)) off.push_back(in_mm(crown) - made.z[off.size()]);
  const double slope = (off[13] - off[0]) / (made.x(14) - made.x(1));
  double largest = 0;
  for (int fret = 1; fret <= 20; ++fret) {
    largest = std::max(largest,
                       std::abs(off[static_cast<std::size_t>(fret - 1)] - off[0] - slope * (made.x(fret) - made.x(1))));
  }
  return largest;
}

TEST(FretReadings, of_one_straightedge_give_the_crowns_under_it) {
  const TrueNeck made = bowed_with({{5, 0.07}, {9, -0.05}, {17, 0.06}}, 0.2);
  FretDressRequest request = testing::guitar();
  request.neck.relief = mm(0.1);  // what the feeler said; the straightedge knows better
  for (int fret = 2; fret <= 20; ++fret) {
    if (fret != 14) request.readings.push_back(made.gap(fret, 1, 14));
  }
  const Crowns read = crowns_from_readings(request, usual_fret_limits());
  EXPECT_LT(largest_difference(made, read),
            0.002);                            // the weak wish for neighbours' lines moves it by a fifteenth of an sd
  EXPECT_NEAR(in_mm(read.relief), 0.2, 0.02);  // two uneven crowns are part of what a bow is fitted to
}

TEST(FretReadings, of_two_straightedges_that_share_frets_are_joined) {
  const TrueNeck made = bowed_with({{3, 0.05}, {13, 0.08}, {18, 0.05}}, 0.15);
  FretDressRequest request = testing::guitar();
  for (int fret = 2; fret <= 13; ++fret) request.readings.push_back(made.gap(fret, 1, 14));
  for (int fret = 11; fret <= 19; ++fret) {
    if (fret != 12) request.readings.push_back(made.gap(fret, 12, 20));
  }
  EXPECT_LT(largest_difference(made, crowns_from_readings(request, usual_fret_limits())), 0.004);
}

TEST(FretReadings, of_a_rocker_add_up_when_every_triple_rocks) {
  TrueNeck made = bowed_with({}, 0);
  for (int fret = 1; fret <= 20; ++fret) {  // an arch: every triple rocks
    made.z[static_cast<std::size_t>(fret - 1)] =
        0.4 * std::sin(3.14159 * (made.x(fret) - made.x(1)) / (made.x(20) - made.x(1)));
  }
  FretDressRequest request = testing::guitar();
  for (int fret = 2; fret <= 19; ++fret) request.readings.push_back(made.rock(fret));
  EXPECT_LT(largest_difference(made, crowns_from_readings(request, usual_fret_limits())), 0.02);
}

TEST(FretReadings, of_a_rocker_that_does_not_rock_hold_a_crown_down) {
  FretDressRequest request = testing::guitar();
  request.neck.relief = {};
  for (int fret = 1; fret <= 20; ++fret) request.readings.push_back(testing::departure(fret, fret == 7 ? 0.05 : 0));
  const double before = crowns_from_readings(request, usual_fret_limits()).bass.departure[6];
  request.readings.push_back({.kind = FretReadingKind::rocker, .fret = 7, .value = mm(0)});
  const double after = crowns_from_readings(request, usual_fret_limits()).bass.departure[6];
  EXPECT_NEAR(before, 0.05, 0.001);
  EXPECT_LT(after, before - 0.01);
  request.readings.back().fret = 4;  // agrees with level crowns: it changes nothing
  EXPECT_NEAR(crowns_from_readings(request, usual_fret_limits()).bass.departure[6], before, 1e-3);
}

TEST(FretReadings, spread_as_a_thousand_repeated_readings_do) {
  const TrueNeck made = bowed_with({{6, 0.06}}, 0.15);
  std::mt19937 random(11);
  const auto normal = [&random] {  // sum of twelve: near enough to normal, the same on every machine
    double sum = -6;
    for (int i = 0; i < 12; ++i) sum += static_cast<double>(random()) / 4294967295.0;
    return sum;
  };
  constexpr int repeats = 1000;
  double sum = 0, squares = 0, said = 0;
  for (int repeat = 0; repeat < repeats; ++repeat) {
    FretDressRequest request = testing::guitar();
    for (int fret = 2; fret <= 20; ++fret) {
      if (fret == 14) continue;
      request.readings.push_back(made.gap(fret, 1, 14));
      request.readings.back().value += mm(0.03 * normal());
    }
    const Crowns read = crowns_from_readings(request, usual_fret_limits());
    std::vector<double> bump(20);  // crown 6 against its neighbours: what a straight line cannot move
    const double t = (made.x(6) - made.x(5)) / (made.x(7) - made.x(5));
    bump[5] = 1, bump[4] = -(1 - t), bump[6] = -t;
    double value = 0;
    for (std::size_t i = 0; i < 20; ++i) value += bump[i] * read.bass.departure[i];
    sum += value, squares += value * value;
    said = std::sqrt(read.bass.variance(bump));
  }
  const double spread = std::sqrt(squares / repeats - sum / repeats * (sum / repeats));
  EXPECT_NEAR(spread / said, 1, 0.07);  // 1000 repeats know a spread to 2.2 %; three times that
}

void refuses(const FretDressRequest& request, const std::string& line) {
  try {
    (void)crowns_from_readings(request, usual_fret_limits());
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(FretReadings, that_cannot_be_are_refused) {
  FretDressRequest request = testing::guitar();
  request.readings = {testing::departure(21, 0)};
  refuses(request, "readings: fret: 21 is outside 1..20");
  request.readings = {testing::departure(3, 0), testing::departure(3, 0.1)};
  refuses(request, "readings: departure of fret 3 is given twice");
  request.readings = {{.kind = FretReadingKind::straightedge, .fret = 5, .value = mm(0), .from_fret = 7, .to_fret = 3}};
  refuses(request, "readings: to_fret: 3 is outside 8..20");
  request.readings = {
      {.kind = FretReadingKind::straightedge, .fret = 7, .value = mm(0), .from_fret = 7, .to_fret = 12}};
  refuses(request, "readings: fret 7 carries the straightedge, it has no gap");
  request.readings = {{.kind = FretReadingKind::rocker, .fret = 20, .value = mm(0)}};
  refuses(request, "readings: fret: 20 is outside 2..19");
  request.readings = {{.kind = FretReadingKind::springs, .fret = 4, .value = mm(0.1)}};
  refuses(request, "readings: none says how high a crown is; springs alone do not");
}

TEST(FretReadings, say_which_frets_nobody_read) {
  FretDressRequest request = testing::guitar();
  for (int fret = 1; fret <= 18; ++fret) request.readings.push_back(testing::departure(fret, 0));
  const Crowns read = crowns_from_readings(request, usual_fret_limits());
  ASSERT_EQ(read.cautions.size(), 1U);
  EXPECT_EQ(read.cautions[0],
            "Nobody read frets 19 and 20: the line of the neighbours stands in. Read before anything is filed there.");
  EXPECT_GT(read.bass.sd(19), 0.3);
}

}  // namespace
}  // namespace tailblock

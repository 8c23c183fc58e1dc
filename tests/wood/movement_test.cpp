#include "wood/movement.h"

#include <gtest/gtest.h>

#include <cmath>

#include "published.h"
#include "wood/equilibrium.h"

namespace tailblock {
namespace {

const SpeciesTable& woods() {
  static const SpeciesTable table = species_table(testing::repository_file("data/species.csv"));
  return table;
}

TEST(Movement, the_table_of_woods_has_the_cells_that_were_read) {
  testing::Published table("movement.csv");
  for (const CsvRow& row : table.rows()) {
    const Angle cut = degrees(row.name("direction") == "radial" ? 0 : 90);
    table.check(row, movement_per_percent(woods().named(row.name("wood")), cut));
  }
}

TEST(Movement, the_shrinkage_formula_gives_the_cells_that_were_read) {
  testing::Published table("movement.csv");
  for (const CsvRow& row : table.rows()) {
    table.check(row, movement_from_shrinkage(row.number("shrinkage_percent", {0, 20, "%"})));
  }
}

TEST(Movement, every_wood_with_a_known_shrinkage_was_worked_from_it) {
  const auto agrees = [](const char* wood, double radial_percent, double tangential_percent) {
    EXPECT_NEAR(woods().named(wood).radial_per_percent, movement_from_shrinkage(radial_percent), 0.000006) << wood;
    EXPECT_NEAR(woods().named(wood).tangential_per_percent, movement_from_shrinkage(tangential_percent), 0.000006)
        << wood;
  };
  agrees("Sitka spruce", 4.3, 7.5);
  agrees("Engelmann spruce", 3.8, 7.1);
  agrees("red spruce", 3.8, 7.8);
  agrees("western redcedar", 2.4, 5.0);
  agrees("Honduran mahogany", 3.0, 4.1);
  agrees("koa", 5.5, 6.2);
  agrees("Brazilian rosewood", 2.9, 4.6);
  agrees("East Indian rosewood", 2.7, 5.8);
  agrees("African ebony", 8.3, 10.8);
}

TEST(Movement, a_quartersawn_top_shrinks_as_worked_apart) {
  // Second study: 400 mm of quartersawn Sitka, 45 to 30 % at 21 C, -1.356 mm, from moistures rounded to 8.46 and 6.17.
  const MoistureSpan drying{.from = equilibrium_moisture(celsius(21), humidity_percent(45)),
                              .to = equilibrium_moisture(celsius(21), humidity_percent(30))};
  const Length change = width_change(woods().named("Sitka spruce"), degrees(0), mm(400), drying);
  EXPECT_NEAR(in_mm(change), -1.356, 0.006);
}

TEST(Movement, a_slanting_cut_lies_between_and_at_45_degrees_half_way) {
  const Species& wood = woods().named("Sitka spruce");
  const double half_way = (wood.radial_per_percent + wood.tangential_per_percent) / 2;
  EXPECT_NEAR(movement_per_percent(wood, degrees(45)), half_way, 1e-15);
  for (int angle = 1; angle <= 90; ++angle) {
    EXPECT_GT(movement_per_percent(wood, degrees(angle)), movement_per_percent(wood, degrees(angle - 1)));
  }
}

TEST(Movement, the_line_stays_near_the_handbook_formula_in_a_heated_winter) {
  // The formula's strain depends on the moisture it starts from; the line is its slope at 10 %.
  const double shrinkage = 4.3;
  const double line = movement_from_shrinkage(shrinkage) * (4 - 8);
  const double formula = (4.0 - 8.0) / (3000 / shrinkage - 30 + 8);
  EXPECT_NEAR(line / formula, 1, 0.005);
}

template <class Act>
void refuses(Act act, const std::string& line) {
  try {
    act();
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(Movement, refuses_what_it_does_not_hold_for) {
  const Species& wood = woods().named("Sitka spruce");
  refuses([&] { (void)movement_per_percent(wood, degrees(100)); }, "ring_angle_deg: 100 deg is outside 0..90 deg");
  refuses(
      [&] { (void)width_change(wood, degrees(0), mm(400), {.from = moisture_percent(30), .to = moisture_percent(8)}); },
      "from_percent: 30 % is outside 0..25 %");
  refuses([] { (void)movement_from_shrinkage(0); }, "shrinkage_percent: 0 % is outside 0.1..20 %");
  refuses([] { (void)woods().named("plywood"); }, "species: \"plywood\" is not in the table of woods");
}

}  // namespace
}  // namespace tailblock

#include "wood/species.h"

#include <gtest/gtest.h>

#include "published.h"

namespace tailblock {
namespace {

const std::string& file() {
  static const std::string text = testing::repository_file("data/species.csv");
  return text;
}

TEST(Species, the_table_reads_and_every_wood_passes_its_own_ranges) {
  const SpeciesTable table = species_table(file());
  EXPECT_EQ(table.species.size(), 12U);
  for (const Species& wood : table.species) EXPECT_NO_THROW(require_valid(wood)) << wood.name;
}

TEST(Species, a_number_from_memory_or_by_analogy_makes_a_wood_provisional) {
  EXPECT_TRUE(is_provisional(Standing::from_memory));
  EXPECT_TRUE(is_provisional(Standing::by_analogy));
  EXPECT_FALSE(is_provisional(Standing::derived_here));
  const SpeciesTable table = species_table(file());
  EXPECT_TRUE(table.named("Sitka spruce").provisional);
  EXPECT_EQ(table.named("black walnut").movement_standing, Standing::read);
  EXPECT_EQ(table.named("bigleaf maple").shear_rt_standing, Standing::by_analogy);
}

TEST(Species, a_strength_that_is_not_published_is_absent) {
  const SpeciesTable table = species_table(file());
  EXPECT_FALSE(table.named("Honduran mahogany").tension_across);
  ASSERT_TRUE(table.named("Sitka spruce").tension_across);
  EXPECT_EQ(table.named("Sitka spruce").tension_across->mpa, 2.6);
}

/// One row of the file with the first `from` in it replaced.
void refuses(const std::string& from, const std::string& to, const std::string& line) {
  std::string text = file();
  const std::size_t at = text.find(from, text.find("Sitka spruce"));
  ASSERT_NE(at, std::string::npos) << from;
  text.replace(at, from.size(), to);
  try {
    (void)species_table(text);
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(Species, names_the_cell_it_refuses) {
  refuses(",448,", ",4480,", "species.csv line 9, density_kg_m3: 4480 kg/m3 is outside 100..1400 kg/m3");
  refuses(",11.88,", ",eleven,", "species.csv line 9, longitudinal_modulus_gpa: \"eleven\" is not a number");
  refuses("from memory", "a friend", "species.csv line 9, density_standing: \"a friend\" is not a standing");
  refuses("Engelmann spruce", "Sitka spruce", "species.csv line 10, name: \"Sitka spruce\" comes twice");
  refuses(",0.043,", ",0.5,", "species.csv line 9: no material has these ratios and Poisson ratios together");
}

}  // namespace
}  // namespace tailblock

#include "strings/string_tables.h"

#include <gtest/gtest.h>

#include "published.h"

namespace tailblock {
namespace {

TEST(StringTables, every_set_is_ordered_from_thin_to_thick_and_fits_every_tuning) {
  const auto sets = string_sets(testing::repository_file("data/string_sets.csv"));
  const auto all = tunings(testing::repository_file("data/tunings.csv"));
  EXPECT_GE(sets.size(), 5U);
  EXPECT_GE(all.size(), 5U);
  for (const StringSet& set : sets) {
    for (std::size_t i = 1; i < set.strings.size(); ++i) {
      EXPECT_LT(set.strings[i - 1].diameter.value(), set.strings[i].diameter.value()) << set.name;
    }
    for (const Tuning& tuning : all) {
      // A set on 645 mm pulls 300..1200 N in any tuning: a typing slip in a gauge or a note falls outside.
      const TensionResult pull = tension({.strings = tuned(set, tuning)});
      EXPECT_GT(in_newtons(pull.total), 300) << set.name << ", " << tuning.name;
      EXPECT_LT(in_newtons(pull.total), 1200) << set.name << ", " << tuning.name;
      for (const StringTension& string : pull.strings) {
        EXPECT_GT(in_newtons(string.pull), 50) << set.name << ", " << tuning.name << ", " << string.string;
        EXPECT_LT(in_newtons(string.pull), 210) << set.name << ", " << tuning.name << ", " << string.string;
      }
    }
  }
}

TEST(StringTables, attacks_go_from_soft_to_hard) {
  const auto levels = attack_levels(testing::repository_file("data/attacks.csv"));
  EXPECT_LT(attack_named(levels, "soft").amplitude_bass, attack_named(levels, "medium").amplitude_bass);
  EXPECT_LT(attack_named(levels, "medium").amplitude_bass, attack_named(levels, "hard").amplitude_bass);
  for (const AttackLevelRow& level : levels) EXPECT_LE(level.attack.amplitude_treble, level.attack.amplitude_bass);
}

template <class Read>
void refuses(Read read, const std::string& csv, const std::string& line) {
  try {
    (void)read(csv);
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}
TEST(StringTables, refuse_the_row_that_is_wrong) {
  const std::string sets = "set,string,diameter_in,core_in,core_shape,wrap_kg_per_m3,source,note\n";
  refuses(string_sets, sets + "light,2,0.012,,,,practice,\n", "string_sets.csv line 2, string: 2 is outside 1..1");
  refuses(string_sets, sets + "light,1,0.5,,,,practice,\n",
          "string_sets.csv line 2, diameter_in: 0.5 in is outside 0.004..0.12 in");
  refuses(string_sets, sets + "light,1,0.053,0.06,,,practice,\n",
          "string_sets.csv line 2, core_in: is not thinner than the string");
  refuses(string_sets, sets + "light,1,0.053,0.02,square,,practice,\n",
          "string_sets.csv line 2, core_shape: \"square\" is not round or hexagonal");
  refuses(string_sets, sets + "light,1,0.012,,,,,\n", "string_sets.csv line 2, source: is empty");
  refuses(string_sets, sets + "a,1,0.012,,,,p,\nb,1,0.012,,,,p,\na,2,0.016,,,,p,\n",
          "string_sets.csv line 4, set: rows of one name must stand together");
  refuses(tunings, "tuning,string,pitch,source,note\nstandard,1,H4,practice,\n",
          "tunings.csv line 2, pitch: \"H4\" is not a note such as E2 or F#3");
  refuses(attack_levels,
          "level,amplitude_bass_mm,amplitude_treble_mm,pluck_from_saddle_mm,pluck_width_mm,source,note\n"
          "soft,9,1,120,2,assumed,\n",
          "attacks.csv line 2, amplitude_bass_mm: 9 mm is outside 0.05..5 mm");
}

TEST(StringTables, an_unknown_name_is_answered_with_the_names_there_are) {
  const auto levels = attack_levels(testing::repository_file("data/attacks.csv"));
  try {
    (void)attack_named(levels, "loud");
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_STREQ(refused.what(), "attack: \"loud\" is not one of soft, medium, hard");
  }
}

TEST(StringTables, a_tuning_of_another_number_of_strings_is_refused) {
  EXPECT_THROW((void)tuned({"light", {GuitarString{}}}, {"standard", {330, 247}}), Refused);
}

}  // namespace
}  // namespace tailblock

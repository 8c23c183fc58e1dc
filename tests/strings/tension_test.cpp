#include "strings/tension.h"

#include <gtest/gtest.h>

#include <cmath>

#include "published.h"
#include "strings/string_tables.h"

namespace tailblock {
namespace {

const GuitarString light_treble{.pitch_hz = 329.6276, .diameter = inches(0.012)};
const GuitarString light_bass{.pitch_hz = 82.4069, .diameter = inches(0.053), .core_diameter = inches(0.022)};

TEST(Tension, agrees_with_published_values) {
  testing::Published table("strings_tension.csv");
  for (const CsvRow& row : table.rows()) {
    GuitarString string{.pitch_hz = row.number("pitch_hz", {20, 1500, "Hz"})};
    if (const auto d = row.number_if_given("diameter_in", {0.001, 1, "in"})) string.diameter = inches(*d);
    if (const auto c = row.number_if_given("core_in", {0.001, 1, "in"})) string.core_diameter = inches(*c);
    if (const auto rho = row.number_if_given("wrap_kg_per_m3", {1000, 20000, ""})) string.wrap_kg_per_m3 = *rho;
    string.weighed_kg_per_metre = row.number_if_given("weighed_kg_per_metre", {1e-5, 0.1, ""});
    const TensionResult set =
        tension({.scale_length = mm(row.number("length_mm", {300, 1000, "mm"})), .strings = {string}});
    const StringTension& got = set.strings.at(0);
    const std::string_view quantity = row.name("quantity");
    if (quantity == "kg_per_metre") table.check(row, got.kg_per_metre);
    if (quantity == "pull_n") table.check(row, in_newtons(got.pull));
    if (quantity == "pull_lbf") table.check(row, got.pull_lbf);
    if (quantity == "inharmonicity") table.check(row, got.inharmonicity.value());
    if (quantity == "core_stress_mpa") table.check(row, got.core_stress_mpa.value());
  }
}

TEST(Tension, notes_have_their_equal_tempered_pitch) {
  testing::Published table("strings_pitch.csv");
  for (const CsvRow& row : table.rows()) table.check(row, equal_tempered_pitch_hz("pitch", row.name("note")));
  EXPECT_DOUBLE_EQ(equal_tempered_pitch_hz("pitch", "F#3"), equal_tempered_pitch_hz("pitch", "Gb3"));
  EXPECT_DOUBLE_EQ(equal_tempered_pitch_hz("pitch", "A4"), 440);
}

double pull(const GuitarString& string, Length length) {
  return in_newtons(tension({.scale_length = length, .strings = {string}}).total);
}

TEST(Tension, doubling_the_pitch_quadruples_the_pull) {
  GuitarString octave_up = light_bass;
  octave_up.pitch_hz *= 2;
  EXPECT_NEAR(pull(octave_up, mm(645)) / pull(light_bass, mm(645)), 4, 1e-12);
}
TEST(Tension, doubling_the_gauge_of_a_plain_string_quadruples_the_pull) {
  GuitarString thicker = light_treble;
  thicker.diameter = inches(0.024);
  EXPECT_NEAR(pull(thicker, mm(645)) / pull(light_treble, mm(645)), 4, 1e-12);
}
TEST(Tension, pull_grows_with_the_square_of_the_scale) {
  EXPECT_NEAR(pull(light_treble, mm(660)) / pull(light_treble, mm(600)), 1.21, 1e-12);
}

// T-hexcore of the design study: a hexagon has 3 sqrt(3)/(2 pi) of the circle round its corners.
TEST(Tension, a_hexagonal_core_has_0_827_of_the_round_ones_area_and_0_689_of_its_stiffness) {
  GuitarString hexagonal = light_bass;
  hexagonal.core_shape = CoreShape::hexagonal;
  const double round_core = steel_kg_per_m3 * M_PI / 4 * std::pow(inches(0.022).in_base(), 2);
  EXPECT_NEAR((mass_per_metre(light_bass) - mass_per_metre(hexagonal)) / round_core, 1 - 0.826993, 1e-6);
  // Second moments: 5 sqrt(3)/256 against pi/64 of the fourth power. Source: first principles.
  EXPECT_NEAR(bending_stiffness_n_m2(hexagonal) / bending_stiffness_n_m2(light_bass), 5 * std::sqrt(3.0) / (4 * M_PI),
              1e-12);
}

TEST(Tension, a_set_pulls_what_its_strings_pull) {
  const TensionResult set = tension({.strings = {light_treble, light_bass}});
  EXPECT_DOUBLE_EQ(in_newtons(set.total), in_newtons(set.strings[0].pull) + in_newtons(set.strings[1].pull));
  EXPECT_DOUBLE_EQ(set.total_lbf, in_pounds_force(set.total));
  EXPECT_EQ(set.strings[1].string, 2);
}

// Common practice, no source: a light acoustic set is said to pull about 160 lbf, a medium one about 185.
TEST(Tension, light_and_medium_sets_pull_what_the_trade_says) {
  const auto sets = string_sets(testing::repository_file("data/string_sets.csv"));
  const auto all_tunings = tunings(testing::repository_file("data/tunings.csv"));
  auto total = [&](std::string_view name) {
    return tension({.strings = tuned(string_set_named(sets, name), tuning_named(all_tunings, "standard"))}).total_lbf;
  };
  EXPECT_NEAR(total("light"), 160, 8);
  EXPECT_NEAR(total("medium"), 185, 9);
}

TEST(Tension, a_weighed_string_needs_no_diameter_and_then_has_no_stiffness) {
  const TensionResult set = tension({.strings = {{.pitch_hz = 82.4069, .weighed_kg_per_metre = 0.0101}}});
  EXPECT_FALSE(set.strings[0].inharmonicity.has_value());
  EXPECT_FALSE(set.strings[0].core_stress_mpa.has_value());
  EXPECT_NEAR(in_newtons(set.total), 0.0101 * std::pow(2 * 0.645 * 82.4069, 2), 1e-9);
}

void refuses(const TensionRequest& request, const std::string& line) {
  try {
    (void)tension(request);
    FAIL() << "was not refused";
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}
TEST(Tension, refuses_in_one_line) {
  GuitarString string = light_treble;
  string.pitch_hz = 10000;
  refuses({.strings = {string}}, "strings[0].pitch_hz: 10000 Hz is outside 20..1500 Hz");
  refuses({.strings = {{.pitch_hz = 330}}}, "diameter_mm: is needed where the string was not weighed");
  refuses({.strings = {{.pitch_hz = 82, .diameter = mm(1), .core_diameter = mm(1)}}},
          "core_diameter_mm: 1 mm is not thinner than the string, 1 mm");
  refuses({.scale_length = mm(200), .strings = {light_treble}}, "scale_length_mm: 200 mm is outside 300..1000 mm");
  refuses({}, "strings: 0 items is outside 1..12");
  refuses({.strings = {{.pitch_hz = NAN, .diameter = mm(1)}}}, "strings[0].pitch_hz: nan Hz is outside 20..1500 Hz");
}
TEST(Tension, refuses_what_is_not_a_note) {
  for (const char* text : {"", "H2", "E", "E9", "e2", "E##", "E2x", "2E"}) {
    EXPECT_THROW((void)equal_tempered_pitch_hz("pitch", text), Refused) << text;
  }
  try {
    (void)equal_tempered_pitch_hz("pitch", "H2");
  } catch (const Refused& refused) {
    EXPECT_STREQ(refused.what(), "pitch: \"H2\" is not a note such as E2 or F#3");
  }
}

}  // namespace
}  // namespace tailblock

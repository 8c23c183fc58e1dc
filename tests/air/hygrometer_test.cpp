#include "air/hygrometer.h"

#include <gtest/gtest.h>

#include "published.h"

namespace tailblock {
namespace {

const SaltTable& salts() {
  static const SaltTable table = salt_table(testing::repository_file("data/salts.csv"));
  return table;
}

SaltReading reading(const std::string& salt, double shown_percent) {
  return {.salt = salt, .temperature = celsius(20), .shown = humidity_percent(shown_percent)};
}

TEST(Hygrometer, salts_hold_their_published_humidity) {
  testing::Published table("salts.csv");
  for (const CsvRow& row : table.rows()) {
    const Temperature t = celsius(row.number("temperature_c", {0, 50, "C"}));
    table.check(row, in_percent(humidity_over(salts().named(row.name("salt")), t)), "expected_percent",
                "tolerance_percent");
  }
}

TEST(Hygrometer, one_salt_shifts_every_reading) {
  const HygrometerResult result = hygrometer({.readings = {reading("sodium chloride", 79)}}, salts());
  EXPECT_NEAR(result.error_relative_humidity[0], 0.0352, 0.0002);
  EXPECT_NEAR(in_percent(corrected(result.correction, humidity_percent(45))), 41.48, 0.02);
  EXPECT_FALSE(result.replace);
  EXPECT_EQ(result.verdict,
            "The hygrometer reads 3.5 points too damp at 75 %: correct every reading by that; a second salt would show "
            "whether it holds when dry.");
}

TEST(Hygrometer, two_salts_put_both_readings_right_and_those_between) {
  const HygrometerResult result =
      hygrometer({.readings = {reading("magnesium chloride", 30), reading("sodium chloride", 78)}}, salts());
  EXPECT_NEAR(in_percent(corrected(result.correction, humidity_percent(30))), 33.07, 0.02);
  EXPECT_NEAR(in_percent(corrected(result.correction, humidity_percent(78))), 75.48, 0.02);
  EXPECT_NEAR(in_percent(corrected(result.correction, humidity_percent(54))), (33.07 + 75.48) / 2, 0.02);
  EXPECT_EQ(in_percent(corrected(result.correction, humidity_percent(0))) >= 0, true);
}

TEST(Hygrometer, an_error_beyond_eight_points_says_replace_it) {
  EXPECT_TRUE(hygrometer({.readings = {reading("sodium chloride", 66)}}, salts()).replace);
  EXPECT_FALSE(hygrometer({.readings = {reading("sodium chloride", 68)}}, salts()).replace);
}

void refuses(const HygrometerRequest& request, const std::string& line) {
  try {
    (void)hygrometer(request, salts());
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(Hygrometer, refuses_what_cannot_correct) {
  refuses({.readings = {}}, "readings: 0 items is outside 1..2");
  refuses({.readings = {reading("sugar", 75)}}, "salt: \"sugar\" is not in the table of salts");
  refuses({.readings = {reading("sodium chloride", 75), reading("sodium chloride", 76)}},
          "readings: the two salts stand 0 points apart, and 20 are due for a line");
  refuses({.readings = {reading("magnesium chloride", 50), reading("sodium chloride", 50)}},
          "readings: the hygrometer hardly tells the two salts apart, or has them the wrong way round: replace it");
  refuses({.readings = {reading("sodium chloride", 175)}}, "readings[0].shown_relative_humidity: 1.75 is outside 0..1");
}

TEST(Hygrometer, a_bad_table_names_its_cell) {
  try {
    (void)salt_table(
        "name,a0,a1,a2,a3,low_c,high_c,uncertainty_percent,standing,source\nsalt,750,0,0,0,0,50,1,read,book\n");
    FAIL();
  } catch (const Refused& refused) {
    EXPECT_EQ(std::string(refused.what()), "salts.csv line 2, a0: 750 % is outside 0..100 %");
  }
}

}  // namespace
}  // namespace tailblock

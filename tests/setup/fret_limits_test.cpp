#include "setup/fret_limits.h"

#include <gtest/gtest.h>

#include "published.h"

namespace tailblock {
namespace {

const std::string table = testing::repository_file("data/fret_limits.csv");

std::string with(const std::string& old_text, const std::string& new_text) {
  std::string changed = table;
  const auto place = changed.find(old_text);
  EXPECT_NE(place, std::string::npos) << old_text;
  return changed.replace(place, old_text.size(), new_text);
}

void refuses(const std::string& csv, const std::string& line) {
  try {
    (void)fret_limits(csv);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(FretLimits, keep_the_crown_the_trade_keeps) { EXPECT_EQ(fret_limits(table).least_crown, 0.6); }

TEST(FretLimits, name_what_is_missing_unknown_double_or_out_of_range) {
  refuses(with("\nmargin,", "\n# margin,"), "fret_limits.csv: margin is missing");
  refuses(with("\nmargin,", "\nmargins,"), "fret_limits.csv line 6, name: \"margins\" is not a figure of this table");
  refuses(with("\nmargin,", "\nleast_crown,"), "fret_limits.csv line 6, name: \"least_crown\" comes twice");
  refuses(with("least_crown,0.6", "least_crown,0"), "fret_limits.csv line 5, value: 0 mm is outside 0.001..5 mm");
}

TEST(FretLimits, refuse_a_range_whose_ends_are_crossed) {
  refuses(with("relief_aim_most,0.30", "relief_aim_most,0.50"),
          "fret_limits.csv: relief: 0.4 is below 0.5 which comes before it");
}

}  // namespace
}  // namespace tailblock

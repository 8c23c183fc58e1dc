#include "setup/saddle_limits.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "published.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

const std::string table = testing::repository_file("data/saddle_limits.csv");

/// The table with one piece of it replaced.
std::string with(const std::string& old_text, const std::string& new_text) {
  std::string changed = table;
  const auto place = changed.find(old_text);
  EXPECT_NE(place, std::string::npos) << old_text;
  return changed.replace(place, old_text.size(), new_text);
}

/// Where a figure stands in the table.
std::string line_of(const std::string& name) {
  const auto place = table.find("\n" + name + ",");
  EXPECT_NE(place, std::string::npos) << name;
  return "saddle_limits.csv line " +
         std::to_string(2 + std::count(table.begin(), table.begin() + static_cast<std::ptrdiff_t>(place), '\n'));
}

void refuses(const std::string& csv, const std::string& line) {
  try {
    (void)saddle_limits(csv);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(SaddleLimits, are_the_trades_inches_where_the_trade_has_inches) {
  const SaddleLimits limits = saddle_limits(table);
  EXPECT_DOUBLE_EQ(limits.open_ended.usual_least, 25.4 / 16);
  EXPECT_DOUBLE_EQ(limits.open_ended.usual_most, 25.4 / 8);
}

TEST(SaddleLimits, allow_for_the_arch_of_the_widest_strings_on_the_roundest_board) {
  const double half_spread = 58.0 / 2;  // string spread 53..58 mm, board radius 250..510 mm
  EXPECT_NEAR(saddle_limits(table).crown_allowance, half_spread * half_spread / (2 * 250), 0.005);
}

TEST(SaddleLimits, name_a_figure_that_is_missing) {
  refuses(with("few_days,10,days,\"common practice, no source\"", "# few_days"),
          "saddle_limits.csv: few_days is missing");
}

TEST(SaddleLimits, name_a_figure_that_is_unknown_or_comes_twice) {
  refuses(with("few_days,10", "some_days,10"),
          line_of("few_days") + ", name: \"some_days\" is not a figure of this table");
  refuses(with("few_days,10", "heel_error,10"), line_of("heel_error") + ", name: \"heel_error\" comes twice");
}

TEST(SaddleLimits, name_a_value_out_of_range_or_without_a_source) {
  refuses(with("cut_precision,0.05", "cut_precision,0"),
          line_of("cut_precision") + ", value: 0 mm is outside 0.005..0.5 mm");
  refuses(with("heel_error,0.1,mm,\"common practice, no source\"", "heel_error,0.1,mm,"),
          line_of("heel_error") + ", source: is empty");
}

TEST(SaddleLimits, refuse_a_range_whose_ends_are_crossed) {
  refuses(with("closed_exposure_bass_usual_most,4.0", "closed_exposure_bass_usual_most,2.0"),
          "saddle_limits.csv: closed exposure, bass: 2 is below 2.5 which comes before it");
}

}  // namespace
}  // namespace tailblock

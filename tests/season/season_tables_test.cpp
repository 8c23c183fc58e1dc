#include <gtest/gtest.h>

#include "season_bench.h"

namespace tailblock::testing {
namespace {

std::string without_line(std::string text, const std::string& start) {
  const std::size_t from = text.find("\n" + start) + 1;
  return text.erase(from, text.find('\n', from) + 1 - from);
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);
}

template <class Load>
void refuses(Load load, const std::string& csv, const std::string& line) {
  try {
    (void)load(csv);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(SeasonTables, widths_grow_from_parlour_to_the_large_bodies) {
  const BodyDesignTable& designs = *season_tables().designs;
  EXPECT_NEAR(in_mm(designs.lower_bout_width[static_cast<std::size_t>(BodySize::mid_size)]), 385, 1e-9);
  EXPECT_LT(designs.lower_bout_width[0], designs.lower_bout_width[1]);
  EXPECT_LT(designs.lower_bout_width[1], designs.lower_bout_width[2]);
  EXPECT_LT(designs.lower_bout_width[2], designs.lower_bout_width[4]);
}

TEST(SeasonTables, a_body_size_must_be_there_once_and_have_a_width) {
  const std::string csv = repository_file("data/body_designs.csv");
  refuses(body_design_table, without_line(csv, "small"), "body_designs.csv: small is missing");
  refuses(body_design_table, csv + "small,350,common practice,\n",
          "body_designs.csv line 8, body_size: \"small\" comes twice");
  refuses(body_design_table, replaced(csv, "parlour,340", "cello,340"),
          "body_designs.csv line 3, body_size: \"cello\" is not a body size");
  refuses(body_design_table, replaced(csv, "parlour,340", "parlour,34"),
          "body_designs.csv line 3, lower_bout_width_mm: 34 mm is outside 200..600 mm");
}

TEST(SeasonTables, a_value_of_the_prior_must_be_there_once_and_in_range) {
  const std::string csv = repository_file("data/season_prior.csv");
  refuses(season_prior, without_line(csv, "drift_sd"), "season_prior.csv: drift_sd is missing");
  refuses(season_prior, replaced(csv, "\ndrift_sd", "\nmood"),
          "season_prior.csv line 22, name: \"mood\" is not a value of this table");
  refuses(season_prior, replaced(csv, "step_correlation,0.85", "step_correlation,1.85"),
          "season_prior.csv line 27, value: 1.85 is outside 0..0.999");
}

}  // namespace
}  // namespace tailblock::testing

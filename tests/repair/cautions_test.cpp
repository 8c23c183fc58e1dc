#include "repair/cautions.h"

#include <gtest/gtest.h>

#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::Published;
using testing::refusal;
using testing::repository_repairs;

CautionsResult asked(const CautionsRequest& request) { return cautions(request, repository_repairs()); }

TEST(Cautions, limits_and_flash_points_are_those_published) {
  Published table("exposure_limits.csv");
  for (const CsvRow& row : table.rows()) {
    const Hazard* hazard = row_of_id(repository_repairs().materials.hazards, row.name("hazard"));
    ASSERT_NE(hazard, nullptr) << row.where();
    const auto limit = std::find_if(hazard->limits.begin(), hazard->limits.end(), [&](const ExposureLimit& one) {
      return one.authority == row.text("authority") &&
             limit_figure_names[static_cast<std::size_t>(one.figure)] == row.name("figure");
    });
    ASSERT_NE(limit, hazard->limits.end()) << row.where() << ": no such limit";
    table.check(row, limit->value);
  }
}

TEST(Cautions, minutes_at_a_level_are_those_published) {
  Published table("noise_minutes.csv");
  for (const CsvRow& row : table.rows()) {
    CautionsRequest request;
    request.noise = {{.what = "work", .level_db = row.number("level_db", {70, 140, ""}), .minutes = 0}};
    const NoiseShown shown = asked(request).noise.front();
    table.check(row, row.name("limit") == "legal" ? shown.legal_allowed_minutes : shown.allowed_minutes,
                "expected_minutes", "tolerance_minutes");
  }
}

TEST(Cautions, the_days_noise_adds_up) {
  CautionsRequest request;
  request.noise = {{.what = "sanding a hollow body", .level_db = 94, .minutes = 30},
                   {.what = "router", .level_db = 100, .minutes = 6}};
  const CautionsResult result = asked(request);
  EXPECT_NEAR(result.dose_percent, 50 + 40, 1e-9);
  EXPECT_EQ(result.noise_words, "90 percent of what is recommended for a day; protection from 85 dB(A).");
  request.noise.push_back({.what = "again", .level_db = 94, .minutes = 30});
  EXPECT_EQ(asked(request).noise_words,
            "Too much for one day: 140 percent of what is recommended. Protection, or less of it.");
  request.noise = {{.what = "shot", .level_db = 145, .minutes = 1}};
  EXPECT_EQ(asked(request).noise.front().allowed_minutes, 0);
}

TEST(Cautions, every_limit_says_where_it_stands) {
  int read = 0, second_hand = 0, memory = 0;
  for (const Hazard& hazard : repository_repairs().materials.hazards) {
    for (const ExposureLimit& limit : hazard.limits) {
      EXPECT_FALSE(limit.source.empty()) << hazard.id;
      ++(limit.standing == "read" ? read : limit.standing == "from memory" ? memory : second_hand);
      if (limit.standing == "from memory" && limit.figure == LimitFigure::twa) {
        EXPECT_NE(hazard.caution().find("from memory"), std::string::npos) << hazard.id;
      }
    }
  }
  std::printf("  limits: %d read, %d read second-hand, %d from memory\n", read, second_hand, memory);
  EXPECT_GT(read, 40);
}

TEST(Cautions, protected_material_asks_for_papers_and_names_who_decides_and_no_more) {
  CautionsRequest request;
  request.materials = {"brazilian_rosewood", "elephant_ivory"};
  for (const PapersShown& papers : asked(request).papers) {
    EXPECT_NE(papers.ask.find("papers"), std::string::npos);
    EXPECT_NE(papers.authority.find("authority"), std::string::npos);
    for (const std::string& text : {papers.rule, papers.ask, papers.authority}) {
      EXPECT_EQ(text.find("legal"), std::string::npos) << text;
      EXPECT_EQ(text.find("allowed"), std::string::npos) << text;
    }
  }
}

TEST(Cautions, an_operation_brings_its_hazards_once) {
  CautionsRequest request;
  request.operations = {"spray_lacquer_coat", "spray_burst"};
  const CautionsResult result = asked(request);
  EXPECT_EQ(std::count_if(result.hazards.begin(), result.hazards.end(),
                          [](const HazardShown& one) { return one.hazard == "toluene"; }),
            1);
  EXPECT_EQ(result.defers, defers_to);
}

TEST(Cautions, refuse_in_one_line) {
  CautionsRequest request;
  request.hazards = {"dragons"};
  EXPECT_EQ(refusal([&] { (void)asked(request); }), "hazards: \"dragons\" is not in data/hazards.csv");
  request = {};
  request.noise = {{.what = "x", .level_db = 60, .minutes = 1}};
  EXPECT_EQ(refusal([&] { (void)asked(request); }), "noise[0].level_db: 60 dB(A) is outside 70..160 dB(A)");
}

}  // namespace
}  // namespace tailblock

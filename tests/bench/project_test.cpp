#include <gtest/gtest.h>

#include "bench/station_use.h"
#include "project_search.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::Project;
using testing::ProjectGeneration;
using testing::Starts;

/// Serial generation once more, each resource a StationUse of the planner's own.
Starts generated_with_stations(const Project& project, const std::vector<int>& list) {
  std::vector<StationUse> stations;
  for (const int capacity : project.capacity) stations.emplace_back(capacity);
  Starts starts(project.duration.size());
  for (const int job : list) {
    const auto j = static_cast<std::size_t>(job);
    int start = 0;
    for (const int earlier : project.before[j]) {
      const auto e = static_cast<std::size_t>(earlier);
      start = std::max(start, starts[e] + project.duration[e]);
    }
    for (int before = -1; before != start && project.duration[j] > 0;) {
      before = start;
      for (std::size_t r = 0; r < 4; ++r)
        start = std::max(start, stations[r].free_from(start, start + project.duration[j], project.use[j][r]));
    }
    for (std::size_t r = 0; r < 4; ++r)
      if (project.use[j][r] > 0) stations[r].take(start, start + project.duration[j], project.use[j][r]);
    starts[j] = start;
  }
  return starts;
}

class Projects : public ::testing::Test {
 protected:
  void SetUp() override {
    if (testing::psplib_folder().empty()) GTEST_SKIP() << "TAILBLOCK_PSPLIB names no folder with the PSPLIB files";
  }
};

TEST_F(Projects, are_scheduled_without_faults_and_justified_never_longer) {  // S01, S02
  int schedules = 0;
  for (const char* set : {"j30", "j60", "j90", "j120"}) {
    for (const Project& project : testing::projects_of(set)) {
      SCOPED_TRACE(project.file);
      ProjectGeneration forwards(project), backwards(testing::reversed(project));
      Seeded dice(7);
      for (int i = 0; i < 20; ++i) {
        const std::vector<int> list = forwards.drawn_list(dice, false);
        const Starts plain = forwards.generate(list), justified = testing::justified(forwards, backwards, plain);
        EXPECT_EQ(testing::schedule_faults(project, plain), 0);
        EXPECT_EQ(testing::schedule_faults(project, justified), 0);
        EXPECT_LE(testing::makespan(justified), testing::makespan(plain));
        EXPECT_GE(testing::makespan(justified), project.lower_bound);
        EXPECT_EQ(generated_with_stations(project, list), plain);
        schedules += 2;
      }
      EXPECT_EQ(forwards.schedules, 40);
      EXPECT_EQ(backwards.schedules, 20);
    }
  }
  EXPECT_GE(schedules, 6400);
  std::printf("  %d schedules, no fault, none below its bound\n", schedules);
}

TEST_F(Projects, come_nearer_the_best_known_than_the_study_did) {
  const CsvTable table("scheduling.csv", testing::repository_file("tests/published/scheduling.csv"));
  for (const CsvRow& row : table.rows()) {
    const std::vector<Project> projects = testing::projects_of(std::string(row.name("class")));
    const int schedules = row.whole_number("schedules", {0, 1e6, ""});
    const double expected = row.number("expected", {0, 100, ""});
    if (schedules > 0) {
      const testing::Deviations deviations = testing::deviations(projects, schedules);
      EXPECT_EQ(deviations.faults, 0) << row.where();
      EXPECT_LE(deviations.most_schedules, schedules) << row.where();
      const double found = deviations.over_best_known;
      EXPECT_LE(found, expected) << row.where();
      std::printf("  %s, %d schedules: %.2f %% over best known\n", std::string(row.name("class")).c_str(), schedules,
                  found);
      continue;
    }
    double sum = 0;
    for (const Project& project : projects) sum += 100.0 * project.best_known / project.critical_path - 100;
    EXPECT_NEAR(sum / static_cast<double>(projects.size()), expected, row.number("tolerance", {0, 1, ""}))
        << row.where();
  }
}

}  // namespace
}  // namespace tailblock

#pragma once

// Project networks of the PSPLIB files: least makespan, four resources (Kolisch, Sprecher, EJOR 96 (1997) 205-216, as
// cited beside the files).

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include "quantity/csv_table.h"

namespace tailblock::testing {

struct Project {
  std::string file;
  std::vector<int> duration;
  std::vector<std::array<int, 4>> use;
  std::array<int, 4> capacity{};
  std::vector<std::vector<int>> after, before;  ///< successors, predecessors; jobs run in order of number
  int critical_path = 0;
  int lower_bound = 0, best_known = 0;
  [[nodiscard]] int jobs() const { return static_cast<int>(duration.size()); }
};

/// A folder with the PSPLIB files and best_known.csv; empty when the environment names none (TAILBLOCK_PSPLIB).
inline std::string psplib_folder() {
  const char* folder = std::getenv("TAILBLOCK_PSPLIB");
  return folder == nullptr ? "" : folder;
}

inline std::string whole_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

inline Project project_from_sm(const std::string& text) {
  Project project;
  std::istringstream lines(text);
  std::string line, section;
  while (std::getline(lines, line)) {
    for (const char* heading : {"PRECEDENCE RELATIONS", "REQUESTS/DURATIONS", "RESOURCEAVAILABILITIES"}) {
      if (line.rfind(heading, 0) == 0) section = heading;
    }
    std::istringstream numbers(line);
    std::vector<int> row;
    for (int number = 0; numbers >> number;) row.push_back(number);
    if (row.empty()) continue;
    if (section == "PRECEDENCE RELATIONS" && row.size() >= 3) {
      std::vector<int> next;
      for (std::size_t i = 3; i < row.size(); ++i) next.push_back(row[i] - 1);
      project.after.push_back(next);
    } else if (section == "REQUESTS/DURATIONS" && row.size() == 7) {
      project.duration.push_back(row[2]);
      project.use.push_back({row[3], row[4], row[5], row[6]});
    } else if (section == "RESOURCEAVAILABILITIES" && row.size() == 4) {
      project.capacity = {row[0], row[1], row[2], row[3]};
    }
  }
  project.before.resize(project.after.size());
  std::vector<int> end(project.after.size());
  for (std::size_t j = 0; j < project.after.size(); ++j) {
    end[j] += project.duration[j];
    for (const int next : project.after[j]) {
      project.before[static_cast<std::size_t>(next)].push_back(static_cast<int>(j));
      end[static_cast<std::size_t>(next)] = std::max(end[static_cast<std::size_t>(next)], end[j]);
    }
  }
  project.critical_path = end.empty() ? 0 : end.back();
  return project;
}

/// The same project with time running backwards: job j is job n - 1 - j, what followed goes before.
inline Project reversed(Project project) {
  std::ranges::reverse(project.duration);
  std::ranges::reverse(project.use);
  std::swap(project.after, project.before);
  for (auto* links : {&project.after, &project.before}) {
    std::ranges::reverse(*links);
    for (std::vector<int>& jobs : *links) {
      for (int& job : jobs) job = project.jobs() - 1 - job;
    }
  }
  return project;
}

/// All projects of one class (`j30`), with their bounds.
inline std::vector<Project> projects_of(const std::string& set) {
  std::vector<Project> projects;
  const std::string csv = whole_file(psplib_folder() + "/best_known.csv");
  const CsvTable table("best_known.csv", csv);
  for (const CsvRow& row : table.rows()) {
    if (row.text("set") != set) continue;
    Project project = project_from_sm(whole_file(psplib_folder() + "/" + set + "/" + std::string(row.text("file"))));
    project.file = row.text("file");
    project.lower_bound = row.whole_number("lower_bound", {0, 1e6, ""});
    project.best_known = row.whole_number("best_known_makespan", {0, 1e6, ""});
    projects.push_back(std::move(project));
  }
  return projects;
}

}  // namespace tailblock::testing

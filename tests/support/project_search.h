#pragma once

// Serial generation judged where others have been judged: project networks of the PSPLIB files, least makespan, four
// resources. The planner itself plans for due dates and does not use the search below; what it shares with it is the
// idea (a list, each entry where it can begin first) and StationUse, which a test holds against the packed profile
// here. Search: a genetic algorithm over lists with double justification (Valls, Ballestin, Quintanilla, EJOR 165
// (2005) 375-386; from memory), as the study that the planner follows tried it.

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <numeric>
#include <sstream>
#include <string>
#include <vector>

#include "bench/seeded.h"
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

using Starts = std::vector<int>;

inline int makespan(const Starts& starts) { return starts.back(); }

/// What a schedule breaks, found slowly: precedence, and every resource in every period.
inline int schedule_faults(const Project& project, const Starts& starts) {
  int faults = 0;
  for (std::size_t j = 0; j < starts.size(); ++j) {
    if (starts[j] < 0) ++faults;
    for (const int next : project.after[j]) {
      if (starts[static_cast<std::size_t>(next)] < starts[j] + project.duration[j]) ++faults;
    }
  }
  for (int period = 0; period < makespan(starts); ++period) {
    for (std::size_t r = 0; r < 4; ++r) {
      int used = 0;
      for (std::size_t j = 0; j < starts.size(); ++j) {
        if (starts[j] <= period && period < starts[j] + project.duration[j]) used += project.use[j][r];
      }
      if (used > project.capacity[r]) ++faults;
    }
  }
  return faults;
}

class ProjectSearch {
 public:
  ProjectSearch(const Project& project, std::uint64_t seed) : project_(project), dice_(seed) {
    const int horizon = std::accumulate(project.duration.begin(), project.duration.end(), 1);
    free_.resize(static_cast<std::size_t>(horizon));
    for (const auto& use : project.use) use_.push_back(packed(use));
    latest_.assign(project.duration.size(), horizon);
    for (std::size_t j = project.duration.size(); j-- > 0;) {
      for (const int next : project.after[j]) {
        const auto n = static_cast<std::size_t>(next);
        latest_[j] = std::min(latest_[j], latest_[n] - project.duration[n]);
      }
    }
  }

  int schedules = 0;  ///< passes of generation made so far
  Starts shortest;    ///< the plan that the search found

  /// Each job of the list, which keeps precedence, where it can begin first.
  Starts generate(const std::vector<int>& list) { return pass(list, project_.before); }

  /// As late as possible from the end backwards, then as early as possible again: never longer.
  Starts justified(const Starts& starts) {
    const int end = makespan(starts);
    std::vector<int> order = by_key([&](std::size_t j) { return -(starts[j] + project_.duration[j]); }, true);
    const Starts mirrored = pass(order, project_.after);
    Starts right(mirrored.size());
    for (std::size_t j = 0; j < mirrored.size(); ++j) right[j] = end - mirrored[j] - project_.duration[j];
    const int gained = *std::ranges::min_element(right);
    for (int& start : right) start -= gained;
    return pass(by_key([&](std::size_t j) { return right[j]; }, false), project_.before);
  }

  /// A list drawn with a bias to what must end first (regret-based, exponent 1), or wholly at random.
  std::vector<int> drawn_list(bool biased) {
    std::vector<int> open, waiting(project_.duration.size()), list;
    for (std::size_t j = 0; j < waiting.size(); ++j) waiting[j] = static_cast<int>(project_.before[j].size());
    open.push_back(0);
    while (!open.empty()) {
      std::size_t pick = static_cast<std::size_t>(dice_.below(static_cast<int>(open.size())));
      if (biased) {
        int last = 0;
        for (const int j : open) last = std::max(last, latest_[static_cast<std::size_t>(j)]);
        double sum = 0;
        for (const int j : open) sum += last - latest_[static_cast<std::size_t>(j)] + 1;
        double left = dice_.unit() * sum;
        for (pick = 0; pick + 1 < open.size(); ++pick) {
          left -= last - latest_[static_cast<std::size_t>(open[pick])] + 1;
          if (left < 0) break;
        }
      }
      const int job = open[pick];
      open.erase(open.begin() + static_cast<std::ptrdiff_t>(pick));
      list.push_back(job);
      for (const int next : project_.after[static_cast<std::size_t>(job)]) {
        if (--waiting[static_cast<std::size_t>(next)] == 0) open.push_back(next);
      }
    }
    return list;
  }

  /// The shortest found in `budget` passes; stops at the critical path.
  int search(int budget) {
    const std::size_t size = budget <= 1000 ? 20 : budget <= 5000 ? 40 : 100;
    int best = 1 << 30;
    while (schedules < budget && best > project_.critical_path) {
      std::vector<Plan> plans;
      while (plans.size() < size && schedules < budget) add(plans, drawn_list(true), size);
      int idle = 0;
      while (schedules < budget && idle < 40 && plans.size() > 1 && plans.front().length > project_.critical_path) {
        const int before = plans.front().length;
        for (std::size_t i = 0; i < size && schedules < budget; ++i) {
          const Plan& one = plans[static_cast<std::size_t>(dice_.below(static_cast<int>(plans.size())))];
          const Plan& other = plans[static_cast<std::size_t>(dice_.below(static_cast<int>(plans.size())))];
          add(plans, changed(crossed(one.list, other.list)), size);
        }
        idle = plans.front().length < before ? 0 : idle + 1;
      }
      if (plans.empty() || plans.front().length >= best) continue;
      best = plans.front().length;
      shortest = plans.front().starts;
    }
    return best;
  }

 private:
  struct Plan {
    std::vector<int> list;
    Starts starts;
    int length;
  };

  static std::uint64_t packed(const std::array<int, 4>& amounts) {
    std::uint64_t bits = 0;
    for (std::size_t r = 0; r < 4; ++r) bits |= static_cast<std::uint64_t>(amounts[r]) << (16 * r);
    return bits;
  }

  Starts pass(const std::vector<int>& list, const std::vector<std::vector<int>>& before) {
    ++schedules;
    constexpr std::uint64_t guard = 0x8000'8000'8000'8000U;
    std::ranges::fill(free_, packed(project_.capacity) | guard);
    Starts starts(project_.duration.size());
    for (const int job : list) {
      const auto j = static_cast<std::size_t>(job);
      int start = 0;
      for (const int earlier : before[j]) {
        const auto e = static_cast<std::size_t>(earlier);
        start = std::max(start, starts[e] + project_.duration[e]);
      }
      for (int period = start; period < start + project_.duration[j]; ++period) {
        if (((free_[static_cast<std::size_t>(period)] - use_[j]) & guard) != guard) start = period + 1;
      }
      for (int period = start; period < start + project_.duration[j]; ++period)
        free_[static_cast<std::size_t>(period)] -= use_[j];
      starts[j] = start;
    }
    return starts;
  }

  /// Jobs by a key; jobs of one key in an order that keeps precedence, forwards or backwards.
  template <class Key>
  std::vector<int> by_key(Key key, bool backwards) const {
    std::vector<int> order(project_.duration.size());
    std::iota(order.begin(), order.end(), 0);
    if (backwards) std::ranges::reverse(order);
    std::ranges::stable_sort(order, {}, [&](int j) { return key(static_cast<std::size_t>(j)); });
    return order;
  }

  /// Between two cuts from the other parent's order, else from the first.
  std::vector<int> crossed(const std::vector<int>& one, const std::vector<int>& other) {
    const int jobs = project_.jobs();
    int low = dice_.below(jobs), high = dice_.below(jobs);
    if (low > high) std::swap(low, high);
    std::vector<bool> taken(one.size());
    std::vector<int> child;
    const auto take_until = [&](const std::vector<int>& parent, int count) {
      for (const int job : parent) {
        if (static_cast<int>(child.size()) >= count) return;
        if (taken[static_cast<std::size_t>(job)]) continue;
        taken[static_cast<std::size_t>(job)] = true;
        child.push_back(job);
      }
    };
    take_until(one, low);
    take_until(other, high);
    take_until(one, jobs);
    return child;
  }

  std::vector<int> changed(std::vector<int> list) {
    for (std::size_t i = 0; i + 1 < list.size(); ++i) {
      if (dice_.below(20) != 0) continue;
      const auto& next = project_.after[static_cast<std::size_t>(list[i])];
      if (std::ranges::find(next, list[i + 1]) == next.end()) std::swap(list[i], list[i + 1]);
    }
    return list;
  }

  /// Among the best `size`, no schedule twice.
  void add(std::vector<Plan>& plans, const std::vector<int>& list, std::size_t size) {
    Starts starts = justified(generate(list));
    const int length = makespan(starts);
    for (const Plan& plan : plans) {
      if (plan.length == length && plan.starts == starts) return;
    }
    if (plans.size() >= size && length >= plans.back().length) return;
    Plan plan{.list = by_key([&](std::size_t j) { return starts[j]; }, false), .starts = starts, .length = length};
    const auto place = std::ranges::upper_bound(plans, length, {}, &Plan::length);
    plans.insert(place, std::move(plan));
    if (plans.size() > size) plans.pop_back();
  }

  const Project& project_;
  Seeded dice_;
  std::vector<std::uint64_t> free_, use_;
  std::vector<int> latest_;
};

/// Mean of how far, in percent, the found makespans lie over a reference.
struct Deviations {
  double over_best_known = 0, over_critical_path = 0;
  int at_best_known = 0, projects = 0;
  int faults = 0;  ///< of the plans found, by schedule_faults()
};

inline Deviations deviations(const std::vector<Project>& projects, int budget) {
  Deviations mean;
  for (const Project& project : projects) {
    ProjectSearch search(project, 1);
    const int found = search.search(budget);
    mean.faults += schedule_faults(project, search.shortest) + (makespan(search.shortest) == found ? 0 : 1);
    mean.over_best_known += 100.0 * found / project.best_known - 100;
    mean.over_critical_path += 100.0 * found / project.critical_path - 100;
    mean.at_best_known += found <= project.best_known ? 1 : 0;
    ++mean.projects;
  }
  mean.over_best_known /= mean.projects;
  mean.over_critical_path /= mean.projects;
  return mean;
}

}  // namespace tailblock::testing

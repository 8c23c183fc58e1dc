#pragma once

// Serial generation of a project's schedule from a list (J. E. Kelley 1963, from memory), lists drawn at random, and
// the schedule seen from its other end. The planner's own generation places by StationUse, which a test holds against
// the packed profile here.

#include <algorithm>
#include <array>
#include <cstdint>
#include <numeric>
#include <vector>

#include "bench/seeded.h"
#include "project_faults.h"

namespace tailblock::testing {

/// Jobs by their begin; jobs of one begin by number, which keeps precedence.
inline std::vector<int> by_start(const Starts& starts) {
  std::vector<int> first(static_cast<std::size_t>(*std::ranges::max_element(starts)) + 2);
  for (const int start : starts) ++first[static_cast<std::size_t>(start) + 1];
  std::partial_sum(first.begin(), first.end(), first.begin());
  std::vector<int> order(starts.size());
  for (std::size_t j = 0; j < starts.size(); ++j)
    order[static_cast<std::size_t>(first[static_cast<std::size_t>(starts[j])]++)] = static_cast<int>(j);
  return order;
}

class ProjectGeneration {
 public:
  explicit ProjectGeneration(Project project) : project_(std::move(project)) {
    const int horizon = std::accumulate(project_.duration.begin(), project_.duration.end(), 1);
    free_.resize(static_cast<std::size_t>(horizon));
    for (const auto& use : project_.use) use_.push_back(packed(use));
    tail_.resize(project_.duration.size());
    for (std::size_t j = tail_.size(); j-- > 0;) {
      for (const int next : project_.after[j]) {
        const auto n = static_cast<std::size_t>(next);
        tail_[j] = std::max(tail_[j], tail_[n] + project_.duration[n]);
      }
    }
  }

  int schedules = 0;  ///< passes made so far

  [[nodiscard]] const Project& project() const { return project_; }

  /// Each job of the list, which keeps precedence, where it can begin first.
  Starts generate(const std::vector<int>& list) {
    ++schedules;
    constexpr std::uint64_t guard = 0x8000'8000'8000'8000U;
    std::ranges::fill(free_, packed(project_.capacity) | guard);
    Starts starts(project_.duration.size());
    for (const int job : list) {
      const auto j = static_cast<std::size_t>(job);
      int start = 0;
      for (const int earlier : project_.before[j]) {
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

  /// The schedule as the reversed project has it, begun where this one ends.
  [[nodiscard]] Starts turned(const Starts& starts) const {
    const int end = makespan(starts);
    Starts other(starts.size());
    for (std::size_t j = 0; j < starts.size(); ++j)
      other[starts.size() - 1 - j] = end - starts[j] - project_.duration[j];
    return other;
  }

  /// A list drawn with a bias to what has the longest path still to come (regret-based, exponent 1), or wholly at
  /// random.
  [[nodiscard]] std::vector<int> drawn_list(Seeded& dice, bool biased) const {
    std::vector<int> open{0}, waiting(project_.duration.size()), list;
    for (std::size_t j = 0; j < waiting.size(); ++j) waiting[j] = static_cast<int>(project_.before[j].size());
    while (!open.empty()) {
      const std::size_t pick =
          biased ? biased_pick(dice, open) : static_cast<std::size_t>(dice.below(static_cast<int>(open.size())));
      const int job = open[pick];
      open.erase(open.begin() + static_cast<std::ptrdiff_t>(pick));
      list.push_back(job);
      for (const int next : project_.after[static_cast<std::size_t>(job)]) {
        if (--waiting[static_cast<std::size_t>(next)] == 0) open.push_back(next);
      }
    }
    return list;
  }

 private:
  static std::uint64_t packed(const std::array<int, 4>& amounts) {
    std::uint64_t bits = 0;
    for (std::size_t r = 0; r < 4; ++r) bits |= static_cast<std::uint64_t>(amounts[r]) << (16 * r);
    return bits;
  }

  [[nodiscard]] std::size_t biased_pick(Seeded& dice, const std::vector<int>& open) const {
    const auto tail = [&](int job) { return tail_[static_cast<std::size_t>(job)]; };
    const int least = tail(*std::ranges::min_element(open, {}, tail));
    double left = 0;
    for (const int job : open) left += tail(job) - least + 1;
    left *= dice.unit();
    for (std::size_t pick = 0; pick + 1 < open.size(); ++pick) {
      left -= tail(open[pick]) - least + 1;
      if (left < 0) return pick;
    }
    return open.size() - 1;
  }

  Project project_;
  std::vector<std::uint64_t> free_, use_;
  std::vector<int> tail_;  ///< longest path from a job's end to the project's
};

/// As late as possible from the end backwards, then as early as possible again: never longer, two passes more.
/// `backwards` generates the reversed project.
inline Starts justified(ProjectGeneration& forwards, ProjectGeneration& backwards, const Starts& starts) {
  const Starts late = backwards.generate(by_start(forwards.turned(starts)));
  return forwards.generate(by_start(backwards.turned(late)));
}

}  // namespace tailblock::testing

#pragma once

// The judge of schedules of project networks: shares nothing with their generation but the network.

#include <vector>

#include "project_network.h"

namespace tailblock::testing {

/// When each job begins; the last job is the end of the project.
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

}  // namespace tailblock::testing

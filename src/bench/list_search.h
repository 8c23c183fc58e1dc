#pragma once

#include <cstdint>
#include <vector>

#include "bench/serial_plan.h"

namespace tailblock {

/// A list of jobs: the k-th mention of a job is its k-th item. Beside it, for every item, how many free places are
/// passed over, so that work can be held back where a change of instrument would cost more than the wait.
struct WorkList {
  std::vector<std::int16_t> jobs;
  std::vector<std::uint8_t> passed;  ///< items of job 0, of job 1 and so on
};

/// Orders that a person at the bench would go by.
enum class BenchRule { arrival, due, slack, latest_start, weight_over_work };
inline constexpr int bench_rules = 5;

[[nodiscard]] WorkList list_by_rule(const BenchNetwork& network, BenchRule rule);

/// Places the whole list from an empty bench and returns its cost.
double place_list(SerialPlan& plan, const WorkList& list);

struct SearchResult {
  WorkList list;
  double cost = 0;
  int promises_moved_later = 0;
  double first_come = 0;  ///< cost of first come, first served with its gaps filled
  double best_rule = 0;   ///< cost of the best of the rules
  int plans = 0;          ///< judged, given up part way included
  int given_up = 0;       ///< of them, as soon as they could not be taken any more
};

struct SearchLimits {
  int plans;
  std::uint64_t seed;
};

/// Simulated annealing over lists, from the best of the rules and `kept` (if it is not empty). The plan returned never
/// costs more than any of those. Where none of them keeps every promise, a part of the search is for a list that does;
/// once one is known, only such lists are taken. On return `plan` holds the answer.
SearchResult search_lists(SerialPlan& plan, const WorkList& kept, const SearchLimits& limits);

}  // namespace tailblock

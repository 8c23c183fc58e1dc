#pragma once

#include <optional>

#include "bench/bench.h"

namespace tailblock::testing {

/// A small bench for exhaustive search: one person, every time a multiple of `grain` minutes, each instrument a chain
/// of operations with a wait after each and maybe one station of one place, kept through the wait.
struct SmallOperation {
  int hands_on, wait;
  bool station;
};
struct SmallInstrument {
  int arrives;  ///< minutes after the start of the first day's hours, a multiple of the grain
  int due_days;
  double weight;
  std::optional<int> promised_day;
  std::vector<SmallOperation> operations;
};
struct SmallBench {
  int hours;  ///< a day, from 09:00, every day of the week
  int grain;
  std::vector<SmallInstrument> instruments;
};

[[nodiscard]] BenchRequest request_of(const SmallBench& bench);

/// Whether any plan at all costs less than `cost`, by trying every start on the grain in the order of starts and giving
/// up only what already costs as much. Shares nothing with the planner, and assumes nothing of gaps being filled.
[[nodiscard]] bool any_plan_below(double cost, const SmallBench& bench, const BenchWeights& weights);

}  // namespace tailblock::testing

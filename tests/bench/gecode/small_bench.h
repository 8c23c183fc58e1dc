#pragma once

#include <optional>

#include "bench/bench.h"

namespace tailblock::testing {

/// A small bench for a proof: one person, every time a multiple of `grain` minutes, each instrument a chain of
/// operations with a wait after each and maybe one station of one place, kept through the wait.
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
  int hours;  ///< a day, from `opens`, every day of the week
  int grain;
  std::vector<SmallInstrument> instruments;

  static constexpr int opens = 9 * 60;
};

/// Two to four instruments with ten operations of up to four hours; the same for the same seed.
[[nodiscard]] SmallBench small_bench(unsigned seed);

[[nodiscard]] BenchRequest request_of(const SmallBench& bench);

}  // namespace tailblock::testing

#pragma once

#include "bench/bench.h"
#include "bench/durations.h"

namespace tailblock {

struct PromiseRequest {
  BenchRequest bench;
  std::vector<FinishedWork> finished;  ///< the shop's log
  double chance = 0.8;
  int simulations = 300;
};

/// What can be promised for one instrument.
struct PromisedDay {
  std::string name;
  Date planned{};     ///< ready by the plan, were every estimate right
  Date promise{};     ///< the first day whose chance is near enough to the one asked for
  double chance = 0;  ///< of being ready by the end of it
  Date sure_of{};     ///< the first day with at least the chance asked for
  double sure_chance = 0;
};

struct PromiseResult {
  std::vector<PromisedDay> instruments;
  std::vector<OrderEntry> order;  ///< of the plan that was simulated
  int simulations = 0;
  std::string verdict;
};

void describe(FieldVisitor& visit, PromiseRequest& request);
void describe(FieldVisitor& visit, PromisedDay& day);
void describe(FieldVisitor& visit, PromiseResult& result);

/// The day that holds with a stated chance, for every instrument on the bench.
///
/// The plan's list, not its times, is gone through many times with durations drawn for every operation:
///
///     minutes = estimate exp(mean + scale t)     t from sqrt(1 - c^2) z_operation + c z_instrument
///
/// with mean and scale learnt from the shop's log (durations.h) and c the part of the scatter that an instrument
/// shares. The same draw belongs to the same operation and simulation whatever else is on the bench, so that two
/// answers differ by what changed and not by luck. Days are whole, so the first day with at least the chance holds much
/// more often than asked; the promise is the first day that misses it by no more than the prior's whole_day_allowance,
/// its own chance beside it. Left out: work that comes in later, waits longer than the sheet's figure, air beyond the
/// forecast. Work begun and pinned keeps its planned minutes.
/// @throws Refused as bench() does.
[[nodiscard]] PromiseResult promise(const PromiseRequest& request, const BenchWeights& weights,
                                    const DurationPrior& prior);

}  // namespace tailblock

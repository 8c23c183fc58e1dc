#pragma once

#include <string>
#include <vector>

#include "bench/request.h"
#include "bench/weights.h"

namespace tailblock {

/// One unbroken stretch of hands-on work.
struct WorkPiece {
  Moment from, until;
};

/// Where one operation lies in the plan.
struct PlannedOperation {
  std::string instrument, operation;
  std::string person;  ///< empty for a wait alone
  Moment starts, hands_on_ends, wait_ends;
  std::vector<WorkPiece> pieces;
};

/// When one instrument is ready, and what became of its promise.
struct PlannedInstrument {
  std::string name;
  Moment ready;
  double days_late = 0;
  double days_from_now = 0;
  int promise_days_later = 0;  ///< negative: ready before the promised day
  std::string why;             ///< what its time goes into, when its promise moves later or it is late
};

/// What the plan costs by data/bench_weights.csv.
struct BenchCost {
  double late = 0, in_shop = 0, changes = 0, promises = 0, overdue = 0, total = 0;
  double first_come = 0;  ///< first come, first served, its gaps filled
  double best_rule = 0;   ///< the best order that needs no search
};

struct BenchResult {
  std::vector<PlannedOperation> next;        ///< each person's next work
  std::vector<PlannedOperation> operations;  ///< all, by start
  std::vector<PlannedInstrument> instruments;
  std::vector<std::string> moved_promises;  ///< one sentence a promise that moves later
  std::vector<std::string> overdue;         ///< one sentence for work that what it follows has stood too long for
  std::vector<std::string> overfull;        ///< one for a station of which what is begun takes more than there is
  BenchCost cost;
  std::vector<OrderEntry> order;  ///< to be kept for the next plan
  int plans = 0;
  int changes_of_instrument = 0;
  std::string verdict;
};

void describe(FieldVisitor& visit, WorkPiece& piece);
void describe(FieldVisitor& visit, PlannedOperation& operation);
void describe(FieldVisitor& visit, PlannedInstrument& instrument);
void describe(FieldVisitor& visit, BenchCost& cost);
void describe(FieldVisitor& visit, BenchResult& result);

/// What hands do next, and when each instrument is ready.
///
///     cost = sum_i (late_day w_i L_i + shop_day F_i + promise) + change_of_instrument C + overdue
///     L_i days late, F_i days in the shop from now, w_i its weight, C changes of instrument within a day;
///     promise = promise_later + promise_later_day d for d days later, promise_earlier_day e for e days by the
///     clock before the promised day ends;
///     overdue = begun_overdue + begun_overdue_day d for work that begins d days past its begin_by
///
/// A list of instruments is placed in order, each operation where it can begin first, gaps included; simulated
/// annealing over lists looks for the cheapest. The answer is the same for the same request, seed and number of plans,
/// it never costs more than the orders a person would go by, and it keeps every rule whenever it stops.
/// Left out: what comes in later, how long work really takes (`promise` answers that), walking and setting up.
/// Valid for up to 4 people, 400 instruments of 60 operations, work known to five minutes.
/// Source: serial generation, J. E. Kelley 1963; annealing on lists with calendars as bits, derived here
/// (docs/models/bench.md).
/// @throws Refused naming the operation that can never be done, or the operations that clash.
[[nodiscard]] BenchResult bench(const BenchRequest& request, const BenchWeights& weights);

/// How many plans are judged when the request leaves it open: a first answer in well under 200 ms.
[[nodiscard]] int plans_that_suit(int operations);

}  // namespace tailblock

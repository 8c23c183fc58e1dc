#pragma once

#include <string_view>

#include "quantity/fields.h"

namespace tailblock {

/// What the planner weighs against what: data/bench_weights.csv, one weight a row with what it means in plain words.
struct BenchWeights {
  double late_day;              ///< a day late, times the instrument's own weight
  double shop_day;              ///< a day in the shop
  double change_of_instrument;  ///< putting one down to take up another within a day
  double promise_later;         ///< a promise moved later at all
  double promise_later_day;     ///< and each day of it
  double promise_earlier_day;   ///< each day ready before the end of the promised day
  double begun_overdue;         ///< work begun at all after what it follows has stood too long
  double begun_overdue_day;     ///< and each day of it
};

void describe(FieldVisitor& visit, BenchWeights& weights);

/// Reads data/bench_weights.csv.
/// @throws Refused naming the row: a weight missing, unknown, given twice, out of range or without a source.
[[nodiscard]] BenchWeights bench_weights(std::string_view csv);

}  // namespace tailblock

#include "bench/weights.h"

#include <array>
#include <string>

#include "quantity/named_values.h"

namespace tailblock {
namespace {

constexpr Range worth{0, 1000, ""};

}  // namespace

void describe(FieldVisitor& visit, BenchWeights& weights) {
  visit.number({"late_day", "a day late, times the instrument's own weight"}, weights.late_day, worth);
  visit.number({"shop_day", "a day in the shop"}, weights.shop_day, worth);
  visit.number({"change_of_instrument", "putting one down to take up another on the same day"},
               weights.change_of_instrument, worth);
  visit.number({"promise_later", "a promise moved later at all"}, weights.promise_later, worth);
  visit.number({"promise_later_day", "and each day of it"}, weights.promise_later_day, worth);
  visit.number({"promise_earlier_day", "each day ready before the promised day ends"}, weights.promise_earlier_day,
               worth);
  visit.number({"begun_overdue", "work begun after what it follows has stood too long"}, weights.begun_overdue, worth);
  visit.number({"begun_overdue_day", "and each day of it"}, weights.begun_overdue_day, worth);
}

BenchWeights bench_weights(std::string_view csv) {
  BenchWeights weights{};
  const std::array<NamedValue, 8> figures{{{"late_day", &weights.late_day, worth},
                                           {"shop_day", &weights.shop_day, worth},
                                           {"change_of_instrument", &weights.change_of_instrument, worth},
                                           {"promise_later", &weights.promise_later, worth},
                                           {"promise_later_day", &weights.promise_later_day, worth},
                                           {"promise_earlier_day", &weights.promise_earlier_day, worth},
                                           {"begun_overdue", &weights.begun_overdue, worth},
                                           {"begun_overdue_day", &weights.begun_overdue_day, worth}}};
  read_named_values({.name = "bench_weights.csv", .each = "weight", .words_column = "meaning"}, csv, figures);
  return weights;
}

}  // namespace tailblock

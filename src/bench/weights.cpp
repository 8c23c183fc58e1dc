#include "bench/weights.h"

#include <array>
#include <string>

#include "quantity/named_values.h"

namespace tailblock {

BenchWeights bench_weights(std::string_view csv) {
  constexpr Range worth{0, 1000, ""};
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

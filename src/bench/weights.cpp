#include "bench/weights.h"

#include <array>
#include <set>
#include <string>

#include "quantity/csv_table.h"

namespace tailblock {

BenchWeights bench_weights(std::string_view csv) {
  BenchWeights weights{};
  struct Figure {
    std::string_view name;
    double* place;
  };
  const std::array<Figure, 6> figures{{{"late_day", &weights.late_day},
                                       {"shop_day", &weights.shop_day},
                                       {"change_of_instrument", &weights.change_of_instrument},
                                       {"promise_later", &weights.promise_later},
                                       {"promise_later_day", &weights.promise_later_day},
                                       {"promise_earlier_day", &weights.promise_earlier_day}}};
  const CsvTable table("bench_weights.csv", csv);
  std::set<std::string_view> given;
  for (const CsvRow& row : table.rows()) {
    const std::string_view name = row.name("name");
    const Figure* known = nullptr;
    for (const Figure& figure : figures) {
      if (figure.name == name) known = &figure;
    }
    if (known == nullptr)
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" is not a weight of this table");
    if (!given.insert(known->name).second)
      throw Refused(row.where("name") + ": \"" + std::string(name) + "\" comes twice");
    *known->place = row.number("value", {0, 1000, ""});
    (void)row.name("meaning");
    (void)row.name("source");
  }
  for (const Figure& figure : figures) {
    if (!given.contains(figure.name)) throw Refused("bench_weights.csv: " + std::string(figure.name) + " is missing");
  }
  return weights;
}

}  // namespace tailblock

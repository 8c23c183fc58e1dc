#include "repair/known_readings.h"

#include <map>

#include "repair/table_cells.h"

namespace tailblock {
namespace {

constexpr Range any_value{-100000, 100000, ""};
constexpr Range any_spread{1e-6, 10000, ""};
constexpr double model_hard = 100000;

std::map<std::string, double, std::less<>> gauge_sds(std::string_view csv) {
  std::map<std::string, double, std::less<>> sds;
  const CsvTable table("gauges.csv", csv);
  for (const CsvRow& row : table.rows()) sds.emplace(row.name("id"), row.number("sd", any_spread));
  return sds;
}

}  // namespace

std::vector<KnownReading> known_readings(const KnownReadingTexts& csv) {
  const auto sds = gauge_sds(csv.gauges);
  const auto read = [&](ReadingOf of) {
    return [&sds, of](const CsvRow& row) {
      const auto gauge = sds.find(row.name("gauge"));
      if (gauge == sds.end()) throw Refused(row.where("gauge") + ": no such gauge");
      const std::string how = cell_name(row, "where") + "; " + cell_name(row, "how");
      return KnownReading{.id = cell_name(row, "id"),
                          .name = cell_name(row, "name"),
                          .unit = cell_name(row, "unit"),
                          .of = of,
                          .sd = gauge->second,
                          .hard_low = row.number("hard_low", any_value),
                          .hard_high = row.number("hard_high", any_value),
                          .how = how};
    };
  };
  std::vector<KnownReading> all = rows_with_id<KnownReading>("measures.csv", csv.measures, read(ReadingOf::instrument));
  const auto at_findings =
      rows_with_id<KnownReading>("finding_measures.csv", csv.finding_measures, read(ReadingOf::finding));
  const auto figures = rows_with_id<KnownReading>("model_figures.csv", csv.model_figures, [](const CsvRow& row) {
    return KnownReading{.id = cell_name(row, "id"),
                        .name = cell_name(row, "name"),
                        .unit = cell_name(row, "unit"),
                        .of = ReadingOf::model,
                        .sd = row.number("sd", any_spread),
                        .hard_low = -model_hard,
                        .hard_high = model_hard,
                        .how = "from " + cell_name(row, "given_by")};
  });
  for (const auto* more : {&at_findings, &figures}) {
    for (const KnownReading& reading : *more) {
      if (row_of_id(all, reading.id) != nullptr) throw Refused("\"" + reading.id + "\": is in two tables of readings");
      all.push_back(reading);
    }
  }
  return all;
}

}  // namespace tailblock

#include "repair/amount_measures.h"

#include <algorithm>

#include "repair/table_cells.h"

namespace tailblock {

std::vector<AmountMeasure> amount_measures(std::string_view csv, const std::vector<OperationKind>& operations,
                                           const std::vector<KnownReading>& readings) {
  const CsvTable table("amount_measures.csv", csv);
  std::vector<AmountMeasure> known;
  for (const CsvRow& row : table.rows()) {
    AmountMeasure one{.id = cell_name(row, "amount"), .measure = cell_name(row, "measure")};
    (void)row.name("source");
    if (row_of_id(known, one.id) != nullptr) throw Refused(row.where("amount") + ": comes twice");
    const bool grows = std::ranges::any_of(
        operations, [&](const OperationKind& kind) { return kind.grows && kind.grows->amount == one.id; });
    if (!grows) throw Refused(row.where("amount") + ": no operation grows with it");
    const KnownReading* reading = row_of_id(readings, one.measure);
    if (reading == nullptr || reading->of != ReadingOf::finding) {
      throw Refused(row.where("measure") + ": is not in finding_measures.csv");
    }
    known.push_back(std::move(one));
  }
  return known;
}

}  // namespace tailblock

#pragma once

#include <functional>
#include <string_view>
#include <vector>

#include "repair/amount_measures.h"
#include "repair/diagnosis_tables.h"
#include "repair/finding_answers.h"
#include "repair/finding_kinds.h"
#include "repair/money.h"
#include "repair/procedures.h"
#include "repair/repair_figures.h"

namespace tailblock {

/// Everything the trade knows of repairs, from data/.
struct RepairTables {
  RepairFigures figures{};
  std::vector<KnownReading> readings;
  std::vector<FindingKind> findings;
  OperationTables materials;
  std::vector<ListedMaterial> listed;
  std::vector<Currency> currencies;
  std::vector<OperationKind> operations;
  std::vector<AmountMeasure> amount_measures;
  std::vector<RepairProcedure> procedures;
  std::vector<FindingAnswer> finding_answers;
  DiagnosisTables diagnosis;

  /// @throws Refused naming the ones there are.
  [[nodiscard]] const RepairProcedure& procedure(std::string_view id) const;
};

/// @param text gives a file by its path: `data/operations.csv`.
/// @throws Refused naming the table, the row and the cell.
[[nodiscard]] RepairTables repair_tables(const std::function<std::string_view(std::string_view path)>& text);

}  // namespace tailblock

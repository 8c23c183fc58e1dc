#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "repair/known_readings.h"
#include "repair/operation_kinds.h"

namespace tailblock {

/// Which length at a finding an amount of its repair is: data/amount_measures.csv.
struct AmountMeasure {
  std::string id;       ///< the amount, as data/operations.csv names it
  std::string measure;  ///< data/finding_measures.csv
};

/// @throws Refused naming the cell: an amount that no operation grows with, a measure that is read at no finding.
[[nodiscard]] std::vector<AmountMeasure> amount_measures(std::string_view csv,
                                                         const std::vector<OperationKind>& operations,
                                                         const std::vector<KnownReading>& readings);

}  // namespace tailblock

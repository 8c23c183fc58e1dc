#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "book/finding_records.h"

namespace tailblock {

/// What was found at an invented visit; its key is what later visits call it by.
struct DemoFinding {
  std::string instrument, visit, key;
  Finding record;
};

/// What a later invented visit said of it.
struct DemoFindingChange {
  std::string instrument, visit, finding;
  FindingChange record;
};

/// data/demo/findings.csv. @throws Refused naming the cell.
[[nodiscard]] std::vector<DemoFinding> demo_findings(std::string_view csv);
/// data/demo/finding_changes.csv. @throws Refused naming the cell, or a finding that its instrument has not.
[[nodiscard]] std::vector<DemoFindingChange> demo_finding_changes(std::string_view csv,
                                                                  const std::vector<DemoFinding>& findings);

}  // namespace tailblock

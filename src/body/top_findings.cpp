#include "body/top_findings.h"

#include <algorithm>

#include "quantity/csv_table.h"

namespace tailblock {

std::vector<TopFindingKind> top_findings(std::string_view csv) {
  const CsvTable table("top_findings.csv", csv);
  std::vector<TopFindingKind> kinds;
  for (const CsvRow& row : table.rows()) {
    const std::string kind(row.name("kind"));
    if (top_finding(kinds, kind) != nullptr) throw Refused(row.where("kind") + ": it comes twice");
    const auto taken = std::ranges::find(taken_as_names, row.name("taken_as"));
    if (taken == taken_as_names.end()) {
      throw Refused(row.where("taken_as") + ": \"" + std::string(row.name("taken_as")) +
                    "\" is nothing that the plate model takes");
    }
    kinds.push_back({.kind = kind,
                     .taken_as = static_cast<TakenAs>(taken - taken_as_names.begin()),
                     .mended_by = listed(row.text("mended_by")),
                     .cleated_by = listed(row.text("cleated_by")),
                     .because = std::string(row.text("because"))});
    if (kinds.back().taken_as == TakenAs::not_modelled && kinds.back().because.empty()) {
      throw Refused(row.where("because") + ": it says why nothing is made of the finding");
    }
    (void)row.name("source");
  }
  return kinds;
}

const TopFindingKind* top_finding(const std::vector<TopFindingKind>& kinds, std::string_view kind) {
  const auto found = std::ranges::find(kinds, kind, &TopFindingKind::kind);
  return found == kinds.end() ? nullptr : &*found;
}

}  // namespace tailblock

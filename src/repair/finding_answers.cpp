#include "repair/finding_answers.h"

#include <algorithm>

#include "repair/table_cells.h"

namespace tailblock {

std::vector<FindingAnswer> finding_answers(std::string_view csv, const std::vector<RepairProcedure>& procedures,
                                           const std::vector<FindingKind>& findings) {
  const CsvTable table("finding_answers.csv", csv);
  std::vector<FindingAnswer> answers;
  for (const CsvRow& row : table.rows()) {
    FindingAnswer one{.procedure = cell_name(row, "procedure"),
                      .is = {cell_name(row, "decision"), cell_name(row, "outcome")},
                      .finding = cell_text(row, "finding"),
                      .part = cell_text(row, "part")};
    (void)row.name("source");
    const RepairProcedure* procedure = row_of_id(procedures, one.procedure);
    if (procedure == nullptr) throw Refused(row.where("procedure") + ": is not in procedures.csv");
    const ProcedureDecision* decision = procedure->decision(one.is.decision);
    if (decision == nullptr) throw Refused(row.where("decision") + ": is not asked by " + one.procedure);
    if (std::ranges::find(decision->outcomes, one.is.outcome, &DecisionOutcome::outcome) == decision->outcomes.end()) {
      throw Refused(row.where("outcome") + ": is no outcome of " + one.is.decision);
    }
    if (!one.finding.empty() && finding_kind(findings, one.finding) == nullptr) {
      throw Refused(row.where("finding") + ": is not in finding_kinds.csv");
    }
    answers.push_back(std::move(one));
  }
  return answers;
}

std::vector<OutcomeIs> answered_by(std::string_view finding, std::string_view part, std::string_view procedure,
                                   const std::vector<FindingAnswer>& known) {
  std::vector<OutcomeIs> answers;
  for (const FindingAnswer& one : known) {
    const bool same = one.procedure == procedure && (one.finding.empty() || one.finding == finding);
    if (same && part.starts_with(one.part)) answers.push_back(one.is);
  }
  return answers;
}

}  // namespace tailblock

#pragma once

#include <string>
#include <vector>

#include "book/finding_records.h"
#include "book/job_records.h"
#include "book/questions.h"
#include "repair/diagnose.h"

namespace tailblock {

/// What stands behind the complaints of a visit, as far as the records tell.
struct DiagnosisAnswer {
  DiagnoseRequest request;
  DiagnoseResult result;
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, DiagnosisAnswer&);

/// Builds the question from the readings up to the visit (those of the visit before beside them), the findings that are
/// open at it with what was read there, what was said at it,
/// and the figures that the season and the clearance of this instrument give. What could not be computed is said.
/// @throws Refused as `diagnose`.
[[nodiscard]] DiagnosisAnswer diagnosis_answer(const InstrumentStory& story, const VisitWork& visit,
                                               const Survey& survey, std::vector<LoggedDay> log,
                                               const DataTables& tables, EnvelopeMemo& memo);

}  // namespace tailblock

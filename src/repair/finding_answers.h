#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "repair/procedures.h"

namespace tailblock {

/// What a finding on the drawing answers of its repair's questions: data/finding_answers.csv.
struct FindingAnswer {
  std::string procedure;
  OutcomeIs is;
  std::string finding;  ///< its kind; empty: any
  std::string part;     ///< how the name of the part it is on begins; empty: any
};

/// @throws Refused naming the cell: a procedure, question, outcome or kind of finding that there is not.
[[nodiscard]] std::vector<FindingAnswer> finding_answers(std::string_view csv,
                                                         const std::vector<RepairProcedure>& procedures,
                                                         const std::vector<FindingKind>& findings);

/// What a finding of this kind on this part answers of a procedure's questions.
[[nodiscard]] std::vector<OutcomeIs> answered_by(std::string_view finding, std::string_view part,
                                                 std::string_view procedure, const std::vector<FindingAnswer>& known);

}  // namespace tailblock

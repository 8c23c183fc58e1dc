#pragma once

#include <string>
#include <vector>

#include "book/records.h"
#include "models/data_tables.h"
#include "models/plate_memo.h"
#include "season/crack_risk.h"

namespace tailblock {

/// How likely the top of an instrument in the book is to crack in its home, and the humidity to keep.
struct CrackAnswer {
  bool known = false;  ///< false: its bracing is none of those known, and nothing was calculated
  CrackRiskResult result{};
  int years_lived = 0;
  std::vector<std::string> assumed{};
};
void describe(FieldVisitor&, CrackAnswer&);

/// @param years_lived winters it has lived uncracked in such air; 0: a new top, or one repaired since.
/// @throws Refused as crack_risk.
[[nodiscard]] CrackAnswer crack_answer(const InstrumentStory& story, std::vector<LoggedDay> log,
                                       const DataTables& tables, PlateMemo& memo, int years_lived, Date today);

}  // namespace tailblock

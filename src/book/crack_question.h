#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/records.h"
#include "book/surveyed_top.h"
#include "models/data_tables.h"
#include "models/plate_memo.h"
#include "season/crack_risk.h"

namespace tailblock {

/// How likely the top of an instrument in the book is to crack in its home, and the humidity to keep.
struct CrackAnswer {
  bool known = false;  ///< false: its bracing is none of those known, and nothing was calculated
  CrackRiskResult result{};
  int years_lived = 0;
  std::vector<TakenFinding> cracks{};    ///< found on it, in the order of result.cracks
  std::vector<std::string> not_used{};   ///< findings of the top that it cannot take, a line each
  std::vector<std::string> assumed{};
};
void describe(FieldVisitor&, CrackAnswer&);

/// With the state of the top as last found: cracks with their cleats are judged each by itself, loose braces hold none.
/// @param years_lived winters it has lived uncracked in such air; 0: a new top. Absent: those since a crack or brace of
/// the top was last mended, else ten.
/// @throws Refused as crack_risk.
[[nodiscard]] CrackAnswer crack_answer(const InstrumentStory& story, const TopRecords& records,
                                       std::vector<LoggedDay> log, const DataTables& tables, PlateMemo& memo,
                                       std::optional<int> years_lived, Date today);

}  // namespace tailblock

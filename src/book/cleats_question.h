#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/records.h"
#include "book/finding_records.h"
#include "models/data_tables.h"
#include "repair/cleats.h"

namespace tailblock {

/// One open crack of the survey with the cleats that would hold it.
struct CrackWithCleats {
  int number = 0;  ///< of the finding, on its instrument
  RecordId finding_id = 0;
  std::string words;  ///< what and where
  DrawingView inside = DrawingView::top_inside;
  CleatsRequest request;
  std::optional<CleatsResult> result;
  std::string refused;  ///< why there is no result
  std::vector<std::string> assumed;
};
void describe(FieldVisitor&, CrackWithCleats&);

struct CleatsAnswer {
  std::vector<CrackWithCleats> cracks;
};
void describe(FieldVisitor&, CleatsAnswer&);

/// Cleats for every open finding of a visit that some repair answers with cleats and that is drawn as a line on top or
/// back. From end to end as drawn; the plate's thickness as read beside the crack, else at the soundhole, else as built;
/// the bars of a back as its drawing has them.
[[nodiscard]] CleatsAnswer cleats_answer(const InstrumentStory& story, const Survey& survey, const DataTables& tables,
                                         Date today);

}  // namespace tailblock

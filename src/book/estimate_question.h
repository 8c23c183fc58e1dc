#pragma once

#include <string>
#include <vector>

#include "bench/durations.h"
#include "book/job_question.h"
#include "book/shop_settings.h"
#include "models/data_tables.h"
#include "repair/estimate.h"

namespace tailblock {

/// What a line of the estimate is in the book, and how it compares with what the owner was offered last.
struct LineOfJob {
  RecordId job_id = 0;
  std::string words;     ///< the line as the owner reads it
  bool refused = false;  ///< the owner said no to the newest offer: it is left alone, and costs nothing
  std::string differs;   ///< from the newest offer, in words; empty: it does not, or there is none
};
void describe(FieldVisitor&, LineOfJob&);

struct EstimateAnswer {
  EstimateRequest request;
  EstimateResult result;
  std::vector<LineOfJob> lines;  ///< one for each line of the result
};
void describe(FieldVisitor&, EstimateAnswer&);

/// Prices the jobs of a visit: those to do now first, then those that can wait, then what is left alone or was refused.
/// What they need of arriving and finishing is paid once, beside them. Work done of a visit does not change its
/// price: `finished` is what the shop had finished before.
/// @throws Refused as `estimate`.
[[nodiscard]] EstimateAnswer estimate_answer(const VisitWork& visit, const InstrumentStory& story,
                                             const ShopSettings& settings, const std::vector<FinishedWork>& finished,
                                             const DataTables& tables, Date today);

/// The offers that put the estimate before the owner: for each line that was not offered yet or differs from its newest
/// offer. A refused line is not offered again; its owner may still say yes to the offer there is.
[[nodiscard]] std::vector<JobOffer> offers_to_make(const EstimateAnswer& estimate, const VisitWork& visit, Date today);

}  // namespace tailblock

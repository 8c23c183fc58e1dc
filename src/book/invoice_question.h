#pragma once

#include <string>
#include <vector>

#include "book/job_question.h"
#include "repair/estimate.h"

namespace tailblock {

/// A line to be paid for: an offer that the owner said yes to, at the price it was offered at. Money is decimal text.
struct InvoicedJob {
  RecordId job_id = 0, offer_id = 0;
  std::string name;
  std::string labour, materials;  ///< empty where the offer is older than these were kept
  std::string net, tax_percent, tax;
  std::string agreed_by;
  Date agreed_on{};
  bool finished = false;  ///< hands have done all of it
};
void describe(FieldVisitor&, InvoicedJob&);

/// Arriving and finishing as it was agreed with the line that needs most of it, less what an earlier invoice of the
/// visit asked for. Money is decimal text; empty: there is nothing of it to pay.
struct InvoicedVisit {
  std::string net, tax_percent, tax;
};
void describe(FieldVisitor&, InvoicedVisit&);

struct InvoiceAnswer {
  std::string currency;
  std::vector<InvoicedJob> lines;  ///< empty: there is nothing to ask to be paid for
  InvoicedVisit visit;
  std::string net, tax, total;
  std::vector<TaxAtRate> taxes;
  std::vector<std::string> left_out;  ///< a sentence for each job that is not on it
};
void describe(FieldVisitor&, InvoiceAnswer&);

/// What the owner of a visit's instrument is to be asked to pay now: every job whose newest offer was said yes to and
/// that stands on no invoice yet.
///
///     net = sum of the offers' nets + the greatest of their visit_nets, less the greatest on an earlier invoice
///     tax of a rate = sum of the taxes offered at it;   total = net + tax
///
/// Nothing is rounded here: the offers were. An offer that kept no rate is told as one of its own ("").
/// @throws Refused when offers were made in two currencies.
[[nodiscard]] InvoiceAnswer invoice_answer(const VisitWork& visit, const std::vector<JobPlan>& jobs,
                                           const RepairTables& tables);

}  // namespace tailblock

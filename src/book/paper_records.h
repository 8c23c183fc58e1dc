#pragma once

#include <array>
#include <string>
#include <string_view>

#include "book/records.h"

namespace tailblock {

/// The papers that leave the shop. The bench's own sheet does not.
enum class PaperKind { claim_ticket, estimate, owners_report, invoice };
inline constexpr std::array<std::string_view, 4> paper_kind_names{"claim_ticket", "estimate", "owners_report",
                                                                  "invoice"};

/// A paper that was given to the owner. What it said is kept whole and asked for by itself: Book::paper_says.
struct GivenPaper {
  RecordId id = 0;
  RecordId visit_id = 0;
  PaperKind kind = PaperKind::claim_ticket;
  std::string number{};  ///< running by kind and year: `2026-0014`
  Date day{};
  std::string sha256{};  ///< of what it said
};
void describe(FieldVisitor&, GivenPaper&);

/// What an invoice asks to be paid for.
struct InvoicedOffer {
  RecordId offer_id = 0;
  RecordId paper_id = 0;
};
void describe(FieldVisitor&, InvoicedOffer&);

}  // namespace tailblock

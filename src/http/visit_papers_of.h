#pragma once

#include <optional>

#include "http/shop.h"
#include "paper/visit_papers.h"

namespace tailblock {

/// What a visit's repairs cost today.
/// @throws Refused as estimate_answer.
[[nodiscard]] EstimateAnswer estimate_of(const Shop& shop, const VisitWork& visit);

[[nodiscard]] VisitForPaper visit_for_paper(const Shop& shop, RecordId visit);

/// A paper as it would be written now.
/// @param until last day of an estimate's prices, or to pay an invoice.
[[nodiscard]] Document paper_now(const Shop& shop, const VisitForPaper& visit, PaperKind kind,
                                 std::optional<Date> until = {});

/// Gives a paper to the owner: it is kept under its number as it stands now, an estimate with the offers it makes, an
/// invoice with what it asks for.
[[nodiscard]] GivenPaper give_paper(const Shop& shop, RecordId visit, PaperKind kind, std::optional<Date> until = {});

/// A paper that was given, as it was.
[[nodiscard]] Document paper_as_given(const Shop& shop, RecordId paper);

}  // namespace tailblock

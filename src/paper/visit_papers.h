#pragma once

#include <optional>
#include <string>
#include <vector>

#include "body/instrument_drawing.h"
#include "book/crack_question.h"
#include "book/estimate_question.h"
#include "book/invoice_question.h"
#include "book/job_question.h"
#include "book/questions.h"
#include "book/shop_settings.h"
#include "paper/claim_ticket.h"
#include "paper/estimate_paper.h"
#include "paper/invoice.h"
#include "paper/owners_report.h"
#include "paper/work_sheet.h"

namespace tailblock {

/// A visit with what the book knows around it: what every paper of the visit is written from.
struct VisitForPaper {
  InstrumentStory story{};
  VisitStory visit{};
  VisitWork work{};
  Survey survey{};
  std::vector<JobPlan> jobs{};
  ShopSettings shop{};
  Date today{};
};

/// What only the owner's report needs.
struct YearForPaper {
  std::optional<SeasonAnswer> season{};  ///< absent where the strings were never read
  std::optional<CrackAnswer> crack{};    ///< absent where it could not be worked out
  InstrumentDrawing drawing{};
};

/// Whose paper it is. Until it is given, and has its own number, it is known by the visit's.
/// @throws Refused when the shop has no name.
[[nodiscard]] PaperHead head_of(const VisitForPaper& visit);

/// `Finding 2: brace loose, lower tone bar; moderate`.
[[nodiscard]] std::string finding_in_words(const FindingStory& story, const TradeTables& trade);

/// Whether a job's finding is this one, or one that it corrects.
[[nodiscard]] bool is_of(const FindingStory& story, RecordId finding, const Survey& survey);

/// The paper that goes home: found, done, left alone, readings before and after, the year ahead, care.
[[nodiscard]] OwnersReport report_of(const VisitForPaper& visit, const YearForPaper& year, const TradeTables& trade);

/// What the owner is asked, as it stands now, with what has been answered: a draft until it is given.
[[nodiscard]] EstimatePaper estimate_paper_of(const VisitForPaper& visit, const EstimateAnswer& estimate,
                                              const TradeTables& trade, std::optional<Date> good_until);

/// What the owner is to pay now: a draft until it is given.
/// @throws Refused when nothing is agreed, in a sentence that says what is missing.
[[nodiscard]] Invoice invoice_of(const VisitForPaper& visit, const InvoiceAnswer& answer, std::optional<Date> due);

/// The bench's own sheet: the steps of every job the owner agreed to, with what is needed to do each safely.
/// @throws Refused when no job is agreed to.
[[nodiscard]] WorkSheet work_sheet_of(const VisitForPaper& visit);

/// @param code what the ticket's code says when scanned.
[[nodiscard]] ClaimTicket ticket_of(const VisitForPaper& visit, const std::string& code);

}  // namespace tailblock

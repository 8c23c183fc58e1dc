#pragma once

#include <optional>
#include <vector>

#include "book/job_question.h"
#include "book/questions.h"
#include "book/shop_settings.h"
#include "paper/claim_ticket.h"
#include "paper/owners_report.h"
#include "paper/work_sheet.h"

namespace tailblock {

/// A visit with what the book knows around it: what every paper of the visit is written from.
struct VisitForPaper {
  InstrumentStory story{};
  VisitStory visit{};
  VisitWork work{};
  std::vector<JobPlan> jobs{};
  std::optional<SeasonAnswer> season{};  ///< absent where the strings were never read
  std::optional<SaddleAnswer> saddle{};
  ShopSettings shop{};
  Date today{};
};

/// The paper that goes home: found, done, left alone, readings before and after, the year ahead, care.
[[nodiscard]] OwnersReport report_of(const VisitForPaper& visit, const TradeTables& trade);

/// The bench's own sheet: the steps of every job the owner agreed to, with what is needed to do each safely.
[[nodiscard]] WorkSheet work_sheet_of(const VisitForPaper& visit);

/// @param address where the shop's page of this instrument is found; the ticket's code says it.
[[nodiscard]] ClaimTicket ticket_of(const VisitForPaper& visit, const std::string& address);

}  // namespace tailblock

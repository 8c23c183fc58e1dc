#include "http/visit_papers_of.h"

#include "bench/work_of_steps.h"
#include "book/bench_question.h"
#include "book/drawing_question.h"
#include "book/surveyed_top.h"
#include "models/json.h"
#include "season/words.h"

namespace tailblock {
namespace {

bool has_both_sides(const InstrumentStory& story, Date today) {
  return latest_kept(story, "action12_bass", today) != nullptr &&
         latest_kept(story, "action12_treble", today) != nullptr;
}

YearForPaper year_for_paper(const Shop& shop, const VisitForPaper& visit) {
  YearForPaper year{.drawing = drawing_of(visit.story.instrument, shop.tables)};
  const std::vector<LoggedDay> log = shop.book.air_log(visit.story.home.id);
  if (has_both_sides(visit.story, visit.today)) {
    year.season = season_answer(visit.story, log, shop.tables, shop.envelopes,
                                {.today = visit.today, .first = visit.today});
  }
  try {
    year.crack = crack_answer(visit.story, top_records(shop.book, visit.story, visit.today), log, shop.tables,
                              shop.plates, {}, visit.today);
  } catch (const Refused&) {
    year.crack.reset();  // the model does not hold for this top: the usual range stands
  }
  return year;
}

/// Plain words, which any reader shows: the shop's pages have no address outside its own computer.
std::string code_of(const VisitForPaper& visit) {
  std::string code = "Ticket " + std::to_string(visit.visit.visit.id);
  code += "\n" + visit.story.instrument.name;
  code += "\nleft on " + day_in_words(visit.visit.visit.date);
  return code + "\n" + visit.shop.name;
}

Document written(const Shop& shop, const OwnersReport& report) {
  return owners_report(report, [&](int photo) { return shop.book.photo_bytes(photo, Book::PhotoSize::thumbnail); });
}

/// What each paper is written from, handed to `use`.
template <class Use>
auto with_paper(const Shop& shop, const VisitForPaper& visit, PaperKind kind, std::optional<Date> until, Use use) {
  switch (kind) {
    case PaperKind::claim_ticket:
      return use(ticket_of(visit, code_of(visit)));
    case PaperKind::estimate:
      return use(estimate_paper_of(visit, estimate_of(shop, visit.work), shop.trade, until));
    case PaperKind::owners_report:
      return use(report_of(visit, year_for_paper(shop, visit), shop.trade));
    case PaperKind::invoice:
      break;
  }
  return use(invoice_of(visit, invoice_answer(visit.work, visit.jobs, shop.tables.repairs), until));
}

/// The paper as a document.
struct Written {
  const Shop& shop;
  Document operator()(const ClaimTicket& ticket) const { return claim_ticket(ticket); }
  Document operator()(const EstimatePaper& estimate) const { return estimate_paper(estimate); }
  Document operator()(const OwnersReport& report) const { return written(shop, report); }
  Document operator()(const Invoice& bill) const { return invoice(bill); }
};

}  // namespace

EstimateAnswer estimate_of(const Shop& shop, const VisitWork& visit) {
  const InstrumentStory story = shop.book.story(visit.visit.instrument_id);
  return estimate_answer(visit, story, shop_settings(shop.book, {}),
                         finished_work(shop.book, shop.tables.repairs, visit.visit.date), shop.tables, shop.today());
}

VisitForPaper visit_for_paper(const Shop& shop, RecordId id) {
  VisitForPaper visit{.visit = shop.book.visit_story(id),
                      .work = shop.book.visit_work(id),
                      .survey = shop.book.survey(id),
                      .shop = shop_settings(shop.book, usual_stations(shop.tables.repairs.materials.stations)),
                      .today = shop.today()};
  visit.story = shop.book.story(visit.visit.visit.instrument_id);
  visit.jobs = job_plans(visit.work, visit.story, shop.tables.repairs, now_in(shop));
  return visit;
}

Document paper_now(const Shop& shop, const VisitForPaper& visit, PaperKind kind, std::optional<Date> until) {
  return with_paper(shop, visit, kind, until, Written{shop});
}

GivenPaper give_paper(const Shop& shop, RecordId id, PaperKind kind, std::optional<Date> until) {
  const VisitForPaper visit = visit_for_paper(shop, id);
  Book::PaperToGive to_give{.visit_id = id, .kind = kind, .day = visit.today};
  if (kind == PaperKind::estimate) {
    to_give.offers = offers_to_make(estimate_of(shop, visit.work), visit.work, visit.today);
  }
  if (kind == PaperKind::invoice) {
    for (const InvoicedJob& line : invoice_answer(visit.work, visit.jobs, shop.tables.repairs).lines) {
      to_give.invoiced.push_back(line.offer_id);
    }
  }
  return with_paper(shop, visit, kind, until, [&](auto paper) {
    (void)Written{shop}(paper);  // what cannot be written out is not kept
    return shop.book.give(to_give, [&](const std::string& number) {
      paper.head.reference = number;
      paper.head.draft = false;
      return to_json(paper);
    });
  });
}

Document paper_as_given(const Shop& shop, RecordId id) {
  const std::string says = shop.book.paper_says(id);
  switch (shop.book.paper(id).kind) {
    case PaperKind::claim_ticket:
      return claim_ticket(from_json<ClaimTicket>(says));
    case PaperKind::estimate:
      return estimate_paper(from_json<EstimatePaper>(says));
    case PaperKind::owners_report:
      return written(shop, from_json<OwnersReport>(says));
    case PaperKind::invoice:
      break;
  }
  return invoice(from_json<Invoice>(says));
}

}  // namespace tailblock

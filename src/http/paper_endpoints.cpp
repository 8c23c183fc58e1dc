#include <array>

#include "bench/work_of_steps.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "paper/document_html.h"
#include "paper/document_pdf.h"
#include "paper/visit_papers.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 2> size_names{"a4", "letter"};
constexpr std::array<std::string_view, 2> form_names{"pdf", "page"};

bool has_both_sides(const InstrumentStory& story, Date today) {
  return latest_kept(story, "action12_bass", today) != nullptr &&
         latest_kept(story, "action12_treble", today) != nullptr;
}

VisitForPaper visit_for_paper(const Shop& shop, RecordId id) {
  VisitForPaper visit{.story = {},
                      .visit = shop.book.visit_story(id),
                      .work = shop.book.visit_work(id),
                      .jobs = {},
                      .season = {},
                      .saddle = {},
                      .shop = shop_settings(shop.book, usual_stations(shop.tables.repairs.materials.stations)),
                      .today = shop.today()};
  visit.story = shop.book.story(visit.visit.visit.instrument_id);
  visit.jobs = job_plans(visit.work, visit.story, shop.tables.repairs, now_in(shop));
  return visit;
}

/// The same with the year ahead, for the one paper that shows it.
VisitForPaper visit_and_year(const Shop& shop, VisitForPaper visit) {
  const Date today = visit.today;
  if (!has_both_sides(visit.story, today)) return visit;
  const std::vector<LoggedDay> log = shop.book.air_log(visit.story.home.id);
  visit.season = season_answer(visit.story, log, shop.tables, shop.envelopes, {.today = today, .first = today});
  visit.saddle = saddle_answer(visit.story, log, shop.tables, shop.envelopes, {}, today);
  return visit;
}

Answer written(const Document& document, const Ask& ask) {
  if (query_choice(ask, "as", form_names).value_or(0) == 1) {
    return {.status = 200, .body = document_html(document), .content_type = "text/html; charset=utf-8"};
  }
  const auto size = static_cast<PaperSize>(query_choice(ask, "size", size_names).value_or(0));
  return {.status = 200, .body = document_pdf(document, size), .content_type = "application/pdf"};
}

template <class Write>
Endpoint paper(const Shop& shop, const std::string& name, const std::string& summary, Write write) {
  Endpoint endpoint{"GET",
                    "/api/visits/{id}/" + name,
                    summary,
                    {{"size", "a4 or letter"}, {"as", "pdf, or page for the same in a browser"}},
                    "",
                    "",
                    [shop, write](const Ask& ask) { return written(write(visit_for_paper(shop, ask.id)), ask); }};
  endpoint.result_type = "application/pdf";
  return endpoint;
}

}  // namespace

std::vector<Endpoint> paper_endpoints(const Shop& shop) {
  return {
      paper(shop, "owners-report", "The paper that goes home with the instrument",
            [shop](const VisitForPaper& visit) {
              return owners_report(report_of(visit_and_year(shop, visit), shop.trade));
            }),
      paper(shop, "work-sheet", "The bench's own sheet",
            [](const VisitForPaper& visit) { return work_sheet(work_sheet_of(visit)); }),
      paper(shop, "claim-ticket", "Left with the owner, and tied to the instrument", [](const VisitForPaper& visit) {
        return claim_ticket(ticket_of(visit, "/instruments/" + std::to_string(visit.story.instrument.id)));
      })};
}

}  // namespace tailblock

#include <array>

#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "http/visit_papers_of.h"
#include "paper/document_html.h"
#include "paper/document_pdf.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 2> size_names{"a4", "letter"};
constexpr std::array<std::string_view, 2> form_names{"pdf", "page"};

Answer written(const Document& document, const Ask& ask) {
  if (query_choice(ask, "as", form_names).value_or(0) == 1) {
    return {.status = 200, .body = document_html(document), .content_type = "text/html; charset=utf-8"};
  }
  const auto size = static_cast<PaperSize>(query_choice(ask, "size", size_names).value_or(0));
  return {.status = 200, .body = document_pdf(document, size), .content_type = "application/pdf"};
}

template <class Write>
Endpoint paper(const std::string& path, const std::string& summary, Write write) {
  Endpoint endpoint{"GET",
                    path,
                    summary,
                    {{"size", "a4 or letter"}, {"as", "pdf, or page for the same in a browser"}},
                    "",
                    "",
                    [write](const Ask& ask) { return written(write(ask), ask); }};
  endpoint.result_type = "application/pdf";
  return endpoint;
}

Endpoint paper_of_visit(const Shop& shop, const std::string& name, const std::string& summary, PaperKind kind) {
  return paper("/api/visits/{id}/" + name, summary,
               [shop, kind](const Ask& ask) { return paper_now(shop, visit_for_paper(shop, ask.id), kind); });
}

/// What of a paper cannot be written yet.
struct PaperOffered {
  std::string name, missing;
};
void describe(FieldVisitor& visit, PaperOffered& paper) {
  visit.text({"name", "which paper"}, paper.name, 64);
  visit.text({"missing", "what has to be done before it can be written; empty: nothing"}, paper.missing, 1000);
}

struct PapersOfVisit {
  std::vector<PaperOffered> papers;
  std::vector<GivenPaper> given;
  InvoiceAnswer invoice;
};
void describe(FieldVisitor& visit, PapersOfVisit& papers) {
  list(visit, {"papers", "that the visit can have"}, papers.papers, {0, 10});
  list(visit, {"given", "to the owner, oldest first"}, papers.given, {0, 100000});
  object(visit, {"invoice", "what is to be paid now"}, papers.invoice);
}

std::string nothing_to_report(const VisitForPaper& visit) {
  const bool something = !visit.survey.found_now.empty() || !visit.survey.found_before.empty() ||
                         !visit.visit.readings.empty() || !visit.jobs.empty();
  return something ? "" : "Nothing is found, read or agreed at this visit yet.";
}

PapersOfVisit papers_of(const Shop& shop, RecordId id) {
  const VisitForPaper visit = visit_for_paper(shop, id);
  PapersOfVisit papers{.papers = {},
                       .given = visit.work.papers,
                       .invoice = invoice_answer(visit.work, visit.jobs, shop.tables.repairs)};
  const auto any = [&](auto is) { return std::ranges::any_of(visit.jobs, is); };
  const bool chosen = any([](const JobPlan& job) { return !job.story.job.withdrawn; });
  const bool agreed =
      any([](const JobPlan& job) { return !job.story.job.withdrawn && job.owner == OwnerStands::yes; });
  std::string to_pay;
  if (papers.invoice.lines.empty()) {
    to_pay = papers.given.empty() || !agreed ? "The owner has said yes to no repair yet."
                                             : "All that the owner said yes to stands on an invoice.";
  }
  papers.papers = {{"claim_ticket", ""},
                   {"estimate", chosen ? "" : "No repair is chosen yet."},
                   {"work_sheet", agreed ? "" : "The owner has said yes to no repair yet."},
                   {"owners_report", nothing_to_report(visit)},
                   {"invoice", to_pay}};
  if (!visit.shop.name.empty()) return papers;
  for (PaperOffered& paper : papers.papers) {
    paper.missing = "The shop has no name yet: its papers carry one.";
  }
  return papers;
}

/// A paper to be given to the owner.
struct PaperWanted {
  PaperKind kind = PaperKind::claim_ticket;
  std::optional<Date> until{};
};
void describe(FieldVisitor& visit, PaperWanted& wanted) {
  choice(visit, {"kind", "which paper"}, wanted.kind, paper_kind_names);
  maybe(visit, {"until", "last day of an estimate's prices, or to pay an invoice"}, wanted.until,
        [&](const Field& field, Date& day) { visit.date(field, day); });
}

}  // namespace

std::vector<Endpoint> paper_endpoints(const Shop& shop) {
  return {paper_of_visit(shop, "claim-ticket", "Left with the owner, and tied to the instrument",
                         PaperKind::claim_ticket),
          paper_of_visit(shop, "estimate-paper", "What the owner is asked, line by line, as it stands now",
                         PaperKind::estimate),
          paper_of_visit(shop, "owners-report", "The paper that goes home with the instrument",
                         PaperKind::owners_report),
          paper_of_visit(shop, "invoice-paper", "What the owner is to pay now, as a draft", PaperKind::invoice),
          paper("/api/visits/{id}/work-sheet", "The bench's own sheet",
                [shop](const Ask& ask) { return work_sheet(work_sheet_of(visit_for_paper(shop, ask.id))); }),
          paper("/api/papers/{id}", "A paper that was given to the owner, as it was",
                [shop](const Ask& ask) { return paper_as_given(shop, ask.id); }),
          {"GET",
           "/api/visits/{id}/papers",
           "The papers of a visit: what each still waits for, and what was given",
           {},
           "",
           schema_of_result<PapersOfVisit>(),
           [shop](const Ask& ask) { return json_answer(papers_of(shop, ask.id)); }},
          {"POST",
           "/api/visits/{id}/papers",
           "Give a paper to the owner: it gets its number and is kept as it is now",
           {},
           schema_of_request<PaperWanted>(),
           schema_of_result<GivenPaper>(),
           [shop](const Ask& ask) {
             const auto wanted = from_json<PaperWanted>(ask.body);
             return json_answer(give_paper(shop, ask.id, wanted.kind, wanted.until));
           }}};
}

}  // namespace tailblock

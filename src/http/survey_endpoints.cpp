#include <memory>
#include <mutex>

#include "book/drawing_question.h"
#include "http/adding.h"
#include "http/endpoints.h"
#include "paper/photo.h"

namespace tailblock {
namespace {

constexpr Count rows{0, 10000};

/// What the survey's forms offer.
struct FindingForms {
  std::vector<FindingKind> kinds;
  std::vector<Measure> measures;
};
void describe(FieldVisitor& visit, FindingForms& forms) {
  list(visit, {"kinds", "what can be found, and on which views"}, forms.kinds, rows);
  list(visit, {"measures", "what can be read at a finding"}, forms.measures, rows);
}

/// A decoded photo holds up to some 250 MB while it is turned upright: one after the other.
Endpoint keeping_photo(Book& book) {
  const auto one_at_a_time = std::make_shared<std::mutex>();
  return {.method = "POST",
          .path = "/api/photos",
          .summary = "Keep a photo, JPEG or PNG: turned upright, the camera's own notes left out",
          .query = {},
          .request_schema = {},
          .result_schema = schema_of_result<KeptPhoto>(),
          .handle =
              [&book, one_at_a_time](const Ask& ask) {
                UprightPhoto photo;
                {
                  const std::lock_guard alone(*one_at_a_time);
                  photo = upright_photo(ask.body);
                }
                return json_answer(book.keep_photo({.whole = std::move(photo.whole),
                                                    .thumbnail = std::move(photo.thumbnail),
                                                    .width_px = photo.width_px,
                                                    .height_px = photo.height_px}));
              },
          .request_type = "image/*"};
}

Endpoint showing_photo(const Book& book, const std::string& path, const std::string& summary, Book::PhotoSize size) {
  return {.method = "GET",
          .path = path,
          .summary = summary,
          .query = {},
          .request_schema = {},
          .result_schema = {},
          .handle =
              [&book, size](const Ask& ask) {
                return Answer{.status = 200,
                              .body = book.photo_bytes(ask.id, size),
                              .content_type = "image/jpeg",
                              .tag = book.photo(ask.id).sha256};
              },
          .result_type = "image/jpeg"};
}

}  // namespace

std::vector<Endpoint> survey_endpoints(const Shop& shop) {
  Book& book = shop.book;
  return {{"GET",
           "/api/finding-kinds",
           "What a survey can find, and what can be read at it",
           {},
           "",
           schema_of_result<FindingForms>(),
           [&shop](const Ask&) {
             return json_answer(FindingForms{.kinds = shop.trade.findings, .measures = shop.trade.finding_measures});
           }},
          {"GET",
           "/api/instruments/{id}/drawing",
           "The instrument as a survey draws it: seven views, in millimetres",
           {},
           "",
           schema_of_result<InstrumentDrawing>(),
           [&shop](const Ask& ask) {
             return json_answer(drawing_of(shop.book.instrument(ask.id), shop.tables));
           }},
          {"GET",
           "/api/visits/{id}/survey",
           "What a visit found, and what was found before it and is still open",
           {},
           "",
           schema_of_result<Survey>(),
           [&book](const Ask& ask) { return json_answer(book.survey(ask.id)); }},
          adding<Finding>(book, "Record one finding at a visit", "/api/visits/{id}/findings", &Finding::visit_id),
          adding<FindingChange>(book, "Say at a visit what became of an earlier finding",
                                "/api/visits/{id}/finding-changes", &FindingChange::visit_id),
          keeping_photo(book),
          showing_photo(book, "/api/photos/{id}/whole", "A photo as it is kept", Book::PhotoSize::whole),
          showing_photo(book, "/api/photos/{id}/thumbnail", "A photo, small", Book::PhotoSize::thumbnail)};
}

}  // namespace tailblock

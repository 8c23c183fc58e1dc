#include "book/cleats_question.h"
#include "book/finish_question.h"
#include "http/adding.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"

namespace tailblock {
namespace {

struct VisitPhotoList {
  std::vector<VisitPhoto> photos;
};
void describe(FieldVisitor& visit, VisitPhotoList& answer) {
  list(visit, {"photos", "of the visit itself, in the order in which they were first kept"}, answer.photos, {0, 1000});
}

FinishAnswer finish_of_visit(const Shop& shop, RecordId visit, const FinishWishes& wishes) {
  const VisitWork work = shop.book.visit_work(visit);
  const InstrumentStory story = shop.book.story(work.visit.instrument_id);
  const Moment now = now_in(shop);
  return finish_answer(job_plans(work, story, shop.tables.repairs, now), story, shop.book.visit_story(visit),
                       shop.book.survey(visit), shop.book.shop_air(now.day), shop_settings(shop.book, {}),
                       shop.tables.repairs, wishes, now);
}

FinishWishes wishes_asked(const Ask& ask) {
  FinishWishes wishes{.finish = query_text(ask, "finish"),
                      .coats_wanted = query_integer(ask, "coats_wanted", {1, 200, ""}),
                      .coats_done = query_integer(ask, "coats_done", {0, 200, ""}),
                      .hours_since_last_coat = query_number(ask, "hours_since_last_coat", {0, 20000, "h"}),
                      .work_temperature = {}};
  if (const auto warmth = query_number(ask, "work_temperature_c", {-10, 45, "C"})) {
    wishes.work_temperature = celsius(*warmth);
  }
  return wishes;
}

Endpoint finishing_day(const Shop& shop) {
  return {"GET",
          "/api/visits/{id}/finish",
          "Whether a coat goes on today, when the finish is done, and what may still come off",
          {{"finish", "an id in data/finishes.csv; default that of the visit's next step with one"},
           {"coats_wanted", "in all; default as the visit's jobs have it"},
           {"coats_done", "default as the work done says"},
           {"hours_since_last_coat", "default as the work done says"},
           {"work_temperature_c", "of the instrument; default as warm as the room"}},
          "",
          schema_of_result<FinishAnswer>(),
          [shop](const Ask& ask) { return json_answer(finish_of_visit(shop, ask.id, wishes_asked(ask))); }};
}

Endpoint placing_cleats(const Shop& shop) {
  return {"GET",
          "/api/visits/{id}/cleats",
          "Where cleats go along the open cracks of a visit, and what to cut",
          {},
          "",
          schema_of_result<CleatsAnswer>(),
          [shop](const Ask& ask) {
            const Survey survey = shop.book.survey(ask.id);
            return json_answer(
                cleats_answer(shop.book.story(survey.instrument_id), survey, shop.tables, shop.today()));
          }};
}

Endpoint listing_trials(Book& book) {
  return {"GET",
          "/api/finish-trials",
          "Colours tried, the newest first",
          {{"instrument_id", "only those made for it"},
           {"search", "words that must all be found in the trial or its instrument's name"},
           {"verdict", "only not_yet, keep or sand_off"},
           {"page", "0-based"},
           {"per_page", "1..200"}},
          "",
          schema_of_result<FinishTrialPage>(),
          [&book](const Ask& ask) {
            FinishTrialQuery query;
            query.instrument_id = query_integer(ask, "instrument_id", {0, 2147483647, ""}).value_or(0);
            query.search = query_text(ask, "search").value_or("");
            if (const auto index = query_choice(ask, "verdict", trial_verdict_names)) {
              query.verdict = static_cast<TrialVerdict>(*index);
            }
            query.page = query_integer(ask, "page", {0, 1000000, ""}).value_or(0);
            query.per_page = query_integer(ask, "per_page", {1, 200, ""}).value_or(20);
            return json_answer(book.finish_trials(query));
          }};
}

}  // namespace

std::vector<Endpoint> finish_endpoints(const Shop& shop) {
  Book& book = shop.book;
  return {finishing_day(shop),
          placing_cleats(shop),
          listing_trials(book),
          adding<FinishTrial>(book, "Record a colour tried at a visit, or how it dried", "/api/visits/{id}/finish-trials",
                              &FinishTrial::visit_id),
          {"GET",
           "/api/visits/{id}/photos",
           "The photos of a visit itself",
           {},
           "",
           schema_of_result<VisitPhotoList>(),
           [&book](const Ask& ask) { return json_answer(VisitPhotoList{book.visit_photos(ask.id)}); }},
          adding<VisitPhoto>(book, "Say what a photo of a visit shows, or leave it out", "/api/visits/{id}/photos",
                             &VisitPhoto::visit_id)};
}

}  // namespace tailblock

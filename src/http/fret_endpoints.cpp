#include "book/fret_question.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "paper/fret_strip.h"

namespace tailblock {
namespace {

constexpr Range lengths{0, 10, "mm"};

FretWishes wishes_of(const Ask& ask) {
  return {.today = query_date(ask, "today"),
          .wanted_bass = query_length(ask, "wanted_bass_mm", lengths),
          .wanted_treble = query_length(ask, "wanted_treble_mm", lengths),
          .least_crown = query_length(ask, "least_crown_mm", lengths),
          .margin = query_length(ask, "margin_mm", lengths),
          .fall_away = query_length(ask, "fall_away_mm", lengths),
          .fall_away_from = query_integer(ask, "fall_away_from_fret", {8, 23, ""})};
}

FretStrip strip_of(const InstrumentStory& story, const FretAnswer& answer, Date today) {
  if (!answer.result) throw Refused("readings: no crown of this instrument has been read yet");
  return {.instrument = story.instrument.name,
          .day = answer.read_on.value_or(today),
          .scale_length = answer.scale_length,
          .body_joint_fret = answer.body_joint_fret,
          .result = *answer.result};
}

}  // namespace

std::vector<Endpoint> fret_endpoints(const Shop& shop) {
  const std::vector<QueryField> asked{{"today", "asked as on this day; default the shop's own"},
                                      {"wanted_bass_mm", "action wanted at fret 12, bass"},
                                      {"wanted_treble_mm", "action wanted at fret 12, treble"},
                                      {"least_crown_mm", "that every crown keeps"},
                                      {"margin_mm", "room left under every note"},
                                      {"fall_away_mm", "last fret below the line"},
                                      {"fall_away_from_fret", "the last fret still on the line"}};
  return {
      {"POST",
       "/api/instruments/{id}/fret-dress",
       "Which crowns come down, by how little, and for which notes",
       {},
       schema_of_request<FretWishes>(),
       schema_of_result<FretAnswer>(),
       [shop](const Ask& ask) {
         const auto wishes = from_json<FretWishes>(ask.body.empty() ? "{}" : ask.body);
         return json_answer(fret_answer(shop.book.story(ask.id), shop.tables, shop.envelopes, wishes, shop.today()));
       }},
      {"GET", "/api/instruments/{id}/fret-strip.pdf", "A strip for the bench, true to scale, to lay along the board",
       asked, "", "",
       [shop](const Ask& ask) {
         const InstrumentStory story = shop.book.story(ask.id);
         const FretAnswer answer = fret_answer(story, shop.tables, shop.envelopes, wishes_of(ask), shop.today());
         return Answer{.status = 200,
                       .body = fret_strip_pdf(strip_of(story, answer, shop.today())),
                       .content_type = "application/pdf"};
       },
       "application/json", "application/pdf"}};
}

}  // namespace tailblock

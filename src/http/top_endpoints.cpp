#include "book/crack_question.h"
#include "book/top_question.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"

namespace tailblock {

std::vector<Endpoint> top_endpoints(const Shop& shop) {
  return {{"GET",
           "/api/instruments/{id}/crack-risk",
           "How likely a top is to crack in its home, and the humidity to keep",
           {{"years_lived", "winters it has lived uncracked in such air; unless told those since a repair, or 10"},
            {"today", "asked as on this day; default the shop's own"}},
           "",
           schema_of_result<CrackAnswer>(),
           [shop](const Ask& ask) {
             const Date today = query_date(ask, "today").value_or(shop.today());
             const InstrumentStory story = shop.book.story(ask.id);
             const auto years = query_integer(ask, "years_lived", {0, 200, "years"});
             return json_answer(crack_answer(story, top_records(shop.book, story, today),
                                             shop.book.air_log(story.home.id), shop.tables, shop.plates, years, today));
           }},
          {"POST",
           "/api/instruments/{id}/top",
           "How a top stands under its strings and in an air, and what a change does to it",
           {},
           schema_of_request<TopWishes>(),
           schema_of_result<TopAnswer>(),
           [shop](const Ask& ask) {
             const auto wishes = from_json<TopWishes>(ask.body.empty() ? "{}" : ask.body);
             const Date today = wishes.today.value_or(shop.today());
             const InstrumentStory story = shop.book.story(ask.id);
             return json_answer(
                 top_answer(story, top_records(shop.book, story, today), shop.tables, shop.plates, wishes, today));
           }}};
}

}  // namespace tailblock

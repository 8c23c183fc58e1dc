#include "book/top_question.h"
#include "http/endpoints.h"

namespace tailblock {

std::vector<Endpoint> top_endpoints(const Shop& shop) {
  return {{"POST",
           "/api/instruments/{id}/top",
           "How a top stands under its strings and in an air, and what a change does to it",
           {},
           schema_of_request<TopWishes>(),
           schema_of_result<TopAnswer>(),
           [shop](const Ask& ask) {
             const auto wishes = from_json<TopWishes>(ask.body.empty() ? "{}" : ask.body);
             return json_answer(top_answer(shop.book.story(ask.id), shop.tables, shop.plates, wishes,
                                           wishes.today.value_or(shop.today())));
           }}};
}

}  // namespace tailblock

#include "http/endpoint.h"

#include <algorithm>

#include "book/book.h"

namespace tailblock {
namespace {

struct Refusal {
  std::string refused;
};
void describe(FieldVisitor& visit, Refusal& refusal) {
  visit.text({"refused", "what is refused and why, in one line"}, refusal.refused, 4000);
}

struct StorageTrouble {
  std::string storage;
};
void describe(FieldVisitor& visit, StorageTrouble& trouble) {
  visit.text({"storage", "what failed, and what is still safe"}, trouble.storage, 4000);
}

void refuse_unknown_query(const Endpoint& endpoint, const Ask& ask) {
  for (const auto& [name, value] : ask.query) {
    if (std::ranges::any_of(endpoint.query, [&](const QueryField& known) { return known.name == name; })) continue;
    throw Refused(name + ": unknown query field of " + endpoint.path);
  }
}

}  // namespace

void describe(FieldVisitor& visit, Kept& kept) {
  visit.integer({"id", "the record's number in the book"}, kept.id, {1, 2147483647, ""});
}

Answer answer(const Endpoint& endpoint, const Ask& ask) {
  try {
    refuse_unknown_query(endpoint, ask);
    return endpoint.handle(ask);
  } catch (const NotInBook& refusal) {
    return {.status = 404, .body = to_json(Refusal{refusal.what()})};
  } catch (const Refused& refusal) {
    return {.status = 422, .body = to_json(Refusal{refusal.what()})};
  } catch (const StorageFault& fault) {
    return {.status = 503, .body = to_json(StorageTrouble{fault.what()})};
  }
}

}  // namespace tailblock

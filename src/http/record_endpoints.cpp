#include "http/adding.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"

namespace tailblock {
namespace {

struct OwnerList {
  std::vector<Owner> owners;
};
void describe(FieldVisitor& visit, OwnerList& answer) {
  list(visit, {"owners", "every owner, by name"}, answer.owners, {0, 1000000});
}

struct HomeList {
  std::vector<Home> homes;
};
void describe(FieldVisitor& visit, HomeList& answer) {
  list(visit, {"homes", "every home, by name"}, answer.homes, {0, 1000000});
}

struct ReadingsToKeep {
  std::vector<Reading> readings;
};
void describe(FieldVisitor& visit, ReadingsToKeep& ask) {
  list(visit, {"readings", "readings of one visit, kept all or none"}, ask.readings, {1, 200});
}

struct ReadingsKept {
  std::vector<Kept> readings;
};
void describe(FieldVisitor& visit, ReadingsKept& answer) {
  list(visit, {"readings", "their numbers in the book, in the order given"}, answer.readings, {0, 200});
}

/// Adding and changing are the same call of the book: a record with a number changes that record.
template <class Record>
void add_keeping(std::vector<Endpoint>& endpoints, Book& book, const std::string& noun, const std::string& path) {
  const auto keep = [&book](Record record, int id) {
    record.id = id;
    return json_answer(Kept{book.keep(record)});
  };
  endpoints.push_back({"POST", path, "Add one " + noun, {}, schema_of_request<Record>(),
                       schema_of_result<Kept>(),
                       [keep](const Ask& ask) { return keep(from_json<Record>(ask.body), 0); }});
  endpoints.push_back({"PUT", path + "/{id}", "Change one " + noun, {}, schema_of_request<Record>(),
                       schema_of_result<Kept>(),
                       [keep](const Ask& ask) { return keep(from_json<Record>(ask.body), ask.id); }});
}

InstrumentQuery instrument_query(const Ask& ask) {
  InstrumentQuery query;
  query.search = query_text(ask, "search").value_or("");
  if (const auto index = query_choice(ask, "body_size", body_size_names)) query.body_size = static_cast<BodySize>(*index);
  if (const auto index = query_choice(ask, "slot", saddle_slot_names)) query.slot = static_cast<SaddleSlot>(*index);
  query.home_id = query_integer(ask, "home_id", {0, 2147483647, ""}).value_or(0);
  query.page = query_integer(ask, "page", {0, 1000000, ""}).value_or(0);
  query.per_page = query_integer(ask, "per_page", {1, 200, ""}).value_or(50);
  return query;
}

Endpoint listing_instruments(Book& book) {
  return {"GET",
          "/api/instruments",
          "Instruments, newest visit first",
          {{"search", "words that must all be found in name, maker text, owner or home"},
           {"body_size", "only this size"},
           {"slot", "only this kind of saddle slot"},
           {"home_id", "only this home"},
           {"page", "0-based"},
           {"per_page", "1..200"}},
          "",
          schema_of_result<InstrumentPage>(),
          [&book](const Ask& ask) { return json_answer(book.instruments(instrument_query(ask))); }};
}

Endpoint keeping_readings(Book& book) {
  return {"POST", "/api/visits/{id}/readings", "Record readings at a visit", {}, schema_of_request<ReadingsToKeep>(),
          schema_of_result<ReadingsKept>(), [&book](const Ask& ask) {
            auto wanted = from_json<ReadingsToKeep>(ask.body);
            for (Reading& reading : wanted.readings) reading.visit_id = ask.id;
            ReadingsKept kept;
            for (const RecordId id : book.add(wanted.readings)) kept.readings.push_back({id});
            return json_answer(kept);
          }};
}

}  // namespace

std::vector<Endpoint> record_endpoints(const Shop& shop) {
  Book& book = shop.book;
  std::vector<Endpoint> endpoints;
  endpoints.push_back(listing_instruments(book));
  endpoints.push_back({"GET", "/api/instruments/{id}", "One instrument with its people, home and visits", {}, "",
                       schema_of_result<InstrumentStory>(),
                       [&book](const Ask& ask) { return json_answer(book.story(ask.id)); }});
  add_keeping<Instrument>(endpoints, book, "instrument", "/api/instruments");
  endpoints.push_back({"GET", "/api/owners", "Owners", {}, "", schema_of_result<OwnerList>(),
                       [&book](const Ask&) { return json_answer(OwnerList{book.owners()}); }});
  add_keeping<Owner>(endpoints, book, "owner", "/api/owners");
  endpoints.push_back({"GET", "/api/homes", "Homes and their typical year", {}, "", schema_of_result<HomeList>(),
                       [&book](const Ask&) { return json_answer(HomeList{book.homes()}); }});
  add_keeping<Home>(endpoints, book, "home", "/api/homes");
  endpoints.push_back({"GET", "/api/visits/{id}", "One visit with all that was recorded at it", {}, "",
                       schema_of_result<VisitStory>(),
                       [&book](const Ask& ask) { return json_answer(book.visit_story(ask.id)); }});
  add_keeping<Visit>(endpoints, book, "visit", "/api/visits");
  endpoints.push_back(keeping_readings(book));
  endpoints.push_back(adding<Intervention>(book, "Record one intervention at a visit", "/api/visits/{id}/interventions", &Intervention::visit_id));
  endpoints.push_back(adding<SaddleDecision>(book, "Record one saddle decision at a visit", "/api/visits/{id}/decisions", &SaddleDecision::visit_id));
  return endpoints;
}

}  // namespace tailblock

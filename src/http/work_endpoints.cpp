#include "book/shop_settings.h"
#include "http/endpoints.h"

namespace tailblock {
namespace {

struct LotList {
  std::vector<MaterialLot> lots;
};
void describe(FieldVisitor& visit, LotList& answer) {
  list(visit, {"lots", "pots, bottles and sticks, the newest first"}, answer.lots, {0, 100000});
}

/// Added to something with a number, which the path gives, and never changed afterwards.
template <class Record>
Endpoint adding(Book& book, const std::string& noun, const std::string& path, RecordId Record::*owner) {
  return {"POST",
          path,
          "Record " + noun,
          {},
          schema_of_request<Record>(),
          schema_of_result<Kept>(),
          [&book, owner](const Ask& ask) {
            auto record = from_json<Record>(ask.body);
            record.*owner = ask.id;
            return json_answer(Kept{book.add(record)});
          }};
}

Endpoint beginning_work(Book& book) {
  return {"POST",
          "/api/jobs/{id}/work",
          "Hands take up an operation of a job",
          {},
          schema_of_request<WorkSpell>(),
          schema_of_result<Kept>(),
          [&book](const Ask& ask) {
            auto spell = from_json<WorkSpell>(ask.body);
            spell.job_id = ask.id;
            return json_answer(Kept{book.begin_work(spell)});
          }};
}

Endpoint ending_work(Book& book) {
  return {"POST",
          "/api/work/{id}/end",
          "Hands let go; where the operation is finished its wait begins",
          {},
          schema_of_request<WorkEnd>(),
          schema_of_result<Kept>(),
          [&book](const Ask& ask) {
            book.end_work(ask.id, from_json<WorkEnd>(ask.body));
            return json_answer(Kept{ask.id});
          }};
}

void add_keeping_lots(std::vector<Endpoint>& endpoints, Book& book) {
  const auto keep = [&book](const Ask& ask) {
    auto lot = from_json<MaterialLot>(ask.body);
    lot.id = ask.id;
    return json_answer(Kept{book.keep(lot)});
  };
  endpoints.push_back(
      {"GET", "/api/lots", "Glue and finish in the shop", {}, "", schema_of_result<LotList>(), [&book](const Ask&) {
         return json_answer(LotList{book.material_lots()});
       }});
  endpoints.push_back(
      {"POST", "/api/lots", "Open one", {}, schema_of_request<MaterialLot>(), schema_of_result<Kept>(), keep});
  endpoints.push_back({"PUT",
                       "/api/lots/{id}",
                       "Change or close one",
                       {},
                       schema_of_request<MaterialLot>(),
                       schema_of_result<Kept>(),
                       keep});
}

}  // namespace

std::vector<Endpoint> work_endpoints(const Shop& shop) {
  Book& book = shop.book;
  std::vector<Endpoint> endpoints;
  endpoints.push_back(adding<JobAmount>(book, "how much a job takes", "/api/jobs/{id}/amounts", &JobAmount::job_id));
  endpoints.push_back(adding<OwnerWord>(book, "the owner's word", "/api/jobs/{id}/words", &OwnerWord::job_id));
  endpoints.push_back(
      adding<GateRecord>(book, "that work goes on out of range", "/api/visits/{id}/gate", &GateRecord::visit_id));
  endpoints.push_back(
      adding<PromiseRecord>(book, "a promised day", "/api/visits/{id}/promises", &PromiseRecord::visit_id));
  endpoints.push_back(
      adding<Handover>(book, "that the instrument went home", "/api/visits/{id}/handover", &Handover::visit_id));
  endpoints.push_back(beginning_work(book));
  endpoints.push_back(ending_work(book));
  add_keeping_lots(endpoints, book);
  return endpoints;
}

}  // namespace tailblock

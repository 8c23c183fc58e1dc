#include "book/job_question.h"
#include "http/endpoints.h"

namespace tailblock {
namespace {

constexpr Range numbers{0, 2147483647, ""};

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

/// A tap: hands take up an operation now.
struct BeginTap {
  std::string operation, person;
  RecordId lot_id = 0;
};
void describe(FieldVisitor& visit, BeginTap& tap) {
  visit.text({"operation", "an id in data/operations.csv"}, tap.operation, 64);
  visit.text({"person", "whose hands", Need::has_default}, tap.person, 200);
  visit.integer({"lot_id", "what it is glued or finished with; 0: not said", Need::has_default}, tap.lot_id, numbers);
}

Endpoint beginning_work(const Shop& shop) {
  return {"POST",
          "/api/jobs/{id}/work",
          "Hands take up an operation of a job now",
          {},
          schema_of_request<BeginTap>(),
          schema_of_result<Kept>(),
          [shop](const Ask& ask) {
            const auto tap = from_json<BeginTap>(ask.body);
            if (row_of_id(shop.tables.repairs.operations, tap.operation) == nullptr) {
              throw Refused("operation: \"" + tap.operation + "\" is not in data/operations.csv");
            }
            const Moment now = now_in(shop);
            return json_answer(Kept{shop.book.begin_work({.job_id = ask.id,
                                                          .operation = tap.operation,
                                                          .person = tap.person,
                                                          .began_on = now.day,
                                                          .began_minute = now.minute,
                                                          .lot_id = tap.lot_id})});
          }};
}

Endpoint pinning_work(const Shop& shop) {
  return {"POST",
          "/api/jobs/{id}/pins",
          "Fix an operation of a job to a moment, or let it go",
          {},
          schema_of_request<Pin>(),
          schema_of_result<Kept>(),
          [shop](const Ask& ask) {
            auto pin = from_json<Pin>(ask.body);
            pin.job_id = ask.id;
            if (pin.day && Moment{*pin.day, pin.minute} < now_in(shop)) {
              throw Refused("day: " + iso_date(*pin.day) + " minute " + std::to_string(pin.minute) + " is past");
            }
            return json_answer(Kept{shop.book.add(pin)});
          }};
}

/// A tap: hands let go.
struct EndTap {
  bool finished = true;
  std::optional<int> minutes{};
  RecordId lot_id = 0;
  std::string note;
};
void describe(FieldVisitor& visit, EndTap& tap) {
  visit.flag({"finished", "the hands-on part is done; else it goes on later", Need::has_default}, tap.finished);
  maybe(visit, {"minutes", "how long hands were at it, where the tap came late; absent: until now"}, tap.minutes,
        [&](const Field& field, int& minutes) {
          visit.integer(field, minutes, {0, 24 * 60, "min"});
        });
  visit.integer({"lot_id", "what it was glued or finished with; 0: not said", Need::has_default}, tap.lot_id, numbers);
  visit.text({"note", "anything else", Need::has_default}, tap.note, 20000);
}

Endpoint ending_work(const Shop& shop) {
  return {
      "POST",
      "/api/work/{id}/end",
      "Hands let go; where the operation is finished its wait begins",
      {},
      schema_of_request<EndTap>(),
      schema_of_result<Kept>(),
      [shop](const Ask& ask) {
        const auto tap = from_json<EndTap>(ask.body);
        Moment end = now_in(shop);
        if (tap.minutes) {
          const WorkSpell spell = shop.book.work_spell(ask.id);
          end = later({spell.began_on, spell.began_minute}, *tap.minutes);
        }
        shop.book.end_work(
            ask.id,
            {.day = end.day, .minute = end.minute, .finished = tap.finished, .lot_id = tap.lot_id, .note = tap.note});
        return json_answer(Kept{ask.id});
      }};
}

struct VisitPlan {
  VisitWork kept;
  std::vector<JobPlan> jobs;
  Moment now;
};
void describe(FieldVisitor& visit, VisitPlan& plan) {
  object(visit, {"kept", "what the book keeps of the visit's work"}, plan.kept);
  list(visit, {"jobs", "each with its plan as it stands now"}, plan.jobs, {0, 1000});
  object(visit, {"now", "by the shop's clock"}, plan.now);
}

VisitPlan visit_plan(const Shop& shop, RecordId visit) {
  VisitPlan plan{.kept = shop.book.visit_work(visit), .jobs = {}, .now = now_in(shop)};
  const InstrumentStory story = shop.book.story(plan.kept.visit.instrument_id);
  plan.jobs = job_plans(plan.kept, story, shop.tables.repairs, plan.now);
  return plan;
}

/// A repair that can be chosen.
struct RepairOffered {
  std::string id, name, never;
  std::vector<std::string> for_findings;
};
void describe(FieldVisitor& visit, RepairOffered& repair) {
  visit.text({"id", "as jobs name it"}, repair.id, 64);
  visit.text({"name", "as the shop calls it"}, repair.name, 200);
  visit.text({"never", "what is never done in it"}, repair.never, 2000);
  visit.texts({"for_findings", "kinds of finding that lead to it"}, repair.for_findings, 64, {0, 100});
}
struct RepairList {
  std::vector<RepairOffered> repairs;
};
void describe(FieldVisitor& visit, RepairList& answer) {
  list(visit, {"repairs", "whole repairs, as data/procedures.csv has them"}, answer.repairs, {0, 1000});
}

RepairList repair_list(const RepairTables& tables) {
  RepairList answer;
  for (const RepairProcedure& one : tables.procedures) {
    answer.repairs.push_back({.id = one.id, .name = one.name, .never = one.never, .for_findings = one.for_findings});
  }
  return answer;
}

/// The job with one more thing said of it must still be one that its procedure can follow.
template <class Record>
void require_followed(const Shop& shop, const Record& said, std::vector<Record> JobStory::*list) {
  JobStory job = shop.book.job_story(said.job_id);
  (job.*list).push_back(said);
  const VisitWork visit = shop.book.visit_work(job.job.visit_id);
  const InstrumentStory story = shop.book.story(visit.visit.instrument_id);
  (void)procedure(procedure_request(job, visit, story, shop.tables.repairs, shop.today()), shop.tables.repairs);
}

template <class Record>
Endpoint saying_of_job(const Shop& shop, const std::string& noun, const std::string& path,
                       std::vector<Record> JobStory::*list) {
  return {"POST",
          path,
          "Record " + noun,
          {},
          schema_of_request<Record>(),
          schema_of_result<Kept>(),
          [shop, list](const Ask& ask) {
            auto record = from_json<Record>(ask.body);
            record.job_id = ask.id;
            require_followed(shop, record, list);
            return json_answer(Kept{shop.book.add(record)});
          }};
}

void add_choosing_jobs(std::vector<Endpoint>& endpoints, const Shop& shop) {
  const auto keep = [shop](Job job) {
    (void)shop.tables.repairs.procedure(job.procedure);
    return json_answer(Kept{shop.book.keep(job)});
  };
  endpoints.push_back({"POST",
                       "/api/visits/{id}/jobs",
                       "Choose a repair at a visit",
                       {},
                       schema_of_request<Job>(),
                       schema_of_result<Kept>(),
                       [keep](const Ask& ask) {
                         auto job = from_json<Job>(ask.body);
                         job.visit_id = ask.id;
                         job.id = 0;
                         return keep(job);
                       }});
  endpoints.push_back({"PUT",
                       "/api/jobs/{id}",
                       "Change a job, or think better of it",
                       {},
                       schema_of_request<Job>(),
                       schema_of_result<Kept>(),
                       [shop, keep](const Ask& ask) {
                         auto job = from_json<Job>(ask.body);
                         job.id = ask.id;
                         job.visit_id = shop.book.job_story(ask.id).job.visit_id;
                         return keep(job);
                       }});
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
  endpoints.push_back(
      {"GET", "/api/repairs", "Repairs that can be chosen", {}, "", schema_of_result<RepairList>(), [shop](const Ask&) {
         return json_answer(repair_list(shop.tables.repairs));
       }});
  endpoints.push_back({"GET",
                       "/api/visits/{id}/work",
                       "The jobs of a visit, planned, with what was said and done of them",
                       {},
                       "",
                       schema_of_result<VisitPlan>(),
                       [shop](const Ask& ask) { return json_answer(visit_plan(shop, ask.id)); }});
  add_choosing_jobs(endpoints, shop);
  endpoints.push_back(saying_of_job<JobAnswer>(shop, "an answer to one of a job's questions", "/api/jobs/{id}/answers",
                                               &JobStory::answers));
  endpoints.push_back(
      saying_of_job<JobAmount>(shop, "how much a job takes", "/api/jobs/{id}/amounts", &JobStory::amounts));
  endpoints.push_back(
      adding<JobOffer>(book, "what the owner was offered for a job", "/api/jobs/{id}/offers", &JobOffer::job_id));
  endpoints.push_back(adding<OwnerWord>(book, "the owner's word", "/api/jobs/{id}/words", &OwnerWord::job_id));
  endpoints.push_back(
      adding<GateRecord>(book, "that work goes on out of range", "/api/visits/{id}/gate", &GateRecord::visit_id));
  endpoints.push_back(
      adding<PromiseRecord>(book, "a promised day", "/api/visits/{id}/promises", &PromiseRecord::visit_id));
  endpoints.push_back(
      adding<BenchWish>(book, "when a visit's instrument is wanted", "/api/visits/{id}/wishes", &BenchWish::visit_id));
  endpoints.push_back(pinning_work(shop));
  endpoints.push_back({"POST",
                       "/api/shop-air",
                       "Record the shop's air, read or forecast",
                       {},
                       schema_of_request<ShopAir>(),
                       schema_of_result<Kept>(),
                       [&book](const Ask& ask) { return json_answer(Kept{book.add(from_json<ShopAir>(ask.body))}); }});
  endpoints.push_back(
      adding<Handover>(book, "that the instrument went home", "/api/visits/{id}/handover", &Handover::visit_id));
  endpoints.push_back(beginning_work(shop));
  endpoints.push_back(ending_work(shop));
  add_keeping_lots(endpoints, book);
  return endpoints;
}

}  // namespace tailblock

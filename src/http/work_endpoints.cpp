#include <algorithm>

#include "book/job_question.h"
#include "http/adding.h"
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

/// What holds an operation holds it on every way in: the page only says so sooner.
void require_free_to_begin(const Shop& shop, RecordId job, const std::string& operation) {
  const VisitPlan visit = visit_plan(shop, shop.book.job_story(job).job.visit_id);
  for (const JobPlan& plan : visit.jobs) {
    if (plan.story.job.id != job) continue;
    const std::vector<std::string> holds = holds_of(plan, operation);
    if (!holds.empty()) throw Refused("operation: " + holds.front());
  }
}

/// A tap: hands take up an operation now.
struct BeginTap {
  std::string operation, person;
  RecordId lot_id = 0;
  bool past_its_day = false;
};
void describe(FieldVisitor& visit, BeginTap& tap) {
  visit.text({"operation", "an id in data/operations.csv"}, tap.operation, 64);
  visit.text({"person", "whose hands", Need::has_default}, tap.person, 200);
  visit.integer({"lot_id", "what it is glued or finished with; 0: not said", Need::has_default}, tap.lot_id, numbers);
  visit.flag({"past_its_day", "yes to a lot that is good no longer", Need::has_default}, tap.past_its_day);
}

/// A lot whose day is past is used only by one who says so.
void require_good(const Shop& shop, RecordId lot_id, bool past_its_day) {
  if (lot_id == 0 || past_its_day) return;
  const std::vector<MaterialLot> lots = shop.book.material_lots();
  const auto lot = std::ranges::find(lots, lot_id, &MaterialLot::id);
  if (lot == lots.end() || !lot->good_until || *lot->good_until >= shop.today()) return;
  throw Refused("lot_id: " + (lot->words.empty() ? lot->material : lot->words) + " was good until " +
                iso_date(*lot->good_until) + "; open a fresh one, or say past_its_day to use it all the same");
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
            require_free_to_begin(shop, ask.id, tap.operation);
            require_good(shop, tap.lot_id, tap.past_its_day);
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
  bool past_its_day = false;
  std::string note;
};
void describe(FieldVisitor& visit, EndTap& tap) {
  visit.flag({"finished", "the hands-on part is done; else it goes on later", Need::has_default}, tap.finished);
  maybe(visit, {"minutes", "how long hands were at it, where the tap came late; absent: until now"}, tap.minutes,
        [&](const Field& field, int& minutes) {
          visit.integer(field, minutes, {0, 24 * 60, "min"});
        });
  visit.integer({"lot_id", "what it was glued or finished with; 0: not said", Need::has_default}, tap.lot_id, numbers);
  visit.flag({"past_its_day", "yes to a lot that is good no longer", Need::has_default}, tap.past_its_day);
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
        require_good(shop, tap.lot_id, tap.past_its_day);
        const Moment now = now_in(shop);
        const WorkSpell spell = shop.book.work_spell(ask.id);
        const Moment told = tap.minutes ? later(beginning(spell), *tap.minutes) : now;
        const Moment end = std::min(now, told);
        shop.book.end_work(
            ask.id,
            {.day = end.day, .minute = end.minute, .finished = tap.finished, .lot_id = tap.lot_id, .note = tap.note});
        if (told > now) {  // hands had begun before the tap that said so
          shop.book.add(WorkCorrection{.spell_id = ask.id,
                                       .minutes = *tap.minutes,
                                       .finished = tap.finished,
                                       .day = now.day,
                                       .who = spell.person});
        }
        return json_answer(Kept{ask.id});
      }};
}

/// A repair that can be chosen.
struct RepairOffered {
  std::string id, name, never;
  std::vector<std::string> for_findings, finding_views;
};
void describe(FieldVisitor& visit, RepairOffered& repair) {
  visit.text({"id", "as jobs name it"}, repair.id, 64);
  visit.text({"name", "as the shop calls it"}, repair.name, 200);
  visit.text({"never", "what is never done in it"}, repair.never, 2000);
  visit.texts({"for_findings", "kinds of finding that lead to it"}, repair.for_findings, 64, {0, 100});
  visit.texts({"finding_views", "drawings on which such a finding leads to it; none: any"}, repair.finding_views, 64,
              {0, 7});
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
    RepairOffered repair{
        .id = one.id, .name = one.name, .never = one.never, .for_findings = one.for_findings, .finding_views = {}};
    for (const DrawingView view : one.finding_views) {
      repair.finding_views.emplace_back(drawing_view_names[static_cast<std::size_t>(view)]);
    }
    answer.repairs.push_back(std::move(repair));
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
Endpoint saying_of_job(const Shop& shop, const std::string& summary, const std::string& path,
                       std::vector<Record> JobStory::*list) {
  return adding<Record>(shop.book, summary, path, &Record::job_id,
                        [shop, list](const Record& said) { require_followed(shop, said, list); });
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

/// Something that is opened or mixed, and how long it stays good.
struct MaterialOffered {
  std::string id, name;
  std::optional<double> good_days;
  std::string lot_rule;
};
void describe(FieldVisitor& visit, MaterialOffered& material) {
  visit.text({"id", "as lots name it"}, material.id, 64);
  visit.text({"name", "in words"}, material.name, 200);
  maybe(visit, {"good_days", "once opened or mixed, where that is known"}, material.good_days,
        [&](const Field& field, double& days) {
          visit.number(field, days, {0, 36500, "days"});
        });
  visit.text({"lot_rule", "what to keep to; may be empty"}, material.lot_rule, 2000);
}
struct MaterialList {
  std::vector<MaterialOffered> materials;
};
void describe(FieldVisitor& visit, MaterialList& answer) {
  list(visit, {"materials", "glues and finishes, as data/adhesives.csv and data/finishes.csv have them"},
       answer.materials, {0, 1000});
}

/// A month of a label is taken as 30 days, which ends no later than the calendar's.
MaterialList material_list(const OperationTables& tables) {
  constexpr double days_a_month = 30;
  MaterialList answer;
  for (const AdhesiveClass& glue : tables.adhesives) {
    std::optional<double> good = glue.mixed_days;
    if (!good && glue.opened_months) good = *glue.opened_months * days_a_month;
    answer.materials.push_back({.id = glue.id, .name = glue.name, .good_days = good, .lot_rule = glue.lot_rule});
  }
  for (const FinishClass& finish : tables.finishes) {
    answer.materials.push_back({.id = finish.id, .name = finish.name, .good_days = {}, .lot_rule = {}});
  }
  return answer;
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
  endpoints.push_back(saying_of_job<JobAnswer>(shop, "Record an answer to one of a job's questions",
                                               "/api/jobs/{id}/answers", &JobStory::answers));
  endpoints.push_back(
      saying_of_job<JobAmount>(shop, "Record how much a job takes", "/api/jobs/{id}/amounts", &JobStory::amounts));
  endpoints.push_back(adding<JobOffer>(book, "Record what the owner was offered for a job", "/api/jobs/{id}/offers",
                                       &JobOffer::job_id));
  endpoints.push_back(adding<OwnerWord>(book, "Record the owner's word", "/api/jobs/{id}/words", &OwnerWord::job_id));
  endpoints.push_back(adding<GateRecord>(book, "Record that work goes on out of range", "/api/visits/{id}/gate",
                                         &GateRecord::visit_id));
  endpoints.push_back(
      adding<PromiseRecord>(book, "Record a promised day", "/api/visits/{id}/promises", &PromiseRecord::visit_id));
  endpoints.push_back(adding<BenchWish>(book, "Record when a visit's instrument is wanted", "/api/visits/{id}/wishes",
                                        &BenchWish::visit_id));
  endpoints.push_back(pinning_work(shop));
  endpoints.push_back({"POST",
                       "/api/shop-air",
                       "Record the shop's air, read or forecast",
                       {},
                       schema_of_request<ShopAir>(),
                       schema_of_result<Kept>(),
                       [&book](const Ask& ask) { return json_answer(Kept{book.add(from_json<ShopAir>(ask.body))}); }});
  endpoints.push_back(
      adding<Handover>(book, "Record that the instrument went home", "/api/visits/{id}/handover", &Handover::visit_id));
  endpoints.push_back(beginning_work(shop));
  endpoints.push_back(ending_work(shop));
  endpoints.push_back(adding<WorkCorrection>(book, "Record what a stretch of work really took",
                                             "/api/work/{id}/corrections", &WorkCorrection::spell_id));
  endpoints.push_back({"GET",
                       "/api/materials",
                       "Glues and finishes that can be opened, and how long each stays good",
                       {},
                       "",
                       schema_of_result<MaterialList>(),
                       [shop](const Ask&) { return json_answer(material_list(shop.tables.repairs.materials)); }});
  add_keeping_lots(endpoints, book);
  return endpoints;
}

}  // namespace tailblock

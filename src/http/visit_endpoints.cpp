#include <algorithm>

#include "book/diagnosis_question.h"
#include "book/estimate_question.h"
#include "book/follow_question.h"
#include "http/adding.h"
#include "http/endpoints.h"
#include "http/visit_papers_of.h"

namespace tailblock {
namespace {

struct NamedChoice {
  std::string id, words;
};
void describe(FieldVisitor& visit, NamedChoice& choice) {
  visit.text({"id", "as records name it"}, choice.id, 64);
  visit.text({"words", "as a person says it"}, choice.words, 500);
}

struct DiagnosisShown {
  DiagnosisAnswer answer;
  std::vector<NamedChoice> symptoms;   ///< what can be complained of
  std::vector<NamedChoice> questions;  ///< what only a person can say
  std::vector<NamedChoice> remedies;   ///< names of the procedures and operations that causes lead to
  std::vector<SaidAtVisit> said;
};
void describe(FieldVisitor& visit, DiagnosisShown& shown) {
  object(visit, {"answer", "as the records tell it"}, shown.answer);
  list(visit, {"symptoms", "what can be complained of"}, shown.symptoms, {0, 1000});
  list(visit, {"questions", "what only a person can say"}, shown.questions, {0, 1000});
  list(visit, {"remedies", "names of what causes lead to"}, shown.remedies, {0, 1000});
  list(visit, {"said", "at this visit, oldest first"}, shown.said, {0, 100000});
}

std::vector<NamedChoice> remedies_of(const DiagnoseResult& result, const RepairTables& tables) {
  std::vector<NamedChoice> named;
  for (const CauseShown& cause : result.causes) {
    for (const std::string& id : cause.remedies) {
      if (std::ranges::find(named, id, &NamedChoice::id) != named.end()) continue;
      const auto* repair = row_of_id(tables.procedures, id);
      const auto* work = row_of_id(tables.operations, id);
      if (repair != nullptr) named.push_back({id, repair->name});
      if (repair == nullptr && work != nullptr) named.push_back({id, work->name});
    }
  }
  return named;
}

DiagnosisShown diagnosis_shown(const Shop& shop, RecordId visit) {
  const VisitWork work = shop.book.visit_work(visit);
  const InstrumentStory story = shop.book.story(work.visit.instrument_id);
  const RepairTables& repairs = shop.tables.repairs;
  DiagnosisShown shown{.answer = diagnosis_answer(story, work, shop.book.survey(visit),
                                                  shop.book.air_log(story.home.id), shop.tables, shop.envelopes),
                       .symptoms = {},
                       .questions = {},
                       .remedies = {},
                       .said = work.said};
  for (const Symptom& symptom : repairs.diagnosis.symptoms) {
    if (symptom.id != "any") shown.symptoms.push_back({symptom.id, symptom.words});
  }
  for (const AskedFact& fact : repairs.diagnosis.facts) shown.questions.push_back({fact.id, fact.question});
  shown.remedies = remedies_of(shown.answer.result, repairs);
  return shown;
}

void require_known(const SaidAtVisit& said, const DiagnosisTables& tables) {
  const bool known = said.about == SaidAbout::symptom ? row_of_id(tables.symptoms, said.name) != nullptr
                                                      : row_of_id(tables.facts, said.name) != nullptr;
  if (!known) throw Refused("name: \"" + said.name + "\" is nothing that the diagnosis asks");
}

struct OffersMade {
  int made = 0;
};
void describe(FieldVisitor& visit, OffersMade& offers) {
  visit.integer({"made", "lines put before the owner"}, offers.made, {0, 1000, ""});
}

/// With the estimate as its paper; a shop without a name has none, and the offers are made all the same.
OffersMade put_before_the_owner(const Shop& shop, RecordId visit) {
  const VisitWork work = shop.book.visit_work(visit);
  const std::vector<JobOffer> offers = offers_to_make(estimate_of(shop, work), work, shop.today());
  if (offers.empty()) return {};
  if (shop_settings(shop.book, {}).name.empty()) {
    for (const JobOffer& offer : offers) shop.book.add(offer);
  } else {
    (void)give_paper(shop, visit, PaperKind::estimate);
  }
  return {.made = static_cast<int>(offers.size())};
}

/// What a job is priced by must be something that its estimate can be made with.
template <class Record>
Endpoint pricing(const Shop& shop, const std::string& summary, const std::string& path,
                 std::vector<Record> JobStory::*list) {
  return adding<Record>(shop.book, summary, path, &Record::job_id, [shop, list](const Record& record) {
    VisitWork visit = shop.book.visit_work(shop.book.job_story(record.job_id).job.visit_id);
    for (JobStory& job : visit.jobs) {
      if (job.job.id == record.job_id) (job.*list).push_back(record);
    }
    (void)estimate_of(shop, visit);
  });
}

Endpoint estimating(const Shop& shop) {
  return {"GET",
          "/api/visits/{id}/estimate",
          "What a visit's repairs cost, in options side by side",
          {},
          "",
          schema_of_result<EstimateAnswer>(),
          [shop](const Ask& ask) { return json_answer(estimate_of(shop, shop.book.visit_work(ask.id))); }};
}

Endpoint offering(const Shop& shop) {
  return {"POST",
          "/api/visits/{id}/offers",
          "Put every line that is new or changed before the owner, on an estimate that is kept",
          {},
          "",
          schema_of_result<OffersMade>(),
          [shop](const Ask& ask) { return json_answer(put_before_the_owner(shop, ask.id)); }};
}

}  // namespace

std::vector<Endpoint> visit_endpoints(const Shop& shop) {
  return {
      estimating(shop),
      offering(shop),
      pricing<JobMaterial>(shop, "Record something bought for a job", "/api/jobs/{id}/materials", &JobStory::materials),
      pricing<JobTerms>(shop, "Record how a job is priced beside its hours", "/api/jobs/{id}/terms", &JobStory::terms),
      {"GET",
       "/api/visits/{id}/diagnosis",
       "What stands behind the complaints of a visit",
       {},
       "",
       schema_of_result<DiagnosisShown>(),
       [shop](const Ask& ask) { return json_answer(diagnosis_shown(shop, ask.id)); }},
      adding<SaidAtVisit>(shop.book, "Record a complaint, or the answer to a question of the diagnosis",
                          "/api/visits/{id}/sayings", &SaidAtVisit::visit_id,
                          [shop](const SaidAtVisit& said) { require_known(said, shop.tables.repairs.diagnosis); }),
      {"GET",
       "/api/visits/{id}/foretold",
       "What was foretold for a visit's day, against what was read",
       {},
       "",
       schema_of_result<FollowAnswer>(),
       [shop](const Ask& ask) {
         const VisitStory visit = shop.book.visit_story(ask.id);
         const InstrumentStory story = shop.book.story(visit.visit.instrument_id);
         return json_answer(follow_answer(story, ask.id, shop.book.air_log(story.home.id), shop.tables));
       }}};
}

}  // namespace tailblock

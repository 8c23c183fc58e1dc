#include "book/estimate_question.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "repair/money.h"

namespace tailblock {
namespace {

/// Hours on paper carry one decimal.
std::string hours_in_words(double hours) { return plain_number(std::round(hours * 10) / 10) + " h"; }

const JobOffer* newest_offer(const JobStory& job) { return job.offers.empty() ? nullptr : &job.offers.back(); }

bool refused(const JobStory& job) {
  const JobOffer* offer = newest_offer(job);
  if (offer == nullptr) return false;
  bool no = false;
  for (const OwnerWord& word : job.words) {
    if (word.offer_id == offer->id) no = word.says == OwnerSays::no;
  }
  return no;
}

LineWhen when_of(const JobStory& job) {
  return refused(job) ? LineWhen::leave_alone : static_cast<LineWhen>(job.job.advice);
}

std::vector<EstimateMaterial> materials_of(const JobStory& job) {
  std::vector<EstimateMaterial> materials;
  for (const JobMaterial& one : job.materials) {
    std::erase_if(materials, [&](const EstimateMaterial& before) { return before.name == one.name; });
    if (!is_nothing(one.quantity)) {
      materials.push_back(
          {.name = one.name, .quantity = one.quantity, .unit_price = one.unit_price, .tax_percent = {}});
    }
  }
  return materials;
}

EstimateLine line_of(const JobStory& job, const VisitWork& visit, const InstrumentStory& story,
                     const ShopSettings& settings, const RepairTables& tables, Date today) {
  ProcedureRequest repair = procedure_request(job, visit, story, tables, today);
  repair.on_record.clear();
  const JobTerms terms = job.terms.empty() ? JobTerms{} : job.terms.back();
  return {.name = tables.procedure(job.job.procedure).name,
          .when = when_of(job),
          .repair = std::move(repair),
          .work = {},
          .materials = materials_of(job),
          .fixed_price = terms.fixed_price,
          .tax_percent = terms.tax_percent.empty() ? settings.tax_percent : terms.tax_percent,
          .risk = terms.risk};
}

std::vector<LearntWork> learnt_from(const std::vector<FinishedWork>& finished, const DurationPrior& prior) {
  std::set<std::string> kinds;
  for (const FinishedWork& work : finished) kinds.insert(work.kind);
  std::vector<LearntWork> learnt;
  for (const std::string& kind : kinds) {
    const LearntDuration of = learnt_duration(finished, kind, prior);
    learnt.push_back({.operation = kind, .factor = std::exp(of.mean), .scatter = of.scale});
  }
  return learnt;
}

std::string words_of(const PricedLine& line, const std::string& currency) {
  std::string words = line.name + ": " + hours_in_words(line.hours.typical);
  words += " (" + hours_in_words(line.hours.low) + " to " + hours_in_words(line.hours.high) + ")";
  if (!is_nothing(line.visit.net)) {
    words += "; arriving and finishing, paid once for the visit, at most " + line.visit.net + " " + currency;
  }
  if (line.cannot_be_undone) words += "; part of it cannot be undone";
  if (line.lowers_value) words += "; part of it lowers value";
  if (!line.risk.empty()) words += ". Risk: " + line.risk;
  return words;
}

std::string difference(const PricedLine& line, const JobOffer& offer, const std::string& currency) {
  if (line.net != offer.net || line.tax != offer.tax || currency != offer.currency) {
    std::string words = "Offered at " + offer.net + " " + offer.currency + " before tax on ";
    words += iso_date(offer.day) + ", now " + line.net + " " + currency;
    return words;
  }
  if (line.visit.net != offer.visit_net || line.visit.tax != offer.visit_tax) {
    const std::string before = offer.visit_net.empty() ? "the price of the line" : offer.visit_net;
    return "Arriving and finishing, paid once for the visit: offered at " + before + ", now " + line.visit.net;
  }
  if (hours_in_words(line.hours.typical) == hours_in_words(offer.hours)) return "";
  return "Offered with " + hours_in_words(offer.hours) + ", now " + hours_in_words(line.hours.typical);
}

}  // namespace

EstimateAnswer estimate_answer(const VisitWork& visit, const InstrumentStory& story, const ShopSettings& settings,
                               const std::vector<FinishedWork>& finished, const DataTables& tables, Date today) {
  std::vector<const JobStory*> jobs;
  for (const JobStory& job : visit.jobs) {
    if (!job.job.withdrawn) jobs.push_back(&job);
  }
  std::ranges::stable_sort(jobs, {}, [](const JobStory* job) { return when_of(*job); });
  EstimateAnswer answer;
  answer.request.currency = settings.currency;
  answer.request.hourly_rate = settings.hourly_rate;
  answer.request.learnt = learnt_from(finished, tables.duration_prior);
  for (const JobStory* job : jobs) {
    answer.request.lines.push_back(line_of(*job, visit, story, settings, tables.repairs, today));
  }
  if (jobs.empty()) throw Refused("lines: no repair is chosen at this visit yet");
  answer.result = estimate(answer.request, tables.repairs);
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    const PricedLine& line = answer.result.lines[i];
    const JobOffer* offer = newest_offer(*jobs[i]);
    const bool said_no = refused(*jobs[i]);
    answer.lines.push_back(
        {.job_id = jobs[i]->job.id,
         .words = words_of(line, answer.result.currency),
         .refused = said_no,
         .differs = offer == nullptr || said_no ? std::string() : difference(line, *offer, answer.result.currency)});
  }
  return answer;
}

std::vector<JobOffer> offers_to_make(const EstimateAnswer& estimate, const VisitWork& visit, Date today) {
  std::vector<JobOffer> offers;
  for (std::size_t i = 0; i < estimate.lines.size(); ++i) {
    const LineOfJob& of = estimate.lines[i];
    const PricedLine& line = estimate.result.lines[i];
    const auto job = std::ranges::find_if(visit.jobs, [&](const JobStory& one) { return one.job.id == of.job_id; });
    const bool offered = newest_offer(*job) != nullptr;
    if (line.when == LineWhen::leave_alone || (offered && of.differs.empty())) continue;
    offers.push_back({.job_id = of.job_id,
                      .day = today,
                      .words = of.words,
                      .hours_low = line.hours.low,
                      .hours = line.hours.typical,
                      .hours_high = line.hours.high,
                      .net = line.net,
                      .tax = line.tax,
                      .currency = estimate.result.currency,
                      .labour = line.labour,
                      .materials = line.materials,
                      .tax_percent = estimate.request.lines[i].tax_percent,
                      .visit_net = line.visit.net,
                      .visit_tax = line.visit.tax});
  }
  return offers;
}

void describe(FieldVisitor& visit, LineOfJob& line) {
  visit.integer({"job_id", "in the book"}, line.job_id, {0, 2147483647, ""});
  visit.text({"words", "the line as the owner reads it"}, line.words, 20000);
  visit.flag({"refused", "the owner said no to it"}, line.refused);
  visit.text({"differs", "from the newest offer; empty: it does not, or there is none"}, line.differs, 1000);
}

void describe(FieldVisitor& visit, EstimateAnswer& answer) {
  object(visit, {"request", "what the model was told"}, answer.request);
  object(visit, {"result", "the lines priced, and the options side by side"}, answer.result);
  list(visit, {"lines", "what each line of the result is in the book"}, answer.lines, {0, 1000});
}

}  // namespace tailblock

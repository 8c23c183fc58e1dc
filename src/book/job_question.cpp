#include "book/job_question.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "book/questions.h"
#include "book/shop_zone.h"

namespace tailblock {
namespace {

std::vector<GivenReading> given_readings(const InstrumentStory& story, const RepairTables& tables, Date today) {
  std::vector<GivenReading> given;
  for (const KnownReading& known : tables.readings) {
    if (known.of != ReadingOf::instrument) continue;
    const Reading* read = latest_kept(story, known.id, today);
    if (read == nullptr) continue;
    given.push_back({.measure = known.id, .value = read->value, .sd = std::nullopt, .earlier = {}, .earlier_sd = {}});
    if (read->gauge_sd > 0) given.back().sd = read->gauge_sd;
  }
  return given;
}

/// The latest of each, by what `name` calls it, in the order in which they were first said.
template <class Record, class Name>
std::vector<Record> latest_of_each(const std::vector<Record>& records, Name name) {
  std::vector<Record> latest;
  for (const Record& record : records) {
    const auto same = std::ranges::find_if(latest, [&](const Record& other) { return name(other) == name(record); });
    if (same == latest.end()) {
      latest.push_back(record);
    } else {
      *same = record;
    }
  }
  return latest;
}

/// Arrival work is done once a visit, whichever job it was done for.
std::vector<std::string> arrival_work_done_elsewhere(const JobStory& job, const VisitWork& visit,
                                                     const RepairTables& tables) {
  std::vector<std::string> done;
  for (const JobStory& other : visit.jobs) {
    if (other.job.id == job.job.id) continue;
    for (const WorkSpell& spell : other.spells) {
      const OperationKind* kind = row_of_id(tables.operations, spell.operation);
      if (spell.finished && kind != nullptr && kind->family == WorkFamily::arrive) done.push_back(spell.operation);
    }
  }
  return done;
}

/// What an answer given for another job settles of the instrument, such as its finish.
void add_settled(const std::string& procedure, const std::string& decision, const std::string& outcome,
                 const RepairTables& tables, std::vector<GivenAnswer>& found) {
  const RepairProcedure* asked = row_of_id(tables.procedures, procedure);
  const ProcedureDecision* question = asked == nullptr ? nullptr : asked->decision(decision);
  if (question == nullptr) return;
  const auto answer = std::ranges::find(question->outcomes, outcome, &DecisionOutcome::outcome);
  if (answer == question->outcomes.end()) return;
  for (const OutcomeIs& is : answer->settles) found.push_back({is.decision, is.outcome});
}

/// What the survey and the instrument's other jobs answer of a job's questions; the later ones stand.
std::vector<GivenAnswer> found_for(const JobStory& job, const VisitWork& visit, const RepairTables& tables) {
  std::vector<GivenAnswer> found;
  for (const AnsweredBefore& one : visit.before) {
    add_settled(one.procedure, one.decision, one.outcome, tables, found);
  }
  for (const JobStory& other : visit.jobs) {
    if (other.job.id == job.job.id || other.job.withdrawn) continue;
    for (const JobAnswer& one : other.answers) {
      add_settled(other.job.procedure, one.decision, one.outcome, tables, found);
    }
  }
  if (job.finding_kind.empty()) return found;
  for (const OutcomeIs& is :
       answered_by(job.finding_kind, job.finding_part, job.job.procedure, tables.finding_answers)) {
    found.push_back({is.decision, is.outcome});
  }
  return found;
}

OwnerStands owner_stands(const JobStory& story) {
  if (story.offers.empty()) return OwnerStands::not_asked;
  OwnerStands stands = OwnerStands::asked;
  for (const OwnerWord& word : story.words) {
    if (word.offer_id != story.offers.back().id) continue;
    stands = word.says == OwnerSays::yes ? OwnerStands::yes : OwnerStands::no;
  }
  return stands;
}

/// What hands did for one operation each time it was taken up, up to where its hands-on part was finished.
std::vector<std::vector<WorkSpell>> rounds_of(const std::vector<WorkSpell>& spells, const std::string& operation) {
  std::vector<std::vector<WorkSpell>> rounds;
  bool open = false;
  for (const WorkSpell& spell : spells) {
    if (spell.operation != operation) continue;
    if (!open) rounds.emplace_back();
    rounds.back().push_back(spell);
    open = !spell.finished;
  }
  return rounds;
}

void follow_work(JobStep& step, const std::vector<WorkSpell>& round, const Moment& now) {
  for (const WorkSpell& spell : round) {
    const auto ended = ending(spell);
    step.minutes_spent += std::max(0, minutes_between(beginning(spell), ended.value_or(now)));
    if (!ended) step.running_spell = spell.id;
  }
  const WorkSpell& last = round.back();
  step.last_spell = last.id;
  if (!last.finished) {
    step.state = StepState::at_work;
    return;
  }
  step.wait_ends = after_wait(*ending(last), static_cast<int>(std::lround(step.step.wait_minutes.typical)));
  step.state = *step.wait_ends > now ? StepState::waiting : StepState::done;
}

std::vector<JobStep> followed(const ProcedureResult& plan, const std::vector<WorkSpell>& spells, const Moment& now) {
  std::map<std::string, std::vector<std::vector<WorkSpell>>> rounds;
  std::map<std::string, std::size_t> taken;
  std::vector<JobStep> steps;
  for (const StepShown& step : plan.steps) {
    steps.push_back({.step = step});
    if (!rounds.contains(step.operation)) rounds[step.operation] = rounds_of(spells, step.operation);
    const auto& done = rounds[step.operation];
    const std::size_t which = taken[step.operation]++;
    if (which < done.size()) follow_work(steps.back(), done[which], now);
  }
  return steps;
}

/// The amount as it was read at the finding, else as its line is drawn.
std::optional<double> measured_amount(const JobStory& job, std::string_view amount, const RepairTables& tables) {
  const AmountMeasure* known = row_of_id(tables.amount_measures, amount);
  if (known == nullptr) return std::nullopt;
  for (const FindingExtent& read : job.at_finding) {
    if (read.measure == known->measure) return in_mm(read.value);
  }
  if (job.drawn_length) return std::round(in_mm(*job.drawn_length));
  return std::nullopt;
}

std::vector<AmountTaken> amounts_taken(const JobStory& job, const ProcedureResult& plan, const RepairTables& tables) {
  std::vector<AmountTaken> taken;
  const RepairProcedure& wanted = tables.procedure(job.job.procedure);
  for (const StepShown& step : plan.steps) {
    const OperationKind& kind = *row_of_id(tables.operations, step.operation);
    if (!kind.grows || std::ranges::any_of(taken, [&](const auto& one) { return one.amount == kind.grows->amount; })) {
      continue;
    }
    AmountTaken one{.amount = kind.grows->amount, .count = kind.grows->usual};
    for (const UsualAmount& usual : wanted.amounts) {
      if (usual.amount == one.amount) one.count = usual.count;
    }
    if (const auto measured = measured_amount(job, one.amount, tables)) {
      one.count = *measured;
      one.measured = true;
    }
    for (const JobAmount& said : job.amounts) {
      if (said.amount == one.amount) one = {.amount = said.amount, .count = said.count, .said = true};
    }
    taken.push_back(one);
  }
  return taken;
}

std::string band_of(const DecisionOutcome& outcome, const KnownReading* reading) {
  if (reading == nullptr) return "";
  std::string band;
  if (outcome.from && outcome.to) band = plain_number(*outcome.from) + " to " + plain_number(*outcome.to);
  if (outcome.from && !outcome.to) band = plain_number(*outcome.from) + " and more";
  if (!outcome.from && outcome.to) band = "under " + plain_number(*outcome.to);
  return band.empty() ? band : band + " " + reading->unit;
}

std::vector<QuestionOffered> questions_offered(const std::string& id, const ProcedureResult& plan,
                                               const RepairTables& tables) {
  std::vector<QuestionOffered> offered;
  for (const DecisionShown& shown : plan.decisions) {
    const ProcedureDecision* decision = tables.procedure(id).decision(shown.decision);
    QuestionOffered question{.decision = shown.decision, .outcomes = {}};
    for (const DecisionOutcome& outcome : decision->outcomes) {
      question.outcomes.push_back({.outcome = outcome.outcome,
                                   .band = band_of(outcome, row_of_id(tables.readings, outcome.about)),
                                   .says = outcome.says,
                                   .stops = outcome.stops});
    }
    offered.push_back(std::move(question));
  }
  return offered;
}

/// Why one operation may not begin: arrival work may but for the owner's yes, so that what holds the rest can be found
/// out.
std::vector<std::string> holds_at(const StepShown& step, const JobPlan& job, const RepairTables& tables) {
  std::vector<std::string> holds;
  if (waits_for_owners_yes(step)) {
    std::string hold = step.value == ValueEffect::lowers ? "It lowers value" : "It is hard or impossible to undo";
    holds.push_back(hold + ": it waits for the owner's recorded yes.");
  }
  if (step.family == WorkFamily::arrive) return holds;
  if (job.owner == OwnerStands::no) holds.emplace_back("The owner said no to this job.");
  if (!job.plan.stopped.empty()) holds.push_back("Stopped: " + job.plan.stopped);
  if (step.held_by_humidity) holds.push_back(job.plan.humidity.words);
  for (const OwnerWord& word : latest_of_each(job.story.words, [](const OwnerWord& one) { return one.operation; })) {
    const bool refused = word.operation == step.operation && word.says == OwnerSays::no;
    if (refused) holds.push_back("The owner said no to it on " + iso_date(word.day) + ".");
  }
  const RepairProcedure& wanted = tables.procedure(job.story.job.procedure);
  for (const DecisionShown& decision : job.plan.decisions) {
    const bool must = wanted.decision(decision.decision)->must && decision.known == OutcomeKnown::assumed;
    if (decision.before != step.operation) continue;
    if (must || decision.known == OutcomeKnown::too_near) {
      holds.push_back("It waits for an answer: " + decision.question);
    }
  }
  return holds;
}

}  // namespace

ProcedureRequest procedure_request(const JobStory& job, const VisitWork& visit, const InstrumentStory& story,
                                   const RepairTables& tables, Date today) {
  ProcedureRequest request{.procedure = job.job.procedure,
                           .readings = given_readings(story, tables, today),
                           .answers = {},
                           .found = found_for(job, visit, tables),
                           .amounts = {},
                           .on_record = arrival_work_done_elsewhere(job, visit, tables),
                           .yes = {},
                           .humidity_override = {}};
  for (const FindingExtent& read : job.at_finding) {
    if (row_of_id(tables.readings, read.measure) == nullptr) continue;
    request.readings.push_back(
        {.measure = read.measure, .value = in_mm(read.value), .sd = std::nullopt, .earlier = {}, .earlier_sd = {}});
  }
  for (const JobAnswer& answer : latest_of_each(job.answers, [](const JobAnswer& one) { return one.decision; })) {
    request.answers.push_back({answer.decision, answer.outcome});
  }
  for (const JobAmount& amount : latest_of_each(job.amounts, [](const JobAmount& one) { return one.amount; })) {
    request.amounts.push_back({amount.amount, amount.count});
  }
  for (const AmountMeasure& known : tables.amount_measures) {
    const auto measured = measured_amount(job, known.id, tables);
    const bool said = std::ranges::find(request.amounts, known.id, &GivenAmount::amount) != request.amounts.end();
    if (measured && !said) request.amounts.push_back({known.id, *measured});
  }
  if (owner_stands(job) == OwnerStands::yes) {
    const OwnerWord& word =
        *std::ranges::find(job.words.rbegin(), job.words.rend(), job.offers.back().id, &OwnerWord::offer_id);
    request.yes.push_back({.operation = "all", .by = word.who, .on = word.day});
  }
  for (const OwnerWord& word : latest_of_each(job.words, [](const OwnerWord& one) { return one.operation; })) {
    if (word.operation.empty() || word.says == OwnerSays::no) continue;
    request.yes.push_back({.operation = word.operation, .by = word.who, .on = word.day});
  }
  if (!visit.overrides.empty()) {
    const GateRecord& gate = visit.overrides.back();
    request.humidity_override = GateOverride{.by = gate.who, .on = gate.day, .why = gate.why};
  }
  return request;
}

std::vector<JobPlan> job_plans(const VisitWork& visit, const InstrumentStory& story, const RepairTables& tables,
                               const Moment& now) {
  std::vector<JobPlan> plans;
  for (const JobStory& job : visit.jobs) {
    JobPlan plan{.story = job,
                 .plan = procedure(procedure_request(job, visit, story, tables, now.day), tables),
                 .steps = {},
                 .amounts = {},
                 .questions = {},
                 .owner = owner_stands(job)};
    plan.questions = questions_offered(job.job.procedure, plan.plan, tables);
    plan.amounts = amounts_taken(job, plan.plan, tables);
    plan.steps = followed(plan.plan, job.spells, now);
    for (JobStep& step : plan.steps) {
      if (step.state == StepState::to_do || step.state == StepState::at_work) {
        step.holds = holds_at(step.step, plan, tables);
      }
    }
    plans.push_back(std::move(plan));
  }
  return plans;
}

void describe(FieldVisitor& visit, JobStep& step) {
  object(visit, {"step", "as the procedure has it"}, step.step);
  choice(visit, {"state", "how far it is"}, step.state, step_state_names);
  visit.number({"minutes_spent", "hands-on, so far"}, step.minutes_spent, {0, 1e6, "min"});
  visit.integer({"running_spell", "the stretch of work hands are at; 0: none"}, step.running_spell,
                {0, 2147483647, ""});
  visit.integer({"last_spell", "the newest stretch of work on it; 0: none yet"}, step.last_spell, {0, 2147483647, ""});
  maybe(visit, {"wait_ends", "once its hands-on part is finished"}, step.wait_ends,
        [&](const Field& field, Moment& moment) { object(visit, field, moment); });
  visit.texts({"holds", "why hands may not take it up now"}, step.holds, 1000, {0, 50});
}

bool waits_for_owners_yes(const StepShown& step) { return step.asks_owner && !step.yes_recorded; }

std::vector<std::string> holds_of(const JobPlan& plan, std::string_view operation) {
  for (const JobStep& step : plan.steps) {
    const bool open = step.state == StepState::to_do || step.state == StepState::at_work;
    if (open && step.step.operation == operation) return step.holds;
  }
  throw Refused("operation: \"" + std::string(operation) + "\" is not left to do in this job as it stands");
}

void describe(FieldVisitor& visit, OutcomeOffered& offered) {
  visit.text({"outcome", "as answers name it"}, offered.outcome, 64);
  visit.text({"band", "of the reading it is about; empty: it is asked"}, offered.band, 200);
  visit.text({"says", "what follows; may be empty"}, offered.says, 500);
  visit.flag({"stops", "nothing more is done then"}, offered.stops);
}

void describe(FieldVisitor& visit, QuestionOffered& question) {
  visit.text({"decision", "the question"}, question.decision, 64);
  list(visit, {"outcomes", "as it may come out"}, question.outcomes, {0, 50});
}

void describe(FieldVisitor& visit, AmountTaken& taken) {
  visit.text({"amount", "what is counted, as data/operations.csv names it"}, taken.amount, 64);
  visit.number({"count", "how many"}, taken.count, {0, 100000, ""});
  visit.flag({"said", "by a person"}, taken.said);
  visit.flag({"measured", "at the finding the job is for; neither: what is usual"}, taken.measured);
}

void describe(FieldVisitor& visit, JobPlan& plan) {
  object(visit, {"story", "what the book keeps of it"}, plan.story);
  object(visit, {"plan", "its operations and questions today"}, plan.plan);
  list(visit, {"steps", "the operations, with what was done of them"}, plan.steps, {0, 400});
  list(visit, {"questions", "those of the plan's decisions, with what each may come out as"}, plan.questions, {0, 100});
  list(visit, {"amounts", "what its minutes grow with"}, plan.amounts, {0, 100});
  choice(visit, {"owner", "whether the owner has agreed to the newest offer"}, plan.owner, owner_stands_names);
}

}  // namespace tailblock

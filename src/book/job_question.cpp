#include "book/job_question.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "book/questions.h"

namespace tailblock {
namespace {

constexpr int day_minutes = 24 * 60;

int minutes_between(const Moment& from, const Moment& to) {
  return static_cast<int>((to.day - from.day).count()) * day_minutes + to.minute - from.minute;
}

Moment beginning(const WorkSpell& spell) { return {spell.began_on, spell.began_minute}; }

std::optional<Moment> ending(const WorkSpell& spell) {
  if (!spell.ended_on) return std::nullopt;
  return Moment{*spell.ended_on, spell.ended_minute};
}

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
  if (!last.finished) {
    step.state = StepState::at_work;
    return;
  }
  step.wait_ends = later(*ending(last), static_cast<int>(std::lround(step.step.wait_minutes.typical)));
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

}  // namespace

Moment later(const Moment& from, int minutes) {
  const int total = from.minute + minutes;
  const int days = total >= 0 ? total / day_minutes : -((day_minutes - 1 - total) / day_minutes);
  return {from.day + std::chrono::days(days), total - days * day_minutes};
}

ProcedureRequest procedure_request(const JobStory& job, const VisitWork& visit, const InstrumentStory& story,
                                   const RepairTables& tables, Date today) {
  ProcedureRequest request{.procedure = job.job.procedure,
                           .readings = given_readings(story, tables, today),
                           .answers = {},
                           .amounts = {},
                           .on_record = arrival_work_done_elsewhere(job, visit, tables),
                           .yes = {},
                           .humidity_override = {}};
  for (const JobAnswer& answer : latest_of_each(job.answers, [](const JobAnswer& one) { return one.decision; })) {
    request.answers.push_back({answer.decision, answer.outcome});
  }
  for (const JobAmount& amount : latest_of_each(job.amounts, [](const JobAmount& one) { return one.amount; })) {
    request.amounts.push_back({amount.amount, amount.count});
  }
  if (owner_stands(job) == OwnerStands::yes) {
    request.yes.push_back({.operation = "all", .by = job.words.back().who, .on = job.words.back().day});
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
                 .owner = owner_stands(job)};
    plan.steps = followed(plan.plan, job.spells, now);
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
  maybe(visit, {"wait_ends", "once its hands-on part is finished"}, step.wait_ends,
        [&](const Field& field, Moment& moment) { object(visit, field, moment); });
}

void describe(FieldVisitor& visit, JobPlan& plan) {
  object(visit, {"story", "what the book keeps of it"}, plan.story);
  object(visit, {"plan", "its operations and questions today"}, plan.plan);
  list(visit, {"steps", "the operations, with what was done of them"}, plan.steps, {0, 400});
  choice(visit, {"owner", "whether the owner has agreed to the newest offer"}, plan.owner, owner_stands_names);
}

}  // namespace tailblock

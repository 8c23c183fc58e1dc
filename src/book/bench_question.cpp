#include "book/bench_question.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "bench/work_of_steps.h"
#include "book/questions.h"
#include "book/shop_zone.h"

namespace tailblock {
namespace {

constexpr int five_minutes = 5;
constexpr int days_of_clock_changes = 600;  // waits are of 200 days at most
constexpr std::size_t most_clock_changes = 8;

/// Spraying, in words, and the humidity it wants.
struct Sprayed {
  std::string name;
  OpenRange percent;
};

/// One operation of a visit: a job's step, the first arrival or the last finishing one of its kind.
struct VisitStep {
  const JobPlan* job;
  const JobStep* step;
  int which;  ///< of the times that its job does it
};

std::vector<VisitStep> steps_of_job(const JobPlan& job) {
  std::map<std::string, int> times;
  std::vector<VisitStep> steps;
  for (const JobStep& step : job.steps) steps.push_back({&job, &step, ++times[step.step.operation]});
  return steps;
}

std::vector<VisitStep> steps_of_visit(const std::vector<JobPlan>& jobs) {
  std::vector<VisitStep> arrive, work, finish;
  std::set<std::string> arriving;
  for (const JobPlan& job : jobs) {
    for (const VisitStep& one : steps_of_job(job)) {
      const StepShown& shown = one.step->step;
      if (shown.family == WorkFamily::work) work.push_back(one);
      if (shown.family == WorkFamily::arrive && arriving.insert(shown.operation).second) arrive.push_back(one);
      if (shown.family != WorkFamily::finish_up) continue;
      std::erase_if(finish, [&](const VisitStep& earlier) {
        return earlier.job != &job && earlier.step->step.operation == shown.operation;
      });
      finish.push_back(one);
    }
  }
  arrive.insert(arrive.end(), work.begin(), work.end());
  arrive.insert(arrive.end(), finish.begin(), finish.end());
  return arrive;
}

/// The latest pin of this operation, unless it was let go.
const Pin* pin_of(const VisitStep& of) {
  const Pin* latest = nullptr;
  for (const Pin& pin : of.job->story.pins) {
    if (pin.operation == of.step->step.operation && pin.which == of.which) latest = &pin;
  }
  return latest != nullptr && latest->day ? latest : nullptr;
}

std::optional<Moment> pinned_to(const VisitStep& of) {
  const Pin* pin = pin_of(of);
  return pin == nullptr ? std::nullopt : std::optional(Moment{*pin->day, pin->minute});
}

const WorkSpell* spell_numbered(const VisitStep& of, RecordId id) {
  const auto found = std::ranges::find(of.job->story.spells, id, &WorkSpell::id);
  return found == of.job->story.spells.end() ? nullptr : &*found;
}

/// The newest stretch of this operation; null before it was begun.
const WorkSpell* last_at_it(const VisitStep& of) {
  const WorkSpell* last = nullptr;
  for (const WorkSpell& spell : of.job->story.spells) {
    if (spell.operation == of.step->step.operation) last = &spell;
  }
  return last;
}

int minutes_left(const VisitStep& of, const Operation& operation) {
  const int left = operation.hands_on_minutes - static_cast<int>(std::lround(of.step->minutes_spent));
  return std::max(five_minutes, (left + five_minutes - 1) / five_minutes * five_minutes);
}

/// How far the book has it: at work, waiting, or where it is pinned to.
void say_how_far(const VisitStep& of, const Moment& now, Operation& operation) {
  switch (of.step->state) {
    case StepState::at_work:
      operation.state = WorkState::at_work;
      operation.minutes_left = minutes_left(of, operation);
      operation.person = last_at_it(of)->person;
      break;
    case StepState::waiting:
      operation.state = WorkState::waiting;
      operation.wait_ends = of.step->wait_ends;
      break;
    case StepState::to_do:
      if (waits_for_owners_yes(of.step->step)) operation.not_before = Moment{now.day + std::chrono::days(1), 0};
      [[fallthrough]];
    case StepState::done:
      if (const auto moment = pinned_to(of); moment && *moment >= now) operation.pinned = moment;
      break;
  }
}

/// When hands let go of a step that is begun: as it was, or as it is expected.
Moment hands_off(const VisitStep& of, const Operation& operation, const Moment& now) {
  const WorkSpell* spell = spell_numbered(of, of.step->last_spell);
  if (of.step->state != StepState::at_work && spell != nullptr && ending(*spell)) return *ending(*spell);
  return later(now, operation.minutes_left.value_or(0));
}

/// A gap from work that is begun or done is no tie any more but a moment to begin by; what stands right after running
/// work stays tied to it.
void gaps_from_begun_work(const std::vector<VisitStep>& steps, std::vector<Operation>& work, const Moment& now) {
  const auto state = [&](std::size_t i) { return steps[i].step->state; };
  for (std::size_t k = 1; k < work.size(); ++k) {
    const auto from_begun = [&](std::size_t from, int minutes) {
      const Moment by = after_wait(hands_off(steps[from], work[from], now), minutes);
      if (state(k) == StepState::to_do) work[k].begin_by = std::min(work[k].begin_by.value_or(by), by);
    };
    if (work[k].greatest_gap_minutes && state(k - 1) == StepState::done) {
      from_begun(k - 1, *work[k].greatest_gap_minutes);
      work[k].greatest_gap_minutes.reset();
    }
    std::erase_if(work[k].greatest_gaps, [&](const GreatestGap& gap) {
      const auto from = static_cast<std::size_t>(std::ranges::find(work, gap.from, &Operation::name) - work.begin());
      if (state(from) == StepState::to_do) return false;
      from_begun(from, gap.minutes);
      return true;
    });
  }
}

/// Of those who do this sort of work.
int longest_stretch(const std::vector<BenchPerson>& people, const std::string& skill) {
  int longest = 0;
  for (const BenchPerson& person : people) {
    if (leaves_to_others(person, skill)) continue;
    for (const ShopHours& hours : person.hours) longest = std::max(longest, hours.to_minute - hours.from_minute);
  }
  return longest;
}

/// Work that no stretch of hours of those who do it holds is put down and taken up again, and then it is tied to
/// nothing.
void split_what_is_too_long(std::vector<Operation>& operations, const std::vector<BenchPerson>& people) {
  for (std::size_t i = 0; i < operations.size(); ++i) {
    Operation& operation = operations[i];
    if (operation.hands_on_minutes <= longest_stretch(people, operation.skill)) continue;
    operation.splittable = true;
    operation.greatest_gap_minutes.reset();
    operation.greatest_gaps.clear();
    if (i + 1 < operations.size()) operations[i + 1].greatest_gap_minutes.reset();
    for (Operation& other : operations)
      std::erase_if(other.greatest_gaps, [&](const GreatestGap& gap) { return gap.from == operation.name; });
  }
}

/// Sorts of work by their names, so that what the plan says is read as it stands.
void name_skills(BenchRequest& request, const std::vector<WorkSkill>& skills) {
  const auto name = [&](std::string& skill) {
    if (const WorkSkill* known = row_of_id(skills, skill)) skill = known->name;
  };
  for (BenchPerson& person : request.people) std::ranges::for_each(person.leaves_to_others, name);
  for (BenchInstrument& instrument : request.instruments) {
    for (Operation& operation : instrument.operations) name(operation.skill);
  }
}

std::string why_not(const std::vector<JobPlan>& jobs) {
  const auto any = [&](OwnerStands stands) {
    return std::ranges::any_of(jobs, [&](const JobPlan& job) { return job.owner == stands; });
  };
  if (any(OwnerStands::asked)) return "the owner has not answered yet";
  if (any(OwnerStands::not_asked)) return "nothing has been offered yet";
  return "the owner refused every job";
}

bool could_be_taken(const std::vector<JobPlan>& jobs) {
  return std::ranges::any_of(
      jobs, [](const JobPlan& job) { return job.owner != OwnerStands::no && !job.story.job.withdrawn; });
}

/// Each sort of spraying on each of the days to come whose air forbids it.
std::vector<HeldByAir> held_by_air(const std::vector<ShopAir>& air, const std::map<std::string, Sprayed>& sprayed) {
  std::map<Date, ShopAir> by_day;
  for (const ShopAir& one : air) by_day[one.day] = one;
  std::vector<HeldByAir> held;
  for (const auto& [day, read] : by_day) {
    const double percent = 100 * read.relative_humidity;
    for (const auto& [work, spraying] : sprayed) {
      const OpenRange& range = spraying.percent;
      const bool fits = (!range.low || percent >= *range.low) && (!range.high || percent <= *range.high);
      if (fits) continue;
      held.push_back({.day = day,
                      .operation = work,
                      .name = spraying.name,
                      .humidity_percent = percent,
                      .forecast = read.forecast,
                      .least_percent = range.low,
                      .most_percent = range.high});
    }
  }
  return held;
}

std::vector<UnfitAir> unfit_air(const std::vector<HeldByAir>& held) {
  std::vector<UnfitAir> unfit;
  unfit.reserve(held.size());
  for (const HeldByAir& one : held) {
    unfit.push_back({.work = one.operation, .from = {one.day, 0}, .until = {one.day + std::chrono::days(1), 0}});
  }
  return unfit;
}

/// A name for the plan that no other instrument has.
std::string plan_name(const InstrumentStory& story, const BenchRequest& request) {
  std::string name = story.instrument.name.substr(0, 100);
  const auto taken = [&] {
    return std::ranges::any_of(request.instruments, [&](const BenchInstrument& one) { return one.name == name; });
  };
  for (int number = 2; taken(); ++number)
    name = story.instrument.name.substr(0, 100) + " (" + std::to_string(number) + ")";
  return name;
}

class Gather {
 public:
  Gather(const Book& book, const RepairTables& repair, const Moment& now, RecordId with_visit)
      : book_(book), repair_(repair), now_(now), with_visit_(with_visit) {}

  void take(const VisitWork& visit) {
    const InstrumentStory story = book_.story(visit.visit.instrument_id);
    std::vector<JobPlan> agreed;
    const std::vector<JobPlan> jobs = job_plans(visit, story, repair_, now_);
    for (const JobPlan& job : jobs) {
      const bool wanted = job.owner == OwnerStands::yes || visit.visit.id == with_visit_;
      if (wanted && !job.story.job.withdrawn) agreed.push_back(job);
    }
    if (agreed.empty()) {
      question_.left_out.push_back({.visit_id = visit.visit.id,
                                    .instrument = story.instrument.name,
                                    .why = why_not(jobs),
                                    .could_be_taken = could_be_taken(jobs)});
      return;
    }
    BenchInstrument instrument;
    instrument.name = plan_name(story, question_.request);
    instrument.arrives = now_;
    wishes_and_promise(visit, instrument);
    add_operations(visit, agreed, instrument);
    if (instrument.operations.empty()) {
      question_.left_out.push_back({.visit_id = visit.visit.id,
                                    .instrument = story.instrument.name,
                                    .why = "all its work is done; it waits to be collected"});
      return;
    }
    question_.instruments.push_back(
        {.instrument = instrument.name,
         .instrument_id = visit.visit.instrument_id,
         .visit_id = visit.visit.id,
         .promised = instrument.promised,
         .due = instrument.due,
         .waits_until = visit.wishes.empty() ? std::nullopt : visit.wishes.back().waits_until,
         .weight = instrument.weight});
    question_.request.instruments.push_back(std::move(instrument));
  }

  [[nodiscard]] BenchQuestion finish(const ShopSettings& settings) {
    BenchRequest& request = question_.request;
    request.now = now_;
    request.clock_changes = clock_changes(now_.day, days_of_clock_changes);
    if (request.clock_changes.size() > most_clock_changes) request.clock_changes.resize(most_clock_changes);
    request.people = settings.people;
    request.stations = settings.stations;
    question_.held_by_air = held_by_air(book_.shop_air(now_.day), sprayed_);
    request.unfit_air = unfit_air(question_.held_by_air);
    add_missing_stations(request);
    for (const auto& [id, work] : pins_) question_.pins_by_age.push_back(work);
    name_skills(request, repair_.materials.skills);
    for (BenchInstrument& instrument : request.instruments)
      split_what_is_too_long(instrument.operations, request.people);
    return std::move(question_);
  }

 private:
  static void wishes_and_promise(const VisitWork& visit, BenchInstrument& instrument) {
    if (!visit.promises.empty()) instrument.promised = instrument.due = visit.promises.back().ready_on;
    if (visit.wishes.empty()) return;
    const BenchWish& wish = visit.wishes.back();
    if (wish.due_on) instrument.due = wish.due_on;
    instrument.weight = wish.weight;
    if (wish.waits_until) instrument.arrives = std::max(instrument.arrives, Moment{*wish.waits_until, 0});
  }

  void add_operations(const VisitWork& visit, const std::vector<JobPlan>& jobs, BenchInstrument& instrument) {
    const std::vector<VisitStep> steps = steps_of_visit(jobs);
    std::vector<StepOfJob> of_jobs;
    of_jobs.reserve(steps.size());
    for (const VisitStep& one : steps)
      of_jobs.push_back({.step = &one.step->step, .job = static_cast<int>(one.job - jobs.data())});
    std::vector<Operation> work = work_of_steps(of_jobs, repair_.figures);
    for (std::size_t i = 0; i < steps.size(); ++i) say_how_far(steps[i], now_, work[i]);
    gaps_from_begun_work(steps, work, now_);
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const StepShown& step = steps[i].step->step;
      if (steps[i].step->state == StepState::done) continue;
      if (step.air == WorkAir::spray) sprayed_[step.operation] = {step.name, step.humidity_percent};
      if (work[i].pinned) pins_[pin_of(steps[i])->id] = {.instrument = instrument.name, .operation = work[i].name};
      question_.work.push_back(work_of(visit, steps[i], instrument.name, work[i]));
      instrument.operations.push_back(std::move(work[i]));
    }
  }

  static BenchWork work_of(const VisitWork& visit, const VisitStep& of, const std::string& instrument,
                           const Operation& operation) {
    const JobStep& step = *of.step;
    const WorkSpell* last = last_at_it(of);
    return {.instrument = instrument,
            .operation = operation.name,
            .instrument_id = visit.visit.instrument_id,
            .visit_id = visit.visit.id,
            .job_id = of.job->story.job.id,
            .operation_id = step.step.operation,
            .which = of.which,
            .state = step.state,
            .running_spell = step.running_spell,
            .running_person = step.running_spell == 0 ? std::string() : last->person,
            .hands_on_minutes = step.step.hands_on_minutes.typical,
            .minutes_spent = step.minutes_spent,
            .wait_for = step.step.wait_for,
            .wait_ends = step.wait_ends,
            .pinned = pinned_to(of),
            .begin_by = operation.begin_by,
            .holds = step.holds,
            .place = step.step.hands_on_station.empty() ? step.step.where : step.step.hands_on_station,
            .materials = step.step.materials,
            .adhesives = step.step.adhesives,
            .clamps = step.step.clamps,
            .cautions = step.step.cautions};
  }

  /// A place that a procedure names and the shop has not listed: taken to be there once.
  static void add_missing_stations(BenchRequest& request) {
    std::set<std::string> known;
    for (const Station& station : request.stations) known.insert(station.name);
    for (const BenchInstrument& instrument : request.instruments) {
      for (const Operation& operation : instrument.operations) {
        for (const HeldStation& held : operation.stations) {
          if (known.insert(held.name).second) request.stations.push_back({.name = held.name});
        }
      }
    }
  }

  const Book& book_;
  const RepairTables& repair_;
  Moment now_;
  RecordId with_visit_;
  BenchQuestion question_;
  std::map<std::string, Sprayed> sprayed_;
  std::map<RecordId, NamedWork> pins_;
};

}  // namespace

BenchQuestion bench_question(const Book& book, const ShopSettings& settings, const RepairTables& repair,
                             const Moment& now, RecordId with_visit) {
  Gather gather(book, repair, now, with_visit);
  for (const VisitWork& visit : book.work_in_the_shop()) gather.take(visit);
  return gather.finish(settings);
}

std::vector<FinishedWork> finished_work(const Book& book, const RepairTables& repair, std::optional<Date> before) {
  std::map<std::pair<RecordId, std::string>, double> minutes;
  std::vector<FinishedWork> finished;
  for (const WorkSpell& spell : book.work_done()) {
    if (before && *spell.ended_on >= *before) continue;
    double& spent = minutes[{spell.job_id, spell.operation}];
    spent += minutes_between(beginning(spell), *ending(spell));
    if (!spell.finished) continue;
    const OperationKind* kind = row_of_id(repair.operations, spell.operation);
    if (kind != nullptr && kind->hands_on.typical > 0 && spent > 0) {
      finished.push_back(
          {.kind = spell.operation, .estimated_minutes = kind->hands_on.typical, .actual_minutes = spent});
    }
    spent = 0;
  }
  return finished;
}

namespace {

constexpr Range record_numbers{0, 2147483647, ""};
constexpr std::size_t name_bytes = 200, line_bytes = 2000;
constexpr Count few_lines{0, 100};
constexpr Range percents{0, 100, "%"};

void maybe_moment(FieldVisitor& visit, const Field& field, std::optional<Moment>& moment) {
  maybe(visit, field, moment, [&](const Field& inner, Moment& one) { object(visit, inner, one); });
}

void maybe_day(FieldVisitor& visit, const Field& field, std::optional<Date>& day) {
  maybe(visit, field, day, [&](const Field& inner, Date& one) { visit.date(inner, one); });
}

}  // namespace

void describe(FieldVisitor& visit, BenchWork& work) {
  visit.text({"instrument", "as the plan names it"}, work.instrument, name_bytes);
  visit.text({"operation", "as the plan names it"}, work.operation, name_bytes);
  visit.integer({"instrument_id", "its number in the book"}, work.instrument_id, record_numbers);
  visit.integer({"visit_id", "the visit"}, work.visit_id, record_numbers);
  visit.integer({"job_id", "the job"}, work.job_id, record_numbers);
  visit.text({"operation_id", "in data/operations.csv"}, work.operation_id, 64);
  visit.integer({"which", "of the times that the job does it"}, work.which, {1, 400, ""});
  choice(visit, {"state", "how far it is"}, work.state, step_state_names);
  visit.integer({"running_spell", "the stretch of work hands are at; 0: none"}, work.running_spell, record_numbers);
  visit.text({"running_person", "whose hands are at it; empty: nobody's"}, work.running_person, name_bytes);
  visit.number({"hands_on_minutes", "what it usually takes"}, work.hands_on_minutes, {0, 1e6, "min"});
  visit.number({"minutes_spent", "hands-on, so far"}, work.minutes_spent, {0, 1e6, "min"});
  visit.text({"wait_for", "what the wait after it is"}, work.wait_for, line_bytes);
  maybe_moment(visit, {"wait_ends", "once its hands-on part is finished"}, work.wait_ends);
  maybe_moment(visit, {"pinned", "the moment it is fixed to"}, work.pinned);
  maybe_moment(visit, {"begin_by", "it should begin by then, since what it follows has stood long enough"},
               work.begin_by);
  visit.texts({"holds", "why hands may not take it up yet"}, work.holds, line_bytes, few_lines);
  visit.text({"place", "where hands do it"}, work.place, line_bytes);
  visit.text({"materials", "what it is done with"}, work.materials, line_bytes);
  visit.texts({"adhesives", "a line each"}, work.adhesives, line_bytes, few_lines);
  visit.texts({"clamps", "how long in them"}, work.clamps, line_bytes, few_lines);
  visit.texts({"cautions", "read before it is begun"}, work.cautions, line_bytes, few_lines);
}

void describe(FieldVisitor& visit, OnTheBench& on) {
  visit.text({"instrument", "as the plan names it"}, on.instrument, name_bytes);
  visit.integer({"instrument_id", "its number in the book"}, on.instrument_id, record_numbers);
  visit.integer({"visit_id", "the visit"}, on.visit_id, record_numbers);
  maybe_day(visit, {"promised", "the day the owner was told"}, on.promised);
  maybe_day(visit, {"due", "the day it is wanted by the end of: as wished, or as promised"}, on.due);
  maybe_day(visit, {"waits_until", "a part or the owner is waited for: no work before that day"}, on.waits_until);
  visit.number({"weight", "how much its lateness counts"}, on.weight, {0, 100, ""});
}

void describe(FieldVisitor& visit, NotPlanned& left) {
  visit.integer({"visit_id", "the visit"}, left.visit_id, record_numbers);
  visit.text({"instrument", "which"}, left.instrument, name_bytes);
  visit.text({"why", "why the plan leaves it out"}, left.why, 1000);
  visit.flag({"could_be_taken", "it has jobs that the owner has not refused"}, left.could_be_taken);
}

void describe(FieldVisitor& visit, HeldByAir& held) {
  visit.date({"day", "the whole of it"}, held.day);
  visit.text({"operation", "in data/operations.csv"}, held.operation, 64);
  visit.text({"name", "in words"}, held.name, name_bytes);
  visit.number({"humidity_percent", "of the shop's air"}, held.humidity_percent, percents);
  visit.flag({"forecast", "expected, not read"}, held.forecast);
  const auto percent = [&](const Field& field, double& number) { visit.number(field, number, percents); };
  maybe(visit, {"least_percent", "the least humidity in which it may be sprayed"}, held.least_percent, percent);
  maybe(visit, {"most_percent", "the most"}, held.most_percent, percent);
}

}  // namespace tailblock

#include "paper/bench_calendar.h"

#include <algorithm>
#include <cmath>

#include "book/job_question.h"
#include "book/shop_zone.h"

namespace tailblock {
namespace {

constexpr auto shown_for = std::chrono::minutes(15);  // a diary draws what lasts no time as a hair line

std::string in_percent(double chance) { return std::to_string(std::lround(100 * chance)) + " %"; }

CalendarEvent promise_event(const VisitWork& visit, const std::string& instrument) {
  const PromiseRecord& promise = visit.promises.back();
  return {.uid = "promise-" + std::to_string(visit.visit.id),
          .title = "Promised: " + instrument,
          .about = "Promised on " + iso_date(promise.said_on) + ", with a chance of " + in_percent(promise.chance) + ".",
          .category = "Promise",
          .when = AllDay{promise.ready_on, promise.ready_on},
          .stamped = instant_of({promise.said_on, 0}),
          .changes = static_cast<int>(visit.promises.size()) - 1};
}

CalendarEvent cure_event(const JobPlan& job, const JobStep& step, const std::string& instrument) {
  const auto spell = std::ranges::find(job.story.spells, step.last_spell, &WorkSpell::id);
  CalendarEvent event{.uid = "cure-" + std::to_string(step.last_spell),
                      .title = "Cure ends: " + step.step.name + ", " + instrument,
                      .about = step.step.wait_for,
                      .category = "Cure",
                      .when = Timed{instant_of(*step.wait_ends), shown_for},
                      .stamped = instant_of(*ending(*spell))};
  for (const WorkCorrection& correction : job.story.corrections) {
    if (correction.spell_id == step.last_spell) ++event.changes;
  }
  return event;
}

}  // namespace

Calendar bench_calendar(const Book& book, const RepairTables& repair, const Moment& now, std::string name,
                        const std::string& identity) {
  Calendar calendar{.name = std::move(name)};
  for (const VisitWork& visit : book.work_in_the_shop()) {
    const InstrumentStory story = book.story(visit.visit.instrument_id);
    const std::string& instrument = story.instrument.name;
    if (!visit.promises.empty()) calendar.events.push_back(promise_event(visit, instrument));
    for (const JobPlan& job : job_plans(visit, story, repair, now)) {
      for (const JobStep& step : job.steps) {
        if (step.state == StepState::waiting) calendar.events.push_back(cure_event(job, step, instrument));
      }
    }
  }
  for (CalendarEvent& event : calendar.events) event.uid += "@" + identity;
  return calendar;
}

}  // namespace tailblock

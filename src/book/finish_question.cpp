#include "book/finish_question.h"

#include <algorithm>
#include <array>

#include "book/questions.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

/// Older than this today, the page says when the air was read.
constexpr int fresh_air_minutes = 60;

bool is_done_with(const std::string& operation, const std::string& finish, const RepairTables& tables) {
  const OperationKind* kind = row_of_id(tables.operations, operation);
  return kind != nullptr && std::ranges::find(kind->finishes, finish) != kind->finishes.end();
}

/// The finish of the step that hands come to next, else of the last that was done.
std::optional<std::string> finish_of(const std::vector<JobPlan>& jobs, const RepairTables& tables) {
  std::optional<std::string> last;
  for (const JobPlan& job : jobs) {
    if (job.story.job.withdrawn) continue;
    for (const JobStep& step : job.steps) {
      const auto& finishes = row_of_id(tables.operations, step.step.operation)->finishes;
      if (finishes.empty()) continue;
      last = finishes.front();
      if (step.state != StepState::done) return last;
    }
  }
  return last;
}

std::vector<FinishOffered> finishes_offered(const std::vector<JobPlan>& jobs, const RepairTables& tables) {
  std::vector<FinishOffered> offered;
  for (const FinishClass& finish : tables.materials.finishes) {
    const bool planned = std::ranges::any_of(jobs, [&](const JobPlan& job) {
      return !job.story.job.withdrawn && std::ranges::any_of(job.steps, [&](const JobStep& step) {
        return is_done_with(step.step.operation, finish.id, tables);
      });
    });
    offered.push_back({.id = finish.id,
                       .name = finish.name,
                       .goes_over = finish.goes_over,
                       .not_over = finish.not_over,
                       .reversibility = finish.reversibility,
                       .planned = planned});
  }
  return offered;
}

struct CoatsKnown {
  int planned = 0, done = 0;
  std::optional<Moment> last;
};

CoatsKnown coats_of(const std::vector<JobPlan>& jobs, const std::string& finish, const RepairTables& tables) {
  CoatsKnown coats;
  for (const JobPlan& job : jobs) {
    if (job.story.job.withdrawn) continue;
    for (const JobStep& step : job.steps) {
      if (!is_done_with(step.step.operation, finish, tables)) continue;
      coats.planned += 1;
      coats.done += step.state == StepState::waiting || step.state == StepState::done ? 1 : 0;
    }
    for (const WorkSpell& spell : job.story.spells) {
      const auto ended = ending(spell);
      if (!spell.finished || !ended || !is_done_with(spell.operation, finish, tables)) continue;
      if (!coats.last || *coats.last < *ended) coats.last = ended;
    }
  }
  return coats;
}

void add_coats(FinishDayRequest& request, const std::vector<JobPlan>& jobs, const RepairTables& tables,
               const FinishWishes& wishes, const Moment& now, std::vector<std::string>& assumed) {
  const CoatsKnown known = coats_of(jobs, request.finish, tables);
  request.coats_done = wishes.coats_done.value_or(known.done);
  if (wishes.coats_wanted) {
    request.coats_wanted = *wishes.coats_wanted;
  } else if (known.planned > 0) {
    request.coats_wanted = known.planned;
  } else if (const FinishClass* finish = row_of_id(tables.materials.finishes, request.finish)) {
    request.coats_wanted = (finish->coats_low + finish->coats_high + 1) / 2;
    assumed.push_back("Coats wanted: " + std::to_string(request.coats_wanted) +
                      ", between the least and the most that are usual; no job of this visit says how many");
  }
  request.coats_wanted = std::max(request.coats_wanted, request.coats_done);
  if (wishes.hours_since_last_coat) {
    request.hours_since_last_coat = wishes.hours_since_last_coat;
  } else if (known.last) {
    request.hours_since_last_coat = std::max(0, minutes_between(*known.last, now)) / 60.0;
  } else if (request.coats_done > 0) {
    assumed.emplace_back("When the last coat went on is not known: its window is left out");
  }
}

/// From now to the last minute that anybody of the shop works today.
double hours_left(const ShopSettings& settings, const Moment& now) {
  const unsigned weekday = std::chrono::weekday(now.day).iso_encoding();
  int last = now.minute;
  for (const BenchPerson& person : settings.people) {
    const bool off = std::ranges::any_of(person.days_off, [&](const DayOff& one) { return one.day == now.day; });
    if (off) continue;
    for (const ShopHours& hours : person.hours) {
      if (static_cast<unsigned>(hours.weekday) == weekday) last = std::max(last, hours.to_minute);
    }
  }
  return (last - now.minute) / 60.0;
}

std::optional<ShopAir> air_of_today(const std::vector<ShopAir>& air, const Moment& now) {
  std::optional<ShopAir> latest;
  for (const ShopAir& one : air) {
    const bool read_today = !one.forecast && one.day == now.day && one.minute <= now.minute;
    if (read_today && (!latest || latest->minute <= one.minute)) latest = one;
  }
  return latest;
}

PlateThickness thickness_of(std::string where, double now, std::optional<double> before, double sd) {
  PlateThickness place{.where = std::move(where), .now = mm(now), .before = {}, .sd = {}};
  if (before) place.before = mm(*before);
  if (sd > 0) place.sd = mm(sd);
  return place;
}

void add_reading_of_top(std::vector<PlateThickness>& places, const InstrumentStory& story, const VisitStory& visit) {
  const std::string words = "Top, at the soundhole";
  const auto found = reading_at(visit, "top_thickness", ReadingState::as_found);
  const auto left = reading_at(visit, "top_thickness", ReadingState::as_left);
  if (left) {
    std::optional<double> before;
    if (found) before = found->value;
    places.push_back(thickness_of(words, left->value, before, left->gauge_sd));
  } else if (found) {
    places.push_back(thickness_of(words, found->value, {}, found->gauge_sd));
  } else if (const Reading* earlier = latest_kept(story, "top_thickness", visit.visit.date)) {
    places.push_back(thickness_of(words + ", at an earlier visit", earlier->value, {}, earlier->gauge_sd));
  }
}

/// A finding's own reading, and the one that a later visit made there.
void add_readings_at_findings(std::vector<PlateThickness>& places, const Survey& survey, const RepairTables& tables) {
  constexpr std::array<std::string_view, 2> measures{"thickness_here", "thickness_at_crack"};
  for (const auto* found : {&survey.found_before, &survey.found_now}) {
    for (const FindingStory& story : *found) {
      for (const std::string_view measure : measures) {
        std::optional<double> first, now;
        const auto read = [&](const std::vector<FindingExtent>& extents, bool at_this_visit) {
          for (const FindingExtent& extent : extents) {
            if (extent.measure != measure) continue;
            if (at_this_visit && now) first = now;
            now = in_mm(extent.value);
          }
        };
        read(story.finding.extents, false);
        for (const DatedChange& said : story.changes) {
          read(said.change.extents, said.change.visit_id == survey.visit_id);
        }
        if (!now) continue;
        const FindingKind* kind = finding_kind(tables.findings, story.finding.kind);
        std::string where = "Finding " + std::to_string(story.number) + ", ";
        where += kind == nullptr ? story.finding.kind : kind->words;
        if (!story.finding.place.empty()) where += ", " + story.finding.place;
        places.push_back(thickness_of(where.substr(0, 120), *now, first, 0));
      }
    }
  }
}

}  // namespace

FinishAnswer finish_answer(const std::vector<JobPlan>& jobs, const InstrumentStory& story, const VisitStory& visit,
                           const Survey& survey, const std::vector<ShopAir>& air, const ShopSettings& settings,
                           const RepairTables& tables, const FinishWishes& wishes, const Moment& now) {
  FinishAnswer answer{.finishes = finishes_offered(jobs, tables), .air = air_of_today(air, now)};
  FinishDayRequest& request = answer.request;
  request.today = now.day;
  if (wishes.finish) {
    request.finish = *wishes.finish;
  } else if (const auto planned = finish_of(jobs, tables)) {
    request.finish = *planned;
  } else {
    answer.assumed.emplace_back("No job of this visit names a finish: choose the one in hand");
  }
  add_coats(request, jobs, tables, wishes, now, answer.assumed);
  request.hours_left_today = hours_left(settings, now);
  request.work_temperature = wishes.work_temperature;
  if (!wishes.work_temperature) answer.assumed.emplace_back("The instrument is as warm as the room");
  add_reading_of_top(request.thickness, story, visit);
  add_readings_at_findings(request.thickness, survey, tables);
  if (answer.air) {
    answer.air_age_minutes = now.minute - answer.air->minute;
    request.air_temperature = celsius(answer.air->temperature_c);
    request.relative_humidity = humidity_fraction(answer.air->relative_humidity);
    if (answer.air_age_minutes > fresh_air_minutes) {
      answer.assumed.push_back("The air is as it was " + std::to_string(answer.air_age_minutes / 60) +
                               " h ago: read it again before a coat");
    }
  }
  FinishDayResult result = finish_day(request, tables.materials, tables.figures);
  answer.thickness = result.thickness;
  if (answer.air) answer.result = std::move(result);
  return answer;
}

void describe(FieldVisitor& visit, FinishOffered& offered) {
  visit.text({"id", "as data/finishes.csv names it"}, offered.id, 64);
  visit.text({"name", "in words"}, offered.name, 200);
  visit.text({"goes_over", "what it holds on"}, offered.goes_over, 500);
  visit.text({"not_over", "what it does not go on"}, offered.not_over, 500);
  visit.text({"reversibility", "whether it can be taken off again"}, offered.reversibility, 200);
  visit.flag({"planned", "a step of one of the visit's jobs is done with it"}, offered.planned);
}

void describe(FieldVisitor& visit, FinishAnswer& answer) {
  const auto part = [&](const Field& field, auto& value) {
    maybe(visit, field, value, [&](const Field& present, auto& known) { object(visit, present, known); });
  };
  list(visit, {"finishes", "that can be asked about"}, answer.finishes, {0, 1000});
  part({"air", "the shop's latest reading of today; absent: not read yet"}, answer.air);
  visit.integer({"air_age_minutes", "since it was read"}, answer.air_age_minutes, {0, 24 * 60, "min"});
  object(visit, {"request", "what the model was told; its air only where it was read"}, answer.request);
  part({"result", "whether a coat goes on, and the calendar; absent: the air was not read"}, answer.result);
  list(visit, {"thickness", "how much may still come off"}, answer.thickness, {0, 100});
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 50});
}

}  // namespace tailblock

#include "cli/demo_bench.h"

#include <algorithm>
#include <cmath>

#include "book/bench_question.h"
#include "book/estimate_question.h"
#include "book/job_question.h"
#include "book/shop_settings.h"

namespace tailblock {
namespace {

constexpr double scatter = 0.25;  // of an operation's minutes about the usual, as a logarithm
constexpr int days_to_look_back = 500;

/// Unbroken hands-on minutes of one day.
struct Stretch {
  Moment from;
  int minutes;
};

std::optional<int> stretch_ends(const ShopHours& hours, const Moment& limit, Date day, int minutes) {
  const int end = day == limit.day ? std::min(hours.to_minute, limit.minute) : hours.to_minute;
  const bool of_the_day = static_cast<int>(std::chrono::weekday(day).iso_encoding()) == hours.weekday;
  if (!of_the_day || end - minutes < hours.from_minute) return std::nullopt;
  return end;
}

/// When hands worked, looking back from now.
class HandsBefore {
 public:
  explicit HandsBefore(const std::vector<BenchPerson>& people) : people_(people) {}

  /// The latest free stretch of a person's hours that ends by `limit`. What is longer than any stretch is cut to it.
  Stretch take(const std::string& name, const Moment& limit, int minutes) {
    const auto person = std::ranges::find(people_, name, &BenchPerson::name);
    if (person == people_.end()) throw Refused("jobs.csv: there is no " + name + " in people.csv");
    int longest = 0;
    for (const ShopHours& hours : person->hours) longest = std::max(longest, hours.to_minute - hours.from_minute);
    Moment by = limit;
    while (true) {
      const Stretch stretch = latest(*person, by, std::min(minutes, longest));
      const auto taken = std::ranges::find_if(taken_, [&](const Taken& other) {
        return other.person == name && stretch.from < later(other.stretch.from, other.stretch.minutes) &&
               other.stretch.from < later(stretch.from, stretch.minutes);
      });
      if (taken == taken_.end()) {
        taken_.push_back({name, stretch});
        return stretch;
      }
      by = taken->stretch.from;
    }
  }

  [[nodiscard]] bool at_work(const std::string& name, const Moment& moment) const {
    const auto person = std::ranges::find(people_, name, &BenchPerson::name);
    return person != people_.end() && std::ranges::any_of(person->hours, [&](const ShopHours& hours) {
             return stretch_ends(hours, moment, moment.day, 0) && moment.minute <= hours.to_minute;
           });
  }

 private:
  struct Taken {
    std::string person;
    Stretch stretch;
  };

  static Stretch latest(const BenchPerson& person, const Moment& limit, int minutes) {
    for (int back = 0; back < days_to_look_back; ++back) {
      const Date day = limit.day - std::chrono::days(back);
      std::optional<int> end;
      for (const ShopHours& hours : person.hours) end = std::max(end, stretch_ends(hours, limit, day, minutes));
      if (end) return {.from = {day, *end - minutes}, .minutes = minutes};
    }
    throw Refused("people.csv: " + person.name + " is never at work");
  }

  const std::vector<BenchPerson>& people_;
  std::vector<Taken> taken_;
};

class Filling {
 public:
  Filling(Book& book, const DemoTables& shop, const DemoBenchTables& bench, const DataTables& tables, const Moment& now)
      : book_(book), shop_(shop), bench_(bench), tables_(tables), now_(now), hands_(bench.people) {}

  void fill() {
    settings();
    for (const DemoLot& lot : bench_.lots) {
      MaterialLot record = lot.record;
      record.opened_on = day(-lot.opened_days_ago);
      record.good_until = day(lot.good_for_days);
      book_.keep(record);
    }
    for (const DemoShopAir& air : bench_.air) {
      ShopAir record = air.record;
      record.day = day(air.days_ahead);
      book_.add(record);
    }
    std::vector<RecordId> jobs;
    for (const DemoJob& job : bench_.jobs) jobs.push_back(fill(job));
    // What a shop learns of its hours it learns from all of its work: the offers come when that is in the book.
    for (std::size_t i = 0; i < jobs.size(); ++i) offer(bench_.jobs[i], jobs[i]);
    for (std::size_t i = 0; i < jobs.size(); ++i) {
      if (bench_.jobs[i].at_hand) take_up(bench_.jobs[i], jobs[i]);
    }
    for (const DemoPromise& promise : bench_.promises) fill(promise);
  }

 private:
  [[nodiscard]] Date day(int from_today) const { return now_.day + std::chrono::days(from_today); }

  void settings() {
    std::vector<Station> places;
    for (const ShopStation& station : tables_.repairs.materials.stations) {
      places.push_back({.name = station.name, .count = station.count});
    }
    ShopSettings settings = shop_settings(book_, places);
    settings.people = bench_.people;
    keep_shop_settings(book_, settings, tables_.repairs.materials.skills);
  }

  /// The instruments of the demo are kept in the order of their table, in an empty book.
  [[nodiscard]] RecordId newest_visit(const std::string& instrument) const {
    const auto row = std::ranges::find(shop_.instruments, instrument, &DemoInstrument::key);
    if (row == shop_.instruments.end()) throw Refused("jobs.csv: there is no instrument " + instrument);
    const InstrumentStory story = book_.story(static_cast<RecordId>(row - shop_.instruments.begin() + 1));
    if (story.visits.empty()) throw Refused("jobs.csv: " + instrument + " has no visit");
    return std::ranges::max_element(story.visits, {}, [](const VisitStory& told) { return told.visit.date; })->visit.id;
  }

  /// The open finding that the repair is for; 0: none, it is for what was read.
  [[nodiscard]] RecordId finding_for(const std::string& procedure, RecordId visit) const {
    const RepairProcedure* repair = row_of_id(tables_.repairs.procedures, procedure);
    if (repair == nullptr) throw Refused("jobs.csv: there is no repair " + procedure);
    const Survey survey = book_.survey(visit);
    for (const auto* found : {&survey.found_now, &survey.found_before}) {
      for (const FindingStory& one : *found) {
        if (one.open && repair->answers(one.finding.kind, one.finding.view)) return one.finding.id;
      }
    }
    return 0;
  }

  RecordId fill(const DemoJob& told) {
    const RecordId visit = newest_visit(told.instrument);
    const RecordId job =
        book_.keep(Job{.visit_id = visit,
                       .finding_id = finding_for(told.procedure, visit),
                       .procedure = told.procedure,
                       .advice = told.advice,
                       .note = told.note});
    const VisitWork work = book_.visit_work(visit);
    const std::vector<JobPlan> plans = job_plans(work, book_.story(work.visit.instrument_id), tables_.repairs, now_);
    const auto plan = std::ranges::find(plans, job, [](const JobPlan& one) { return one.story.job.id; });
    if (!told.goes_on_because.empty() && plan->plan.humidity.holds) {
      book_.add(GateRecord{
          .visit_id = visit, .who = told.person, .day = work.visit.date, .why = told.goes_on_because});
    }
    if (told.done) do_work(told, *plan, job);
    return job;
  }

  /// At what the estimate comes to.
  void offer(const DemoJob& told, RecordId job) {
    if (told.owner == DemoOwnerSays::none) return;
    const VisitWork work = book_.visit_work(newest_visit(told.instrument));
    const EstimateAnswer estimate =
        estimate_answer(work, book_.story(work.visit.instrument_id), shop_settings(book_, {}),
                        finished_work(book_, tables_.repairs, work.visit.date), tables_, now_.day);
    const Date offered = day(-told.offered_days_ago);
    const std::vector<JobOffer> offers = offers_to_make(estimate, work, offered);
    const auto made = std::ranges::find(offers, job, &JobOffer::job_id);
    if (made == offers.end()) throw Refused("jobs.csv: " + told.instrument + " has nothing to offer");
    const RecordId id = book_.add(*made);
    if (told.owner == DemoOwnerSays::asked) return;
    book_.add(OwnerWord{.job_id = job,
                        .offer_id = id,
                        .says = told.owner == DemoOwnerSays::yes ? OwnerSays::yes : OwnerSays::no,
                        .day = offered,
                        .who = "the owner, by telephone"});
  }

  /// Placed from the last operation back, each before the wait that follows it.
  void do_work(const DemoJob& told, const JobPlan& plan, RecordId job) {
    const auto last =
        std::ranges::find(plan.steps, told.done->through, [](const JobStep& step) { return step.step.operation; });
    if (last == plan.steps.end()) {
      throw Refused("jobs.csv: " + told.done->through + " is not in the plan of " + told.instrument);
    }
    NamedChance chance(shop_.seed, told.instrument + "/" + told.procedure + "/minutes");
    Moment limit = later(now_, -told.done->minutes_ago);
    std::vector<std::pair<std::string, Stretch>> done;
    for (auto step = std::reverse_iterator(last + 1); step != plan.steps.rend(); ++step) {
      const double usual = step->step.hands_on_minutes.typical;
      const int minutes = std::max(1, static_cast<int>(std::lround(usual * std::exp(scatter * chance.normal()))));
      if (!done.empty()) limit = later(limit, -static_cast<int>(step->step.wait_minutes.typical));
      done.emplace_back(step->step.operation, hands_.take(told.person, limit, minutes));
      limit = done.back().second.from;
    }
    for (auto one = done.rbegin(); one != done.rend(); ++one) {
      const auto& [operation, stretch] = *one;
      const RecordId spell = begin(told, job, operation, stretch.from);
      const Moment end = later(stretch.from, stretch.minutes);
      book_.end_work(spell, {.day = end.day, .minute = end.minute});
    }
  }

  void take_up(const DemoJob& told, RecordId job) {
    const Moment from = later(now_, -told.at_hand->minutes_ago);
    if (!hands_.at_work(told.person, from) || !hands_.at_work(told.person, now_)) return;
    begin(told, job, told.at_hand->operation, from);
  }

  RecordId begin(const DemoJob& told, RecordId job, const std::string& operation, const Moment& at) {
    return book_.begin_work(
        {.job_id = job, .operation = operation, .person = told.person, .began_on = at.day, .began_minute = at.minute});
  }

  void fill(const DemoPromise& told) {
    const RecordId visit = newest_visit(told.instrument);
    if (told.ready_in_days) {
      book_.add(PromiseRecord{.visit_id = visit,
                              .ready_on = day(*told.ready_in_days),
                              .chance = told.chance,
                              .said_on = day(-told.said_days_ago)});
    }
    BenchWish wish{.visit_id = visit};
    if (told.wanted_in_days) wish.due_on = day(*told.wanted_in_days);
    if (told.waits_until_in_days) wish.waits_until = day(*told.waits_until_in_days);
    if (wish.due_on || wish.waits_until) book_.add(wish);
  }

  Book& book_;
  const DemoTables& shop_;
  const DemoBenchTables& bench_;
  const DataTables& tables_;
  Moment now_;
  HandsBefore hands_;
};

}  // namespace

void fill_demo_bench(Book& book, const DemoTables& shop, const DemoBenchTables& bench, const DataTables& tables,
                     const Moment& now) {
  Filling(book, shop, bench, tables, now).fill();
}

}  // namespace tailblock

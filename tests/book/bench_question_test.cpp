#include "book/bench_question.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;

const RepairTables& repairs() {
  static const RepairTables tables = repair_tables(testing::repository_text);
  return tables;
}

const OperationKind& kind(const std::string& operation) {
  const OperationKind* row = row_of_id(repairs().operations, operation);
  if (row == nullptr) throw Refused(operation + " is not in data/operations.csv");
  return *row;
}

/// A book with one visit, asked on a Thursday at ten.
struct BenchBook : testing::TestBook {
  Moment now{day(2025, 8, 21), 600};
  std::vector<Station> places;

  BenchBook() {
    for (const ShopStation& station : repairs().materials.stations) {
      places.push_back({.name = station.name, .count = station.count});
    }
  }
  RecordId offered(const std::string& procedure) {
    const RecordId job = book.keep(Job{.visit_id = visit, .procedure = procedure});
    book.add(JobOffer{.job_id = job,
                      .day = now.day,
                      .words = procedure,
                      .hours_low = 1,
                      .hours = 2,
                      .hours_high = 3,
                      .net = "100.00",
                      .tax = "0.00",
                      .currency = "EUR"});
    return job;
  }
  void says(RecordId job, OwnerSays word) {
    book.add(OwnerWord{.job_id = job,
                       .offer_id = book.job_story(job).offers.back().id,
                       .says = word,
                       .day = now.day,
                       .who = "A. Player"});
  }
  RecordId agreed(const std::string& procedure) {
    const RecordId job = offered(procedure);
    says(job, OwnerSays::yes);
    return job;
  }
  RecordId begin(RecordId job, const std::string& operation, int minute) {
    return book.begin_work(
        {.job_id = job, .operation = operation, .person = "me", .began_on = now.day, .began_minute = minute});
  }
  [[nodiscard]] BenchQuestion ask(RecordId with_visit = 0) const {
    return bench_question(book, shop_settings(book, places), repairs(), now, with_visit);
  }
  [[nodiscard]] BenchInstrument only() const {
    const BenchQuestion question = ask();
    EXPECT_EQ(question.request.instruments.size(), 1U);
    return question.request.instruments.at(0);
  }
};

const Operation& of_kind(const BenchInstrument& instrument, const std::string& operation) {
  const auto found = std::ranges::find(instrument.operations, operation, &Operation::kind);
  if (found == instrument.operations.end()) throw Refused("no " + operation + " is planned");
  return *found;
}

long times(const BenchInstrument& instrument, const std::string& operation) {
  return std::ranges::count(instrument.operations, operation, &Operation::kind);
}

TEST(BenchQuestion, does_arrival_work_of_two_jobs_once_and_first_and_finishing_work_once_and_last) {
  BenchBook shop;
  shop.agreed("back_brace");
  const RecordId second = shop.agreed("top_crack");
  const BenchInstrument instrument = shop.only();
  std::vector<WorkFamily> families;
  for (const Operation& operation : instrument.operations) families.push_back(kind(operation.kind).family);
  EXPECT_TRUE(std::ranges::is_sorted(families)) << "arrive, work, finish up";
  for (const char* once : {"photograph_before", "tap_and_probe", "string_up", "hand_over_light"}) {
    EXPECT_EQ(times(instrument, once), 1) << once;
  }
  EXPECT_EQ(times(instrument, "reglue_back_brace"), 1);
  EXPECT_GE(times(instrument, "clean_crack"), 1);
  const BenchQuestion question = shop.ask();
  const auto string_up = std::ranges::find(question.work, "string_up", &BenchWork::operation_id);
  ASSERT_NE(string_up, question.work.end());
  EXPECT_EQ(string_up->job_id, second) << "finishing work belongs to the last job that asks for it";
}

TEST(BenchQuestion, does_not_begin_today_what_waits_for_the_owners_yes) {
  BenchBook shop;
  const RecordId job = shop.agreed("refinish");
  EXPECT_EQ(of_kind(shop.only(), "spray_lacquer_coat").not_before, (Moment{shop.now.day + std::chrono::days(1), 0}));
  const BenchQuestion asked = shop.ask();
  const auto coat = std::ranges::find(asked.work, "spray_lacquer_coat", &BenchWork::operation_id);
  ASSERT_NE(coat, asked.work.end());
  ASSERT_FALSE(coat->holds.empty());
  EXPECT_EQ(coat->holds[0], "It lowers value: it waits for the owner's recorded yes.");
  EXPECT_FALSE(of_kind(shop.only(), "photograph_before").not_before);
  shop.book.add(OwnerWord{.job_id = job,
                          .operation = "spray_lacquer_coat",
                          .says = OwnerSays::yes,
                          .day = shop.now.day,
                          .who = "the owner"});
  EXPECT_FALSE(of_kind(shop.only(), "spray_lacquer_coat").not_before);
}

TEST(BenchQuestion, leaves_arrival_work_out_that_another_job_has_done) {
  BenchBook shop;
  const RecordId first = shop.agreed("back_brace");
  shop.agreed("top_crack");
  shop.book.end_work(shop.begin(first, "photograph_before", 560), {.day = shop.now.day, .minute = 570});
  EXPECT_EQ(times(shop.only(), "photograph_before"), 0);
}

TEST(BenchQuestion, follows_one_operation_from_running_through_its_wait_to_done) {
  BenchBook shop;
  const RecordId job = shop.agreed("back_brace");
  const int usual = static_cast<int>(kind("reglue_back_brace").hands_on.typical);
  const int wait = static_cast<int>(kind("reglue_back_brace").wait.typical);
  const RecordId spell = shop.begin(job, "reglue_back_brace", 590);
  {
    const BenchInstrument instrument = shop.only();
    const Operation& running = of_kind(instrument, "reglue_back_brace");
    EXPECT_EQ(running.state, WorkState::at_work);
    EXPECT_EQ(running.minutes_left, usual - 10);
    EXPECT_EQ(running.person, "me");
    const BenchQuestion question = shop.ask();
    const auto work = std::ranges::find(question.work, "reglue_back_brace", &BenchWork::operation_id);
    EXPECT_EQ(work->running_spell, spell);
    EXPECT_EQ(work->running_person, "me");
    EXPECT_EQ(work->minutes_spent, 10);
    EXPECT_FALSE(work->cautions.empty());
  }
  shop.book.end_work(spell, {.day = shop.now.day, .minute = 600});
  {
    const BenchInstrument instrument = shop.only();
    const Operation& waiting = of_kind(instrument, "reglue_back_brace");
    EXPECT_EQ(waiting.state, WorkState::waiting);
    EXPECT_EQ(waiting.wait_ends, later(shop.now, wait));
  }
  shop.now = later(shop.now, wait);
  EXPECT_EQ(times(shop.only(), "reglue_back_brace"), 0) << "its wait has run out";
}

TEST(BenchQuestion, work_put_down_goes_on_by_the_hands_that_began_it_whatever_they_did_since) {
  BenchBook shop;
  const RecordId job = shop.agreed("back_brace");
  const RecordId spell = shop.begin(job, "clean_brace_joint", 560);
  shop.book.end_work(spell, {.day = shop.now.day, .minute = 570, .finished = false});
  const RecordId other = shop.book.begin_work({.job_id = job,
                                               .operation = "photograph_before",
                                               .person = "Ben",
                                               .began_on = shop.now.day,
                                               .began_minute = 571});
  shop.book.end_work(other, {.day = shop.now.day, .minute = 580});
  const BenchInstrument instrument = shop.only();
  EXPECT_EQ(of_kind(instrument, "clean_brace_joint").state, WorkState::at_work);
  EXPECT_EQ(of_kind(instrument, "clean_brace_joint").person, "me");
  EXPECT_EQ(shop.ask().work.at(0).running_spell, 0);
}

TEST(BenchQuestion, carries_greatest_gaps_and_the_stations_of_waits) {
  BenchBook shop;
  shop.agreed("back_brace");
  const BenchInstrument instrument = shop.only();
  EXPECT_EQ(of_kind(instrument, "reglue_back_brace").greatest_gap_minutes,
            static_cast<int>(kind("rehearse_brace_clamping").greatest_gap.value()));
  const auto& jacks = of_kind(instrument, "reglue_back_brace").stations;
  ASSERT_EQ(jacks.size(), 1U);
  EXPECT_EQ(jacks[0].name, "inside jacks");
  EXPECT_EQ(jacks[0].wait_minutes, 180);
  EXPECT_FALSE(of_kind(instrument, "rehearse_brace_clamping").greatest_gap_minutes);
}

TEST(BenchQuestion, carries_a_gap_to_work_that_does_not_stand_right_after) {
  BenchBook shop;
  const RecordId job = shop.agreed("back_brace");
  const int two_days = static_cast<int>(kind("clean_brace_joint").greatest_gap.value());
  {
    const BenchInstrument instrument = shop.only();
    const Operation& glue = of_kind(instrument, "reglue_back_brace");
    ASSERT_EQ(glue.greatest_gaps.size(), 1U);
    EXPECT_EQ(glue.greatest_gaps[0].from, of_kind(instrument, "clean_brace_joint").name);
    EXPECT_EQ(glue.greatest_gaps[0].minutes, two_days);
    EXPECT_FALSE(glue.begin_by);
  }
  shop.book.end_work(shop.begin(job, "clean_brace_joint", 570), {.day = shop.now.day, .minute = 590});
  const BenchQuestion question = shop.ask();
  const Operation& glue = of_kind(question.request.instruments.at(0), "reglue_back_brace");
  EXPECT_TRUE(glue.greatest_gaps.empty()) << "what it led from is done";
  EXPECT_EQ(glue.begin_by, later({shop.now.day, 590}, two_days));
  EXPECT_TRUE(glue.greatest_gap_minutes) << "the rehearsal is still to come";
  const auto work = std::ranges::find(question.work, "reglue_back_brace", &BenchWork::operation_id);
  EXPECT_EQ(work->begin_by, glue.begin_by);
}

TEST(BenchQuestion, work_right_after_what_is_done_is_to_begin_by_a_moment) {
  BenchBook shop;
  const RecordId job = shop.agreed("back_brace");
  const int hour = static_cast<int>(kind("rehearse_brace_clamping").greatest_gap.value());
  shop.book.end_work(shop.begin(job, "rehearse_brace_clamping", 570), {.day = shop.now.day, .minute = 590});
  const BenchInstrument instrument = shop.only();
  EXPECT_FALSE(of_kind(instrument, "reglue_back_brace").greatest_gap_minutes);
  EXPECT_EQ(of_kind(instrument, "reglue_back_brace").begin_by, later({shop.now.day, 590}, hour));
}

TEST(BenchQuestion, a_wait_over_the_night_of_a_clock_change_ends_an_hour_later_by_the_clock) {
  const testing::InZone zone("Europe/Berlin");
  BenchBook shop;
  shop.now = {day(2026, 3, 28), 1000};  // clocks go forward in the night, see shop_zone_test.cpp
  const RecordId job = shop.agreed("back_brace");
  ASSERT_EQ(shop.ask().request.clock_changes.size(), 4U) << "in 600 days";
  EXPECT_EQ(shop.ask().request.clock_changes[0].at, (Moment{day(2026, 3, 29), 120}));
  shop.book.end_work(shop.begin(job, "reglue_back_brace", 980), {.day = shop.now.day, .minute = 1000});
  const int wait = static_cast<int>(kind("reglue_back_brace").wait.typical);
  ASSERT_GT(wait, 600);
  ASSERT_LT(wait, 3 * 1440);
  EXPECT_EQ(of_kind(shop.only(), "reglue_back_brace").wait_ends, later(shop.now, wait + 60));
}

TEST(BenchQuestion, keeps_spraying_off_days_whose_air_is_unfit_by_the_latest_forecast) {
  BenchBook shop;
  shop.agreed("refinish");
  const Date tomorrow = shop.now.day + std::chrono::days(1);
  const auto forecast = [&](double relative_humidity) {
    shop.book.add(ShopAir{.day = tomorrow, .relative_humidity = relative_humidity, .forecast = true});
  };
  EXPECT_TRUE(shop.ask().request.unfit_air.empty());
  forecast(0.7);
  const BenchQuestion damp = shop.ask();
  ASSERT_EQ(damp.request.unfit_air.size(), 1U);
  EXPECT_EQ(damp.request.unfit_air[0].work, "spray_lacquer_coat");
  EXPECT_EQ(damp.request.unfit_air[0].from, (Moment{tomorrow, 0}));
  EXPECT_EQ(damp.request.unfit_air[0].until, (Moment{tomorrow + std::chrono::days(1), 0}));
  ASSERT_EQ(damp.held_by_air.size(), 1U);
  EXPECT_NEAR(damp.held_by_air[0].humidity_percent, 70, 1e-9);
  EXPECT_EQ(damp.held_by_air[0].most_percent, kind("spray_lacquer_coat").humidity.high);
  EXPECT_TRUE(damp.held_by_air[0].forecast);
  EXPECT_EQ(of_kind(damp.request.instruments[0], "spray_lacquer_coat").air_work, "spray_lacquer_coat");
  forecast(0.5);
  EXPECT_TRUE(shop.ask().request.unfit_air.empty()) << "the latest forecast of a day stands";
  forecast(0.2);
  EXPECT_EQ(shop.ask().request.unfit_air.size(), 1U) << "too dry is unfit as well";
}

TEST(BenchQuestion, leaves_out_what_the_owner_has_not_agreed_to_and_says_why) {
  BenchBook shop;
  const RecordId job = shop.offered("set_up");
  const BenchQuestion asked = shop.ask();
  EXPECT_TRUE(asked.request.instruments.empty());
  ASSERT_EQ(asked.left_out.size(), 1U);
  EXPECT_EQ(asked.left_out[0].why, "the owner has not answered yet");
  EXPECT_TRUE(asked.left_out[0].could_be_taken);
  EXPECT_EQ(shop.ask(shop.visit).request.instruments.size(), 1U) << "as if it were taken too";

  shop.says(job, OwnerSays::no);
  const BenchQuestion refused = shop.ask();
  EXPECT_TRUE(refused.request.instruments.empty());
  EXPECT_EQ(refused.left_out.at(0).why, "the owner refused every job");
  EXPECT_FALSE(refused.left_out[0].could_be_taken);

  shop.agreed("tuner_bushings");
  const BenchInstrument instrument = shop.only();
  EXPECT_EQ(times(instrument, "refit_bushings"), 1);
  EXPECT_EQ(times(instrument, "set_relief"), 0) << "of the job that was refused";
}

TEST(BenchQuestion, pins_until_it_is_let_go_or_past) {
  BenchBook shop;
  const RecordId job = shop.agreed("back_brace");
  const Moment wanted{day(2025, 8, 25), 780};
  const auto pin = [&](std::optional<Date> on, int minute) {
    shop.book.add(Pin{.job_id = job, .operation = "clean_brace_joint", .day = on, .minute = minute});
  };
  const auto pinned = [&] { return of_kind(shop.only(), "clean_brace_joint").pinned; };
  EXPECT_FALSE(pinned());
  pin(wanted.day, wanted.minute);
  EXPECT_EQ(pinned(), wanted);
  pin({}, 0);
  EXPECT_FALSE(pinned());
  pin(shop.now.day, 540);
  EXPECT_FALSE(pinned()) << "a pin that has gone by";
}

TEST(BenchQuestion, a_promise_is_the_day_it_is_due_unless_another_was_wished_for) {
  BenchBook shop;
  shop.agreed("set_up");
  EXPECT_FALSE(shop.only().due);
  shop.book.add(PromiseRecord{.visit_id = shop.visit, .ready_on = day(2025, 9, 1), .said_on = shop.now.day});
  shop.book.add(PromiseRecord{.visit_id = shop.visit, .ready_on = day(2025, 9, 3), .said_on = shop.now.day});
  EXPECT_EQ(shop.only().promised, day(2025, 9, 3)) << "the latest stands";
  EXPECT_EQ(shop.only().due, day(2025, 9, 3));
  shop.book.add(
      BenchWish{.visit_id = shop.visit, .due_on = day(2025, 8, 29), .weight = 2, .waits_until = day(2025, 8, 26)});
  const BenchInstrument wished = shop.only();
  EXPECT_EQ(wished.promised, day(2025, 9, 3));
  EXPECT_EQ(wished.due, day(2025, 8, 29));
  EXPECT_EQ(wished.weight, 2);
  EXPECT_EQ(wished.arrives, (Moment{day(2025, 8, 26), 0}));
  EXPECT_EQ(shop.ask().instruments.at(0).waits_until, day(2025, 8, 26));
}

TEST(BenchQuestion, work_that_no_stretch_of_hours_holds_may_be_put_down) {
  BenchBook shop;
  ShopSettings settings = shop_settings(shop.book, shop.places);
  settings.people[0].hours.clear();
  for (int weekday = 1; weekday <= 5; ++weekday) {
    settings.people[0].hours.push_back({.weekday = weekday, .from_minute = 540, .to_minute = 600});
  }
  keep_shop_settings(shop.book, settings, repairs().materials.skills);
  shop.agreed("refinish");
  const BenchQuestion question = shop.ask();
  const BenchInstrument& instrument = question.request.instruments.at(0);
  for (const Operation& operation : instrument.operations) {
    EXPECT_EQ(operation.splittable, operation.hands_on_minutes > 60) << operation.name;
  }
  EXPECT_TRUE(of_kind(instrument, "strip_later_finish").splittable);
}

/// A shop of "me", in all day, and Ben, in for some hours each morning.
ShopSettings with_ben(const BenchBook& shop, int hours) {
  ShopSettings settings = shop_settings(shop.book, shop.places);
  settings.people.resize(1);
  settings.people[0].leaves_to_others.clear();
  settings.people.push_back({.name = "Ben", .hours = {}, .days_off = {}, .leaves_to_others = {}});
  for (int weekday = 1; weekday <= 5; ++weekday) {
    settings.people[1].hours.push_back({.weekday = weekday, .from_minute = 540, .to_minute = 540 + 60 * hours});
  }
  return settings;
}

TEST(BenchQuestion, names_the_sort_of_work_and_leaves_it_to_those_who_do_it) {
  const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));
  BenchBook shop;
  shop.agreed("nut");
  ShopSettings settings = with_ben(shop, 2);
  settings.people[0].leaves_to_others = {"nut_and_saddle_work"};
  keep_shop_settings(shop.book, settings, repairs().materials.skills);
  const BenchQuestion question = shop.ask();
  EXPECT_EQ(of_kind(question.request.instruments.at(0), "fit_nut_blank").skill, "nut and saddle work");
  EXPECT_EQ(of_kind(question.request.instruments.at(0), "string_up").skill, "");
  EXPECT_EQ(question.request.people.at(0).leaves_to_others, std::vector<std::string>{"nut and saddle work"});
  int by_ben = 0;
  for (const PlannedOperation& one : bench(question.request, weights).operations) {
    const auto work = std::ranges::find(question.work, one.operation, &BenchWork::operation);
    if (kind(work->operation_id).skill != "nut_and_saddle_work") continue;
    EXPECT_EQ(one.person, "Ben") << one.operation;
    ++by_ben;
  }
  EXPECT_GT(by_ben, 2);
}

TEST(BenchQuestion, work_that_no_stretch_of_those_who_do_it_holds_may_be_put_down) {
  BenchBook shop;
  shop.agreed("refinish");
  ShopSettings settings = with_ben(shop, 2);
  settings.people[0].leaves_to_others = {"finish_work"};
  keep_shop_settings(shop.book, settings, repairs().materials.skills);
  const BenchQuestion question = shop.ask();
  for (const Operation& operation : question.request.instruments.at(0).operations) {
    const bool bens = operation.skill == "finish work";
    EXPECT_EQ(operation.splittable, operation.hands_on_minutes > (bens ? 120 : 270)) << operation.name;
  }
  EXPECT_TRUE(of_kind(question.request.instruments.at(0), "strip_later_finish").splittable);
}

TEST(BenchQuestion, is_one_that_the_planner_takes_for_every_repair) {
  const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));
  for (const RepairProcedure& procedure : repairs().procedures) {
    BenchBook shop;
    shop.agreed(procedure.id);
    BenchQuestion question = shop.ask();
    question.request.plans = 1;
    const BenchResult plan = bench(question.request, weights);
    EXPECT_EQ(plan.operations.size(), question.work.size()) << procedure.id;
    std::set<std::string> names;
    for (const BenchWork& work : question.work) EXPECT_TRUE(names.insert(work.operation).second) << work.operation;
  }
}

/// Six hours, since a footprint cleaned dries for four and wants its bridge within eight.
TEST(BenchQuestion, is_one_that_the_planner_takes_whoever_leaves_what) {
  const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));
  for (const RepairProcedure& procedure : repairs().procedures) {
    BenchBook shop;
    shop.agreed(procedure.id);
    for (const WorkSkill& skill : repairs().materials.skills) {
      for (const std::size_t leaves : {0U, 1U}) {
        ShopSettings settings = with_ben(shop, 6);
        settings.people[leaves].leaves_to_others = {skill.id};
        keep_shop_settings(shop.book, settings, repairs().materials.skills);
        BenchRequest request = shop.ask().request;
        request.plans = 1;
        EXPECT_NO_THROW((void)bench(request, weights)) << procedure.id << ", " << skill.id << ", " << leaves;
      }
    }
  }
}

TEST(FinishedWork, adds_up_the_stretches_of_one_operation) {
  BenchBook shop;
  const RecordId job = shop.agreed("back_brace");
  const RecordId first = shop.begin(job, "clean_brace_joint", 540);
  shop.book.end_work(first, {.day = shop.now.day, .minute = 552, .finished = false});
  EXPECT_TRUE(finished_work(shop.book, repairs()).empty());
  const RecordId second = shop.begin(job, "clean_brace_joint", 580);
  shop.book.end_work(second, {.day = shop.now.day, .minute = 595});
  const std::vector<FinishedWork> finished = finished_work(shop.book, repairs());
  ASSERT_EQ(finished.size(), 1U);
  EXPECT_EQ(finished[0].kind, "clean_brace_joint");
  EXPECT_EQ(finished[0].actual_minutes, 27);
  EXPECT_EQ(finished[0].estimated_minutes, kind("clean_brace_joint").hands_on.typical);
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include <charconv>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "plan_checker.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::at_station;
using testing::empty_shop;
using testing::work;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

Moment minute_of(const BenchRequest& request, long minute) {
  return {.day = request.now.day + std::chrono::days(minute / 1440), .minute = static_cast<int>(minute % 1440)};
}

int minute_after_monday(const BenchRequest& request, const Moment& moment) {
  return days_between(request.now.day, moment.day) * 1440 + moment.minute;
}

/// `20+60<240;30` as operations named 1, 2 ...
std::vector<Operation> operations_of(std::string_view text) {
  std::vector<Operation> operations{work("1", 0)};
  char field = ';';
  while (!text.empty()) {
    int number = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), number).ptr;
    Operation& operation = operations.back();
    if (field == ';') operation.hands_on_minutes = number;
    if (field == '+') operation.wait_minutes = number;
    if (field == '>') operation.least_gap_minutes = number;
    if (field == '<') operation.greatest_gap_minutes = number;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    if (text.empty()) break;
    field = text.front();
    text.remove_prefix(1);
    if (field == ';') operations.push_back(work(std::to_string(operations.size() + 1), 0));
  }
  return operations;
}

BenchInstrument instrument(const BenchRequest& request, const std::string& name, long free_from,
                           std::vector<Operation> operations) {
  BenchInstrument made;
  made.name = name;
  made.arrives = minute_of(request, free_from);
  made.operations = std::move(operations);
  return made;
}

const PlannedOperation& planned(const BenchResult& result, const std::string& instrument, const std::string& name) {
  for (const PlannedOperation& operation : result.operations) {
    if (operation.instrument == instrument && operation.operation == name) return operation;
  }
  throw Refused(name + " of " + instrument + " is not planned");
}

BenchResult plan_without_faults(const BenchRequest& request) {
  BenchResult result = bench(request, weights);
  for (const std::string& fault : testing::faults_of(request, result)) ADD_FAILURE() << fault;
  EXPECT_NEAR(result.cost.total, testing::cost_again(request, result, weights), 1e-6);
  return result;
}

TEST(BenchCalendar, keeps_shop_hours_for_hands_and_the_clock_for_waits) {
  testing::Published table("bench_calendar.csv");
  for (const CsvRow& row : table.rows()) {
    BenchRequest request = empty_shop();
    request.instruments = {
        instrument(request, "it", row.whole_number("free_from", {0, 1e6, ""}), operations_of(row.name("work")))};
    const BenchResult result = plan_without_faults(request);
    const std::string asked(row.name("asked"));
    const PlannedOperation& operation = planned(result, "it", asked.substr(0, 1));
    const std::string what = asked.substr(2);
    const Moment& moment = what == "starts" ? operation.starts
                           : what == "ends" ? operation.hands_on_ends
                                            : operation.wait_ends;
    table.check(row, minute_after_monday(request, moment));
  }
}

/// Cleaned at the end of a day, rehearsed and glued on the next morning; where a night is too long, all on one day.
TEST(BenchCalendar, keeps_a_greatest_gap_from_further_back) {
  for (const int gap : {180, 1440}) {
    BenchRequest request = empty_shop();
    std::vector<Operation> tied{work("prepare", 300), work("clean", 60), work("rehearse", 90), work("glue", 120)};
    tied[3].greatest_gaps = {{.from = "clean", .minutes = gap}};
    request.instruments = {instrument(request, "it", 0, tied)};
    const BenchResult result = plan_without_faults(request);
    EXPECT_EQ(minute_after_monday(request, planned(result, "it", "clean").starts), gap == 180 ? 1440 + 540 : 840);
    EXPECT_EQ(minute_after_monday(request, planned(result, "it", "glue").starts), gap == 180 ? 1440 + 690 : 1440 + 540);
  }
}

TEST(BenchCalendar, cleans_no_earlier_than_what_is_pinned_may_follow) {
  BenchRequest request = empty_shop();
  std::vector<Operation> tied{work("clean", 60), work("rehearse", 90), work("glue", 120)};
  tied[2].greatest_gaps = {{.from = "clean", .minutes = 240}};
  tied[2].pinned = minute_of(request, 2 * 1440 + 900);
  request.instruments = {instrument(request, "it", 0, tied)};
  EXPECT_EQ(minute_after_monday(request, planned(plan_without_faults(request), "it", "clean").starts), 2 * 1440 + 600);
}

/// Two days of dearer work would have the glue wait until it cures past the pinned stringing.
TEST(BenchCalendar, glues_so_soon_that_the_cure_ends_before_what_is_pinned) {
  BenchRequest request = empty_shop();
  std::vector<Operation> glued{work("glue", 30, 1440), work("string", 60)};
  glued[1].pinned = minute_of(request, 2 * 1440 + 600);
  request.instruments = {instrument(request, "it", 0, glued), instrument(request, "dear", 0, {work("level", 490)}),
                         instrument(request, "dearer", 0, {work("fret", 490)})};
  for (std::size_t i = 1; i < 3; ++i) {
    request.instruments[i].weight = 100;
    request.instruments[i].due = request.now.day;
  }
  const BenchResult result = plan_without_faults(request);
  EXPECT_LE(minute_after_monday(request, planned(result, "it", "glue").wait_ends), 2 * 1440 + 600);
}

TEST(BenchCalendar, takes_up_first_what_should_begin_soon_and_says_what_cannot) {
  BenchRequest request = empty_shop();
  request.instruments = {instrument(request, "first in", 0, {work("level", 400)}),
                         instrument(request, "cleaned", 0, {work("glue", 60)})};
  request.instruments[0].weight = 3;
  request.instruments[0].due = request.now.day;
  request.instruments[1].operations[0].begin_by = minute_of(request, 600);
  BenchResult result = plan_without_faults(request);
  EXPECT_EQ(minute_after_monday(request, planned(result, "cleaned", "glue").starts), 540);
  EXPECT_TRUE(result.overdue.empty());
  EXPECT_EQ(result.cost.overdue, 0);
  request.instruments[1].operations[0].begin_by = Moment{.day = request.now.day - std::chrono::days(1), .minute = 540};
  result = plan_without_faults(request);
  EXPECT_EQ(result.overdue,
            std::vector<std::string>{"\"glue\" of \"cleaned\" begins 2026-03-02 09:00, and should have by 2026-03-01 "
                                     "09:00: what it follows has stood too long, see whether it must be done again"});
  EXPECT_EQ(result.cost.overdue, weights.begun_overdue + weights.begun_overdue_day);
}

TEST(BenchCalendar, frees_a_station_when_the_wait_that_keeps_it_ends) {  // C04
  BenchRequest request = empty_shop();
  request.stations = {{.name = "clamps", .count = 1}};
  Operation queued = at_station(work("rest in clamps", 0, 60), "clamps", true);
  request.instruments = {instrument(request, "first in", 6750, {at_station(work("glue", 30, 960), "clamps", true)}),
                         instrument(request, "queued", 6755, {queued})};
  request.instruments[0].due = request.now.day;
  request.instruments[0].weight = 100;
  EXPECT_EQ(minute_after_monday(request, planned(plan_without_faults(request), "queued", "rest in clamps").starts),
            7740);
}

/// The first of two coats is on the brush: the second follows within its window, before other work that is wanted more.
TEST(BenchCalendar, keeps_what_is_tied_to_work_at_hand_close_to_it) {
  BenchRequest request = empty_shop();
  Operation at_hand = work("coat", 20, 60);
  at_hand.state = WorkState::at_work;
  at_hand.minutes_left = 15;
  Operation again = work("coat again", 20, 60);
  again.greatest_gap_minutes = 240;
  request.instruments = {instrument(request, "coats", 0, {at_hand, again}),
                         instrument(request, "urgent", 540, {work("frets", 480)})};
  request.instruments[1].weight = 100;
  request.instruments[1].due = request.now.day;
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(minute_after_monday(request, planned(result, "coats", "coat").hands_on_ends), 555);
  EXPECT_EQ(minute_after_monday(request, planned(result, "coats", "coat again").starts), 615);
}

/// Three coats of half an hour, two hours on a rack of two: the spray place is free as soon as hands let go, and the
/// third is begun so that it is done when the rack has room.
TEST(BenchCalendar, keeps_a_place_to_rest_at_only_from_when_hands_let_go) {
  BenchRequest request = empty_shop();
  request.stations = {{.name = "spray place", .count = 1}, {.name = "rack", .count = 2}};
  Operation coat = work("coat", 30, 120);
  coat.stations = {{.name = "spray place"}, {.name = "rack", .hands_on = false, .wait_minutes = 120}};
  for (const char* name : {"one", "two", "three"})
    request.instruments.push_back(instrument(request, name, 540, {coat}));
  request.people.push_back(request.people[0]);
  request.people[1].name = "second";
  const BenchResult result = plan_without_faults(request);
  std::vector<int> starts;
  for (const PlannedOperation& one : result.operations) starts.push_back(minute_after_monday(request, one.starts));
  EXPECT_EQ(starts, (std::vector<int>{540, 570, 660}));
}

/// While one is at work for two hours before it needs the rack, another can hang there for one.
TEST(BenchCalendar, lends_a_place_to_rest_at_while_hands_are_still_on) {
  BenchRequest request = empty_shop();
  request.stations = {{.name = "rack", .count = 1}};
  request.people.push_back(request.people[0]);
  request.people[1].name = "second";
  const auto rests = [](const std::string& name, int hands_on, int wait) {
    Operation made = work(name, hands_on, wait);
    made.stations = {{.name = "rack", .hands_on = false, .wait_minutes = wait}};
    return made;
  };
  request.instruments = {instrument(request, "long", 540, {rests("burst", 120, 600)}),
                         instrument(request, "short", 540, {rests("coat", 30, 60)})};
  request.instruments[0].operations[0].state = WorkState::at_work;
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(minute_after_monday(request, planned(result, "long", "burst").hands_on_ends), 660);
  EXPECT_EQ(minute_after_monday(request, planned(result, "short", "coat").starts), 540);
}

/// The shelf is full until half past nine the next day: half the hour's work is done today, the rest just before.
TEST(BenchCalendar, begins_split_work_as_soon_as_its_end_finds_a_place_to_rest_at) {
  BenchRequest request = empty_shop();
  request.stations = {{.name = "shelf", .count = 1}};
  Operation coat = work("coat", 60, 60);
  coat.stations = {{.name = "shelf", .hands_on = false, .wait_minutes = 60}};
  coat.splittable = true;
  Operation hangs = coat;
  hangs.state = WorkState::waiting;
  hangs.wait_minutes = hangs.stations[0].wait_minutes = 6000;
  hangs.wait_ends = minute_of(request, 1440 + 570);
  request.instruments = {instrument(request, "hangs", 0, {hangs}), instrument(request, "it", 540, {coat})};
  const PlannedOperation split = planned(plan_without_faults(request), "it", "coat");
  EXPECT_EQ(minute_after_monday(request, split.starts), 1020);
  EXPECT_EQ(minute_after_monday(request, split.hands_on_ends), 1440 + 570);
}

/// Two are in the one press, whatever the list says, and a third is being put there: that is told, and the next waits
/// until it is empty.
TEST(BenchCalendar, takes_what_is_begun_as_it_is_where_it_holds_more_than_there_is) {
  BenchRequest request = empty_shop();
  request.stations = {{.name = "press", .count = 1}};
  Operation pressed = at_station(work("glue", 30, 960), "press", true);
  Operation begun = pressed;
  begun.state = WorkState::waiting;
  begun.wait_ends = minute_of(request, 1000);
  Operation at_hand = pressed;
  at_hand.state = WorkState::at_work;
  request.instruments = {instrument(request, "parlour", 0, {begun}), instrument(request, "jumbo", 0, {begun}),
                         instrument(request, "grand", 0, {at_hand}), instrument(request, "next", 0, {pressed})};
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(result.overfull, std::vector<std::string>{"\"press\": the shop has 1, and what is begun takes 3 at once: "
                                                      "\"glue\" of \"parlour\", \"glue\" of \"jumbo\", "
                                                      "\"glue\" of \"grand\""});
  EXPECT_EQ(minute_after_monday(request, planned(result, "grand", "glue").starts), 540);
  EXPECT_EQ(minute_after_monday(request, planned(result, "next", "glue").starts), 1440 + 540);
  request.stations[0].count = 3;
  EXPECT_TRUE(plan_without_faults(request).overfull.empty());

  request.stations[0].count = 1;
  request.instruments.erase(request.instruments.begin());
  request.instruments[0].operations[0].wait_ends = minute_of(request, 570);
  request.instruments[1].operations[0].stations[0].hands_on = false;
  EXPECT_TRUE(plan_without_faults(request).overfull.empty()) << "one leaves it when the other comes";
}

/// An earlier coat has hung for three of its four hours on the rack's one place, which it needs for two.
TEST(BenchCalendar, leaves_a_place_when_the_part_of_a_running_wait_that_keeps_it_is_over) {
  BenchRequest request = empty_shop();
  request.stations = {{.name = "rack", .count = 1}};
  Operation coat = work("coat", 30, 240);
  coat.stations = {{.name = "rack", .hands_on = false, .wait_minutes = 120}};
  Operation hangs = coat;
  hangs.state = WorkState::waiting;
  for (const auto& [wait_ends, starts] : {std::pair(540 + 60, 540), std::pair(540 + 180, 570)}) {
    hangs.wait_ends = minute_of(request, wait_ends);
    request.instruments = {instrument(request, "hangs", 0, {hangs}), instrument(request, "next", 540, {coat})};
    const BenchResult result = plan_without_faults(request);
    EXPECT_EQ(minute_after_monday(request, planned(result, "next", "coat").starts), starts) << wait_ends;
  }
}

TEST(BenchCalendar, does_no_work_that_the_air_forbids_and_moves_no_cure_for_it) {  // C08
  BenchRequest request = empty_shop();
  request.unfit_air = {{.work = "lacquer", .from = minute_of(request, 0), .until = minute_of(request, 2 * 1440)}};
  Operation coat = work("coat", 20, 600);
  coat.air_work = "lacquer";
  Operation curing = coat;
  curing.name = "earlier coat";
  curing.state = WorkState::waiting;
  curing.wait_ends = minute_of(request, 1000);
  request.instruments = {instrument(request, "it", 540, {coat}), instrument(request, "curing", 0, {curing})};
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(minute_after_monday(request, planned(result, "it", "coat").starts), 2 * 1440 + 540);
  EXPECT_EQ(minute_after_monday(request, planned(result, "curing", "earlier coat").wait_ends), 1000);
}

void waits_by_true_time(int forward_minutes, int expected_wall_minute) {  // C09
  BenchRequest request = empty_shop();
  request.clock_changes = {{.at = minute_of(request, 6 * 1440 + 180), .forward_minutes = forward_minutes}};
  request.people[0].hours.push_back({.weekday = 6, .from_minute = 540, .to_minute = 1050});
  request.instruments = {instrument(request, "it", 5 * 1440 + 990, {work("glue", 30, 960)})};
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(minute_after_monday(request, planned(result, "it", "glue").wait_ends), expected_wall_minute);
}
/// A wait that runs ends when the clock on the wall shows what was said, whichever way the clocks go before.
TEST(BenchCalendar, ends_a_running_wait_when_it_was_said_to) {
  for (const int forward_minutes : {60, -60}) {
    BenchRequest request = empty_shop();
    request.clock_changes = {{.at = minute_of(request, 1440 + 180), .forward_minutes = forward_minutes}};
    Operation curing = work("coat", 30, 3 * 1440);
    curing.state = WorkState::waiting;
    curing.wait_ends = minute_of(request, 1440 + 600);
    request.instruments = {instrument(request, "it", 0, {curing, work("buff", 30)})};
    EXPECT_EQ(minute_after_monday(request, planned(plan_without_faults(request), "it", "buff").starts), 1440 + 600)
        << forward_minutes;
  }
}

TEST(BenchCalendar, cures_by_true_time_over_the_night_the_clocks_go_forward) { waits_by_true_time(60, 6 * 1440 + 600); }
TEST(BenchCalendar, cures_by_true_time_over_the_night_the_clocks_go_back) { waits_by_true_time(-60, 6 * 1440 + 480); }

TEST(BenchCalendar, splits_only_what_may_be_split) {
  BenchRequest request = empty_shop();
  Operation sand = work("sand", 600);
  sand.splittable = true;
  request.instruments = {instrument(request, "it", 900, {sand})};
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(planned(result, "it", "sand").pieces.size(), 2u);
  EXPECT_EQ(minute_after_monday(request, planned(result, "it", "sand").hands_on_ends), 1440 + 540 + 450);
}

TEST(BenchCalendar, lets_work_beside_the_instrument_go_on_while_it_waits) {
  BenchRequest request = empty_shop();
  Operation blank = work("saw blank", 60);
  blank.beside = true;
  Operation fit = work("fit blank", 30);
  fit.after = {"saw blank"};
  request.instruments = {instrument(request, "it", 540, {work("glue", 30, 120), blank, fit})};
  const BenchResult result = plan_without_faults(request);
  EXPECT_EQ(minute_after_monday(request, planned(result, "it", "saw blank").starts), 570);
  EXPECT_EQ(minute_after_monday(request, planned(result, "it", "fit blank").starts), 690);
}

}  // namespace
}  // namespace tailblock

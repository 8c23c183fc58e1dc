#include "bench/what_holds.h"

#include <gtest/gtest.h>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::at_station;
using testing::empty_shop;
using testing::work;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

/// A shop in which one instrument is late whatever is done, and what is said of it.
struct LateOne {
  BenchRequest request = empty_shop();

  explicit LateOne(std::vector<Operation> operations) { add("late", std::move(operations), 0.1); }
  void add(const std::string& name, std::vector<Operation> operations, double weight) {
    BenchInstrument instrument;
    instrument.name = name;
    instrument.arrives = request.now;
    instrument.due = request.now.day - std::chrono::days(1);
    instrument.weight = weight;
    instrument.operations = std::move(operations);
    request.instruments.push_back(instrument);
  }
  [[nodiscard]] std::string why() const { return bench(request, weights).instruments[0].why; }
};

TEST(WhatHolds, is_the_hands_that_another_has) {
  LateOne late({work("glue", 30)});
  late.add("other", {work("fret", 400)}, 100);
  EXPECT_EQ(late.why(), "\"glue\" waits for hands that \"other\" has until then");
}

/// Two at the bench, of whom Ann alone does fretwork; the late instrument's frets are still to be levelled.
LateOne with_frets_for_ann() {
  LateOne late({work("level frets", 30)});
  late.request.people[0].name = "Ann";
  late.request.people.push_back(late.request.people[0]);
  late.request.people[1].name = "Ben";
  late.request.people[1].leaves_to_others = {"fretwork"};
  late.request.instruments[0].operations[0].skill = "fretwork";
  return late;
}

TEST(WhatHolds, is_the_one_who_alone_does_such_work_and_is_busy) {
  LateOne late = with_frets_for_ann();
  late.add("other", {work("fret", 400)}, 100);
  late.request.instruments[1].operations[0].skill = "fretwork";
  EXPECT_EQ(late.why(), "\"level frets\" waits for Ann, who alone does fretwork and has \"other\" in hand until then");
  late.request.people[1].leaves_to_others.clear();
  EXPECT_EQ(late.why(), "its own work and waits take until then") << "Ben does it at once";
}

TEST(WhatHolds, is_the_one_who_alone_does_such_work_and_is_away) {
  LateOne late = with_frets_for_ann();
  late.request.people[0].days_off = {{late.request.now.day}, {late.request.now.day + std::chrono::days(1)}};
  EXPECT_EQ(late.why(), "\"level frets\" waits until Ann is in, who alone does fretwork");
}

TEST(WhatHolds, is_the_longer_of_two_hold_ups) {
  LateOne late({work("measure", 30), work("glue", 30)});
  late.add("other", {work("fret", 240, 24 * 60)}, 100);
  late.add("third", {work("polish", 470, 24 * 60)}, 100);
  late.request.instruments[0].operations[1].pinned =
      Moment{.day = late.request.now.day + std::chrono::days(9), .minute = 600};
  EXPECT_EQ(late.why().find("\"glue\" waits for "), 0U) << late.why();
}

TEST(WhatHolds, is_the_station_that_another_has) {
  LateOne late({at_station(work("glue", 30, 60), "go-bar deck", true)});
  late.add("other", {at_station(work("clamp", 30, 1440), "go-bar deck", true)}, 100);
  EXPECT_EQ(late.why(), "\"glue\" waits for the station that \"other\" has until then");
}

/// Its part comes on Wednesday; its two days of drying begin when hands are there, a night of nobody in between.
TEST(WhatHolds, is_the_day_from_which_it_can_be_begun) {
  LateOne late({work("glue", 30, 2880), work("string", 30)});
  EXPECT_EQ(late.why(), "its own work and waits take until then");
  late.request.instruments[0].arrives = {.day = late.request.now.day + std::chrono::days(2), .minute = 0};
  EXPECT_EQ(late.why(), "it can be begun from 2026-03-04 on, and its own work and waits take until then");
}

TEST(WhatHolds, is_no_night_like_any_other) {
  LateOne late({work("glue", 60)});
  late.request.now.minute = late.request.instruments[0].arrives.minute = 17 * 60;
  EXPECT_EQ(late.why(), "its own work and waits take until then");
}

TEST(WhatHolds, is_that_nobody_is_in_for_longer_than_a_night) {
  LateOne late({work("glue", 30)});
  for (int day = 0; day < 3; ++day)
    late.request.people[0].days_off.push_back({.day = late.request.now.day + std::chrono::days(day)});
  EXPECT_EQ(late.why(), "\"glue\" waits for shop hours");
}

TEST(WhatHolds, is_the_air) {
  LateOne late({work("coat", 30)});
  late.request.instruments[0].operations[0].air_work = "lacquer";
  late.request.unfit_air = {{.work = "lacquer",
                             .from = late.request.now,
                             .until = {.day = late.request.now.day + std::chrono::days(2), .minute = 0}}};
  EXPECT_EQ(late.why(), "\"coat\" waits for hours in which the air allows it");
}

TEST(WhatHolds, is_its_own_waits_where_they_take_most_of_it) {
  LateOne late({work("bring to humidity", 10, 7 * 1440), work("fit nut", 60)});
  late.add("other", {work("fret", 120)}, 100);  // two hours in the way of eight days
  EXPECT_EQ(late.why(), "its own work and waits take until then");
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::at_station;
using testing::work;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

BenchRequest one_instrument(std::vector<Operation> operations) {
  BenchRequest request = testing::empty_shop();
  BenchInstrument instrument;
  instrument.name = "parlour";
  instrument.arrives = request.now;
  instrument.operations = std::move(operations);
  request.instruments = {instrument};
  return request;
}

Operation pinned(Operation operation, const BenchRequest& shop, int day, int minute) {
  operation.pinned = Moment{.day = shop.now.day + std::chrono::days(day), .minute = minute};
  return operation;
}

void refuses(const BenchRequest& request, const std::string& line) {
  try {
    (void)bench(request, weights);
    ADD_FAILURE() << "not refused: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(BenchRefusals, name_work_longer_than_any_day) {  // C10
  refuses(one_instrument({work("level frets", 600)}),
          "instruments[0].operations[0].hands_on_minutes: 600 minutes unbroken do not fit a day; the longest stretch "
          "is 510: "
          "split \"level frets\" or let it be splittable");
}

TEST(BenchRefusals, name_a_group_that_fits_no_day) {
  std::vector<Operation> coats;
  for (const char* name : {"coat 1", "coat 2", "coat 3", "coat 4", "coat 5"}) {
    coats.push_back(work(name, 30, 100));
    coats.back().greatest_gap_minutes = 240;
  }
  coats.front().greatest_gap_minutes.reset();
  refuses(one_instrument(coats),
          "\"coat 5\" of \"parlour\" fits no day together with the work it is tied to, in the year ahead: hours, "
          "holidays, stations and air leave no room for it");
}

TEST(BenchRefusals, name_work_whose_gap_from_further_back_fits_no_day) {
  std::vector<Operation> tied{work("clean", 30), work("rehearse", 30, 900), work("glue", 30)};
  tied[2].greatest_gaps = {{.from = "clean", .minutes = 940}};  // open to close is 510, over night 930 with hands
  refuses(one_instrument(tied),
          "\"glue\" of \"parlour\" fits no day together with the work it is tied to, in the year ahead: hours, "
          "holidays, stations and air leave no room for it");
  tied[2].greatest_gaps[0].minutes = 929;
  refuses(one_instrument(tied),
          "instruments[0].operations[2].greatest_gaps[0].minutes: 929 minutes is less than the 930 that must pass");
  tied[2].greatest_gaps[0].from = "paint";
  refuses(
      one_instrument(tied),
      "instruments[0].operations[2].greatest_gaps[0].from: \"paint\" is not an earlier operation of this instrument");
}

TEST(BenchRefusals, name_work_that_the_air_forbids_all_year) {
  BenchRequest request = one_instrument({work("coat", 30)});
  request.instruments[0].operations[0].air_work = "lacquer";
  request.unfit_air = {{.work = "lacquer",
                        .from = request.now,
                        .until = {.day = request.now.day + std::chrono::days(900), .minute = 0}}};
  refuses(
      request,
      "\"coat\" of \"parlour\" fits no day in the year ahead: hours, holidays, stations and air leave no room for it");
}

TEST(BenchRefusals, name_what_to_pin_where_a_group_is_placed_whole) {
  std::vector<Operation> tied{work("measure", 30), work("clean", 30), work("rehearse", 30), work("glue", 30)};
  tied[2].greatest_gap_minutes = 60;
  tied[3].greatest_gap_minutes = 60;
  BenchRequest request = one_instrument(tied);
  request.instruments[0].operations[3] = pinned(tied[3], request, 1, 600);
  refuses(request,
          "\"glue\" of \"parlour\" cannot be pinned by itself, since it must follow \"clean\" closely: pin that one");
  request.instruments[0].operations[3] = tied[3];
  request.instruments[0].operations[1] = pinned(tied[1], request, 1, 600);
  EXPECT_EQ(bench(request, weights).operations.at(1).starts, *request.instruments[0].operations[1].pinned);
}

TEST(BenchRefusals, name_both_of_two_pins_that_clash) {
  BenchRequest request = one_instrument({work("set up", 60)});
  request.instruments.push_back(request.instruments[0]);
  request.instruments[1].name = "jumbo";
  request.instruments[0].operations[0] = pinned(work("set up", 60), request, 1, 600);
  request.instruments[1].operations[0] = pinned(work("glue", 30), request, 1, 630);
  refuses(request,
          "\"glue\" of \"jumbo\" is pinned to 2026-03-03 10:30, but \"set up\" of \"parlour\" has the hands then");
}

TEST(BenchRefusals, name_a_pin_outside_hours_or_past) {
  BenchRequest request = one_instrument({work("set up", 60)});
  request.instruments[0].operations[0] = pinned(work("set up", 60), request, 5, 600);
  refuses(request,
          "\"set up\" of \"parlour\" is pinned to 2026-03-07 10:00, but nobody who can do it is there for all of it");
  request.instruments[0].operations[0] = pinned(work("set up", 60), request, -1, 600);
  refuses(request, "\"set up\" of \"parlour\" is pinned to 2026-03-01 10:00, which is past");
}

TEST(BenchRefusals, name_no_station_that_is_free_again_when_hands_let_go) {
  Operation coat = work("coat", 60, 60);
  coat.stations = {{.name = "spray place", .hands_on = false, .wait_minutes = 60}};
  Operation hangs = coat;
  hangs.state = WorkState::waiting;
  hangs.wait_ends = Moment{.day = testing::empty_shop().now.day, .minute = 570};
  BenchRequest request = one_instrument({hangs});
  request.instruments.push_back(request.instruments[0]);
  request.instruments[1].name = "jumbo";
  request.instruments[1].operations = {pinned(coat, request, 0, 555)};
  request.people[0].hours = {{.weekday = 1, .from_minute = 570, .to_minute = 1050}};
  refuses(request,
          "\"coat\" of \"jumbo\" is pinned to 2026-03-02 09:15, but nobody who can do it is there for all of it");
  request.instruments[0].operations[0].wait_ends->minute = 640;
  refuses(request,
          "\"coat\" of \"jumbo\" is pinned to 2026-03-02 09:15, but \"coat\" of \"parlour\" has the station then");
}

/// The spreading is at hand; what is tied to it cannot be pinned away from it.
TEST(BenchRefusals, name_the_work_at_hand_that_a_pinned_one_is_tied_to) {
  BenchRequest request = one_instrument({work("spread", 30), work("clamp", 30), work("wipe", 10)});
  request.instruments[0].operations[0].state = WorkState::at_work;
  for (std::size_t k : {1U, 2U}) request.instruments[0].operations[k].greatest_gap_minutes = 10;
  request.instruments[0].operations[2].pinned = Moment{.day = request.now.day, .minute = 900};
  refuses(request,
          "\"wipe\" of \"parlour\" cannot be pinned by itself, since it must follow \"clamp\" closely: pin that one");
}

TEST(BenchRefusals, name_what_cannot_end_before_a_pin) {
  BenchRequest request = one_instrument({work("glue", 30, 1440), work("set up", 60)});
  request.instruments[0].operations[1] = pinned(work("set up", 60), request, 0, 900);
  refuses(request,
          "\"set up\" of \"parlour\" is pinned to 2026-03-02 15:00, but \"glue\" of \"parlour\" before it cannot have "
          "ended by then");
}

TEST(BenchRefusals, name_work_that_a_pinned_day_leaves_no_hands_for) {
  BenchRequest request = one_instrument({work("clean", 240), work("string", 30)});
  request.instruments.push_back(request.instruments[0]);
  request.instruments[1].name = "jumbo";
  request.instruments[0].operations[1] = pinned(work("string", 30), request, 0, 900);
  request.instruments[1].operations[1] = pinned(work("string", 30), request, 0, 930);
  refuses(request,
          "\"string\" of \"jumbo\" is pinned too soon: no plan was found in which \"clean\" of \"jumbo\" before it has "
          "ended by then");
}

TEST(BenchRefusals, name_work_that_nobody_is_left_to_do) {
  BenchRequest request = one_instrument({work("glue", 30), work("level frets", 30)});
  request.people.push_back(request.people[0]);
  request.people[1].name = "second";
  request.people[0].leaves_to_others = {"fretwork"};
  Operation& frets = request.instruments[0].operations[1];
  frets.skill = "fretwork";
  const std::string here = "instruments[0].operations[1].skill: ";
  EXPECT_NO_THROW((void)bench(request, weights));
  frets.person = "first";
  refuses(request, here + "\"first\" leaves \"fretwork\" to others");
  frets.person.clear();
  request.people[1].leaves_to_others = {"spraying", "fretwork"};
  refuses(request, here + "everyone leaves \"fretwork\" to others");
}

TEST(BenchRefusals, name_unknown_stations_people_and_operations) {
  const auto with = [](auto change) {
    BenchRequest request = one_instrument({work("glue", 30), work("set up", 30)});
    change(request.instruments[0].operations[1]);
    return request;
  };
  const std::string here = "instruments[0].operations[1].";
  refuses(with([](Operation& o) { o.stations = {{.name = "oven"}}; }),
          here + "stations[0].name: \"oven\" is not a station of this shop");
  refuses(with([](Operation& o) {
            o.stations = {{.name = "clamps"}, {.name = "clamps"}};
          }),
          here + "stations[1].name: \"clamps\" comes twice");
  refuses(with([](Operation& o) { o.person = "nobody"; }), here + "person: \"nobody\" does not work here");
  refuses(with([](Operation& o) { o.after = {"paint"}; }),
          here + "after: \"paint\" is not an earlier operation of this instrument");
  refuses(with([](Operation& o) { o.stations = {{.name = "clamps", .wait_minutes = 60}}; }),
          here + "stations[0].wait_minutes: 60 minutes is longer than the operation's own, 0");
  refuses(with([](Operation& o) { o.state = WorkState::waiting; }), here + "wait_ends: is needed for work that waits");
  refuses(with([](Operation& o) {
            o.least_gap_minutes = 60;
            o.greatest_gap_minutes = 30;
          }),
          here + "greatest_gap_minutes: 30 minutes is less than the 60 that must pass");
  refuses(with([](Operation& o) { o.name = ""; }), here + "name: is empty");
  refuses(with([](Operation& o) { o.name = "glue"; }), here + "name: \"glue\" comes twice");
}

}  // namespace
}  // namespace tailblock

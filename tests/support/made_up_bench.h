#pragma once

// An invented bench for tests and benchmarks: six kinds of repair with their glue, clamps, coats and cures, as the
// study that the planner follows describes them. Every figure is invented.

#include <algorithm>
#include <random>
#include <string>

#include "bench/request.h"

namespace tailblock::testing {

inline Operation work(const std::string& name, int hands_on, int wait = 0) {
  Operation operation;
  operation.name = name;
  operation.hands_on_minutes = hands_on;
  operation.wait_minutes = wait;
  return operation;
}

inline Operation at_station(Operation operation, const std::string& station, bool through_wait) {
  operation.stations = {{.name = station, .wait_minutes = through_wait ? operation.wait_minutes : 0}};
  return operation;
}

inline std::vector<ShopHours> weekdays(int from = 9 * 60, int to = 17 * 60 + 30) {
  std::vector<ShopHours> hours;
  for (int day = 1; day <= 5; ++day) hours.push_back({.weekday = day, .from_minute = from, .to_minute = to});
  return hours;
}

/// A shop with one person and nothing to do, at the hour the doors open on a Monday.
inline BenchRequest empty_shop() {
  BenchRequest request;
  request.now = {.day = Date(std::chrono::year(2026) / 3 / 2), .minute = 9 * 60};
  request.people = {{.name = "first", .hours = weekdays(), .days_off = {}, .leaves_to_others = {}}};
  request.stations = {{.name = "spray place", .count = 1},
                      {.name = "go-bar deck", .count = 1},
                      {.name = "clamps", .count = 2},
                      {.name = "humid cabinet", .count = 2}};
  return request;
}

class MadeUpBench {
 public:
  explicit MadeUpBench(unsigned seed) : dice_(seed) {}

  BenchRequest shop(int instruments, int days_of_arrivals = 6) {
    BenchRequest request = empty_shop();
    for (int day = 0; day < 400; ++day) {
      if (dice_() % 4 != 0) continue;
      const Date today = request.now.day + std::chrono::days(day);
      request.unfit_air.push_back({.work = "lacquer",
                                   .from = {.day = today, .minute = 0},
                                   .until = {.day = today + std::chrono::days(1), .minute = 0}});
    }
    for (int i = 0; i < instruments; ++i) request.instruments.push_back(instrument(request, i, days_of_arrivals));
    return request;
  }

  int between(int low, int high) { return low + static_cast<int>(dice_() % static_cast<unsigned>(high - low + 1)); }

 private:
  int fives(int low, int high) { return 5 * between(low / 5, high / 5); }

  BenchInstrument instrument(const BenchRequest& request, int number, int days_of_arrivals) {
    BenchInstrument made;
    made.name = "instrument " + std::to_string(number + 1);
    made.arrives = {.day = request.now.day - std::chrono::days(days_of_arrivals - between(0, days_of_arrivals)),
                    .minute = 9 * 60};
    made.weight = between(1, 5) == 1 ? 3 : 1;
    made.operations = repair(between(0, 5));
    double days = 0;
    for (const Operation& operation : made.operations) {
      days += operation.wait_minutes / 1440.0 + 2.8 * operation.hands_on_minutes / 1440.0;
    }
    made.due =
        std::max(made.arrives.day, request.now.day) + std::chrono::days(static_cast<int>(days * 1.2 + between(1, 12)));
    return made;
  }

  std::vector<Operation> repair(int kind) {
    switch (kind) {
      case 0:
        return {work("measure", fives(20, 40)), work("set up", fives(60, 150))};
      case 1:
        return {work("open and clean brace", fives(30, 60)),
                at_station(work("glue brace", fives(20, 45), 960), "go-bar deck", true),
                work("check and string", fives(45, 90))};
      case 2:
        return crack();
      case 3:
        return {work("take bridge off", fives(60, 120)), work("clean both faces", fives(60, 120)),
                at_station(work("glue bridge", fives(30, 45), 1440), "clamps", true),
                work("string and set up", fives(60, 120))};
      case 4:
        return {work("take neck off", fives(120, 180), 3 * 1440), work("cut heel", fives(150, 300)),
                at_station(work("glue neck", fives(40, 60), 1440), "clamps", true),
                work("fill and level", fives(60, 120)), work("set up", fives(90, 150))};
      default:
        return {work("take frets out", fives(60, 90)), work("level board", fives(60, 120)),
                work("seat frets", fives(150, 240)), work("level, crown and polish", fives(150, 240)),
                work("set up", fives(60, 120))};
    }
  }

  std::vector<Operation> crack() {
    std::vector<Operation> made{at_station(work("bring to humidity", 10, between(3, 6) * 1440), "humid cabinet", true),
                                at_station(work("glue crack", fives(30, 60), 960), "clamps", true),
                                at_station(work("glue cleats", fives(30, 60), 960), "clamps", true),
                                work("level fill", fives(30, 60))};
    for (const char* coat : {"first coat", "second coat", "third coat"}) {
      Operation operation = at_station(work(coat, 20, 60), "spray place", true);
      operation.air_work = "lacquer";
      if (made.size() > 4) {
        operation.least_gap_minutes = 60;
        operation.greatest_gap_minutes = 240;
      }
      made.push_back(operation);
    }
    made.back().wait_minutes = 14 * 1440;
    made.push_back(work("rub out and string", fives(90, 150)));
    return made;
  }

  std::mt19937 dice_;
};

}  // namespace tailblock::testing

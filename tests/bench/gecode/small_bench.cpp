#include "small_bench.h"

#include <random>

#include "made_up_bench.h"

namespace tailblock::testing {
namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : dice_(seed) {}
  int between(int low, int high) { return low + static_cast<int>(dice_() % static_cast<unsigned>(high - low + 1)); }

 private:
  std::mt19937 dice_;
};

}  // namespace

SmallBench small_bench(unsigned seed) {
  Dice dice(seed);
  SmallBench bench{.hours = 8, .grain = 60, .instruments = {}};
  int left = 10;
  const int instruments = dice.between(2, 4);
  for (int j = 0; j < instruments; ++j) {
    SmallInstrument instrument{.arrives = 60 * dice.between(0, 4),
                               .due_days = dice.between(0, 3),
                               .weight = dice.between(0, 2) == 0 ? 3.0 : 1.0,
                               .promised_day = {},
                               .operations = {}};
    const int operations = std::min(left - (instruments - 1 - j), dice.between(1, 4));
    left -= operations;
    for (int k = 0; k < operations; ++k) {
      const int wait = dice.between(0, 2) == 0 ? 60 * dice.between(1, 24) : 0;
      instrument.operations.push_back(
          {.hands_on = 60 * dice.between(1, 4), .wait = wait, .station = wait > 0 && dice.between(0, 1) == 0});
    }
    bench.instruments.push_back(instrument);
  }
  Dice promises(seed + 1000);
  for (SmallInstrument& instrument : bench.instruments) {
    if (promises.between(0, 1) == 0)
      instrument.promised_day = std::max(0, instrument.due_days + promises.between(-1, 1));
  }
  return bench;
}

BenchRequest request_of(const SmallBench& bench) {
  BenchRequest request = empty_shop();
  request.people[0].hours.clear();
  for (int day = 1; day <= 7; ++day) {
    request.people[0].hours.push_back(
        {.weekday = day, .from_minute = SmallBench::opens, .to_minute = SmallBench::opens + 60 * bench.hours});
  }
  request.stations = {{.name = "clamps", .count = 1}};
  for (std::size_t j = 0; j < bench.instruments.size(); ++j) {
    const SmallInstrument& small = bench.instruments[j];
    BenchInstrument instrument;
    instrument.name = "instrument " + std::to_string(j + 1);
    instrument.arrives = {.day = request.now.day, .minute = SmallBench::opens + small.arrives};
    instrument.due = request.now.day + std::chrono::days(small.due_days);
    instrument.weight = small.weight;
    if (small.promised_day) instrument.promised = request.now.day + std::chrono::days(*small.promised_day);
    for (std::size_t k = 0; k < small.operations.size(); ++k) {
      Operation operation =
          work("operation " + std::to_string(k + 1), small.operations[k].hands_on, small.operations[k].wait);
      if (small.operations[k].station) operation = at_station(operation, "clamps", true);
      instrument.operations.push_back(operation);
    }
    request.instruments.push_back(instrument);
  }
  return request;
}

}  // namespace tailblock::testing

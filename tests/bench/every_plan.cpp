#include "every_plan.h"

#include <algorithm>

#include "made_up_bench.h"

namespace tailblock::testing {
namespace {

constexpr int opens = 9 * 60;

class EveryPlan {
 public:
  EveryPlan(double cost, const SmallBench& bench, const BenchWeights& weights)
      : below_(cost), bench_(bench), weights_(weights), done_(bench.instruments.size()) {
    for (const SmallInstrument& instrument : bench.instruments) free_.push_back(opens + instrument.arrives);
  }

  bool search(int hands_free, int station_free, double changes, int last_day, int last) {
    if (bound(hands_free) + changes >= below_) return false;
    bool all_done = true;
    for (std::size_t j = 0; j < done_.size(); ++j) {
      const SmallInstrument& instrument = bench_.instruments[j];
      if (done_[j] == static_cast<int>(instrument.operations.size())) continue;
      all_done = false;
      const SmallOperation& next = instrument.operations[static_cast<std::size_t>(done_[j])];
      int start = std::max(hands_free, free_[j]);
      if (next.station) start = std::max(start, station_free);
      for (;; start += bench_.grain) {
        const int in_day = start % 1440;
        if (in_day < opens || in_day + next.hands_on > opens + 60 * bench_.hours) continue;
        const int kept = free_[j];
        free_[j] = start + next.hands_on + next.wait;
        ++done_[j];
        const bool too_dear = bound(start) + changes >= below_;
        const double change =
            last >= 0 && last != static_cast<int>(j) && last_day == start / 1440 ? weights_.change_of_instrument : 0;
        const bool found = !too_dear && search(start + next.hands_on, next.station ? free_[j] : station_free,
                                               changes + change, start / 1440, static_cast<int>(j));
        --done_[j];
        free_[j] = kept;
        if (found) return true;
        if (too_dear) break;
      }
    }
    return all_done;
  }

 private:
  /// What the instruments cost at least, when no further work begins before `from`.
  [[nodiscard]] double bound(int from) const {
    double cost = 0;
    for (std::size_t j = 0; j < done_.size(); ++j) {
      const SmallInstrument& instrument = bench_.instruments[j];
      int ready = free_[j];
      if (done_[j] < static_cast<int>(instrument.operations.size())) {
        ready = std::max(ready, from);
        for (std::size_t k = static_cast<std::size_t>(done_[j]); k < instrument.operations.size(); ++k) {
          const SmallOperation& operation = instrument.operations[k];
          if (ready % 1440 + operation.hands_on > opens + 60 * bench_.hours) ready += 1440 - ready % 1440;
          if (ready % 1440 < opens) ready += opens - ready % 1440;
          ready += operation.hands_on + operation.wait;
        }
      }
      cost += weights_.shop_day * (ready - opens - instrument.arrives) / 1440.0;
      cost += weights_.late_day * instrument.weight * std::max(0, ready - 1440 * (instrument.due_days + 1)) / 1440.0;
      if (!instrument.promised_day) continue;
      const int later = (ready - 1) / 1440 - *instrument.promised_day;
      if (later > 0) cost += weights_.promise_later + weights_.promise_later_day * later;
    }
    return cost;
  }

  double below_;
  const SmallBench& bench_;
  BenchWeights weights_;
  std::vector<int> done_, free_;
};

}  // namespace

BenchRequest request_of(const SmallBench& bench) {
  BenchRequest request = empty_shop();
  request.people[0].hours.clear();
  for (int day = 1; day <= 7; ++day)
    request.people[0].hours.push_back({.weekday = day, .from_minute = opens, .to_minute = opens + 60 * bench.hours});
  request.stations = {{.name = "clamps", .count = 1}};
  for (std::size_t j = 0; j < bench.instruments.size(); ++j) {
    const SmallInstrument& small = bench.instruments[j];
    BenchInstrument instrument;
    instrument.name = "instrument " + std::to_string(j + 1);
    instrument.arrives = {.day = request.now.day, .minute = opens + small.arrives};
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

bool any_plan_below(double cost, const SmallBench& bench, const BenchWeights& weights) {
  return EveryPlan(cost, bench, weights).search(opens, 0, 0, -1, -1);
}

}  // namespace tailblock::testing

#include "bench/overfull.h"

#include <algorithm>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

struct Held {
  int step;
  Slot from, until;
};

/// What is begun and holds a place of the station, now or when hands let go.
std::vector<Held> held_by_facts(const SerialPlan& plan, int station) {
  std::vector<Held> held;
  for (const FixedStep& fixed : plan.network().fixed) {
    if (!is_begun(fixed)) continue;
    for (const StationHold& hold : plan.network().steps[static_cast<std::size_t>(fixed.step)].stations) {
      const auto [from, until] = plan.keeps(fixed.step, hold);
      if (hold.station == station && from < until) held.push_back({.step = fixed.step, .from = from, .until = until});
    }
  }
  return held;
}

/// All of them that hold a place at once, when most do.
std::vector<Held> most_at_once(const std::vector<Held>& held) {
  std::vector<Held> most;
  for (const Held& one : held) {
    std::vector<Held> then;
    std::ranges::copy_if(held, std::back_inserter(then),
                         [&](const Held& other) { return other.from <= one.from && one.from < other.until; });
    if (then.size() > most.size()) most = std::move(then);
  }
  return most;
}

}  // namespace

std::vector<std::string> overfull_stations(const SerialPlan& plan, const BenchRequest& request) {
  std::vector<std::string> sentences;
  for (std::size_t station = 0; station < request.stations.size(); ++station) {
    const std::vector<Held> held = most_at_once(held_by_facts(plan, static_cast<int>(station)));
    const int count = request.stations[station].count;
    if (static_cast<int>(held.size()) <= count) continue;
    std::string names;
    for (const Held& one : held) {
      names += names.empty() ? "" : ", ";
      names += step_name(request, plan.network().steps[static_cast<std::size_t>(one.step)]);
    }
    sentences.push_back(quoted_text(request.stations[station].name) + ": the shop has " + std::to_string(count) +
                        ", and what is begun takes " + std::to_string(held.size()) + " at once: " + names);
  }
  return sentences;
}

}  // namespace tailblock

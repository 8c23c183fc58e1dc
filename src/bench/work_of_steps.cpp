#include "bench/work_of_steps.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace tailblock {
namespace {

constexpr int slot_minutes = 5;
constexpr std::size_t name_bytes = 100;

int up_to_slot(double minutes) { return slot_minutes * static_cast<int>(std::ceil(minutes / slot_minutes - 1e-9)); }
int down_to_slot(double minutes) { return slot_minutes * static_cast<int>(std::floor(minutes / slot_minutes + 1e-9)); }

std::vector<HeldStation> stations_of(const StepShown& step, int wait_minutes) {
  std::vector<HeldStation> held;
  if (!step.hands_on_station.empty()) held.push_back({.name = step.hands_on_station});
  const int minutes = std::min(up_to_slot(step.station_wait_minutes), wait_minutes);
  if (step.wait_station.empty() || minutes == 0) return held;
  if (step.wait_station == step.hands_on_station) {
    held.back().wait_minutes = minutes;
  } else {
    held.push_back({.name = step.wait_station, .hands_on = step.wait_station_hands_on, .wait_minutes = minutes});
  }
  return held;
}

Operation operation_of(const StepShown& step, int time) {
  Operation made;
  made.name = step.name.substr(0, name_bytes);
  if (time > 1) made.name += " (" + std::to_string(time) + ")";
  made.kind = step.operation;
  made.hands_on_minutes = up_to_slot(step.hands_on_minutes.typical);
  made.wait_minutes = up_to_slot(step.wait_minutes.typical);
  made.stations = stations_of(step, made.wait_minutes);
  made.skill = step.skill;
  if (step.air == WorkAir::spray) made.air_work = step.operation;
  return made;
}

/// The next step of the same job that the gap from `from` leads to, or `from` itself.
std::size_t gap_ends_at(const std::vector<StepOfJob>& steps, std::size_t from) {
  const auto& to = steps[from].step->greatest_gap_to;
  for (std::size_t i = from + 1; i < steps.size(); ++i) {
    if (steps[i].job == steps[from].job && std::ranges::find(to, steps[i].step->operation) != to.end()) return i;
  }
  return from;
}

}  // namespace

std::vector<Operation> work_of_steps(const std::vector<StepOfJob>& steps, const RepairFigures& figures) {
  std::vector<Operation> work;
  std::map<std::string, int> times;
  for (const StepOfJob& one : steps) {
    const bool after_dust = !work.empty() && steps[work.size() - 1].step->air == WorkAir::dust;
    work.push_back(operation_of(*one.step, ++times[one.step->name]));
    if (one.step->needs_dust_free && after_dust) work.back().least_gap_minutes = up_to_slot(figures.dust_settles);
  }
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (!steps[i].step->greatest_gap_minutes) continue;
    const std::size_t end = gap_ends_at(steps, i);
    const int gap = down_to_slot(*steps[i].step->greatest_gap_minutes);
    if (end == i + 1) work[end].greatest_gap_minutes = gap;
    if (end > i + 1) work[end].greatest_gaps.push_back({.from = work[i].name, .minutes = gap});
  }
  return work;
}

std::vector<Station> usual_stations(const std::vector<ShopStation>& stations) {
  std::vector<Station> usual;
  for (const ShopStation& station : stations) usual.push_back({.name = station.name, .count = station.count});
  return usual;
}

}  // namespace tailblock

#include "bench/work_of_procedure.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace tailblock {
namespace {

constexpr int slot_minutes = 5;
constexpr int minutes_after_dust = 60;

int up_to_slot(double minutes) { return slot_minutes * static_cast<int>(std::ceil(minutes / slot_minutes - 1e-9)); }

Operation operation_of(const StepShown& step, int time) {
  Operation made;
  made.name = step.name;
  if (time > 1) made.name += " (" + std::to_string(time) + ")";
  made.kind = step.operation;
  made.hands_on_minutes = up_to_slot(step.hands_on_minutes.typical);
  made.wait_minutes = up_to_slot(step.wait_minutes.typical);
  made.station_wait_minutes = std::min(up_to_slot(step.station_wait_minutes), made.wait_minutes);
  if (!step.hands_on_station.empty()) made.stations.push_back(step.hands_on_station);
  if (!step.wait_station.empty() && made.station_wait_minutes > 0) made.stations.push_back(step.wait_station);
  if (step.air == WorkAir::spray || step.needs_dust_free) made.air_work = "finish";
  return made;
}

/// The next step that a gap from `from` leads to, or none.
std::size_t gap_ends_at(const ProcedureResult& plan, std::size_t from) {
  const auto& to = plan.steps[from].greatest_gap_to;
  for (std::size_t i = from + 1; i < plan.steps.size(); ++i) {
    if (std::find(to.begin(), to.end(), plan.steps[i].operation) != to.end()) return i;
  }
  return from;
}

/// Shares the gap out over the steps after `from` up to `end`, tightening what an earlier gap gave them.
void share_gap(std::vector<Operation>& work, std::size_t from, std::size_t end, double gap) {
  double needed = 0;
  for (std::size_t i = from + 1; i <= end; ++i) {
    needed += std::max(work[i - 1].wait_minutes, work[i].least_gap_minutes);
    if (i < end) needed += work[i].hands_on_minutes;
  }
  if (needed > gap) throw Refused("procedure: " + work[from].name + " cannot be followed in time by " + work[end].name);
  const double spare = (gap - needed) / static_cast<double>(end - from);
  for (std::size_t i = from + 1; i <= end; ++i) {
    const int its_own = std::max(work[i - 1].wait_minutes, work[i].least_gap_minutes);
    const int shared = its_own + slot_minutes * static_cast<int>(std::floor(spare / slot_minutes));
    work[i].greatest_gap_minutes = std::min(work[i].greatest_gap_minutes.value_or(shared), shared);
  }
}

}  // namespace

std::vector<Operation> work_of_procedure(const ProcedureResult& plan) {
  std::vector<Operation> work;
  std::map<std::string, int> times;
  for (const StepShown& step : plan.steps) {
    work.push_back(operation_of(step, ++times[step.operation]));
    const bool after_dust = work.size() > 1 && plan.steps[work.size() - 2].air == WorkAir::dust;
    if (step.needs_dust_free && after_dust) work.back().least_gap_minutes = minutes_after_dust;
  }
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    if (!plan.steps[i].greatest_gap_minutes) continue;
    const std::size_t end = gap_ends_at(plan, i);
    if (end != i) share_gap(work, i, end, *plan.steps[i].greatest_gap_minutes);
  }
  return work;
}

std::vector<Station> usual_stations(const std::vector<ShopStation>& stations) {
  std::vector<Station> usual;
  for (const ShopStation& station : stations) usual.push_back({.name = station.name, .count = station.count});
  return usual;
}

}  // namespace tailblock

#include "bench/what_holds.h"

#include <algorithm>
#include <map>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

struct HoldUp {
  int step = -1;
  Slot from = 0, until = 0;
};

/// Walks back from the last step through those that decided when the next could begin, to the longest hold-up.
HoldUp longest_hold_up(const SerialPlan& plan, const BenchJob& job) {
  int step = job.first_step;
  for (int s = job.first_step; s < job.first_step + job.steps; ++s) {
    if (plan.placed(s).free_from > plan.placed(step).free_from) step = s;
  }
  HoldUp longest;
  while (step >= 0) {
    const Slot could = plan.could_begin(step);
    const Slot starts = plan.placed(step).start;
    if (starts - could > longest.until - longest.from) longest = {.step = step, .from = could, .until = starts};
    int before = -1;
    for (const StepOrder& order : plan.network().steps[static_cast<std::size_t>(step)].after) {
      if (before < 0 || plan.placed(order.before).free_from > plan.placed(before).free_from) before = order.before;
    }
    step = before;
  }
  return longest;
}

/// Which other instrument takes most of the hands or the station that the held-up step needs, and how long.
struct InTheWay {
  int instrument = -1;
  Slot taken = 0;
  bool station = false;
};

InTheWay in_the_way(const SerialPlan& plan, const HoldUp& held) {
  const BenchNetwork& net = plan.network();
  const Step& step = net.steps[static_cast<std::size_t>(held.step)];
  std::map<std::pair<int, bool>, Slot> taken;
  for (int s = 0; s < static_cast<int>(net.steps.size()); ++s) {
    const Step& other = net.steps[static_cast<std::size_t>(s)];
    if (other.instrument == step.instrument) continue;
    const Placed& there = plan.placed(s);
    const auto overlap = [&](Slot from, Slot until) {
      return std::max(0, std::min(until, held.until) - std::max(from, held.from));
    };
    if (there.person >= 0 && (step.people >> there.person & 1U) != 0) {
      for (const auto& [from, until] : plan.pieces(s)) taken[{other.instrument, false}] += overlap(from, until);
    }
    for (const StationHold& theirs : other.stations) {
      if (std::ranges::find(step.stations, theirs.station, &StationHold::station) == step.stations.end()) continue;
      const auto [from, until] = plan.keeps(s, theirs);
      taken[{other.instrument, true}] += overlap(from, until);
    }
  }
  InTheWay most;
  for (const auto& [who, slots] : taken) {
    if (slots > most.taken) most = {.instrument = who.first, .taken = slots, .station = who.second};
  }
  return most;
}

/// The one of several who alone does this sort of work; null where others do it too or it is of no sort.
const BenchPerson* alone_at(const BenchRequest& request, const std::string& skill) {
  const BenchPerson* alone = nullptr;
  for (const BenchPerson& person : request.people) {
    if (leaves_to_others(person, skill)) continue;
    if (alone != nullptr) return nullptr;
    alone = &person;
  }
  return request.people.size() > 1 ? alone : nullptr;
}

/// How much later than it was wanted or promised, whichever is first.
Slot slots_behind(const BenchJob& job, Slot ready) {
  const Slot promised = job.promised_day ? (*job.promised_day + 1) * slots_a_day : never;
  return std::max(0, ready - std::min(job.due_end, promised));
}

/// Nothing but its work, waits and nights; and that it could not be begun before, where that is so.
std::string its_own_work(const BenchNetwork& net, const BenchJob& job) {
  const std::string own = "its own work and waits take until then";
  if (job.arrives < net.now + slots_a_day) return own;
  return "it can be begun from " + iso_date(net.clock.moment(job.arrives).day) + " on, and " + own;
}

}  // namespace

std::string what_holds(const SerialPlan& plan, const BenchRequest& request, std::size_t j) {
  const BenchNetwork& net = plan.network();
  const HoldUp held = longest_hold_up(plan, net.jobs[j]);
  const int noticeable = std::max(slots_for(60), slots_behind(net.jobs[j], plan.ready(static_cast<int>(j))) / 8);
  if (held.step < 0 || held.until - held.from < noticeable) return its_own_work(net, net.jobs[j]);
  const Step& step = net.steps[static_cast<std::size_t>(held.step)];
  const Operation& operation = request.instruments[j].operations[static_cast<std::size_t>(step.number)];
  const std::string work = quoted_text(operation.name);
  const BenchPerson* alone = alone_at(request, operation.skill);
  const InTheWay other = in_the_way(plan, held);
  if (other.instrument >= 0) {
    const std::string in_hand = quoted_text(request.instruments[static_cast<std::size_t>(other.instrument)].name);
    if (other.station) return work + " waits for the station that " + in_hand + " has until then";
    if (alone == nullptr) return work + " waits for hands that " + in_hand + " has until then";
    return work + " waits for " + alone->name + ", who alone does " + operation.skill + " and has " + in_hand +
           " in hand until then";
  }
  if (step.air >= 0) return work + " waits for hours in which the air allows it";
  if (alone != nullptr) return work + " waits until " + alone->name + " is in, who alone does " + operation.skill;
  const bool a_night = held.until - held.from < slots_a_day;
  return a_night ? its_own_work(net, net.jobs[j]) : work + " waits for shop hours";
}

}  // namespace tailblock

// What is not the planner's to choose: work begun, waits that run, and what is pinned.

#include <algorithm>

#include "bench/serial_plan.h"
#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

/// Waits first, then work at hand, then what follows work begun, then pins: each is free to use what is left.
int rank(FixedStep::Kind kind) {
  switch (kind) {
    case FixedStep::Kind::waiting:
      return 0;
    case FixedStep::Kind::at_work:
      return 1;
    case FixedStep::Kind::pinned:
      return 2;
    case FixedStep::Kind::follows:
      return 3;
  }
  return 3;
}

}  // namespace

void SerialPlan::place_fixed(const BenchRequest& request) {
  std::vector<FixedStep> order = net_.fixed;
  std::ranges::stable_sort(order, {}, [](const FixedStep& fixed) { return rank(fixed.kind); });
  for (const FixedStep& fixed : order) {
    const Step& step = net_.steps[static_cast<std::size_t>(fixed.step)];
    Placed& here = placed_[static_cast<std::size_t>(fixed.step)];
    if (fixed.kind == FixedStep::Kind::waiting) {
      here = {.start = net_.now, .end = net_.now, .free_from = net_.clock.after(net_.now, step.wait), .person = -1};
      mark(fixed.step);
    } else if (fixed.kind == FixedStep::Kind::pinned) {
      place_pinned(fixed, request);
    } else {
      const Slot from = fixed.kind == FixedStep::Kind::at_work ? net_.now : could_begin(fixed.step);
      here = earliest(fixed.step, from, 0);
      mark(fixed.step);
    }
    missed_ += overdue(fixed.step);
    fixed_done_.push_back(fixed.step);
    auto& ready = ready_[static_cast<std::size_t>(step.instrument)];
    ready = std::max(ready, here.free_from);
  }
}

void SerialPlan::place_pinned(const FixedStep& fixed, const BenchRequest& request) {
  const Step& step = net_.steps[static_cast<std::size_t>(fixed.step)];
  if (fixed.at < net_.now) {
    throw Refused(step_name(request, step) + " is pinned to " + moment_text(net_.clock.moment(fixed.at)) +
                  ", which is past");
  }
  Placed& here = placed_[static_cast<std::size_t>(fixed.step)];
  here = earliest(fixed.step, fixed.at, 0);
  if (here.start != fixed.at) refuse_pinned(fixed, request);
  if (fixed.at < could_begin_at_best(fixed.step)) {
    const Step& before = net_.steps[static_cast<std::size_t>(step.after.front().before)];
    throw Refused(step_name(request, step) + " is pinned to " + moment_text(net_.clock.moment(fixed.at)) + ", but " +
                  step_name(request, before) + " before it cannot have ended by then");
  }
  mark(fixed.step);
}

/// Waits and hands-on time of everything before it, by the clock.
Slot SerialPlan::could_begin_at_best(int index) const {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  Slot best = net_.jobs[static_cast<std::size_t>(step.instrument)].arrives;
  for (const StepOrder& order : step.after) {
    const Step& before = net_.steps[static_cast<std::size_t>(order.before)];
    const bool fixed = std::ranges::find(fixed_done_, order.before) != fixed_done_.end();
    const Placed& there = placed(order.before);
    const Slot ends = fixed ? there.end : could_begin_at_best(order.before) + before.hands;
    best = std::max({best, fixed ? there.free_from : ends + before.wait, ends + order.gap});
  }
  return best;
}

void SerialPlan::refuse_pinned(const FixedStep& fixed, const BenchRequest& request) const {
  const Step& step = net_.steps[static_cast<std::size_t>(fixed.step)];
  const std::string start =
      step_name(request, step) + " is pinned to " + moment_text(net_.clock.moment(fixed.at)) + ", but ";
  const Slot ends = fixed.at + step.hands;
  for (const int other : fixed_done_) {
    const Step& there = net_.steps[static_cast<std::size_t>(other)];
    const Placed& place = placed(other);
    const bool same_people = place.person >= 0 && (step.people >> place.person & 1U) != 0;
    const bool hands_meet = same_people && place.start < ends && fixed.at < place.end;
    const bool stations_meet = std::ranges::any_of(step.stations, [&](const StationHold& wanted) {
      const auto held = std::ranges::find(there.stations, wanted.station, &StationHold::station);
      if (held == there.stations.end()) return false;
      const auto [from, until] = keeps(other, *held);
      return from < net_.clock.after(ends, wanted.wait) && (wanted.hands ? fixed.at : ends) < until;
    });
    if (hands_meet || stations_meet) {
      throw Refused(start + step_name(request, there) + " has the " + (hands_meet ? "hands" : "station") + " then");
    }
  }
  if (step.air >= 0 && std::ranges::any_of(net_.unfit[static_cast<std::size_t>(step.air)], [&](const auto& unfit) {
        return unfit.from < ends && fixed.at < unfit.until;
      })) {
    throw Refused(start + "the air forbids it then");
  }
  throw Refused(start + "nobody who can do it is there for all of it");
}

}  // namespace tailblock

#include <algorithm>

#include "bench/serial_plan.h"

namespace tailblock {
namespace {

// Over any sum of the other costs: no plan may miss a pin, none moves a promise where none need be.
constexpr double price_of_missing_a_pin = 1e6;  // a day
constexpr double price_of_a_held_promise = 1e5;

double in_days(Slot slots) { return static_cast<double>(slots) / slots_a_day; }

/// The day on whose evening an instrument that is ready at `ready` can be had.
int ready_day(Slot ready) { return day_of(ready - 1); }

}  // namespace

double SerialPlan::promise_cost(const BenchJob& job, Slot ready) const {
  const int later = ready_day(ready) - *job.promised_day;
  if (later > 0) {
    return (promises_held_ ? price_of_a_held_promise : 0) + weights_.promise_later + weights_.promise_later_day * later;
  }
  return earliness_cost(job, ready);
}

/// By the clock to the end of the promised day, so that nothing is gained by being ready just after a midnight.
double SerialPlan::earliness_cost(const BenchJob& job, Slot ready) const {
  const Slot promise_ends = (*job.promised_day + 1) * slots_a_day;
  return weights_.promise_earlier_day * in_days(std::max(0, promise_ends - ready));
}

double SerialPlan::job_cost(std::size_t j, Slot ready) const {
  const BenchJob& job = net_.jobs[j];
  double cost = weights_.shop_day * in_days(ready - job.arrives);
  if (ready > job.due_end) cost += weights_.late_day * job.weight * in_days(ready - job.due_end);
  if (job.promised_day) cost += promise_cost(job, ready);
  return cost;
}

/// Not above job_cost() of any later moment: where being early costs more than the shop's time, it falls with time and
/// is left out.
double SerialPlan::least_job_cost(std::size_t j, Slot ready) const {
  const BenchJob& job = net_.jobs[j];
  const double cost = job_cost(j, ready);
  const bool falls = job.promised_day && weights_.promise_earlier_day > weights_.shop_day;
  return falls ? cost - earliness_cost(job, ready) : cost;
}

double SerialPlan::missed(int index) const {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  const Placed& here = placed(index);
  const int by = std::max({0, here.free_from - step.ends_by, here.end - step.hands_by});
  return by == 0 ? 0 : price_of_missing_a_pin * (1 + in_days(by));
}

double SerialPlan::overdue(int index) const {
  const Slot by = placed(index).start - net_.steps[static_cast<std::size_t>(index)].begin_by;
  return by <= 0 ? 0 : weights_.begun_overdue + weights_.begun_overdue_day * in_days(by);
}

PlanCost SerialPlan::cost() const {
  PlanCost cost{.changes = weights_.change_of_instrument * changes_};
  for (int s = 0; s < static_cast<int>(net_.steps.size()); ++s) cost.overdue += overdue(s);
  cost.pinned_missed = missed_ - cost.overdue;
  for (std::size_t j = 0; j < net_.jobs.size(); ++j) {
    const BenchJob& job = net_.jobs[j];
    cost.in_shop += weights_.shop_day * in_days(ready_[j] - job.arrives);
    cost.late += weights_.late_day * job.weight * in_days(std::max(0, ready_[j] - job.due_end));
    if (job.promised_day) cost.promises += promise_cost(job, ready_[j]);
  }
  return cost;
}

int SerialPlan::promises_moved_later() const {
  int moved = 0;
  for (std::size_t j = 0; j < net_.jobs.size(); ++j) {
    const auto& promised = net_.jobs[j].promised_day;
    if (promised && ready_day(ready_[j]) > *promised) ++moved;
  }
  return moved;
}

std::vector<std::pair<Slot, Slot>> SerialPlan::pieces(int index) const {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  const Placed& here = placed(index);
  if (here.person < 0) return {};
  if (!step.splittable) return {{here.start, here.end}};
  std::vector<std::pair<Slot, Slot>> found;
  for (const Piece& piece : pieces_[static_cast<std::size_t>(index)]) {
    const Slot start = net_.frame.slot(piece.bit);
    found.emplace_back(start, start + piece.length);
  }
  return found;
}

}  // namespace tailblock

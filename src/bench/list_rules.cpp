#include <algorithm>
#include <numeric>

#include "bench/list_search.h"

namespace tailblock {
namespace {

/// Shop time is stretched over the clock: work of 8.5 hours a day takes 24/8.5 = 2.8 times its minutes.
constexpr double clock_over_shop_time = 2.8;
constexpr Slot wanted_without_due = 30 * slots_a_day;

double clock_time(const Step& step) { return std::max(step.wait, step.least_gap) + clock_over_shop_time * step.hands; }

double due_of(const BenchJob& job) {
  if (job.promised_day) return std::min(job.due_end, (*job.promised_day + 1) * slots_a_day);
  return job.due_end < never ? job.due_end : job.arrives + wanted_without_due;
}

struct Ranked {
  double key;
  std::int16_t job;
};

/// What a job is ranked by under a rule; lower goes first.
double key_of(const BenchNetwork& network, const BenchJob& job, BenchRule rule) {
  double clock = 0, hands = 0;
  for (int s = job.first_step; s < job.first_step + job.steps; ++s) {
    const Step& step = network.steps[static_cast<std::size_t>(s)];
    clock += clock_time(step);
    hands += step.hands;
  }
  switch (rule) {
    case BenchRule::arrival:
      return job.arrives;
    case BenchRule::due:
      return due_of(job);
    case BenchRule::weight_over_work:
      return (hands + 1) / std::max(job.weight, 0.01);
    case BenchRule::slack:
    case BenchRule::latest_start:
      return due_of(job) - clock;
  }
  return 0;
}

}  // namespace

WorkList list_by_rule(const BenchNetwork& network, BenchRule rule) {
  std::vector<Ranked> order;
  for (std::size_t j = 0; j < network.jobs.size(); ++j) {
    const BenchJob& job = network.jobs[j];
    double key = key_of(network, job, rule);
    for (const Item& item : job.items) {
      order.push_back({.key = key, .job = static_cast<std::int16_t>(j)});
      if (rule != BenchRule::latest_start) continue;
      for (int s = item.first_step; s < item.first_step + item.steps; ++s)
        key += clock_time(network.steps[static_cast<std::size_t>(s)]);
    }
  }
  std::ranges::stable_sort(order, {}, &Ranked::key);
  WorkList list;
  for (const Ranked& ranked : order) list.jobs.push_back(ranked.job);
  list.passed.assign(order.size(), 0);
  return list;
}

}  // namespace tailblock

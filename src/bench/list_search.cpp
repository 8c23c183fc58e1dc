#include "bench/list_search.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "bench/list_moves.h"

namespace tailblock {
namespace {

constexpr double start_temperature = 0.02;  // of the cost an instrument
constexpr double tiny = 1e-9;
constexpr int plans_an_entry = 200;  // enough for one cooling of a short list; what is left goes into further ones
constexpr int most_rounds = 16;
constexpr int part_for_promises = 4;

/// The best list that moves no promise later.
struct Unmoved {
  WorkList list;
  double cost;
};

/// The first place from which two lists differ. `item_at` numbers the items of `a` place by place.
std::size_t first_difference(const WorkList& a, const WorkList& b, const std::vector<int>& item_at) {
  const auto jobs = static_cast<std::size_t>(std::ranges::mismatch(a.jobs, b.jobs).in1 - a.jobs.begin());
  if (a.passed == b.passed) return jobs;
  for (std::size_t i = 0; i < jobs; ++i) {
    const auto item = static_cast<std::size_t>(item_at[i]);
    if (a.passed[item] != b.passed[item]) return i;
  }
  return jobs;
}

/// One list being changed step by step, with the plan that belongs to it kept up with it.
class Annealing {
 public:
  Annealing(SerialPlan& plan, WorkList start, double cost, const SearchLimits& limits)
      : plan_(plan), limits_(limits), dice_(limits.seed), current_(std::move(start)), cost_(cost) {
    int items = 0;
    for (const BenchJob& job : plan.network().jobs) {
      first_item_.push_back(items);
      items += static_cast<int>(job.items.size());
    }
  }

  void run(SearchResult& result) {
    plan_.take_back_to(0);
    if (unmoved) plan_.hold_promises(true);
    next_ = current_;
    item_at_.resize(current_.jobs.size());
    next_item_at_ = item_at_;
    place_tail(0, INFINITY);
    item_at_ = next_item_at_;
    plan_.keep_from(0);
    valid_ = plan_.count();
    note_best(result);
    const double instruments = static_cast<double>(std::max<std::size_t>(1, plan_.network().jobs.size()));
    const double hottest = start_temperature * cost_ / instruments;
    const int entries = static_cast<int>(current_.jobs.size());
    if (entries < 2) return;
    const int rounds = std::clamp(limits_.plans / (plans_an_entry * entries), 1, most_rounds);
    for (int round = 0; round < rounds; ++round) {
      const int plans = (limits_.plans - round + rounds - 1) / rounds;
      for (int i = 0; i < plans; ++i) {
        const double left = 1 - static_cast<double>(i) / plans;
        ++result.plans;
        if (until_unmoved && unmoved) return;
        step(hottest * (1 + 3 * (round % 3)) * left * left, result);
      }
    }
  }

  std::optional<Unmoved> unmoved;  ///< the best that moves no promise later
  bool until_unmoved = false;      ///< and nothing more is looked for

 private:
  void step(double temperature, SearchResult& result) {
    next_ = current_;
    change_list(next_, dice_);
    const std::size_t from = first_difference(current_, next_, item_at_);
    if (from == next_.jobs.size()) return;
    const double limit = cost_ - temperature * std::log(dice_.unit()) + tiny;
    plan_.take_back_to(std::min(from, valid_));
    for (std::size_t i = valid_; i < from; ++i) plan_.replay(current_.jobs[i]);
    valid_ = from;
    if (!place_tail(from, limit)) {
      ++result.given_up;
      plan_.take_back_to(from);
      return;
    }
    std::swap(current_, next_);
    std::copy(next_item_at_.begin() + static_cast<std::ptrdiff_t>(from), next_item_at_.end(),
              item_at_.begin() + static_cast<std::ptrdiff_t>(from));
    cost_ = plan_.cost_so_far();
    plan_.keep_from(from);
    valid_ = plan_.count();
    note_best(result);
  }

  bool place_tail(std::size_t from, double limit) {
    for (std::size_t i = from; i < next_.jobs.size(); ++i) {
      const int job = next_.jobs[i];
      const int item = first_item_[static_cast<std::size_t>(job)] + plan_.items_placed(job);
      next_item_at_[i] = item;
      plan_.place(job, next_.passed[static_cast<std::size_t>(item)]);
      if (plan_.cost_so_far() > limit) return false;
    }
    return true;
  }

  void note_best(SearchResult& result) {
    if (cost_ < result.cost - tiny) {
      result.cost = cost_;
      result.list = current_;
      result.promises_moved_later = plan_.promises_moved_later();
    }
    if ((!unmoved || cost_ < unmoved->cost - tiny) && plan_.promises_moved_later() == 0) {
      unmoved = Unmoved{.list = current_, .cost = cost_};
      plan_.hold_promises(true);
    }
  }

  SerialPlan& plan_;
  SearchLimits limits_;
  Seeded dice_;
  WorkList current_, next_;
  double cost_;
  std::vector<int> first_item_;
  std::vector<int> item_at_, next_item_at_;  ///< by place of the list
  std::size_t valid_ = 0;                    ///< how many places of the plan are those of the current list
};

}  // namespace

double place_list(SerialPlan& plan, const WorkList& list) {
  plan.take_back_to(0);
  std::vector<int> next;
  int items = 0;
  for (const BenchJob& job : plan.network().jobs) {
    next.push_back(items);
    items += static_cast<int>(job.items.size());
  }
  for (const std::int16_t job : list.jobs) {
    plan.place(job, list.passed[static_cast<std::size_t>(next[static_cast<std::size_t>(job)]++)]);
  }
  return plan.cost_so_far();
}

namespace {

/// A list that moves no promise later, looked for by a part of the plans.
std::optional<Unmoved> look_for_unmoved(SerialPlan& plan, SearchResult& result, const SearchLimits& limits) {
  plan.take_back_to(0);
  plan.hold_promises(true);
  const double cost = place_list(plan, result.list);
  Annealing annealing(plan, result.list, cost, {.plans = limits.plans / part_for_promises, .seed = limits.seed});
  annealing.until_unmoved = true;
  annealing.run(result);
  plan.take_back_to(0);
  plan.hold_promises(false);
  return annealing.unmoved;
}

}  // namespace

SearchResult search_lists(SerialPlan& plan, const WorkList& kept, const SearchLimits& limits) {
  SearchResult result;
  result.cost = INFINITY;
  std::optional<Unmoved> unmoved;
  const auto consider = [&](WorkList list) {
    const double cost = place_list(plan, list);
    ++result.plans;
    const int moved = plan.promises_moved_later();
    if (moved == 0 && (!unmoved || cost < unmoved->cost - tiny)) unmoved = Unmoved{.list = list, .cost = cost};
    if (cost < result.cost - tiny) {
      result.cost = cost;
      result.promises_moved_later = moved;
      result.list = std::move(list);
    }
    return cost;
  };
  if (!kept.jobs.empty()) consider(kept);
  result.best_rule = INFINITY;
  for (int rule = 0; rule < bench_rules; ++rule) {
    const double cost = consider(list_by_rule(plan.network(), static_cast<BenchRule>(rule)));
    if (rule == 0) result.first_come = cost;
    result.best_rule = std::min(result.best_rule, cost);
  }
  SearchLimits left = limits;
  if (!unmoved) {
    left.plans -= limits.plans / part_for_promises;
    unmoved = look_for_unmoved(plan, result, limits);
  }
  Annealing annealing(plan, unmoved ? unmoved->list : result.list, unmoved ? unmoved->cost : result.cost, left);
  annealing.unmoved = unmoved;
  annealing.run(result);
  if (annealing.unmoved) {
    result.list = annealing.unmoved->list;
    result.promises_moved_later = 0;
  }
  result.cost = place_list(plan, result.list);
  return result;
}

}  // namespace tailblock

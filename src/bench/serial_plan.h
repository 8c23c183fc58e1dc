#pragma once

#include <utility>
#include <vector>

#include "bench/network.h"
#include "bench/station_use.h"
#include "bench/weights.h"
#include "bench/work_calendar.h"

namespace tailblock {

/// Where a step lies. Hands-on work from `start` to `end`, then its wait to `free_from`.
struct Placed {
  Slot start = 0, end = 0, free_from = 0;
  int person = -1;
};

/// One unbroken stretch of split work.
struct Piece {
  int bit = 0, length = 0;
};

/// What a plan costs, part by part, in the weights' own unit.
struct PlanCost {
  double late = 0, in_shop = 0, changes = 0, promises = 0, overdue = 0;
  double pinned_missed = 0;  ///< price of work that ends too late for what is pinned after it: no plan may have any
  [[nodiscard]] double total() const { return late + in_shop + changes + promises + overdue + pinned_missed; }
};

/// Serial generation: takes the jobs in the order of a list, each mention being the job's next item, and puts every
/// item where it can begin first, gaps included. Whatever the order, the plan keeps every rule, so a search over lists
/// never needs repair. The last placed can be taken back, so that a search replaces only the tail of the list.
class SerialPlan {
 public:
  /// Places what is fixed: work begun, and what is pinned.
  /// @throws Refused naming the operations that clash.
  SerialPlan(const BenchNetwork& network, const BenchWeights& weights, const BenchRequest& request);

  /// @throws Refused naming the first operation or group that finds no day in the year ahead even with its instrument
  /// alone on the bench. After this, every list leads to a whole plan.
  void require_places();

  /// Places the job's next item, passing over the first `passed` places.
  void place(int job, int passed);
  /// Puts the job's next item back where it lay when last kept.
  void replay(int job);
  void take_back_to(std::size_t count);
  [[nodiscard]] std::size_t count() const { return stack_.size(); }
  /// Remembers where everything from the `first` placed on lies, for replay().
  void keep_from(std::size_t first);

  /// Never above the cost of any plan that this beginning leads to; the plan's cost when it is whole.
  [[nodiscard]] double cost_so_far() const { return jobs_cost_ + weights_.change_of_instrument * changes_ + missed_; }
  [[nodiscard]] PlanCost cost() const;
  [[nodiscard]] int promises_moved_later() const;
  /// Whether a promise moved later costs more than any plan without one. Changed only while the placed moves none.
  void hold_promises(bool hold) { promises_held_ = hold; }

  /// How many of the job's items are placed.
  [[nodiscard]] int items_placed(int job) const { return next_item_[static_cast<std::size_t>(job)]; }
  [[nodiscard]] const Placed& placed(int step) const { return placed_[static_cast<std::size_t>(step)]; }
  [[nodiscard]] std::vector<std::pair<Slot, Slot>> pieces(int step) const;
  [[nodiscard]] Slot ready(int job) const { return ready_[static_cast<std::size_t>(job)]; }
  [[nodiscard]] int changes() const { return changes_; }
  [[nodiscard]] const BenchNetwork& network() const { return net_; }
  /// From when until when the step keeps a place of one of its stations, where it lies.
  [[nodiscard]] std::pair<Slot, Slot> keeps(int step, const StationHold& held) const;
  /// Since when the step could have begun but for hands, hours, stations and air.
  [[nodiscard]] Slot could_begin(int step) const;

 private:
  /// What placing an item changed, to be put back.
  struct Entry {
    int job;
    Slot ready;
    double jobs_cost, job_least, missed;
    int changes;
  };
  void extend(const Step& step);
  int run(const Step& step, int person, int from, int length);
  [[nodiscard]] const BitWords* fit(const Step& step) const {
    return step.air < 0 ? nullptr : &fit_[static_cast<std::size_t>(step.air)];
  }
  [[nodiscard]] Slot stations_free(const Step& step, Slot start, Slot end) const;
  Placed earliest(int step, Slot from, int passed);
  Placed earliest_whole(const Step& step, Slot from, int passed);
  Placed earliest_without_hands(const Step& step, Slot from) const;
  Placed earliest_split(int index, Slot from, int passed);
  Slot split_from(const Step& step, int person, int from, std::vector<Piece>& pieces);
  void find_group(const Item& item, int passed);
  [[nodiscard]] int left_too_long(const Item& item, int index) const;
  void mark(int step);
  void unmark(int step);
  void enter(int job);
  void place_fixed(const BenchRequest& request);
  void place_pinned(const FixedStep& fixed, const BenchRequest& request);
  [[nodiscard]] Slot could_begin_at_best(int step) const;
  [[noreturn]] void refuse_pinned(const FixedStep& fixed, const BenchRequest& request) const;
  [[nodiscard]] double job_cost(std::size_t job, Slot ready) const;
  [[nodiscard]] double promise_cost(const BenchJob& job, Slot ready) const;
  [[nodiscard]] double earliness_cost(const BenchJob& job, Slot ready) const;
  [[nodiscard]] double missed(int step) const;
  [[nodiscard]] double overdue(int step) const;
  [[nodiscard]] double least_job_cost(std::size_t job, Slot ready) const;

  const BenchNetwork& net_;
  BenchWeights weights_;
  const BenchRequest& request_;
  int days_ = 0, most_days_ = 0;
  std::vector<WorkCalendar> people_;
  std::vector<BitWords> fit_;
  std::vector<StationUse> stations_;
  std::vector<Placed> placed_, kept_;
  std::vector<std::vector<Piece>> pieces_, kept_pieces_;
  std::vector<int> next_item_;
  std::vector<Slot> ready_;
  std::vector<double> least_cost_;  ///< a job's least cost from what of it is placed
  std::vector<Slot> rest_;          ///< clock time that the steps after each still take at least
  std::vector<Entry> stack_;
  std::vector<int> fixed_done_;  ///< steps
  std::vector<int> next_to_keep_;
  double jobs_cost_ = 0, missed_ = 0;
  int changes_ = 0;
  bool promises_held_ = false;
};

}  // namespace tailblock

#include "least_cost.h"

#include <array>
#include <cmath>
#include <gecode/int.hh>
#include <gecode/minimodel.hh>
#include <gecode/search.hh>
#include <memory>

namespace tailblock::testing {
namespace {

constexpr int minutes_a_day = 1440;
constexpr int horizon_days = 60;
constexpr int points_a_day = 120;  // costs are whole points: a day's cost of one, and a fifth of it, over 24 hours

int whole(double points) {
  const double rounded = std::round(points);
  if (std::abs(points - rounded) > 1e-9) throw Refused("weights: not a whole number of points");
  return static_cast<int>(rounded);
}

/// Times in grains since the first midnight; operations numbered over all instruments.
struct Sizes {
  explicit Sizes(const SmallBench& bench)
      : day(minutes_a_day / bench.grain),
        opens(SmallBench::opens / bench.grain),
        closes(opens + 60 * bench.hours / bench.grain) {
    for (std::size_t j = 0; j < bench.instruments.size(); ++j) {
      for (const SmallOperation& operation : bench.instruments[j].operations) {
        instrument.push_back(static_cast<int>(j));
        hands.push_back(operation.hands_on / bench.grain);
        kept.push_back((operation.hands_on + operation.wait) / bench.grain);
        station.push_back(operation.station);
      }
    }
  }
  [[nodiscard]] int count() const { return static_cast<int>(hands.size()); }

  int day, opens, closes;
  std::vector<int> instrument, hands, kept;  ///< kept: by hands and wait
  std::vector<bool> station;
};

class Bench : public Gecode::IntMinimizeSpace {
 public:
  Bench(const SmallBench& bench, const BenchWeights& weights, bool keep_promises)
      : keep_promises_(keep_promises),
        sizes_(std::make_shared<Sizes>(bench)),
        start_(*this, sizes_->count(), 0, horizon_days * sizes_->day),
        nth_(*this, sizes_->count(), 0, sizes_->count() - 1),
        nth_start_(*this, sizes_->count(), 0, horizon_days * sizes_->day),
        cost_(*this, 0, Gecode::Int::Limits::max) {
    hours_and_chains(bench);
    hands_and_clamps();
    order_of_hands();
    price(bench, weights);
    branch_in_time();
  }
  Bench(Bench& other) : Gecode::IntMinimizeSpace(other), keep_promises_(other.keep_promises_), sizes_(other.sizes_) {
    start_.update(*this, other.start_);
    nth_.update(*this, other.nth_);
    nth_start_.update(*this, other.nth_start_);
    cost_.update(*this, other.cost_);
  }
  Gecode::Space* copy() override { return new Bench(*this); }
  [[nodiscard]] Gecode::IntVar cost() const override { return cost_; }

 private:
  void hours_and_chains(const SmallBench& bench) {
    int o = 0;
    for (const SmallInstrument& instrument : bench.instruments) {
      rel(*this, start_[o] >= sizes_->opens + instrument.arrives / bench.grain);
      for (std::size_t k = 0; k < instrument.operations.size(); ++k, ++o) {
        if (k > 0) rel(*this, start_[o] >= start_[o - 1] + sizes_->kept[static_cast<std::size_t>(o - 1)]);
        const int last = sizes_->closes - sizes_->hands[static_cast<std::size_t>(o)];
        std::array<int[2], horizon_days> fit;
        for (int day = 0; day < horizon_days; ++day) {
          fit[static_cast<std::size_t>(day)][0] = day * sizes_->day + sizes_->opens;
          fit[static_cast<std::size_t>(day)][1] = day * sizes_->day + last;
        }
        dom(*this, start_[o], Gecode::IntSet(fit.data(), horizon_days));
      }
    }
  }

  void hands_and_clamps() {
    unary(*this, start_, Gecode::IntArgs(sizes_->hands));
    Gecode::IntVarArgs clamped;
    std::vector<int> kept;
    for (int o = 0; o < sizes_->count(); ++o) {
      if (!sizes_->station[static_cast<std::size_t>(o)]) continue;
      clamped << start_[o];
      kept.push_back(sizes_->kept[static_cast<std::size_t>(o)]);
    }
    if (!kept.empty()) unary(*this, clamped, Gecode::IntArgs(kept));
  }

  /// Which operation hands take up n-th, and when.
  void order_of_hands() {
    const int count = sizes_->count();
    Gecode::IntVarArray place(*this, count, 0, count - 1);
    channel(*this, nth_, place);
    const Gecode::IntArgs hands(sizes_->hands);
    for (int n = 0; n < count; ++n) {
      element(*this, start_, nth_[n], nth_start_[n]);
      element(*this, nth_start_, place[n], start_[n]);
      if (n + 1 == count) continue;
      const Gecode::IntVar busy(*this, 1, sizes_->closes);
      element(*this, hands, nth_[n], busy);
      rel(*this, nth_start_[n + 1] >= nth_start_[n] + busy);
    }
    for (int o = 1; o < count; ++o) {
      const auto i = static_cast<std::size_t>(o);
      if (sizes_->instrument[i] == sizes_->instrument[i - 1]) rel(*this, place[o] > place[o - 1]);
    }
  }

  void price(const SmallBench& bench, const BenchWeights& weights) {
    Gecode::IntVarArgs parts;
    int last = -1;
    for (const SmallInstrument& instrument : bench.instruments) {
      last += static_cast<int>(instrument.operations.size());
      price_of_instrument(instrument, bench.grain, last, weights, parts);
    }
    price_of_changes(weights, parts);
    linear(*this, parts, Gecode::IRT_EQ, cost_);
  }

  void price_of_instrument(const SmallInstrument& instrument, int grain, int last, const BenchWeights& weights,
                           Gecode::IntVarArgs& parts) {
    const int a_grain = points_a_day / sizes_->day;
    const Gecode::IntVar ready = expr(*this, start_[last] + sizes_->kept[static_cast<std::size_t>(last)]);
    const int arrives = sizes_->opens + instrument.arrives / grain;
    parts << expr(*this, whole(weights.shop_day * a_grain) * (ready - arrives));
    const int due = (instrument.due_days + 1) * sizes_->day;
    parts << expr(*this, whole(weights.late_day * instrument.weight * a_grain) * max(ready - due, 0));
    if (!instrument.promised_day) return;
    const int promise_ends = (*instrument.promised_day + 1) * sizes_->day;
    if (keep_promises_) rel(*this, ready <= promise_ends);
    parts << expr(*this, whole(weights.promise_earlier_day * a_grain) * max(promise_ends - ready, 0));
    std::vector<int> price;
    for (int day = 0; day <= horizon_days; ++day) {
      const int later = day - *instrument.promised_day;
      price.push_back(
          whole(points_a_day * (later > 0 ? weights.promise_later + weights.promise_later_day * later : 0)));
    }
    const Gecode::IntVar ready_day = expr(*this, (ready - 1) / sizes_->day);
    const Gecode::IntVar later(*this, 0, Gecode::Int::Limits::max);
    element(*this, Gecode::IntArgs(price), ready_day, later);
    parts << later;
  }

  void price_of_changes(const BenchWeights& weights, Gecode::IntVarArgs& parts) {
    const Gecode::IntArgs instruments(sizes_->instrument);
    Gecode::IntVarArgs whose, days;
    for (int n = 0; n < sizes_->count(); ++n) {
      whose << Gecode::IntVar(*this, 0, sizes_->count());
      element(*this, instruments, nth_[n], whose[n]);
      days << expr(*this, nth_start_[n] / sizes_->day);
    }
    Gecode::BoolVarArgs changes;
    for (int n = 0; n + 1 < sizes_->count(); ++n)
      changes << expr(*this, whose[n] != whose[n + 1] && days[n] == days[n + 1]);
    if (changes.size() > 0) parts << expr(*this, whole(weights.change_of_instrument * points_a_day) * sum(changes));
  }

  /// From the first piece of work on: which it is, soonest first, then when.
  void branch_in_time() {
    Gecode::IntVarArgs in_time;
    for (int n = 0; n < sizes_->count(); ++n) in_time << nth_[n] << nth_start_[n];
    const auto soonest = [](const Gecode::Space& space, Gecode::IntVar variable, int i) {
      if (i % 2 == 1) return variable.min();
      const auto& here = static_cast<const Bench&>(space);
      int best = variable.min();
      for (Gecode::IntVarValues value(variable); value(); ++value) {
        if (here.start_[value.val()].min() < here.start_[best].min()) best = value.val();
      }
      return best;
    };
    branch(*this, in_time, Gecode::INT_VAR_NONE(), Gecode::INT_VAL(soonest));
  }

  bool keep_promises_;
  std::shared_ptr<const Sizes> sizes_;
  Gecode::IntVarArray start_;
  Gecode::IntVarArray nth_, nth_start_;  ///< the operation that hands take up n-th, and its start
  Gecode::IntVar cost_;
};

}  // namespace

ProvenLeast least_cost(const SmallBench& bench, const BenchWeights& weights) {
  ProvenLeast least{};
  std::unique_ptr<Bench> best;
  for (const bool keep_promises : {true, false}) {
    Gecode::BAB<Bench> search(std::make_unique<Bench>(bench, weights, keep_promises).get());
    while (Bench* better = search.next()) best.reset(better);
    least.nodes += search.statistics().node;
    least.promises_kept = keep_promises;
    if (best) break;
  }
  if (!best) throw Refused("bench: no plan at all");
  least.cost = static_cast<double>(best->cost().val()) / points_a_day;
  for (const SmallInstrument& instrument : bench.instruments) {
    const double beyond = weights.shop_day * (horizon_days - 1) +
                          weights.late_day * instrument.weight * (horizon_days - 1 - instrument.due_days);
    if (least.cost >= beyond) throw Refused("horizon_days: too short for a proof");
  }
  return least;
}

}  // namespace tailblock::testing

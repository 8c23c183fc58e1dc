#include "bench/promise.h"

#include <algorithm>
#include <cmath>

#include "bench/list_search.h"
#include "bench/seeded.h"
#include "bench/work_order.h"
#include "season/normal.h"

namespace tailblock {
namespace {

std::uint64_t hash_of(std::string_view text) {
  std::uint64_t hash = 0;
  for (const char c : text) hash = mixed(hash ^ static_cast<unsigned char>(c));
  return hash;
}

/// A normal number that belongs to these names and this simulation for ever.
double drawn(std::string_view instrument, std::string_view operation, std::uint64_t simulation) {
  return standard_normal_quantile(unit_of(mixed(hash_of(instrument) ^ mixed(hash_of(operation) + simulation))));
}

/// The longest unbroken run of slots that each person has on any day.
std::vector<int> longest_runs(const BenchNetwork& net) {
  std::vector<int> longest;
  for (const std::vector<ShopHours>& hours_of_one : net.hours) {
    longest.push_back(0);
    for (const ShopHours& hours : hours_of_one)
      longest.back() = std::max(longest.back(), hours.to_minute / minutes_a_slot - slots_for(hours.from_minute));
  }
  return longest;
}

/// Those of the step's people who have a run of so many slots.
std::uint8_t people_with_run(const Step& step, const std::vector<int>& longest, int slots) {
  unsigned people = 0;
  for (std::size_t p = 0; p < longest.size(); ++p) {
    if (longest[p] >= slots) people |= step.people & 1U << p;
  }
  return static_cast<std::uint8_t>(people);
}

bool gaps_can_be_kept(const BenchNetwork& net, const Item& item) {
  for (int s = item.first_step; s < item.first_step + item.steps; ++s) {
    for (const StepOrder& within : net.steps[static_cast<std::size_t>(s)].within) {
      if (within.before >= item.first_step && least_between(net.steps, within.before, s) > within.gap) return false;
    }
  }
  return true;
}

class Simulation {
 public:
  Simulation(const PromiseRequest& request, const BenchNetwork& network, const DurationPrior& prior)
      : request_(request),
        planned_(network),
        shared_(prior.shared_by_instrument),
        longest_of_people_(longest_runs(network)) {
    for (const Step& step : network.steps) {
      const Operation& operation = asked(step);
      learnt_.push_back(
          learnt_duration(request.finished, operation.kind.empty() ? operation.name : operation.kind, prior));
      longest_.push_back(0);
      for (std::size_t p = 0; p < longest_of_people_.size(); ++p) {
        if ((step.people >> p & 1U) != 0) longest_.back() = std::max(longest_.back(), longest_of_people_[p]);
      }
    }
  }

  /// The bench as it turns out this time. A group that would outgrow a day takes what was planned, since it must be
  /// placed whole; other work that outgrows a day is gone on with on the next.
  [[nodiscard]] BenchNetwork turned_out(std::uint64_t simulation) const {
    BenchNetwork net = planned_;
    for (BenchJob& job : net.jobs) {
      for (const Item& item : job.items) {
        int total = 0;
        bool fits = true;
        for (int s = item.first_step; s < item.first_step + item.steps; ++s) {
          const auto i = static_cast<std::size_t>(s);
          Step& step = net.steps[i];
          step.hands = hands_drawn(i, simulation);
          total += step.hands + (s > item.first_step ? std::max(net.steps[i - 1].wait, step.least_gap) : 0);
          if (item.steps == 1 && step.hands > longest_[i]) step.splittable = true;
          fits = fits && total <= longest_[i];
        }
        fits = fits && gaps_can_be_kept(net, item);
        for (int s = item.first_step; item.steps > 1 && !fits && s < item.first_step + item.steps; ++s)
          net.steps[static_cast<std::size_t>(s)].hands = planned_.steps[static_cast<std::size_t>(s)].hands;
        for (int s = item.first_step; s < item.first_step + item.steps; ++s)
          leave_to_whom_it_fits(net.steps[static_cast<std::size_t>(s)]);
      }
      job.least_ready = job.arrives;  // no bound: an instrument may be ready before the plan's least
    }
    return net;
  }

 private:
  /// Unbroken work that has outgrown someone's hours is done by the others.
  void leave_to_whom_it_fits(Step& step) const {
    if (!step.splittable && step.hands > 0) step.people = people_with_run(step, longest_of_people_, step.hands);
  }
  [[nodiscard]] int hands_drawn(std::size_t s, std::uint64_t simulation) const {
    const Step& step = planned_.steps[s];
    if (step.hands == 0) return 0;
    const Operation& operation = asked(step);
    const std::string& name = request_.bench.instruments[static_cast<std::size_t>(step.instrument)].name;
    const double z = std::sqrt(1 - shared_ * shared_) * drawn(name, operation.name, simulation) +
                     shared_ * drawn(name, "", simulation);
    const double times = times_estimate(learnt_[s], student_from_normal(std::clamp(z, -3.5, 3.5), learnt_[s].freedom));
    return std::max(1, slots_for(static_cast<int>(std::lround(operation.hands_on_minutes * times))));
  }
  [[nodiscard]] const Operation& asked(const Step& step) const {
    return request_.bench.instruments[static_cast<std::size_t>(step.instrument)]
        .operations[static_cast<std::size_t>(step.number)];
  }
  const PromiseRequest& request_;
  const BenchNetwork& planned_;
  double shared_;
  std::vector<int> longest_of_people_;  ///< in slots
  std::vector<LearntDuration> learnt_;
  std::vector<int> longest_;  ///< of the people of each step
};

/// From the days on which an instrument was ready, sorted.
PromisedDay promised_day(const std::vector<int>& days, double chance, double allowance, Date first) {
  PromisedDay promised;
  const double all = static_cast<double>(days.size());
  bool made = false, sure = false;
  for (std::size_t i = 0; i < days.size(); ++i) {
    if (i + 1 < days.size() && days[i + 1] == days[i]) continue;
    const double share = static_cast<double>(i + 1) / all;
    const Date day = first + std::chrono::days(days[i]);
    if (!made && share >= chance - allowance) {
      made = true;
      promised.promise = day;
      promised.chance = share;
    }
    if (!sure && share >= chance) {
      sure = true;
      promised.sure_of = day;
      promised.sure_chance = share;
    }
  }
  return promised;
}

}  // namespace

void describe(FieldVisitor& visit, PromiseRequest& request) {
  object(visit, {"bench", "the bench to be planned"}, request.bench);
  list(visit, {"finished", "finished operations of the shop's log", Need::has_default}, request.finished, {0, 20000});
  visit.number({"chance", "with which the promise is to hold", Need::has_default}, request.chance, {0.5, 0.99, ""});
  visit.integer({"simulations", "how often the plan is gone through", Need::has_default}, request.simulations,
                {50, 2000, ""});
}

void describe(FieldVisitor& visit, PromisedDay& day) {
  visit.text({"name", "which"}, day.name, 120);
  visit.date({"planned", "ready by the plan, were every estimate right"}, day.planned);
  visit.date({"promise", "the first day whose chance is near enough to the one asked for"}, day.promise);
  visit.number({"chance", "of being ready by the end of it"}, day.chance, {0, 1, ""});
  visit.date({"sure_of", "the first day with at least the chance asked for"}, day.sure_of);
  visit.number({"sure_chance", "of being ready by the end of that"}, day.sure_chance, {0, 1, ""});
}

void describe(FieldVisitor& visit, PromiseResult& result) {
  list(visit, {"instruments", "as asked"}, result.instruments, {1, 400});
  list(visit, {"order", "of the plan that was simulated"}, result.order, {0, 24000});
  visit.integer({"simulations", "gone through"}, result.simulations, {0, 2000, ""});
  visit.text({"verdict", "one sentence"}, result.verdict, 400);
}

PromiseResult promise(const PromiseRequest& request, const BenchWeights& weights, const DurationPrior& prior) {
  require_valid(request);
  PromiseRequest kept = request;
  const BenchResult plan = bench(request.bench, weights);
  kept.bench.kept_order = plan.order;
  const BenchNetwork network = bench_network(kept.bench);
  const WorkList list = list_from_order(network, kept.bench);
  const Simulation simulation(kept, network, prior);
  std::vector<std::vector<int>> days(network.jobs.size());
  for (int i = 0; i < request.simulations; ++i) {
    const BenchNetwork turned = simulation.turned_out(static_cast<std::uint64_t>(i));
    SerialPlan simulated(turned, weights, kept.bench);
    place_list(simulated, list);
    for (std::size_t j = 0; j < days.size(); ++j) days[j].push_back(day_of(simulated.ready(static_cast<int>(j)) - 1));
  }
  PromiseResult result;
  for (std::size_t j = 0; j < days.size(); ++j) {
    std::ranges::sort(days[j]);
    PromisedDay promised = promised_day(days[j], request.chance, prior.whole_day_allowance, request.bench.now.day);
    promised.name = plan.instruments[j].name;
    promised.planned = plan.instruments[j].ready.day;
    result.instruments.push_back(std::move(promised));
  }
  result.order = plan.order;
  result.simulations = request.simulations;
  result.verdict = "Each day holds with the chance beside it, near " + plain_number(std::round(100 * request.chance)) +
                   " %, if no other work comes before it.";
  return result;
}

}  // namespace tailblock

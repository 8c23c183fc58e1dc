#include "bench/bench.h"

#include <algorithm>
#include <map>

#include "bench/list_search.h"
#include "bench/overfull.h"
#include "bench/what_holds.h"
#include "bench/work_order.h"
#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

PlannedOperation planned(const SerialPlan& plan, const BenchRequest& request, int index) {
  const BenchNetwork& net = plan.network();
  const Step& step = net.steps[static_cast<std::size_t>(index)];
  const Placed& here = plan.placed(index);
  const BenchInstrument& instrument = request.instruments[static_cast<std::size_t>(step.instrument)];
  PlannedOperation operation;
  operation.instrument = instrument.name;
  operation.operation = instrument.operations[static_cast<std::size_t>(step.number)].name;
  if (here.person >= 0) operation.person = request.people[static_cast<std::size_t>(here.person)].name;
  operation.starts = net.clock.moment(here.start);
  operation.hands_on_ends = net.clock.moment(here.end);
  operation.wait_ends = net.clock.moment(here.free_from);
  for (const auto& [from, until] : plan.pieces(index)) {
    operation.pieces.push_back({.from = net.clock.moment(from), .until = net.clock.moment(until)});
  }
  return operation;
}

std::vector<PlannedOperation> next_of_each_person(const std::vector<PlannedOperation>& by_start,
                                                  const BenchRequest& request) {
  std::vector<PlannedOperation> next;
  for (const BenchPerson& person : request.people) {
    const auto first = std::ranges::find(by_start, person.name, &PlannedOperation::person);
    if (first != by_start.end()) next.push_back(*first);
  }
  return next;
}

PlannedInstrument planned_instrument(const SerialPlan& plan, const BenchRequest& request, std::size_t j) {
  const BenchJob& job = plan.network().jobs[j];
  const Slot ready = plan.ready(static_cast<int>(j));
  PlannedInstrument instrument;
  instrument.name = request.instruments[j].name;
  instrument.ready = plan.network().clock.moment(ready);
  instrument.days_late = static_cast<double>(std::max(0, ready - job.due_end)) / slots_a_day;
  instrument.days_from_now = static_cast<double>(ready - job.arrives) / slots_a_day;
  if (job.promised_day) instrument.promise_days_later = day_of(ready - 1) - *job.promised_day;
  if (instrument.promise_days_later > 0 || instrument.days_late > 0) instrument.why = what_holds(plan, request, j);
  return instrument;
}

std::string moved_sentence(const BenchInstrument& asked, const PlannedInstrument& instrument) {
  return quoted_text(instrument.name) + " moves from " + iso_date(*asked.promised) + " to " +
         iso_date(*asked.promised + std::chrono::days(instrument.promise_days_later)) + ": " + instrument.why;
}

std::vector<std::string> overdue_sentences(const SerialPlan& plan, const BenchRequest& request) {
  std::vector<std::string> sentences;
  const BenchNetwork& net = plan.network();
  for (std::size_t s = 0; s < net.steps.size(); ++s) {
    const Step& step = net.steps[s];
    const Slot start = plan.placed(static_cast<int>(s)).start;
    if (start <= step.begin_by) continue;
    sentences.push_back(step_name(request, step) + " begins " + moment_text(net.clock.moment(start)) +
                        ", and should have by " + moment_text(net.clock.moment(step.begin_by)) +
                        ": what it follows has stood too long, see whether it must be done again");
  }
  return sentences;
}

void require_pins_kept(const SerialPlan& plan, const BenchRequest& request) {
  const BenchNetwork& net = plan.network();
  for (std::size_t s = 0; s < net.steps.size(); ++s) {
    const Step& step = net.steps[s];
    const Placed& here = plan.placed(static_cast<int>(s));
    if (here.free_from <= step.ends_by && here.end <= step.hands_by) continue;
    for (const FixedStep& fixed : net.fixed) {
      const Step& pinned = net.steps[static_cast<std::size_t>(fixed.step)];
      const bool follows = std::ranges::any_of(
          pinned.after, [&](const StepOrder& order) { return order.before == static_cast<int>(s); });
      if (fixed.kind != FixedStep::Kind::pinned || !follows) continue;
      throw Refused(step_name(request, pinned) + " is pinned too soon: no plan was found in which " +
                    step_name(request, step) + " before it has ended by then");
    }
  }
}

std::string verdict_of(const BenchResult& result) {
  const auto late = std::ranges::count_if(result.instruments, [](const auto& i) { return i.days_late > 0; });
  std::string text = std::to_string(result.instruments.size()) + " on the bench, ";
  text += late == 0 ? "none late" : std::to_string(late) + " late";
  if (result.moved_promises.empty()) return text + "; every promise stands.";
  return text + "; " + std::to_string(result.moved_promises.size()) +
         (result.moved_promises.size() == 1 ? " promise moves later." : " promises move later.");
}

}  // namespace

int plans_that_suit(int operations) {
  constexpr int work = 500'000;  // operations placed in a first answer
  return std::clamp(work / std::max(1, operations), 300, 50'000);
}

BenchResult bench(const BenchRequest& request, const BenchWeights& weights) {
  require_valid(request);
  const BenchNetwork network = bench_network(request);
  SerialPlan plan(network, weights, request);
  plan.require_places();
  const WorkList kept = list_from_order(network, request);
  const int plans = request.plans > 0 ? request.plans : plans_that_suit(static_cast<int>(network.steps.size()));
  const SearchResult found =
      search_lists(plan, kept, {.plans = plans, .seed = static_cast<std::uint64_t>(request.seed)});
  require_pins_kept(plan, request);

  BenchResult result;
  for (int s = 0; s < static_cast<int>(network.steps.size()); ++s)
    result.operations.push_back(planned(plan, request, s));
  std::ranges::stable_sort(result.operations, {}, &PlannedOperation::starts);
  result.next = next_of_each_person(result.operations, request);
  for (std::size_t j = 0; j < network.jobs.size(); ++j) {
    result.instruments.push_back(planned_instrument(plan, request, j));
    const PlannedInstrument& instrument = result.instruments.back();
    if (request.instruments[j].promised && instrument.promise_days_later > 0)
      result.moved_promises.push_back(moved_sentence(request.instruments[j], instrument));
  }
  result.overdue = overdue_sentences(plan, request);
  result.overfull = overfull_stations(plan, request);
  const PlanCost cost = plan.cost();
  result.cost = {.late = cost.late,
                 .in_shop = cost.in_shop,
                 .changes = cost.changes,
                 .promises = cost.promises,
                 .overdue = cost.overdue,
                 .total = cost.total(),
                 .first_come = found.first_come,
                 .best_rule = found.best_rule};
  result.order = order_from_list(network, request, found.list);
  result.plans = found.plans;
  result.changes_of_instrument = plan.changes();
  result.verdict = verdict_of(result);
  return result;
}

}  // namespace tailblock

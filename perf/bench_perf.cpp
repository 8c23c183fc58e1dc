// The bench on one core (design.md section 7: 60 instruments, first answer in under 200 ms; the same after every slip).
// The peer in the same run is first come, first served with its gaps filled: what each answer costs beside it stands in
// the counters, `cost` against `first_come`. The benches are invented (tests/support/made_up_bench.h).

#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>

#include "bench/list_search.h"
#include "bench/promise.h"
#include "made_up_bench.h"

namespace {

using namespace tailblock;

std::string text_of(const std::string& path) {
  std::ifstream file(std::string(TEST_SOURCE_DIR "/") + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

const BenchWeights weights = bench_weights(text_of("data/bench_weights.csv"));
const DurationPrior prior = duration_prior(text_of("data/duration_prior.csv"));

BenchRequest shop(benchmark::State& state) {
  const auto instruments = static_cast<int>(state.range(0));
  return testing::MadeUpBench(11).shop(instruments);
}

void tell(benchmark::State& state, const BenchResult& result) {
  state.counters["operations"] = static_cast<double>(result.operations.size());
  state.counters["plans"] = result.plans;
  state.counters["cost"] = result.cost.total;
  state.counters["first_come"] = result.cost.first_come;
  state.counters["limit_ms"] = 200;
}

/// The whole question as asked over HTTP, entry checks and words included.
void first_answer(benchmark::State& state) {
  const BenchRequest request = shop(state);
  BenchResult result;
  for (auto _ : state) benchmark::DoNotOptimize(result = bench(request, weights));
  tell(state, result);
}
BENCHMARK(first_answer)->Arg(12)->Arg(60)->Arg(210)->Unit(benchmark::kMillisecond);

/// After two hours lost, every instrument promised.
void after_a_slip(benchmark::State& state) {
  BenchRequest request = shop(state);
  const BenchResult before = bench(request, weights);
  for (std::size_t j = 0; j < request.instruments.size(); ++j)
    request.instruments[j].promised = before.instruments[j].ready.day;
  request.kept_order = before.order;
  request.now.minute += 120;
  BenchResult result;
  for (auto _ : state) benchmark::DoNotOptimize(result = bench(request, weights));
  tell(state, result);
  state.counters["promises_moved"] = static_cast<double>(result.moved_promises.size());
}
BENCHMARK(after_a_slip)->Arg(12)->Arg(60)->Arg(210)->Unit(benchmark::kMillisecond);

/// How far the first answer is from one given fifty times the plans.
void far_more_plans(benchmark::State& state) {
  BenchRequest request = shop(state);
  const BenchResult first = bench(request, weights);
  request.plans = 50 * first.plans;
  BenchResult result;
  for (auto _ : state) benchmark::DoNotOptimize(result = bench(request, weights));
  tell(state, result);
  state.counters["first_answer"] = first.cost.total;
  state.counters["first_over_long_percent"] = 100 * (first.cost.total / result.cost.total - 1);
}
BENCHMARK(far_more_plans)->Arg(12)->Arg(60)->Iterations(1)->Unit(benchmark::kMillisecond);

/// Plans a second in the search; `whole` counts only those gone through to their end.
void plans_a_second(benchmark::State& state) {
  const BenchRequest request = shop(state);
  const BenchNetwork network = bench_network(request);
  SerialPlan plan(network, weights, request);
  double plans = 0, whole = 0;
  for (auto _ : state) {
    const SearchResult found = search_lists(plan, {}, {.plans = 3000, .seed = 1});
    plans += found.plans;
    whole += found.plans - found.given_up;
  }
  state.counters["plans"] = benchmark::Counter(plans, benchmark::Counter::kIsRate);
  state.counters["whole"] = benchmark::Counter(whole, benchmark::Counter::kIsRate);
  state.counters["operations"] = static_cast<double>(network.steps.size());
}
BENCHMARK(plans_a_second)->Arg(12)->Arg(60)->Arg(180)->Unit(benchmark::kMillisecond);

/// The peer alone: one plan in the order of arrival, the bench laid out afresh.
void first_come_first_served(benchmark::State& state) {
  const BenchRequest request = shop(state);
  double cost = 0;
  for (auto _ : state) {
    const BenchNetwork network = bench_network(request);
    SerialPlan plan(network, weights, request);
    cost = place_list(plan, list_by_rule(network, BenchRule::arrival));
  }
  state.counters["cost"] = cost;
  state.counters["limit_ms"] = 5;
}
BENCHMARK(first_come_first_served)->Arg(12)->Arg(60)->Arg(150)->Arg(210)->Unit(benchmark::kMillisecond);

void promises(benchmark::State& state) {
  PromiseRequest request;
  request.bench = shop(state);
  for (auto _ : state) benchmark::DoNotOptimize(promise(request, weights, prior));
}
BENCHMARK(promises)->Arg(12)->Arg(60)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

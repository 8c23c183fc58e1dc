// The bench on one core (design.md section 7: 60 instruments, first answer in under 200 ms; the same after every slip).
// The peer in the same run is first come, first served with its gaps filled: what each answer costs beside it stands in
// the counters, `cost` against `first_come`. The benches are invented (tests/support/made_up_bench.h).

#include <benchmark/benchmark.h>

#include <ctime>
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
BENCHMARK(first_answer)->Arg(12)->Arg(60)->Arg(210)->Arg(225)->Unit(benchmark::kMillisecond);

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

/// The plans that a second of the processor allows, for a search that counts plans and not time.
int plans_in_a_second(const BenchRequest& request) {
  const std::clock_t from = std::clock();
  const int plans = bench(request, weights).plans;
  return static_cast<int>(1.0 * plans * CLOCKS_PER_SEC / static_cast<double>(std::clock() - from));
}

/// How far a search of 200 ms is from one of 10 s of the same search on the same bench, in the same run.
void after_200_ms(benchmark::State& state) {
  BenchRequest request = shop(state);
  const int in_a_second = plans_in_a_second(request);
  request.plans = in_a_second / 5;
  BenchResult early, late;
  for (auto _ : state) {
    early = bench(request, weights);
    request.plans = 10 * in_a_second;
    late = bench(request, weights);
  }
  state.counters["operations"] = static_cast<double>(early.operations.size());
  state.counters["plans_200_ms"] = early.plans;
  state.counters["plans_10_s"] = late.plans;
  state.counters["over_10_s_percent"] = 100 * (early.cost.total / late.cost.total - 1);
  state.counters["limit_percent"] = 2;
}
BENCHMARK(after_200_ms)->Arg(60)->Arg(162)->Iterations(1)->Unit(benchmark::kMillisecond);

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
  double cost = 0, operations = 0;
  for (auto _ : state) {
    const BenchNetwork network = bench_network(request);
    SerialPlan plan(network, weights, request);
    cost = place_list(plan, list_by_rule(network, BenchRule::arrival));
    operations = static_cast<double>(network.steps.size());
  }
  state.counters["operations"] = operations;
  state.counters["cost"] = cost;
  state.counters["limit_ms"] = 5;
}
BENCHMARK(first_come_first_served)->Arg(12)->Arg(60)->Arg(162)->Arg(225)->Unit(benchmark::kMillisecond);

void promises(benchmark::State& state) {
  PromiseRequest request;
  request.bench = shop(state);
  for (auto _ : state) benchmark::DoNotOptimize(promise(request, weights, prior));
}
BENCHMARK(promises)->Arg(12)->Arg(60)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

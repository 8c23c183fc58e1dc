// The bench as the pages ask for it: from the facts in a book of so many instruments, each with a repair agreed, to the
// plan (design.md section 7: 60 instruments, first answer in under 200 ms; after every tap the same).
// Reading the book and the plan are also told apart. Shops are invented: repairs of data/procedures.csv in turn.

#include <benchmark/benchmark.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <string_view>

#include "bench/bench.h"
#include "book/bench_question.h"

namespace {

using namespace tailblock;
namespace fs = std::filesystem;

/// The text of a file of the repository, kept for as long as the program runs.
std::string_view text_of(std::string_view path) {
  static std::map<std::string, std::string, std::less<>> kept;
  auto found = kept.find(path);
  if (found == kept.end()) {
    std::ifstream file(std::string(TEST_SOURCE_DIR "/") + std::string(path), std::ios::binary);
    found = kept.emplace(path, std::string{std::istreambuf_iterator<char>(file), {}}).first;
  }
  return found->second;
}

const BenchWeights weights = bench_weights(text_of("data/bench_weights.csv"));
const RepairTables repairs = repair_tables(text_of);
const Moment now{Date(std::chrono::days(20'504)), 9 * 60};  // a Friday

struct BookOf {
  explicit BookOf(int instruments)
      : folder(fs::temp_directory_path() /
               ("tailblock-perf-" + std::to_string(getpid()) + "-" + std::to_string(instruments))),
        made(fs::create_directory(folder)),
        book(folder / "shop.book") {
    const RecordId owner = book.keep(Owner{.name = "A. Player"});
    const RecordId home = book.keep(Home{.name = "a house"});
    for (int i = 0; i < instruments; ++i) {
      const RecordId instrument =
          book.keep(Instrument{.owner_id = owner, .home_id = home, .name = "number " + std::to_string(i)});
      const RecordId visit = book.keep(Visit{.instrument_id = instrument, .date = now.day});
      const auto which = static_cast<std::size_t>(i) % repairs.procedures.size();
      const RecordId job = book.keep(Job{.visit_id = visit, .procedure = repairs.procedures[which].id});
      const RecordId offer = book.add(JobOffer{.job_id = job,
                                               .day = now.day,
                                               .words = "x",
                                               .hours_low = 1,
                                               .hours = 2,
                                               .hours_high = 3,
                                               .net = "1.00",
                                               .tax = "0.00",
                                               .currency = "EUR"});
      book.add(OwnerWord{.job_id = job, .offer_id = offer, .says = OwnerSays::yes, .day = now.day, .who = "A. Player"});
      if (i % 3 == 0) {
        book.add(PromiseRecord{.visit_id = visit, .ready_on = now.day + std::chrono::days(10 + i), .said_on = now.day});
      }
    }
  }
  ~BookOf() {
    std::error_code ignored;
    fs::remove_all(folder, ignored);
  }
  BookOf(const BookOf&) = delete;
  BookOf& operator=(const BookOf&) = delete;

  [[nodiscard]] BenchQuestion question() const {
    std::vector<Station> places;
    for (const ShopStation& station : repairs.materials.stations) {
      places.push_back({.name = station.name, .count = station.count});
    }
    return bench_question(book, shop_settings(book, places), repairs, now);
  }

  fs::path folder;
  bool made;
  Book book;
};

void reading_the_book(benchmark::State& state) {
  const BookOf shop(static_cast<int>(state.range(0)));
  std::size_t operations = 0;
  for (auto _ : state) operations = shop.question().work.size();
  state.counters["operations"] = static_cast<double>(operations);
}
BENCHMARK(reading_the_book)->Arg(12)->Arg(60)->Unit(benchmark::kMillisecond);

/// The whole answer after a tap: from the book, with the order of the plan before.
void answer_after_a_tap(benchmark::State& state) {
  const BookOf shop(static_cast<int>(state.range(0)));
  std::vector<OrderEntry> order = bench(shop.question().request, weights).order;
  double first_come = 0, cost = 0;
  int plans = 0;
  for (auto _ : state) {
    BenchQuestion question = shop.question();
    question.request.kept_order = order_of_those_here(order, question.request);
    const BenchResult plan = bench(question.request, weights);
    order = plan.order;
    first_come = plan.cost.first_come;
    cost = plan.cost.total;
    plans = plan.plans;
  }
  state.counters["plans"] = plans;
  state.counters["cost"] = cost;
  state.counters["first_come"] = first_come;
  state.counters["limit_ms"] = 200;
}
BENCHMARK(answer_after_a_tap)->Arg(12)->Arg(60)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

#include "cli/demo_bench.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "book/bench_question.h"
#include "book/estimate_question.h"
#include "demo_book.h"

namespace tailblock {
namespace {

using testing::DemoBook;
using testing::kept_file;

const DataTables& tables_of_the_trade() {
  static const DataTables tables = load_data_tables(kept_file);
  return tables;
}

const RepairTables& repairs() { return tables_of_the_trade().repairs; }

std::string in_words(const WorkSpell& spell) {
  return spell.person + " at " + spell.operation + ", " + iso_date(spell.began_on) + " minute " +
         std::to_string(spell.began_minute);
}

bool in_hours(const BenchPerson& person, const WorkSpell& spell) {
  return std::ranges::any_of(person.hours, [&](const ShopHours& hours) {
    return static_cast<int>(std::chrono::weekday(spell.began_on).iso_encoding()) == hours.weekday &&
           hours.from_minute <= spell.began_minute && spell.ended_minute <= hours.to_minute;
  });
}

/// What a person finds who opens the demo at `now`.
void is_alive_at(const Moment& now) {
  SCOPED_TRACE(iso_date(now.day) + " minute " + std::to_string(now.minute));
  DemoBook demo(now.day);
  const DemoBenchTables tables = demo_bench_tables(kept_file);
  fill_demo_bench(demo.book, demo_tables(kept_file), tables, tables_of_the_trade(), now);
  const BenchQuestion question = bench_question(demo.book, shop_settings(demo.book, {}), repairs(), now);
  EXPECT_GE(question.request.instruments.size(), 6U);
  EXPECT_GE(question.left_out.size(), 2U) << "something to take on";
  BenchRequest request = question.request;
  request.plans = 1;
  const BenchResult plan = bench(request, bench_weights(kept_file("data/bench_weights.csv")));
  EXPECT_EQ(plan.operations.size(), question.work.size());
  const auto in_state = [&](StepState state) { return std::ranges::count(question.work, state, &BenchWork::state); };
  EXPECT_GE(in_state(StepState::waiting) + in_state(StepState::at_work), 1) << "something cures or is worked on";

  std::vector<WorkSpell> done = demo.book.work_done();
  EXPECT_GE(done.size(), 20U);
  std::ranges::sort(done, {},
                    [](const WorkSpell& one) { return std::tuple(one.person, one.began_on, one.began_minute); });
  for (std::size_t i = 0; i < done.size(); ++i) {
    const auto person = std::ranges::find(tables.people, done[i].person, &BenchPerson::name);
    ASSERT_NE(person, tables.people.end()) << in_words(done[i]);
    EXPECT_TRUE(in_hours(*person, done[i])) << in_words(done[i]);
    if (i == 0 || done[i].person != done[i - 1].person || done[i].began_on != done[i - 1].began_on) continue;
    EXPECT_GE(done[i].began_minute, done[i - 1].ended_minute) << in_words(done[i]) << " is at two things";
  }
  EXPECT_TRUE(demo.book.troubles().empty());
}

TEST(DemoBench, is_alive_in_every_season_by_day_and_by_night) {
  using namespace std::chrono;
  is_alive_at({Date(2026y / February / 20), 10 * 60 + 40});
  is_alive_at({Date(2026y / May / 18), 9 * 60});
  is_alive_at({Date(2026y / August / 16), 23 * 60});
  is_alive_at({Date(2026y / November / 12), 16 * 60});
}

TEST(DemoBench, offers_what_its_estimates_come_to) {
  using namespace std::chrono;
  const Moment now{Date(2026y / February / 20), 10 * 60 + 40};
  DemoBook demo(now.day);
  fill_demo_bench(demo.book, demo_tables(kept_file), demo_bench_tables(kept_file), tables_of_the_trade(), now);
  for (const VisitWork& work : demo.book.work_in_the_shop()) {
    if (work.jobs.empty()) continue;
    const EstimateAnswer estimate =
        estimate_answer(work, demo.book.story(work.visit.instrument_id), shop_settings(demo.book, {}),
                        finished_work(demo.book, repairs(), work.visit.date), tables_of_the_trade(), now.day);
    for (const LineOfJob& line : estimate.lines) EXPECT_EQ(line.differs, "") << line.words;
  }
}

TEST(DemoBench, has_hands_at_work_where_it_is_shop_hours_only) {
  using namespace std::chrono;
  const auto running = [](const Moment& now) {
    DemoBook demo(now.day);
    fill_demo_bench(demo.book, demo_tables(kept_file), demo_bench_tables(kept_file), tables_of_the_trade(), now);
    const BenchQuestion question = bench_question(demo.book, shop_settings(demo.book, {}), repairs(), now);
    return std::ranges::count_if(question.work, [](const BenchWork& work) { return work.running_spell != 0; });
  };
  EXPECT_EQ(running({Date(2026y / February / 20), 10 * 60 + 40}), 1);
  EXPECT_EQ(running({Date(2026y / February / 20), 22 * 60}), 0);
}

}  // namespace
}  // namespace tailblock

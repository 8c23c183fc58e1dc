#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::TestBook;

/// Runs every piece of work in a thread of its own, and tells what any of them threw.
void at_once(const std::vector<std::function<void()>>& works) {
  std::vector<std::thread> threads;
  for (const auto& work : works) {
    threads.emplace_back([&work] {
      try {
        work();
      } catch (const std::exception& fault) {
        ADD_FAILURE() << fault.what();
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
}

TEST(Threads, readers_see_whole_changes_while_writers_write) {
  TestBook test;
  constexpr int changes_each = 20, writers = 2;
  std::atomic<int> writing = writers;
  const auto write = [&] {
    for (int i = 0; i < changes_each; ++i) {
      test.book.add({test.reading("action12_bass", 2.4), test.reading("action12_treble", 1.9)});
      test.book.keep(Visit{.instrument_id = test.instrument, .date = day(2026, 1, 1)});
      test.book.keep(Instrument{.owner_id = test.owner, .home_id = test.home, .name = "another"});
    }
    --writing;
  };
  const auto look = [&] {
    while (writing > 0) {
      const InstrumentStory story = test.book.story(test.instrument);
      EXPECT_EQ(story.visits.front().readings.size() % 2, 0U) << "half a change was seen";
      const InstrumentPage page = test.book.instruments({.per_page = 200});
      EXPECT_EQ(static_cast<int>(page.lines.size()), page.total);
      EXPECT_GE(test.book.instruments({.search = "another"}).total, page.total - 1) << "an instrument was lost";
    }
  };
  at_once({write, write, look, look, look, look, look, look});
  EXPECT_EQ(test.book.visit_story(test.visit).readings.size(), 2U * writers * changes_each);
  EXPECT_EQ(test.book.instruments({}).total, 1 + writers * changes_each);
  EXPECT_EQ(test.book.troubles(), std::vector<std::string>{});
}

TEST(Threads, a_look_sees_one_state_of_the_book_from_its_first_question_to_its_last) {
  TestBook test;
  // So many that work is recorded between the question for the readings and the one for the work.
  test.book.add(std::vector<Reading>(4000, test.reading("action12_bass", 2.4)));
  std::atomic<bool> looking = true;
  const auto write = [&] {
    while (looking) {
      test.book.add(std::vector{test.reading("action12_bass", 2.4)});
      test.book.add(Intervention{.visit_id = test.visit, .kind = "saddle_lowered"});
    }
  };
  const auto look = [&] {
    for (int i = 0; i < 20; ++i) {
      const VisitStory story = test.book.visit_story(test.visit);
      EXPECT_LE(story.interventions.size(), story.readings.size() - 4000) << "work was seen before its reading";
    }
    looking = false;
  };
  at_once({write, look});
}

TEST(Threads, a_copy_taken_while_others_write_is_whole) {
  TestBook test;
  std::atomic<bool> copying = true;
  const auto write = [&] {
    while (copying) test.book.add({test.reading("action12_bass", 2.4), test.reading("action12_treble", 1.9)});
  };
  const auto copy = [&] {
    for (int i = 0; i < 5; ++i) {
      const auto file = test.folder / ("copy" + std::to_string(i));
      test.book.back_up_to(file);
      const Book book(file);
      EXPECT_EQ(book.visit_story(test.visit).readings.size() % 2, 0U);
      EXPECT_EQ(book.troubles(), std::vector<std::string>{});
    }
    copying = false;
  };
  at_once({write, copy});
}

}  // namespace
}  // namespace tailblock

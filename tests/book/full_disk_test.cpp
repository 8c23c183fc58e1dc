#include <gtest/gtest.h>
#include <sqlite3.h>

#include "failing_disk.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::FailingDisk;
using testing::TestBook;

std::vector<Reading> six_readings(const TestBook& test) {
  return {test.reading("action12_bass", 2.4), test.reading("action12_treble", 1.9),
          test.reading("action1_bass", 0.5),  test.reading("action1_treble", 0.4),
          test.reading("relief", 0.2),        test.reading("saddle_exposure_bass", 3.1)};
}

/// Adds six readings while the nth write or wait fails, for every n that one of them comes to, and says how many there
/// were. Each time: the fault is told, none of the six is in the book, the earlier ones are, and the same book goes on
/// working.
int add_with_every_step_failing(int code, const std::string& told) {
  FailingDisk disk;
  TestBook test;
  std::size_t kept = 0;
  const auto readings = [&] { return test.book.visit_story(test.visit).readings.size(); };
  for (int nth = 1; nth < 1000; ++nth) {
    disk.fail_from(nth, code);
    try {
      test.book.add(six_readings(test));
      kept += 6;
      EXPECT_FALSE(disk.has_failed()) << "acknowledged although step " << nth << " failed";
    } catch (const StorageFault& fault) {
      EXPECT_NE(std::string(fault.what()).find(told), std::string::npos) << fault.what();
      EXPECT_TRUE(disk.has_failed());
    }
    const bool was_done = !disk.has_failed();
    disk.work_again();
    EXPECT_EQ(readings(), kept) << "after step " << nth << " failed";
    if (was_done) {
      EXPECT_EQ(test.book.troubles(), std::vector<std::string>{});
      return nth - 1;
    }
    test.book.add(six_readings(test));
    kept += 6;
    EXPECT_EQ(Book(test.file).visit_story(test.visit).readings.size(), kept);
  }
  return 1000;
}

TEST(FullDisk, a_change_on_a_full_disk_is_told_and_leaves_nothing_behind) {
  EXPECT_GT(add_with_every_step_failing(SQLITE_FULL, "the disk is full; nothing of this change was kept"), 2);
}

TEST(FullDisk, a_change_on_a_failing_disk_is_told_and_leaves_nothing_behind) {
  EXPECT_GT(add_with_every_step_failing(SQLITE_IOERR_WRITE, "the disk could not be read or written"), 2);
}

/// Adds one reading after the other until the power goes at the nth write or wait, and comes back to a disk that has
/// lost whatever it was not told to wait for. Gives how many were acknowledged.
int readings_until_the_power_goes(const std::filesystem::path& prepared, const TestBook& test, int nth) {
  const testing::TemporaryFolder folder;
  const auto file = folder / "shop.book";
  std::filesystem::copy_file(prepared, file);
  std::vector<RecordId> acknowledged;
  FailingDisk disk;
  try {
    Book book(file, test.tables);
    disk.fail_from(nth, SQLITE_IOERR_WRITE);
    for (int i = 0; i < 1000; ++i) acknowledged.push_back(book.add({test.reading("relief", 0.001 * i)}).front());
    ADD_FAILURE() << "the power did not go at step " << nth;
  } catch (const StorageFault&) {
    EXPECT_TRUE(disk.has_failed());
  }
  disk.lose_unwaited_writes();
  disk.work_again();

  const Book book(file, test.tables);
  const auto readings = book.visit_story(test.visit).readings;
  EXPECT_GE(readings.size(), acknowledged.size()) << "step " << nth;
  for (std::size_t i = 0; i < std::min(readings.size(), acknowledged.size()); ++i) {
    EXPECT_EQ(readings[i].id, acknowledged[i]);
    EXPECT_EQ(readings[i].value, 0.001 * static_cast<double>(i));
  }
  EXPECT_EQ(book.troubles(), std::vector<std::string>{}) << "step " << nth;
  return static_cast<int>(acknowledged.size());
}

TEST(FullDisk, what_was_acknowledged_outlives_a_power_cut_at_any_step) {
  TestBook test;
  const auto prepared = test.folder / "prepared.book";
  test.book.back_up_to(prepared);
  int acknowledged = 0;
  for (int nth = 1; nth < 40; ++nth) acknowledged += readings_until_the_power_goes(prepared, test, nth);
  for (int nth = 1000; nth < 1040; nth += 3) acknowledged += readings_until_the_power_goes(prepared, test, nth);
  EXPECT_GT(acknowledged, 100);
}

}  // namespace
}  // namespace tailblock

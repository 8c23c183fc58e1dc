#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <random>
#include <thread>

#include "archive_for_tests.h"
#include "book/archive_export.h"
#include "book/archive_import.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

/// A book whose import takes some tenths of a second: two thousand visits and thirty photos of 300 kB.
fs::path archive_of_a_full_book(const testing::TemporaryFolder& folder) {
  testing::TestBook test;
  for (int k = 0; k < 30; ++k) {
    (void)test.book.keep_photo(
        {.whole = std::to_string(k) + std::string(300'000, 'p'), .thumbnail = "t", .width_px = 9, .height_px = 9});
  }
  Session(test.file, Session::May::write)
      .script(
          "WITH RECURSIVE count(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM count WHERE n < 2000) INSERT INTO visits "
          "(instrument_id, date, reason, note) SELECT 1, '2025-08-21', 'buzzes', 'visit ' || n FROM count");
  export_archive(test.file, folder / "shop.tar");
  return folder / "shop.tar";
}

/// Brings the archive in, in a process of its own, that is killed after `time`. Whether it was killed before it was
/// done.
bool killed_while_importing(const fs::path& archive, const fs::path& book, std::chrono::microseconds time) {
  const pid_t child = fork();
  if (child == 0) {
    try {
      import_archive(archive, book);
      _exit(0);
    } catch (const std::exception& fault) {
      std::fprintf(stderr, "child: %s\n", fault.what());
      _exit(1);
    }
  }
  std::this_thread::sleep_for(time);
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status) || WEXITSTATUS(status) == 0);
  return WIFSIGNALED(status);
}

TEST(ArchiveKilled, an_import_killed_at_any_instant_leaves_no_book_or_the_whole_one) {
  const testing::TemporaryFolder folder;
  const fs::path archive = archive_of_a_full_book(folder), book = folder / "made.book";
  const auto began = std::chrono::steady_clock::now();
  import_archive(archive, book);
  const auto takes = std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - began);
  const auto right = testing::rows_of_book(book);
  fs::remove(book);

  const unsigned seed = std::random_device{}();
  std::mt19937_64 dice(seed);
  SCOPED_TRACE("seed " + std::to_string(seed));
  int killed_half_way = 0;
  for (int round = 0; round < 20; ++round) {
    const std::chrono::microseconds time(std::uniform_int_distribution<std::int64_t>(0, takes.count())(dice));
    const bool killed = killed_while_importing(archive, book, time);
    killed_half_way += killed && fs::exists(folder / "made.book.unfinished") ? 1 : 0;
    if (fs::exists(book)) {
      EXPECT_EQ(testing::rows_of_book(book), right);
      fs::remove(book);
    }
  }
  EXPECT_GT(killed_half_way, 0) << "no import was killed in its midst";
  import_archive(archive, book);
  EXPECT_EQ(testing::rows_of_book(book), right);
  for (const char* left : {"made.book.unfinished", "made.book.unfinished-wal", "made.book.unfinished-shm"}) {
    EXPECT_FALSE(fs::exists(folder / left)) << left;
  }
}

}  // namespace
}  // namespace tailblock

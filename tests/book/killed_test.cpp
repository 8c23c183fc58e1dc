#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <random>
#include <thread>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::TestBook;

/// A pipe whose ends close with it.
struct Pipe {
  Pipe() {
    if (pipe(ends) != 0) throw std::runtime_error("no pipe");
  }
  ~Pipe() {
    for (const int end : ends) {
      if (end >= 0) close(end);
    }
  }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;
  void close_end(int which) {
    close(ends[which]);
    ends[which] = -1;
  }
  int ends[2]{};
};

/// Runs `work` in a process of its own, which never returns from it.
template <class Work>
pid_t in_a_process(Work work) {
  const pid_t child = fork();
  if (child != 0) return child;
  try {
    work();
    _exit(0);
  } catch (const std::exception& fault) {
    std::fprintf(stderr, "child: %s\n", fault.what());
    _exit(1);
  }
}

/// Adds pairs of readings for ever, and tells the number of each pair's first once the book has acknowledged it.
[[noreturn]] void add_pairs_for_ever(const std::filesystem::path& file, const Reading& like, int acknowledged) {
  Book book(file, testing::repository_tables());
  while (true) {
    const RecordId id = book.add({like, like}).front();
    if (write(acknowledged, &id, sizeof id) != sizeof id) _exit(1);
  }
}

/// What the child told before it was killed after `time`. `work(end of a pipe)` never ends by itself.
template <class Work>
std::vector<RecordId> told_until_killed(Work work, std::chrono::milliseconds time) {
  Pipe told;
  const pid_t child = in_a_process([&] { work(told.ends[1]); });
  told.close_end(1);
  std::vector<RecordId> ids;
  RecordId id = 0;
  if (read(told.ends[0], &id, sizeof id) == sizeof id) ids.push_back(id);  // it is at work
  std::this_thread::sleep_for(time);
  kill(child, SIGKILL);
  while (read(told.ends[0], &id, sizeof id) == sizeof id) ids.push_back(id);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status)) << "the child ended by itself";
  return ids;
}

TEST(Killed, whatever_was_acknowledged_is_in_the_book_after_kill_9) {
  std::filesystem::path file;
  testing::TemporaryFolder folder;
  Reading like;
  {
    TestBook test;
    like = test.reading("action12_bass", 2.25);
    file = folder / "shop.book";
    test.book.back_up_to(file);
  }
  const unsigned seed = std::random_device{}();
  std::mt19937 dice(seed);
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::size_t kept_before = 0;
  for (int round = 0; round < 12; ++round) {
    const auto acknowledged = told_until_killed([&](int told) { add_pairs_for_ever(file, like, told); },
                                                std::chrono::milliseconds(std::uniform_int_distribution(0, 60)(dice)));
    ASSERT_FALSE(acknowledged.empty());
    const Book book(file);
    const auto readings = book.visit_story(like.visit_id).readings;
    EXPECT_GE(readings.size(), kept_before + 2 * acknowledged.size());
    EXPECT_EQ(readings.size() % 2, 0U) << "half a change is in the book";
    for (const RecordId id : acknowledged) {
      EXPECT_TRUE(std::any_of(readings.begin(), readings.end(), [&](const Reading& it) { return it.id == id; }));
    }
    EXPECT_EQ(book.troubles(), std::vector<std::string>{});
    kept_before = readings.size();
  }
}

/// Adds photos and findings that show them for ever, and tells the number of each finding once it is acknowledged.
[[noreturn]] void add_findings_for_ever(const std::filesystem::path& file, RecordId visit, int acknowledged) {
  Book book(file, testing::repository_tables());
  for (int k = 0;; ++k) {
    const std::string bytes(200'000, static_cast<char>('a' + k % 26));
    const std::string whole = std::to_string(getpid()) + " " + std::to_string(k) + bytes;
    const KeptPhoto photo = book.keep_photo({.whole = whole, .thumbnail = "t", .width_px = 9, .height_px = 9});
    const RecordId id = book.add(Finding{.visit_id = visit,
                                         .kind = "crack",
                                         .shape = FindingShape::line,
                                         .points = {{mm(k), mm(0)}, {mm(k), mm(50)}},
                                         .photos = {{photo.id}}});
    if (write(acknowledged, &id, sizeof id) != sizeof id) _exit(1);
  }
}

TEST(Killed, photos_and_findings_that_were_acknowledged_are_whole_in_the_book) {
  std::filesystem::path file;
  testing::TemporaryFolder folder;
  RecordId visit = 0;
  {
    TestBook test;
    visit = test.visit;
    file = folder / "shop.book";
    test.book.back_up_to(file);
  }
  const unsigned seed = std::random_device{}();
  std::mt19937 dice(seed);
  SCOPED_TRACE("seed " + std::to_string(seed));
  for (int round = 0; round < 6; ++round) {
    const auto acknowledged = told_until_killed([&](int told) { add_findings_for_ever(file, visit, told); },
                                                std::chrono::milliseconds(std::uniform_int_distribution(0, 60)(dice)));
    ASSERT_FALSE(acknowledged.empty());
    const Book book(file, testing::repository_tables());
    const auto found = book.survey(visit).found_now;
    for (const RecordId id : acknowledged) {
      const auto it = std::ranges::find(found, id, [](const FindingStory& story) { return story.finding.id; });
      ASSERT_NE(it, found.end()) << "acknowledged finding " << id << " is lost";
      EXPECT_EQ(it->finding.points.size(), 2U);
      ASSERT_EQ(it->finding.photos.size(), 1U);
      EXPECT_GT(book.photo_bytes(it->finding.photos[0].photo_id, Book::PhotoSize::whole).size(), 200'000U);
    }
    EXPECT_EQ(book.troubles(), std::vector<std::string>{}) << "half a finding or half a photo is in the book";
  }
}

TEST(Killed, a_back_up_that_was_cut_off_leaves_no_copy_under_its_name) {
  TestBook test;
  const auto copy = test.folder / "copy.book";
  std::ofstream(test.folder / "copy.book.unfinished") << "cut off";
  EXPECT_FALSE(std::filesystem::exists(copy));
  test.book.back_up_to(copy);
  EXPECT_EQ(Book(copy).troubles(), std::vector<std::string>{});
  EXPECT_FALSE(std::filesystem::exists(test.folder / "copy.book.unfinished"));
}

TEST(Processes, several_may_open_a_new_book_at_once_and_write_to_it) {
  const testing::TemporaryFolder folder;
  const auto file = folder / "shop.book";
  std::vector<pid_t> children;
  for (int which = 0; which < 4; ++which) {
    children.push_back(in_a_process([&] {
      Book book(file, testing::repository_tables());
      for (int i = 0; i < 25; ++i) book.keep(Owner{.name = "owner " + std::to_string(which)});
    }));
  }
  for (const pid_t child : children) {
    int status = 0;
    waitpid(child, &status, 0);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  }
  const Book book(file);
  EXPECT_EQ(book.owners().size(), 100U);
  EXPECT_EQ(book.owners_named("owner 3", 200).size(), 25U);
  EXPECT_EQ(book.troubles(), std::vector<std::string>{});
}

}  // namespace
}  // namespace tailblock

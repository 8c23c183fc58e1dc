#include <gtest/gtest.h>

#include <fstream>
#include <random>

#include "book/session.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;
using testing::TestBook;
namespace fs = std::filesystem;

constexpr std::streamoff page_bytes = 4096;

/// A closed book in one file, with a few hundred rows over some dozens of pages.
fs::path prepared_book(const testing::TemporaryFolder& folder) {
  TestBook test;
  for (int i = 0; i < 40; ++i) {
    const RecordId instrument = test.book.keep(Instrument{.owner_id = test.owner,
                                                          .home_id = test.home,
                                                          .name = "number " + std::to_string(i),
                                                          .note = std::string(300, 'n')});
    const RecordId visit =
        test.book.keep(Visit{.instrument_id = instrument, .date = day(2026, 1, 5), .reason = "buzzes"});
    test.book.add({test.reading("action12_bass", 2.4, visit), test.reading("action12_treble", 1.9, visit)});
  }
  const fs::path file = folder / "whole.book";
  test.book.back_up_to(file);
  return file;
}

/// Everything that a page may ask; what it throws must be a refusal or a storage fault.
void ask_everything(const Book& book) {
  const auto attempt = [](const auto& ask) {
    try {
      ask();
    } catch (const Refused&) {
    } catch (const StorageFault&) {
    }
  };
  attempt([&] { (void)book.instruments({.search = "number", .per_page = 200}); });
  attempt([&] { (void)book.owners(); });
  attempt([&] { (void)book.homes(); });
  for (int id = 1; id <= 41; ++id) attempt([&] { (void)book.story(id); });
  for (int id = 1; id <= 41; ++id) attempt([&] { (void)book.visit_story(id); });
}

/// Whether opening the book or checking it said that something is wrong.
bool says_what_is_wrong(const fs::path& file) {
  try {
    const Book book(file);
    ask_everything(book);
    return !book.troubles().empty();
  } catch (const Refused& refused) {
    return std::string(refused.what()).size() > 10;
  } catch (const StorageFault& fault) {
    return std::string(fault.what()).size() > 10;
  }
}

TEST(Damaged, a_page_of_rubbish_is_told_whichever_page_it_is) {
  const testing::TemporaryFolder folder;
  const fs::path whole = prepared_book(folder);
  const auto pages = static_cast<std::streamoff>(fs::file_size(whole)) / page_bytes;
  ASSERT_GT(pages, 20);
  std::mt19937 dice(5);
  for (std::streamoff page = 0; page < pages; ++page) {
    const fs::path damaged = folder / "damaged.book";
    fs::copy_file(whole, damaged, fs::copy_options::overwrite_existing);
    std::string rubbish(page_bytes, '\0');
    for (char& byte : rubbish) byte = static_cast<char>(dice());
    {
      std::fstream file(damaged, std::ios::in | std::ios::out | std::ios::binary);
      file.seekp(page * page_bytes);
      file << rubbish;
    }
    EXPECT_TRUE(says_what_is_wrong(damaged)) << "page " << page;
    for (const char* beside : {"damaged.book-wal", "damaged.book-shm"}) fs::remove(folder / beside);
  }
}

TEST(Damaged, no_flipped_byte_crashes_the_book) {
  const testing::TemporaryFolder folder;
  const fs::path whole = prepared_book(folder);
  const auto bytes = static_cast<int>(fs::file_size(whole));
  std::mt19937 dice(17);
  int told = 0;
  for (int round = 0; round < 60; ++round) {
    const fs::path damaged = folder / "damaged.book";
    fs::copy_file(whole, damaged, fs::copy_options::overwrite_existing);
    {
      std::fstream file(damaged, std::ios::in | std::ios::out | std::ios::binary);
      for (int flip = 0; flip < 8; ++flip) {
        file.seekp(std::uniform_int_distribution(0, bytes - 1)(dice));
        file.put(static_cast<char>(dice()));
      }
    }
    told += says_what_is_wrong(damaged) ? 1 : 0;
    for (const char* beside : {"damaged.book-wal", "damaged.book-shm"}) fs::remove(folder / beside);
  }
  EXPECT_GT(told, 20);
}

TEST(Damaged, a_book_cut_short_is_told) {
  const testing::TemporaryFolder folder;
  const fs::path file = prepared_book(folder);
  fs::resize_file(file, fs::file_size(file) / 2);
  EXPECT_TRUE(says_what_is_wrong(file));
}

TEST(Damaged, the_last_copy_restores_a_damaged_book) {
  const testing::TemporaryFolder folder;
  const fs::path copy = prepared_book(folder);
  const fs::path restored = folder / "restored.book";
  Book(copy).back_up_to(restored);
  const Book book(restored);
  EXPECT_EQ(book.troubles(), std::vector<std::string>{});
  EXPECT_EQ(book.instruments({}).total, 41);
}

TEST(Damaged, a_damaged_book_is_not_copied_as_if_it_were_whole) {
  const testing::TemporaryFolder folder;
  const fs::path file = prepared_book(folder);
  {
    std::fstream bytes(file, std::ios::in | std::ios::out | std::ios::binary);
    bytes.seekp(10 * page_bytes);
    bytes << std::string(page_bytes, '\x55');
  }
  const Book book(file);
  EXPECT_THROW(book.back_up_to(folder / "copy.book"), StorageFault);
  EXPECT_FALSE(fs::exists(folder / "copy.book"));
}

TEST(Damaged, a_book_whose_index_lost_rows_is_not_copied_as_if_it_were_whole) {
  const testing::TemporaryFolder folder;
  const fs::path file = prepared_book(folder);
  Session(file, Session::May::write)
      .script(
          "PRAGMA writable_schema = ON; UPDATE sqlite_master SET sql = 'CREATE INDEX readings_of_visit ON readings "
          "(gauge_sd)' WHERE name = 'readings_of_visit'");
  const Book book(file);
  EXPECT_THROW(book.back_up_to(folder / "copy.book"), StorageFault);
  EXPECT_FALSE(fs::exists(folder / "copy.book"));
  EXPECT_FALSE(fs::exists(folder / "copy.book.unfinished"));
  EXPECT_FALSE(book.troubles().empty());
}

TEST(Damaged, a_copy_is_never_laid_over_another_file) {
  TestBook test;
  expect_refused([&] { test.book.back_up_to(test.file); }, "copy: " + test.file.string() + " is there already");
}

TEST(Damaged, a_file_that_is_no_book_is_not_touched) {
  const testing::TemporaryFolder folder;
  const fs::path text = folder / "letter.txt";
  std::ofstream(text) << std::string(3000, 'x');
  EXPECT_THROW(Book{text}, StorageFault);
  EXPECT_EQ(fs::file_size(text), 3000U);

  const fs::path other = folder / "other.db";
  Session(other, Session::May::write).script("CREATE TABLE songs (title TEXT)");
  expect_refused([&] { const Book book(other); },
                 "book: the file is a database of something else, not a book of this program");
}

TEST(Damaged, a_place_where_no_book_can_be_is_told) {
  const testing::TemporaryFolder folder;
  EXPECT_THROW(Book(folder / "no folder" / "shop.book"), StorageFault);
  EXPECT_THROW(Book(folder / "."), StorageFault);
  expect_refused([&] { const Book book(folder / "a \"b\".book"); },
                 "book: \"" + (folder / "a \"b\".book").string() +
                     "\" is not a usable file name: it is empty or holds a double quote");
}

TEST(Damaged, a_name_with_blanks_and_an_equals_sign_is_a_name) {
  const testing::TemporaryFolder folder;
  const fs::path file = folder / "my  shop = the book.db";
  { Book(file).keep(Owner{.name = "A. Player"}); }
  EXPECT_TRUE(fs::exists(file));
  EXPECT_EQ(Book(file).owners().size(), 1U);
}

/// Lets another program at the file, with the book's own rules switched off.
std::vector<std::string> troubles_after(const std::string& sql) {
  TestBook test;
  test.book.add({test.reading("action12_bass", 2.4), test.reading("relief", 0.2, test.visit, "feelers")});
  Session other(test.file, Session::May::write);
  other.script("PRAGMA foreign_keys = OFF; " + sql);
  return test.book.troubles();
}

TEST(Damaged, what_another_program_did_to_the_rows_is_told) {
  using Lines = std::vector<std::string>;
  EXPECT_EQ(troubles_after(""), Lines{});
  EXPECT_EQ(troubles_after("DELETE FROM owners"),
            (Lines{"instruments: row 1 refers to one of owners that is not there"}));
  EXPECT_EQ(troubles_after("DELETE FROM home_months WHERE month = 3"), (Lines{"home has not twelve months of air: 1"}));
  EXPECT_EQ(troubles_after("DELETE FROM list_changes WHERE list = 'instruments'"),
            (Lines{"instrument is not in the list of changes: 1"}));
  EXPECT_EQ(troubles_after("UPDATE instruments SET body_size = 'huge'"),
            (Lines{"instruments: a row of the book cannot be read: body_size: \"huge\" is not known"}));
  EXPECT_EQ(troubles_after("UPDATE visits SET date = '2026-02-30'"),
            (Lines{"visits: a row of the book cannot be read: date: \"2026-02-30\" is not a day written 2026-02-14, "
                   "years 1900..2199"}));
  EXPECT_EQ(troubles_after("DROP TRIGGER readings_are_never_changed; UPDATE readings SET value = 2.5 WHERE id = 1"),
            (Lines{"readings_are_never_changed: is missing from the book, or not as this program made it"}));
  EXPECT_EQ(troubles_after("INSERT INTO readings (visit_id, measure, typed, value, gauge, gauge_sd, state, supersedes, "
                           "note) VALUES (1, 'relief', '', 0.2, 'feelers', 0.03, 'as_found', 1, '')"),
            (Lines{"reading corrects one of another visit or measure: 3"}));
}

TEST(Damaged, a_reading_can_be_neither_changed_nor_removed) {
  TestBook test;
  test.book.add({test.reading("action12_bass", 2.4)});
  Session session(test.file, Session::May::write);
  expect_refused([&] { session.run("UPDATE readings SET value = 9"); },
                 "readings are never changed: add one that supersedes it");
  expect_refused([&] { session.run("UPDATE readings SET note = 'x'"); },
                 "readings are never changed: add one that supersedes it");
  expect_refused([&] { session.run("DELETE FROM readings"); },
                 "readings are never removed: add one that supersedes it");
}

}  // namespace
}  // namespace tailblock

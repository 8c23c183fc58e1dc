#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <set>
#include <thread>

#include "archive_for_tests.h"
#include "book/archive_export.h"
#include "book/archive_import.h"
#include "book/migrations.h"

namespace tailblock {
namespace {

using testing::book_left_with;
using testing::bytes_of;
using testing::expect_refused;
using testing::rows_of_book;
using testing::TemporaryFolder;
using testing::TestBook;
namespace fs = std::filesystem;

TEST(Archive, a_book_of_every_schema_number_comes_in_again_with_all_its_rows) {
  for (int number = 1; number <= migration_files().back().number; ++number) {
    SCOPED_TRACE("schema number " + std::to_string(number));
    const TemporaryFolder folder;
    const fs::path left = book_left_with(folder, number), archive = folder / "shop.tar", made = folder / "made.book";
    export_archive(left, archive);
    import_archive(archive, made);
    { const Book brought_up_to_date(left); }
    EXPECT_EQ(rows_of_book(made, number), rows_of_book(left, number));
    EXPECT_EQ(Book(made).troubles(), std::vector<std::string>{});
  }
}

TEST(Archive, the_book_made_of_it_gives_the_same_bytes) {
  const TemporaryFolder folder;
  const fs::path book = book_left_with(folder, migration_files().back().number);
  export_archive(book, folder / "first.tar");
  export_archive(book, folder / "again.tar");
  import_archive(folder / "first.tar", folder / "made.book");
  export_archive(folder / "made.book", folder / "second.tar");
  EXPECT_EQ(bytes_of(folder / "again.tar"), bytes_of(folder / "first.tar"));
  EXPECT_EQ(bytes_of(folder / "second.tar"), bytes_of(folder / "first.tar"));
}

TEST(Archive, odd_texts_and_numbers_come_back_as_they_were) {
  TestBook test;
  const std::string odd("two\nlines, \"quotes\", a \\, \x01, Zo\xc3\xab \xf0\x9f\x8e\xb8 \0 after a zero", 60);
  test.book.keep(Owner{.name = "odd", .note = odd});
  test.book.add({test.reading("action12_bass", 1.0 / 3), test.reading("relief", 0.1, test.visit, "feelers")});
  Session(test.file, Session::May::write)
      .script(
          "INSERT INTO settings VALUES ('', ''), (char(0) || 'x', 'z'); UPDATE list_changes SET number = "
          "9007199254740993 WHERE list = 'homes'; UPDATE homes SET heating_set_point_c = 4.9e-324");
  export_archive(test.file, test.folder / "shop.tar");
  import_archive(test.folder / "shop.tar", test.folder / "made.book");
  EXPECT_EQ(rows_of_book(test.folder / "made.book"), rows_of_book(test.file));
}

TEST(Archive, rows_that_are_never_changed_are_so_in_the_book_made_of_it) {
  const TemporaryFolder folder;
  export_archive(book_left_with(folder, 1), folder / "shop.tar");
  import_archive(folder / "shop.tar", folder / "made.book");
  Session session(folder / "made.book", Session::May::write);
  expect_refused([&] { session.run("UPDATE readings SET value = 0"); },
                 "readings are never changed: add one that supersedes it");
  EXPECT_EQ(session.first<int>("PRAGMA foreign_keys"), 1);
}

/// Adds owners, and in the same change their number to the settings, until told to stop.
void add_owners(const fs::path& file, const std::atomic<bool>& stop) {
  Session session(file, Session::May::write);
  while (!stop) {
    Transaction both(session, Transaction::To::change);
    session.run("INSERT INTO owners (name, contact, note) VALUES ('one more', '', '')");
    session.run("UPDATE settings SET value = (SELECT count(*) FROM owners) WHERE name = 'owners'");
    both.commit();
  }
}

TEST(Archive, it_holds_one_state_of_a_book_that_is_written_to_meanwhile) {
  TestBook test;
  test.book.keep_setting("owners", "1");
  std::atomic<bool> stop = false;
  std::thread writer([&] { add_owners(test.file, stop); });
  std::set<std::string> states;
  for (int round = 0; round < 40 || (states.size() < 10 && round < 4000); ++round) {
    const fs::path archive = test.folder / ("shop" + std::to_string(round) + ".tar");
    export_archive(test.file, archive);
    const auto parts = testing::parts_of(archive);
    const std::string owners = std::to_string(std::ranges::count(parts.at("tables/owners.jsonl"), '\n'));
    EXPECT_EQ(parts.at("tables/settings.jsonl"), R"({"name":"owners","value":")" + owners + "\"}\n");
    states.insert(owners);
    fs::remove(archive);
  }
  stop = true;
  writer.join();
  EXPECT_GE(states.size(), 10U) << "nothing was written meanwhile";
}

TEST(Archive, what_is_there_already_is_left_alone) {
  TestBook test;
  const fs::path archive = test.folder / "shop.tar";
  export_archive(test.file, archive);
  expect_refused([&] { export_archive(test.file, archive); },
                 "ARCHIVE: " + archive.string() + " is there already; it is not overwritten");
  expect_refused([&] { import_archive(archive, test.file); },
                 "BOOK: " + test.file.string() + " is there already; move it away first");
}

TEST(Archive, an_empty_file_is_no_book) {
  const TemporaryFolder folder;
  testing::put_bytes(folder / "empty", "");
  expect_refused([&] { export_archive(folder / "empty", folder / "shop.tar"); },
                 "book: the file is not a book of this program");
  EXPECT_FALSE(fs::exists(folder / "shop.tar"));
  EXPECT_FALSE(fs::exists(folder / "shop.tar.unfinished"));
}

TEST(Archive, what_json_cannot_say_is_told_and_no_archive_made) {
  TestBook test;
  Session(test.file, Session::May::write).script("UPDATE homes SET heating_set_point_c = 9e999");
  try {
    export_archive(test.file, test.folder / "shop.tar");
    ADD_FAILURE() << "an infinite number was written out";
  } catch (const StorageFault& fault) {
    EXPECT_STREQ(fault.what(), "no archive was made: heating_set_point_c in a row of homes is infinite");
  }
  EXPECT_FALSE(fs::exists(test.folder / "shop.tar"));
}

bool runs(const std::string& command) { return std::system(command.c_str()) == 0; }

TEST(Archive, the_systems_tar_unpacks_it_and_what_that_packs_comes_in_again) {
  if (!runs("tar --version > /dev/null 2>&1")) GTEST_SKIP() << "no tar on this machine";
  const TemporaryFolder folder;
  const int number = migration_files().back().number;
  export_archive(book_left_with(folder, number), folder / "shop.tar");
  const std::string out = (folder / "out").string();
  fs::create_directory(out);
  ASSERT_TRUE(runs("tar -C " + out + " -xf " + (folder / "shop.tar").string()));
  const auto parts = testing::parts_of(folder / "shop.tar");
  EXPECT_GT(parts.size(), 30U);
  for (const auto& [name, bytes] : parts) EXPECT_EQ(bytes_of(folder / ("out/" + name)), bytes) << name;
  ASSERT_TRUE(
      runs("cd " + out + " && tar --format=ustar -cf ../packed.tar README.txt manifest.json photos/* tables/*"));
  import_archive(folder / "packed.tar", folder / "made.book");
  import_archive(folder / "shop.tar", folder / "other.book");
  EXPECT_EQ(rows_of_book(folder / "made.book"), rows_of_book(folder / "other.book"));
}

TEST(Archive, tables_go_out_as_csv_for_a_spreadsheet) {
  TestBook test;
  test.book.keep(Owner{.name = "B, \"the second\"", .contact = "", .note = "two\nlines"});
  export_csv(test.file, test.folder / "csv");
  EXPECT_EQ(bytes_of(test.folder / "csv/owners.csv"),
            "id,name,contact,note\r\n1,\"A. Player\",\"\",\"\"\r\n2,\"B, \"\"the second\"\"\",\"\",\"two\nlines\"\r\n");
  EXPECT_TRUE(bytes_of(test.folder / "csv/instruments.csv").starts_with("id,owner_id,home_id,name,"));
  EXPECT_FALSE(fs::exists(test.folder / "csv.unfinished"));
  expect_refused([&] { export_csv(test.file, test.folder / "csv"); },
                 "FOLDER: " + (test.folder / "csv").string() + " is there already; it is not written into");
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>

#include "book_rows.h"
#include "demo_book.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

struct Said {
  int exit_code = 0;
  std::string words;  ///< on standard output and standard error
};

/// `before` is said to the shell first.
Said tailblock_said(const std::string& arguments, const std::string& before = "") {
  Said said;
  FILE* pipe = popen((before + TEST_PROGRAM + ' ' + arguments + " 2>&1").c_str(), "r");
  std::array<char, 4096> piece{};
  while (const std::size_t length = fread(piece.data(), 1, piece.size(), pipe)) said.words.append(piece.data(), length);
  said.exit_code = WEXITSTATUS(pclose(pipe));
  return said;
}

/// The invented shop's book in a folder that goes when this does.
class ArchiveCommands : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "tailblock-test-XXXXXX").string();
    ASSERT_NE(mkdtemp(name.data()), nullptr);
    folder = name;
    testing::DemoBook(Date(std::chrono::year(2026) / 2 / 20)).book.back_up_to(folder / "shop.book");
  }
  void TearDown() override { fs::remove_all(folder); }
  [[nodiscard]] std::string at(const std::string& name) const { return (folder / name).string(); }
  void expect(const std::string& arguments, int exit_code, const std::string& words) const {
    const Said said = tailblock_said(arguments);
    EXPECT_EQ(said.exit_code, exit_code) << arguments;
    EXPECT_EQ(said.words, words) << arguments;
  }
  static std::string bytes_of(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  fs::path folder;
};

TEST_F(ArchiveCommands, the_invented_shop_goes_out_and_comes_in_again) {
  const std::string shop = at("shop.book"), archive = at("shop.tar"), made = at("made.book"), second = at("second.tar");
  expect("export " + shop + " " + archive, 0, "written to " + archive + "\n");
  expect("import " + archive + " " + made, 0, "made the book " + made + "\n");
  EXPECT_EQ(testing::rows_of_book(made), testing::rows_of_book(shop));
  expect("check " + made, 0, "the book is whole\n");
  expect("export " + made + " " + second, 0, "written to " + second + "\n");
  EXPECT_TRUE(bytes_of(second) == bytes_of(archive)) << "the second archive has other bytes";
  expect("export " + shop + " --csv " + at("tables"), 0, "written to " + at("tables") + "\n");
  EXPECT_TRUE(fs::exists(folder / "tables/readings.csv"));
}

TEST_F(ArchiveCommands, a_disk_that_takes_no_more_is_told_and_nothing_left_behind) {
  const std::string shop = at("shop.book"), archive = at("shop.tar");
  Session(shop, Session::May::write).script("INSERT INTO settings VALUES ('long', hex(zeroblob(100000)))");
  const std::string little = "trap '' XFSZ; ulimit -f 200; ";  // files of 100 kB, in blocks of 512 bytes
  const Said exported = tailblock_said("export " + shop + " " + archive, little);
  EXPECT_EQ(exported.exit_code, 3);
  EXPECT_EQ(exported.words, "the archive could not be written: File too large\n");
  expect("export " + shop + " " + archive, 0, "written to " + archive + "\n");
  const Said imported = tailblock_said("import " + archive + " " + at("made.book"), little);
  EXPECT_EQ(imported.exit_code, 3);
  EXPECT_TRUE(imported.words.starts_with("the disk could not be read or written")) << imported.words;
  const Said tables = tailblock_said("export " + shop + " --csv " + at("tables"), little);
  EXPECT_EQ(tables.exit_code, 3);
  for (const auto& file : fs::directory_iterator(folder)) {
    const std::string name = file.path().filename();
    EXPECT_TRUE(name == "shop.book" || name == "shop.tar") << name << " is left behind";
  }
}

TEST_F(ArchiveCommands, what_cannot_be_done_is_one_line_and_its_exit_code) {
  const std::string shop = at("shop.book"), none = at("none");
  expect("export " + none + " " + at("a.tar"), 1, "BOOK: " + none + " does not exist\n");
  expect("export " + shop + " " + shop, 1, "ARCHIVE: " + shop + " is there already; it is not overwritten\n");
  expect("export " + shop, 2, "one of ARCHIVE and --csv FOLDER is required (tailblock --help tells the commands)\n");
  expect("export " + shop + " " + at("none/a.tar"), 3, at("none/a.tar") + ": cannot be made there\n");
  expect("import " + none + " " + at("b.book"), 1, "ARCHIVE: " + none + " cannot be read\n");
  expect("import " + shop + " " + shop, 1, "BOOK: " + shop + " is there already; move it away first\n");
  expect("import " + shop + " " + at("b.book"), 1, "archive: byte 0: no ustar header stands here\n");
  EXPECT_FALSE(fs::exists(folder / "b.book"));
  Session(shop, Session::May::write).script("PRAGMA foreign_keys = OFF; DELETE FROM owners WHERE id = 1");
  const Said said = tailblock_said("export " + shop + " " + at("a.tar"));
  EXPECT_EQ(said.exit_code, 3);
  EXPECT_TRUE(said.words.starts_with("nothing was written out, the book itself has troubles: ")) << said.words;
  EXPECT_FALSE(fs::exists(folder / "a.tar"));
}

}  // namespace
}  // namespace tailblock

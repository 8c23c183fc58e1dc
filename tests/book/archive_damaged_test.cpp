#include <gtest/gtest.h>

#include <random>

#include "archive_for_tests.h"
#include "book/archive_export.h"
#include "book/archive_import.h"
#include "book/migrations.h"

namespace tailblock {
namespace {

using testing::ArchiveParts;
using testing::change_and_sign;
namespace fs = std::filesystem;

const std::string newest = std::to_string(migration_files().back().number);

/// The book that schema number 9 left, as an archive, and what an import of a damaged one says.
class DamagedArchive : public ::testing::Test {
 protected:
  void SetUp() override {
    const fs::path book = testing::book_left_with(folder, 9);
    export_archive(book, folder / "whole.tar");
    whole = testing::bytes_of(folder / "whole.tar");
    parts = testing::parts_of(folder / "whole.tar");
  }

  [[nodiscard]] std::string first_photo() const { return parts.lower_bound("photos/")->first; }

  /// Expects that nothing is left where the book would be.
  std::string refusal_of(const std::string& bytes) {
    testing::put_bytes(folder / "damaged.tar", bytes);
    fs::create_directory(folder / "room");
    std::string said = "not refused";
    try {
      import_archive(folder / "damaged.tar", folder / "room/made.book");
    } catch (const Refused& refused) {
      said = refused.what();
    }
    EXPECT_EQ(said.find('\n'), std::string::npos);
    EXPECT_TRUE(said == "not refused" || fs::is_empty(folder / "room")) << "something is left behind after: " << said;
    fs::remove_all(folder / "room");
    return said;
  }

  /// What is said after `damage` was done to the files of the archive.
  template <class Damage>
  std::string after(Damage damage) {
    ArchiveParts damaged = parts;
    damage(damaged);
    return refusal_of(testing::archive_of(damaged));
  }
  std::string after_signed(const std::string& name, const std::string& old, const std::string& fresh) {
    return after([&](ArchiveParts& damaged) { change_and_sign(damaged, name, old, fresh); });
  }

  testing::TemporaryFolder folder;
  std::string whole;
  ArchiveParts parts;
};

TEST_F(DamagedArchive, its_own_files_packed_again_are_taken) {
  EXPECT_EQ(refusal_of(testing::archive_of(parts)), "not refused");
}

TEST_F(DamagedArchive, a_changed_file_is_told) {
  const auto changed = [&](const std::string& name) {
    return after([&](ArchiveParts& damaged) { damaged.at(name).back() ^= 1; });
  };
  const auto told = [](const std::string& name) {
    return "archive: \"" + name + "\" is not as it was written: its SHA-256 is not the manifest's";
  };
  for (const std::string& name : {std::string("README.txt"), std::string("tables/readings.jsonl"), first_photo()}) {
    EXPECT_EQ(changed(name), told(name));
  }
}

TEST_F(DamagedArchive, a_file_too_many_or_too_few_is_told) {
  EXPECT_EQ(after([](ArchiveParts& damaged) { damaged["notes.txt"] = "x"; }),
            "archive: \"notes.txt\" is not in the manifest");
  EXPECT_EQ(after([](ArchiveParts& damaged) { damaged["../owners.jsonl"] = "x"; }),
            "archive: \"../owners.jsonl\" is not in the manifest");
  EXPECT_EQ(after([](ArchiveParts& damaged) { damaged["a\nb\xff"] = "x"; }),
            "archive: \"a\\nb\\ufffd\" is not in the manifest");
  EXPECT_EQ(after([](ArchiveParts& damaged) { damaged.erase("tables/homes.jsonl"); }),
            "archive: \"tables/homes.jsonl\" is missing; the manifest lists it");
  EXPECT_EQ(after([](ArchiveParts& damaged) { damaged.erase("manifest.json"); }), "archive: manifest.json is missing");
}

TEST_F(DamagedArchive, a_file_no_book_has_is_told_though_the_manifest_lists_it) {
  const auto listed_as = [&](const std::string& name) {
    return after([&](ArchiveParts& damaged) {
      damaged[name] = damaged.at("tables/homes.jsonl");
      damaged.erase("tables/homes.jsonl");
      testing::replace(damaged.at("manifest.json"), "tables/homes.jsonl", name);
    });
  };
  EXPECT_EQ(listed_as("tables/songs.jsonl"), "archive: \"tables/songs.jsonl\" is no file of a book of schema number 9");
  EXPECT_EQ(listed_as("../homes.jsonl"), "archive: \"../homes.jsonl\" is no file of a book of schema number 9");
  EXPECT_EQ(after([](ArchiveParts& damaged) {
              const auto at = damaged.at("manifest.json").find("  {\n   \"name\": \"tables/homes.jsonl\"");
              const auto end = damaged.at("manifest.json").find("  {\n", at + 1);
              damaged.at("manifest.json").erase(at, end - at);
              damaged.erase("tables/homes.jsonl");
            }),
            "archive: tables/homes.jsonl is missing; schema number 9 has it");
}

TEST_F(DamagedArchive, a_manifest_that_says_something_else_is_told) {
  const auto with = [&](const std::string& old, const std::string& fresh) {
    return after([&](ArchiveParts& damaged) { testing::replace(damaged.at("manifest.json"), old, fresh); });
  };
  EXPECT_EQ(with("{", "["), "archive: manifest.json: a JSON object was expected");
  EXPECT_EQ(with("\"tailblock archive\"", "\"something\""),
            "archive: manifest.json: format: \"tailblock archive\" was expected");
  EXPECT_EQ(with("\"format_number\": 1", "\"format_number\": 2"),
            "archive: manifest.json: format_number: 2 is not known to this program, which reads 1");
  EXPECT_EQ(with("\"schema_number\": 9", "\"schema_number\": 99"),
            "archive: its schema number 99 is outside 1.." + newest + ", which this program knows");
  EXPECT_EQ(with("\"schema_number\": 9", "\"schema_number\": 0"),
            "archive: its schema number 0 is outside 1.." + newest + ", which this program knows");
  EXPECT_EQ(with("\"schema_number\": 9", "\"schema_number\": -9"),
            "archive: manifest.json: schema_number: a whole number from 0 to 2147483647 was expected");
  EXPECT_EQ(with("\"schema_number\": 9", "\"schema_number\": 8"),
            "archive: tables/job_offers.jsonl: line 1: the table has no column \"visit_net\"");
  EXPECT_EQ(with("\"files\": [", "\"others\": ["), "archive: manifest.json: files is missing");
  EXPECT_EQ(with("\"rows\": 1", "\"rows\": 3").substr(0, 16), "archive: tables/");
  EXPECT_EQ(with("\"rows\": 1", "\"lines\": 1"), "archive: manifest.json: it has keys that the format does not know");
  EXPECT_EQ(with("README.txt", "tables/homes.jsonl"), "archive: \"tables/homes.jsonl\" stands twice in the manifest");
}

TEST_F(DamagedArchive, a_row_that_is_none_is_told_with_its_line) {
  const std::string owners = "tables/owners.jsonl";
  const std::string second = "{\"id\":2,\"name\":\"A. Player\"";
  const auto told = [](const std::string& why) { return "archive: tables/owners.jsonl: line 2: " + why; };
  EXPECT_EQ(after_signed(owners, second, "{\"id\":2,\"name\":7"), told("name: text was expected"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":\"2\",\"name\":\"A. Player\""),
            told("id: a whole number was expected"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":2.5,\"name\":\"A. Player\""),
            told("id: a whole number was expected"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":18446744073709551615,\"name\":\"A. Player\""),
            told("id: a whole number was expected"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":null,\"name\":\"A. Player\""), told("id: null is not allowed"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":2,\"name\":null"), told("NOT NULL constraint failed: owners.name"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":1,\"name\":\"A. Player\""),
            told("UNIQUE constraint failed: owners.id"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":2"), told("name: the column is missing"));
  EXPECT_EQ(after_signed(owners, second, second + ",\"age\":3"), told("the table has no column \"age\""));
  EXPECT_EQ(after_signed(owners, second, second + ",\"name\":\"B\""), told("a column stands twice"));
  EXPECT_EQ(after_signed(owners, second, "{\"id\":2,\"name\":[1]"),
            told("a value is a list or an object; text, a number or null was expected"));
  EXPECT_EQ(after_signed(owners, second, "[1]" + second), told("a JSON object was expected"));
  EXPECT_EQ(after_signed(owners, second, "\n" + second), told("a JSON object was expected"));
  EXPECT_EQ(after_signed("tables/homes.jsonl", "19.5", "\"19.5\""),
            "archive: tables/homes.jsonl: line 1: heating_set_point_c: a number was expected");
}

TEST_F(DamagedArchive, a_line_without_an_end_is_told) {
  const auto& owners = parts.at("tables/owners.jsonl");
  const std::string last = owners.substr(owners.rfind('\n', owners.size() - 2) + 1);
  EXPECT_EQ(after_signed("tables/owners.jsonl", last, last.substr(0, last.size() - 1)),
            "archive: tables/owners.jsonl: line 2: the line has no end");
}

TEST_F(DamagedArchive, rows_lost_or_that_refer_to_nothing_are_told) {
  const auto& owners = parts.at("tables/owners.jsonl");
  EXPECT_EQ(after_signed("tables/owners.jsonl", owners.substr(0, owners.find('\n') + 1), ""),
            "archive: tables/owners.jsonl has 1 rows; the manifest says 2");
  EXPECT_EQ(after_signed("tables/visits.jsonl", "\"instrument_id\":1", "\"instrument_id\":77"),
            "archive: tables/visits.jsonl: row 1 refers to one of instruments that is not there");
  EXPECT_EQ(after_signed("tables/migrations.jsonl", "the-shops-records", "another-name"),
            "archive: tables/migrations.jsonl does not list this program's migrations 1..9");
}

TEST_F(DamagedArchive, a_photo_that_is_another_is_told) {
  const std::string photos = "tables/photos.jsonl", photo = first_photo();
  EXPECT_EQ(after_signed(photos, "\"" + photo + "\"", "\"photos/x.jpg\""),
            "archive: tables/photos.jsonl: line 1: whole: the archive has no photo \"photos/x.jpg\"");
  EXPECT_EQ(after_signed(photos, "\"" + photo + "\"", "null"),
            "archive: tables/photos.jsonl: line 1: whole: null is not allowed");
  EXPECT_EQ(after_signed(photos, "\"" + photo + "\"", "\"README.txt\""),
            "archive: tables/photos.jsonl: line 1: whole: the archive has no photo \"README.txt\"");
  EXPECT_EQ(after_signed(photo, "a picture", "B picture"),
            "archive: the book in it is not whole: photo 1: its bytes are not those that were kept (the first of 1 "
            "troubles)");
  const std::string thumbnail = photo.substr(0, photo.size() - 4) + ".thumbnail.jpg";
  EXPECT_EQ(after_signed(photos, thumbnail, photo),
            "archive: \"" + thumbnail + "\" is named by no row of tables/photos.jsonl");
}

TEST_F(DamagedArchive, what_the_books_own_check_finds_is_told) {
  EXPECT_EQ(after_signed("tables/papers.jsonl", "2025-0001\\\"}", "2025-0009\\\"}").substr(0, 83),
            "archive: the book in it is not whole: paper 1: it does not say what it said when it");
}

TEST_F(DamagedArchive, a_broken_tar_is_told) {
  const auto with_byte = [&](std::size_t at, char byte) {
    std::string damaged = whole;
    damaged[at] = byte;
    return refusal_of(damaged);
  };
  EXPECT_EQ(refusal_of(""), "archive: byte 0: the archive's end is missing");
  EXPECT_EQ(refusal_of(std::string(3000, 'x')), "archive: byte 0: no ustar header stands here");
  EXPECT_EQ(with_byte(0, 'X'), "archive: byte 0: the header's checksum is wrong");
  EXPECT_EQ(with_byte(148, 'x'), "archive: byte 0: the header's checksum is not an octal number");
  EXPECT_EQ(with_byte(whole.size() - 1, 'x'),
            "archive: byte " + std::to_string(whole.size() - 512) + ": something stands after the archive's end");
  EXPECT_EQ(refusal_of(whole.substr(0, whole.size() - 512)),
            "archive: byte " + std::to_string(whole.size() - 512) + ": the archive's end is missing");
  EXPECT_EQ(refusal_of(whole + whole),
            "archive: byte " + std::to_string(whole.size()) + ": something stands after the archive's end");
  EXPECT_EQ(refusal_of(testing::archive_of({{"a", "1"}}).substr(0, 1024) + testing::archive_of({{"a", "2"}})),
            "archive: byte 1024: the same name stands twice");
}

TEST_F(DamagedArchive, it_is_refused_wherever_it_was_cut_short) {
  for (std::size_t length = 0; length < whole.size(); length += length < 3000 ? 101 : 4999) {
    const std::string said = refusal_of(whole.substr(0, length));
    EXPECT_TRUE(said.starts_with("archive: byte ")) << length << ": " << said;
  }
}

/// What lies between the files is not in them: a changed byte there, of the time or the owner, changes no row.
TEST_F(DamagedArchive, no_flipped_byte_changes_what_comes_in) {
  const testing::TemporaryFolder other;
  import_archive(folder / "whole.tar", other / "right.book");
  const auto right = testing::rows_of_book(other / "right.book", 9);
  const unsigned seed = std::random_device{}();
  std::mt19937 dice(seed);
  SCOPED_TRACE("seed " + std::to_string(seed));
  int refused = 0;
  for (int round = 0; round < 150; ++round) {
    std::string damaged = whole;
    damaged[std::uniform_int_distribution<std::size_t>(0, whole.size() - 1)(dice)] ^=
        static_cast<char>(std::uniform_int_distribution(1, 255)(dice));
    testing::put_bytes(other / "damaged.tar", damaged);
    try {
      import_archive(other / "damaged.tar", other / "made.book");
      EXPECT_EQ(testing::rows_of_book(other / "made.book", 9), right);
    } catch (const Refused& refusal) {
      ++refused;
      EXPECT_EQ(std::string(refusal.what()).find('\n'), std::string::npos);
      EXPECT_FALSE(fs::exists(other / "made.book"));
    }
    fs::remove(other / "made.book");
  }
  EXPECT_GT(refused, 50);
}

}  // namespace
}  // namespace tailblock

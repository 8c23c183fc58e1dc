#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <string>

#include "cli/demo_shop.h"
#include "published.h"
#include "repair/finding_kinds.h"
#include "season_tables.h"

namespace tailblock::testing {

/// The text of a file of the repository, kept for as long as the tests run.
inline std::string_view kept_file(std::string_view path) {
  static std::map<std::string, std::string, std::less<>> files;
  auto found = files.find(path);
  if (found == files.end()) found = files.emplace(path, repository_file(std::string(path))).first;
  return found->second;
}

inline TradeTables trade_of_the_repository() {
  return trade_tables({.measures = kept_file("data/measures.csv"),
                       .gauges = kept_file("data/gauges.csv"),
                       .interventions = kept_file("data/interventions.csv"),
                       .finding_measures = kept_file("data/finding_measures.csv")},
                      finding_kinds(kept_file("data/finding_kinds.csv")));
}

/// The demo as it opens on one day, in a file that goes when this does.
class DemoBook {
 public:
  explicit DemoBook(Date day)
      : today(day), folder_(new_folder()), book(folder_ / "demo.tailblock", trade_of_the_repository()) {
    fill_demo_shop(book, demo_tables(kept_file), today);
    const int count = book.instruments({}).total;
    for (RecordId id = 1; id <= count; ++id) stories.push_back(book.story(id));
  }
  ~DemoBook() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  DemoBook(const DemoBook&) = delete;
  DemoBook& operator=(const DemoBook&) = delete;

  [[nodiscard]] std::vector<LoggedDay> log(RecordId home) const {
    return book.air_log(home, today - std::chrono::days(4000), today);
  }

  /// What the season model makes of one instrument, with the tables of the repository.
  [[nodiscard]] ResponseResult response_of(const InstrumentStory& story) const {
    return response(response_request(story, log(story.home.id), today), season_tables());
  }

  [[nodiscard]] const InstrumentStory& story_of(std::string_view name) const {
    for (const InstrumentStory& story : stories) {
      if (story.instrument.name == name) return story;
    }
    throw Refused("the demo has no " + std::string(name));
  }

  const Date today;

 private:
  /// In memory where the machine has such a folder: twelve books are a thousand writes that wait for a disk.
  static std::filesystem::path new_folder() {
    const std::filesystem::path memory = "/dev/shm";
    const auto parent = std::filesystem::is_directory(memory) ? memory : std::filesystem::temp_directory_path();
    std::string name = (parent / "tailblock-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw Refused("no folder can be made in " + name);
    return name;
  }
  const std::filesystem::path folder_;

 public:
  Book book;
  std::vector<InstrumentStory> stories;
};

/// The demo on the 16th of each month of a year, filled once for all tests.
inline const std::vector<std::unique_ptr<DemoBook>>& demo_through_a_year() {
  static const std::vector<std::unique_ptr<DemoBook>> year = [] {
    std::vector<std::unique_ptr<DemoBook>> books;
    for (unsigned month = 1; month <= 12; ++month) {
      books.push_back(std::make_unique<DemoBook>(Date(std::chrono::year(2026) / month / 16)));
    }
    return books;
  }();
  return year;
}

}  // namespace tailblock::testing

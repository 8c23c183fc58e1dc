#pragma once

#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "published.h"

namespace tailblock::testing {

inline Date day(int year, unsigned month, unsigned day_of_month) {
  return Date(std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(day_of_month));
}

/// The trade's tables as the repository has them.
TradeTables repository_tables();

/// A folder of its own under the system's temporary one, removed with everything in it at the end.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  [[nodiscard]] std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

/// The machine's zone is another as long as this lives.
class InZone {
 public:
  explicit InZone(const char* name) {
    if (const char* set = std::getenv("TZ"); set != nullptr) before_ = set;
    put(name);
  }
  ~InZone() { put(before_ ? before_->c_str() : nullptr); }
  InZone(const InZone&) = delete;
  InZone& operator=(const InZone&) = delete;

 private:
  static void put(const char* name) {
    if (name == nullptr) {
      unsetenv("TZ");
    } else {
      setenv("TZ", name, 1);
    }
    tzset();
  }
  std::optional<std::string> before_;
};

/// A new book with one owner, home, instrument and visit.
struct TestBook {
  TemporaryFolder folder;
  std::filesystem::path file = folder / "shop.book";
  TradeTables tables = repository_tables();
  Book book{file, tables};
  RecordId owner = book.keep(Owner{.name = "A. Player"});
  RecordId home = book.keep(Home{.name = "the house"});
  RecordId instrument = book.keep(Instrument{.owner_id = owner, .home_id = home, .name = "the old one"});
  RecordId visit = book.keep(Visit{.instrument_id = instrument, .date = day(2025, 8, 20)});

  [[nodiscard]] Reading reading(const std::string& measure, double value, RecordId at_visit = 0,
                                const std::string& gauge = "ruler_64ths") const {
    return {.visit_id = at_visit == 0 ? visit : at_visit, .measure = measure, .value = value, .gauge = gauge};
  }
};

/// Every field of a record as text, one a line, without those named `but`.
std::vector<std::string> fields_in_words(const std::function<void(FieldVisitor&)>& record, std::string_view but);

template <class Record>
std::vector<std::string> fields_of(Record record, std::string_view but) {
  return fields_in_words([&](FieldVisitor& visit) { describe(visit, record); }, but);
}

/// Expects a refusal with exactly this line.
template <class Act>
void expect_refused(Act act, const std::string& line) {
  try {
    act();
    ADD_FAILURE() << "not refused; expected: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

}  // namespace tailblock::testing

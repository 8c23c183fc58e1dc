#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <string_view>

#include "quantity/csv_table.h"

namespace tailblock::testing {

/// The whole text of a file of the repository, by its path from the root: `data/species.csv`.
inline std::string repository_file(const std::string& path) {
  std::ifstream file(std::string(TEST_SOURCE_DIR "/") + path, std::ios::binary);
  if (!file) throw Refused(path + ": cannot be opened");
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The same, kept as long as the test runs: what `load_data_tables` asks for.
inline std::string_view repository_text(std::string_view path) {
  static std::map<std::string, std::string, std::less<>> kept;
  const auto found = kept.find(path);
  if (found != kept.end()) return found->second;
  return kept[std::string(path)] = repository_file(std::string(path));
}

/// A table of check values, tests/published/<file>: at least the columns `source`, `table`, one or more inputs, an
/// expected value, `tolerance` and `why` (why that tolerance). The reader refuses an empty table and a short row.
/// `check` compares, names the row's source when one is off, and remembers the largest deviation, which is printed at
/// the end. A table of which nothing was checked fails.
///
///     Published table("tension.csv");
///     for (const CsvRow& row : table.rows()) table.check(row, computed(row), "expected_n", "tolerance_n");
class Published {
 public:
  explicit Published(const std::string& file) : file_(file), table_(file, repository_file("tests/published/" + file)) {}
  Published(const Published&) = delete;
  Published& operator=(const Published&) = delete;
  ~Published() {
    EXPECT_GT(checked_, 0) << file_ << ": no value was checked";
    std::printf("  %s: %d values checked, largest deviation %.3g (%s), closest to its tolerance %.0f %% (%s)\n",
                file_.c_str(), checked_, largest_, largest_where_.c_str(), 100 * closest_, closest_where_.c_str());
  }

  [[nodiscard]] const std::vector<CsvRow>& rows() const { return table_.rows(); }

  void check(const CsvRow& row, double computed, std::string_view expected_column = "expected",
             std::string_view tolerance_column = "tolerance") {
    const double expected = row.number(expected_column, {-1e300, 1e300, ""});
    const double tolerance = row.number(tolerance_column, {0, 1e300, ""});
    const double deviation = std::abs(computed - expected);
    EXPECT_TRUE(deviation <= tolerance) << row.where(expected_column) << ": computed " << computed << ", expected "
                                        << expected << " within " << tolerance << "; source: " << row.name("source")
                                        << ", " << row.text("table") << "; tolerance: " << row.name("why");
    ++checked_;
    if (!(deviation <= largest_)) largest_ = deviation, largest_where_ = row.where(expected_column);
    const double share = tolerance > 0 ? deviation / tolerance : (deviation > 0 ? INFINITY : 0);
    if (!(share <= closest_)) closest_ = share, closest_where_ = row.where(expected_column);
  }

 private:
  std::string file_;
  CsvTable table_;
  int checked_ = 0;
  double largest_ = 0;
  double closest_ = 0;
  std::string largest_where_ = "none";
  std::string closest_where_ = "none";
};

}  // namespace tailblock::testing

#include "shop_for_tests.h"

#include <unistd.h>

#include <cstdlib>

namespace tailblock::testing {
namespace {

class InWords final : public FieldVisitor {
 public:
  explicit InWords(std::string_view but) : but_(but) {}
  std::vector<std::string> lines;

  void number(const Field& field, double& value, const Range&) override { add(field, nearest_nanometre(value)); }
  void length(const Field& field, Length& value, const Range&) override { add(field, nearest_nanometre(in_mm(value))); }
  void integer(const Field& field, int& value, const Range&) override { add(field, std::to_string(value)); }
  void flag(const Field& field, bool& value) override { add(field, value ? "yes" : "no"); }
  void text(const Field& field, std::string& value, std::size_t) override { add(field, value); }
  void date(const Field& field, Date& value) override { add(field, iso_date(value)); }
  void texts(const Field& field, std::vector<std::string>& values, std::size_t, const Count&) override {
    for (const std::string& value : values) add(field, value);
  }
  void choice(const Field& field, int& index, std::span<const std::string_view> names) override {
    add(field, std::string(names[static_cast<std::size_t>(index)]));
  }
  void numbers(const Field& field, std::vector<double>& values, const Range&, const Count&) override {
    for (const double value : values) add(field, nearest_nanometre(value));
  }
  bool enter(const Field&) override { return true; }
  void leave() override {}
  std::size_t enter_list(const Field&, std::size_t have, const Count&) override { return have; }
  void enter_item(std::size_t) override {}
  void leave_item() override {}
  void leave_list() override {}
  bool visit_optional(const Field& field, bool have) override {
    if (!have) add(field, "absent");
    return have;
  }

 private:
  /// Millimetres and metres convert with a rounding in the last digit of a double.
  static std::string nearest_nanometre(double value) { return plain_number(std::round(value * 1e6) / 1e6); }
  void add(const Field& field, const std::string& value) {
    if (field.name != but_) lines.push_back(std::string(field.name) + " = " + value);
  }
  std::string_view but_;
};

}  // namespace

TradeTables repository_tables() {
  const std::string measures = repository_file("data/measures.csv");
  const std::string gauges = repository_file("data/gauges.csv");
  const std::string interventions = repository_file("data/interventions.csv");
  const std::string finding_measures = repository_file("data/finding_measures.csv");
  const std::string kinds = repository_file("data/finding_kinds.csv");
  return trade_tables(
      {.measures = measures, .gauges = gauges, .interventions = interventions, .finding_measures = finding_measures},
      finding_kinds(kinds));
}

TemporaryFolder::TemporaryFolder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "book_test_XXXXXX").string();
  if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
  path_ = pattern;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::vector<std::string> fields_in_words(const std::function<void(FieldVisitor&)>& record, std::string_view but) {
  InWords walk(but);
  record(walk);
  return walk.lines;
}

}  // namespace tailblock::testing

#include "cli/demo_bench_tables.h"

#include <algorithm>
#include <array>

#include "quantity/csv_table.h"

namespace tailblock {
namespace {

constexpr Range days_of_a_year{0, 366, "days"};
constexpr Range minutes_of_a_week{0, 7 * 24 * 60, "min"};
constexpr Range minutes_of_a_day{0, 24 * 60 - 1, "min"};

using TextOf = std::function<std::string_view(std::string_view)>;

std::string cell(const CsvRow& row, std::string_view column) { return std::string(row.text(column)); }
std::string name(const CsvRow& row, std::string_view column) { return std::string(row.name(column)); }

template <std::size_t count>
int one_of(const CsvRow& row, std::string_view column, const std::array<std::string_view, count>& names) {
  const auto found = std::ranges::find(names, row.name(column));
  if (found == names.end()) throw Refused(row.where(column) + ": \"" + cell(row, column) + "\" is not known here");
  return static_cast<int>(found - names.begin());
}

std::optional<int> days_if_given(const CsvRow& row, std::string_view column) {
  if (row.text(column).empty()) return std::nullopt;
  return row.whole_number(column, days_of_a_year);
}

template <class Read>
auto rows_of(const TextOf& text, const std::string& file, Read read) {
  const CsvTable table(file, text("data/demo/" + file));
  std::vector<decltype(read(table.rows().front()))> rows;
  for (const CsvRow& row : table.rows()) rows.push_back(read(row));
  return rows;
}

std::vector<BenchPerson> people(const TextOf& text) {
  std::vector<BenchPerson> people;
  const CsvTable table("people.csv", text("data/demo/people.csv"));
  for (const CsvRow& row : table.rows()) {
    const std::string person = name(row, "person");
    if (people.empty() || people.back().name != person) {
      people.push_back({.name = person, .hours = {}, .days_off = {}, .leaves_to_others = {}});
    }
    people.back().hours.push_back({.weekday = row.whole_number("weekday", {1, 7, ""}),
                                   .from_minute = row.whole_number("from_minute", minutes_of_a_day),
                                   .to_minute = row.whole_number("to_minute", minutes_of_a_day)});
  }
  return people;
}

DemoJob job(const CsvRow& row) {
  constexpr std::array<std::string_view, 4> answers{"yes", "no", "asked", "none"};
  DemoJob job{.instrument = name(row, "instrument"),
              .procedure = name(row, "procedure"),
              .advice = static_cast<JobAdvice>(one_of(row, "advice", job_advice_names)),
              .owner = static_cast<DemoOwnerSays>(one_of(row, "owner", answers)),
              .offered_days_ago = days_if_given(row, "offered_days_ago").value_or(0),
              .person = name(row, "person"),
              .done = {},
              .at_hand = {},
              .goes_on_because = cell(row, "goes_on_because"),
              .note = cell(row, "shop_note")};
  if (!row.text("done_through").empty()) {
    job.done = {.through = name(row, "done_through"),
                .minutes_ago = row.whole_number("done_minutes_ago", minutes_of_a_week)};
  }
  if (!row.text("now_at").empty()) {
    job.at_hand = {.operation = name(row, "now_at"),
                   .minutes_ago = row.whole_number("now_minutes_ago", minutes_of_a_day)};
  }
  return job;
}

DemoPromise promised(const CsvRow& row) {
  return {.instrument = name(row, "instrument"),
          .ready_in_days = days_if_given(row, "ready_in_days"),
          .chance = row.number_if_given("chance", {0, 1, ""}).value_or(0.8),
          .said_days_ago = days_if_given(row, "said_days_ago").value_or(0),
          .wanted_in_days = days_if_given(row, "wanted_in_days"),
          .waits_until_in_days = days_if_given(row, "waits_until_in_days")};
}

DemoShopAir shop_air(const CsvRow& row) {
  constexpr std::array<std::string_view, 2> no_or_yes{"no", "yes"};
  return {.days_ahead = row.whole_number("days_ahead", days_of_a_year),
          .record = {.minute = row.whole_number("minute", minutes_of_a_day),
                     .temperature_c = row.number("temperature_c", {-20, 50, "C"}),
                     .relative_humidity = row.number("relative_humidity", {0, 1, ""}),
                     .forecast = one_of(row, "forecast", no_or_yes) == 1}};
}

DemoLot lot(const CsvRow& row) {
  constexpr Range days{0, 2000, "days"};
  return {.opened_days_ago = row.whole_number("opened_days_ago", days),
          .good_for_days = row.whole_number("good_for_days", days),
          .record = {.material = name(row, "material"), .words = name(row, "words")}};
}

}  // namespace

DemoBenchTables demo_bench_tables(const TextOf& text) {
  return {.people = people(text),
          .jobs = rows_of(text, "jobs.csv", job),
          .promises = rows_of(text, "promises.csv", promised),
          .air = rows_of(text, "shop_air.csv", shop_air),
          .lots = rows_of(text, "lots.csv", lot)};
}

}  // namespace tailblock

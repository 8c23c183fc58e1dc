#include "air/logger_file.h"
#include "http/ask_fields.h"
#include "http/endpoints.h"
#include "wood/moisture.h"

namespace tailblock {
namespace {

constexpr int most_days = 1100;

/// One day of a home's air and of the wood in it.
struct AirDay {
  Date date;
  double temperature_c = 0;
  double relative_humidity = 0;
  bool logged = false;
  double moisture_percent = 0;
};
void describe(FieldVisitor& visit, AirDay& day) {
  visit.date({"date", "the day"}, day.date);
  visit.number({"temperature_c", "mean of the day"}, day.temperature_c, {-40, 60, "C"});
  visit.number({"relative_humidity", "mean of the day, 0..1"}, day.relative_humidity, {0, 1, ""});
  visit.flag({"logged", "read by the home's hygrometer; else expected from its typical year"}, day.logged);
  visit.number({"moisture_percent", "of a bare-inside top that has followed the air"}, day.moisture_percent,
               {0, 40, "percent"});
}

struct AirOfHome {
  std::vector<AirDay> days;
  int logged_days = 0;  ///< in the whole log
};
void describe(FieldVisitor& visit, AirOfHome& answer) {
  list(visit, {"days", "day by day"}, answer.days, {0, most_days});
  visit.integer({"logged_days", "days in the home's whole log"}, answer.logged_days, {0, 1000000, ""});
}

AirOfHome air_of_home(const Shop& shop, const Ask& ask) {
  HomeAir home = shop.book.home(ask.id).air;
  home.log = shop.book.air_log(ask.id);
  const Date first = query_date(ask, "first").value_or(shop.today());
  const int count = query_integer(ask, "count", {1, most_days, "days"}).value_or(365);
  const auto air = home_days(home, first, count);
  const MoistureResult wood = moisture({.home = home, .first = first, .count = count});
  AirOfHome answer;
  answer.logged_days = static_cast<int>(home.log.size());
  for (std::size_t i = 0; i < air.size(); ++i) {
    answer.days.push_back({.date = first + std::chrono::days(i),
                           .temperature_c = air[i].temperature_c,
                           .relative_humidity = air[i].relative_humidity,
                           .logged = air[i].logged,
                           .moisture_percent = wood.days->moisture_percent[i]});
  }
  return answer;
}

struct LogKeptReport {
  int added = 0;
  int already_there = 0;
  LoggerReport report;
};
void describe(FieldVisitor& visit, LogKeptReport& answer) {
  visit.integer({"added", "days added to the home's log"}, answer.added, {0, 1000000, ""});
  visit.integer({"already_there", "days the log had already, left as they were unless replaced"}, answer.already_there,
                {0, 1000000, ""});
  object(visit, {"report", "what of the file was used, and what was refused and why"}, answer.report);
}

constexpr std::array<std::string_view, 2> yes_or_no{"false", "true"};
constexpr std::array<std::string_view, 2> day_order_names{"day_first", "month_first"};
constexpr std::array<std::string_view, 2> temperature_unit_names{"celsius", "fahrenheit"};

LogKeptReport keep_log(const Shop& shop, const Ask& ask) {
  (void)shop.book.home(ask.id);
  LoggerFile file{.text = ask.body};
  if (const auto order = query_choice(ask, "day_order", day_order_names)) file.day_order = static_cast<DayOrder>(*order);
  if (const auto unit = query_choice(ask, "temperature_unit", temperature_unit_names)) {
    file.temperature_unit = static_cast<TemperatureUnit>(*unit);
  }
  const bool replace = query_choice(ask, "replace", yes_or_no).value_or(0) == 1;
  LogKeptReport answer{.added = 0, .already_there = 0, .report = read_logger_file(file)};
  const Book::LogKept kept = shop.book.keep_air_log(ask.id, answer.report.days, replace);
  answer.added = kept.added;
  answer.already_there = kept.already_there;
  return answer;
}

}  // namespace

std::vector<Endpoint> air_endpoints(const Shop& shop) {
  return {{"GET",
           "/api/homes/{id}/air",
           "A home's air and the moisture of wood in it, day by day",
           {{"first", "first day; default today"}, {"count", "days, 1..1100"}},
           "",
           schema_of_result<AirOfHome>(),
           [shop](const Ask& ask) { return json_answer(air_of_home(shop, ask)); }},
          {"POST",
           "/api/homes/{id}/log",
           "Read a logger's file into a home's log",
           {{"replace", "true: days already in the log are replaced"},
            {"day_order", "where the file does not tell: how 3/4/2024 is meant"},
            {"temperature_unit", "where the file does not tell"}},
           "",
           schema_of_result<LogKeptReport>(),
           [shop](const Ask& ask) { return json_answer(keep_log(shop, ask)); },
           "text/csv"}};
}

}  // namespace tailblock

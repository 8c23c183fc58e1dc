#include "air/home_air.h"

#include <array>

namespace tailblock {
namespace {

constexpr int most_days = 1100;
constexpr Count day_count{1, most_days};

std::vector<MonthOfAir> month_means(Date first, const std::vector<HomeDay>& days_of_air) {
  std::array<MonthOfAir, 12> sums{};
  for (std::size_t i = 0; i < days_of_air.size(); ++i) {
    const std::chrono::year_month_day day(first + std::chrono::days(static_cast<int>(i)));
    MonthOfAir& sum = sums[static_cast<unsigned>(day.month()) - 1];
    ++sum.days;
    sum.temperature_c += days_of_air[i].temperature_c;
    sum.relative_humidity += days_of_air[i].relative_humidity;
  }
  std::vector<MonthOfAir> means;
  for (std::size_t m = 0; m < sums.size(); ++m) {
    if (sums[m].days == 0) continue;
    means.push_back({.month = static_cast<int>(m) + 1,
                     .days = sums[m].days,
                     .temperature_c = sums[m].temperature_c / sums[m].days,
                     .relative_humidity = sums[m].relative_humidity / sums[m].days});
  }
  return means;
}

}  // namespace

void describe(FieldVisitor& visit, HomeAirRequest& request) {
  object(visit, {"home", "the home and what is known of its air"}, request.home);
  visit.date({"first", "the first day"}, request.first);
  visit.integer({"count", "how many days", Need::has_default}, request.count, {1, most_days, "days"});
}

void describe(FieldVisitor& visit, MonthOfAir& month) {
  visit.integer({"month", "1 January to 12 December"}, month.month, {1, 12, ""});
  visit.integer({"days", "how many of the days fall in it"}, month.days, {1, most_days, "days"});
  visit.number({"temperature_c", "mean over them"}, month.temperature_c, {-100, 100, "C"});
  visit.number({"relative_humidity", "mean over them, 0..1"}, month.relative_humidity, {0, 1, ""});
}

void describe(FieldVisitor& visit, HomeAirResult& result) {
  visit.date({"first", "the first day"}, result.first);
  visit.numbers({"temperature_c", "of each day"}, result.temperature_c, {-100, 100, "C"}, day_count);
  visit.numbers({"relative_humidity", "of each day, 0..1"}, result.relative_humidity, {0, 1, ""}, day_count);
  visit.numbers({"logged", "1 where the log has the day, else 0"}, result.logged, {0, 1, ""}, day_count);
  list(visit, {"months", "means of the months that the days fall in, January first"}, result.months, {1, 12});
}

HomeAirResult home_air(const HomeAirRequest& request) {
  require_valid(request);
  const std::vector<HomeDay> days_of_air = home_days(request.home, request.first, request.count);
  HomeAirResult result;
  result.first = request.first;
  for (const HomeDay& day : days_of_air) {
    result.temperature_c.push_back(day.temperature_c);
    result.relative_humidity.push_back(day.relative_humidity);
    result.logged.push_back(day.logged ? 1 : 0);
  }
  result.months = month_means(request.first, days_of_air);
  return result;
}

}  // namespace tailblock

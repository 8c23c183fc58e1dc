#include "cli/demo_calendar.h"

#include <algorithm>

namespace tailblock {
namespace {

constexpr int year_of_days = 366;

Date newest(unsigned month, unsigned day, Date no_later_than) {
  const std::chrono::month_day wanted = std::chrono::month(month) / std::chrono::day(day);
  const auto year = std::chrono::year_month_day(no_later_than).year();
  const Date this_year = year / wanted;
  return this_year <= no_later_than ? this_year : Date((year - std::chrono::years(1)) / wanted);
}

}  // namespace

Date visit_day(const DemoWhen& when, Date today, int season_visit_least_days_ago) {
  Date day = today - std::chrono::days(when.days_ago);
  if (when.month != 0) {
    const std::chrono::year_month_day newest_one =
        newest(when.month, when.day, today - std::chrono::days(season_visit_least_days_ago));
    day = newest_one - std::chrono::years(when.years_back);
  }
  return std::chrono::weekday(day) == std::chrono::Sunday ? day - std::chrono::days(1) : day;
}

DemoAir third_of_the_range(const HomeAir& typical, Date day) {
  // Two years: the first lets the wood forget where it began.
  const std::vector<double> moisture =
      wood_moisture(home_days(typical, day - std::chrono::days(2 * year_of_days - 1), 2 * year_of_days), days(10));
  const auto [driest, dampest] = std::minmax_element(moisture.end() - year_of_days, moisture.end());
  if (*driest == *dampest) return DemoAir::middling;
  const double place = (moisture.back() - *driest) / (*dampest - *driest);
  return place < 1.0 / 3 ? DemoAir::dry : place > 2.0 / 3 ? DemoAir::damp : DemoAir::middling;
}

}  // namespace tailblock

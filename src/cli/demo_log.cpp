#include "cli/demo_log.h"

#include <algorithm>
#include <cmath>

namespace tailblock {
namespace {

constexpr double temperature_sd_c = 0.2, humidity_sd = 0.008;       // of one day's mean
constexpr double steps_per_degree = 10, steps_per_fraction = 1000;  // a tenth of a degree, of a percent

double rounded(double value, double steps) { return std::round(value * steps) / steps; }

bool is_missing(const DemoHome& home, int days_ago) {
  return std::ranges::any_of(home.gaps, [&](const DemoHome::Gap& gap) {
    return days_ago <= gap.from_days_ago && days_ago > gap.from_days_ago - gap.days;
  });
}

}  // namespace

std::vector<LoggedDay> hygrometer_log(const DemoHome& home, const std::vector<HomeDay>& air, Date today,
                                      NamedChance chance) {
  std::vector<LoggedDay> log;
  if (!home.log) return log;
  const int last = static_cast<int>(air.size()) - 1;
  for (int ago = std::min(home.log->first_days_ago, last); ago >= home.log->last_days_ago; --ago) {
    const HomeDay& day = air[static_cast<std::size_t>(last - ago)];
    const double temperature = day.temperature_c + temperature_sd_c * chance.normal();
    const double humidity = day.relative_humidity + humidity_sd * chance.normal();
    if (is_missing(home, ago)) continue;
    log.push_back({.date = today - std::chrono::days(ago),
                   .temperature_c = rounded(temperature, steps_per_degree),
                   .relative_humidity = std::clamp(rounded(humidity, steps_per_fraction), 0.0, 1.0)});
  }
  return log;
}

}  // namespace tailblock

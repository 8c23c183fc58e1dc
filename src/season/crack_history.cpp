#include "season/crack_history.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "season/season_prior.h"
#include "wood/equilibrium.h"
#include "wood/following.h"

namespace tailblock {
namespace {

constexpr std::size_t week = 7;
constexpr std::size_t a_year = 300;     // days from which a history is taken to come again every year
constexpr int years_until_steady = 30;  // of lived ones that are calculated
constexpr double days_to_settle = 30;   // from the builder's air to the first day's
constexpr double least_humidity = 0.02;
constexpr double least_stress_percent = 0.01;

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// Means of seven days on end; of all days when there are fewer.
std::vector<double> weekly(const std::vector<double>& daily) {
  const std::size_t span = std::min(week, daily.size());
  std::vector<double> means;
  double sum = std::accumulate(daily.begin(), daily.begin() + static_cast<std::ptrdiff_t>(span), 0.0);
  means.push_back(sum / static_cast<double>(span));
  for (std::size_t i = span; i < daily.size(); ++i) {
    sum += daily[i] - daily[i - span];
    means.push_back(sum / static_cast<double>(span));
  }
  return means;
}

double asked(double temperature_c, double humidity) {
  return in_percent(equilibrium_moisture(celsius(temperature_c), humidity_fraction(humidity)));
}

/// A dry spell of five months, 1 at the middle of the driest week and 0 outside.
std::vector<double> spell(const std::vector<double>& humidity) {
  constexpr double half_length = 75;
  const std::vector<double> means = weekly(humidity);
  const auto driest = static_cast<double>(std::ranges::min_element(means) - means.begin()) + 3;
  std::vector<double> share;
  for (std::size_t i = 0; i < humidity.size(); ++i) {
    const double away = std::abs(static_cast<double>(i) - driest) / half_length;
    share.push_back(away < 1 ? (1 + std::cos(3.14159265358979323846 * away)) / 2 : 0);
  }
  return share;
}

}  // namespace

double lowest_week(const std::vector<double>& daily) { return std::ranges::min(weekly(daily)); }
double highest_week(const std::vector<double>& daily) { return std::ranges::max(weekly(daily)); }

std::vector<double> CrackHistory::moisture(const std::vector<double>& humidity) const {
  std::vector<double> percent;
  for (std::size_t i = 0; i < humidity.size(); ++i) percent.push_back(asked(temperature_c[i], humidity[i]));
  if (wood_is_given) return percent;
  for (double& p : percent) p = mean_asked_percent + hysteresis * (p - mean_asked_percent);
  if (!repeats) return follow(percent, days(lag_days), percent.front());
  // A year that comes again: where it ends is where it begins.
  std::vector<double> closed = percent;
  closed.push_back(percent.front());
  const double end = follow(closed, days(lag_days), 0).back();
  const double kept = std::exp(-static_cast<double>(percent.size()) / lag_days);
  std::vector<double> followed = follow(closed, days(lag_days), end / (1 - kept));
  followed.pop_back();
  return followed;
}

std::vector<double> CrackHistory::with_lowest_week(double lowest) const {
  const double own = lowest_week(relative_humidity), mean = mean_of(relative_humidity);
  constexpr double hardly_a_season = 0.05;
  std::vector<double> room = relative_humidity;
  if (lowest >= own) {
    for (double& h : room) h = std::max(h, lowest);
  } else if (mean - own < hardly_a_season) {
    const std::vector<double> share = spell(relative_humidity);
    for (std::size_t i = 0; i < room.size(); ++i)
      room[i] = std::max(least_humidity, room[i] - (own - lowest) * share[i]);
  } else {
    const double drier = (mean - lowest) / (mean - own);
    for (double& h : room) h = h < mean ? std::max(least_humidity, mean - drier * (mean - h)) : h;
  }
  return room;
}

CrackHistory crack_history(const CrackRiskRequest& request, const SeasonPrior& prior) {
  const int given =
      (request.home ? 1 : 0) + (request.relative_humidity.empty() ? 0 : 1) + (request.moisture_percent.empty() ? 0 : 1);
  if (given != 1) {
    throw Refused("home: exactly one of home, relative_humidity and moisture_percent is to be given, not " +
                  plain_number(given));
  }
  if (request.home.has_value() != request.first.has_value()) {
    throw Refused("first: the first day is given with a home, and only with one");
  }
  CrackHistory history;
  history.lag_days = std::max(in_days(request.lag), 0.01);
  history.hysteresis = prior.hysteresis;
  if (request.home) {
    for (const HomeDay& day : home_days(*request.home, *request.first, 365)) {
      history.temperature_c.push_back(day.temperature_c);
      history.relative_humidity.push_back(day.relative_humidity);
    }
  } else {
    const double temperature = in_celsius(request.temperature);
    history.relative_humidity = request.relative_humidity;
    history.wood_is_given = !request.moisture_percent.empty();
    for (const double percent : request.moisture_percent) {
      history.relative_humidity.push_back(
          in_fraction(equilibrium_humidity(request.temperature, moisture_percent(percent))));
    }
    history.temperature_c.assign(history.relative_humidity.size(), temperature);
  }
  double sum = 0;
  for (std::size_t i = 0; i < history.relative_humidity.size(); ++i) {
    sum += asked(history.temperature_c[i], history.relative_humidity[i]);
  }
  history.mean_asked_percent = sum / static_cast<double>(history.relative_humidity.size());
  history.repeats = history.relative_humidity.size() >= a_year;
  return history;
}

double TopLife::live(RelaxingStress& stress, const std::vector<double>& moisture) {
  std::vector<double> percent;
  for (const double m : moisture) {
    stress.day(m - moisture_now_);
    moisture_now_ = m;
    percent.push_back(stress.percent());
  }
  return highest_week(percent);
}

TopLife::TopLife(const CrackRiskRequest& request, const CrackHistory& history, const Relaxation& relaxation)
    : now_(relaxation) {
  const std::vector<double> moisture = history.moisture(history.relative_humidity);
  moisture_now_ = asked(in_celsius(request.temperature), in_fraction(request.built_at));
  std::vector<double> settling;
  for (double d = 1; d <= days_to_settle; ++d) {
    settling.push_back(moisture_now_ + (moisture.front() - moisture_now_) * d / days_to_settle);
  }
  const double first = live(now_, settling);
  double highest = -1;
  if (request.lowest_survived && in_fraction(*request.lowest_survived) < lowest_week(history.relative_humidity)) {
    highest = live(now_, history.moisture(history.with_lowest_week(in_fraction(*request.lowest_survived))));
  }
  for (int year = 0; year < std::min(request.years_lived, years_until_steady); ++year) {
    if (history.repeats) {
      highest = std::max(highest, live(now_, moisture));
    } else {
      now_.rest(365);
      highest = std::max(highest, now_.percent());
    }
  }
  if (request.years_lived > 0 || highest >= 0) survived_ = std::max({first, highest, least_stress_percent});
}

double TopLife::highest_percent(const std::vector<double>& moisture) const {
  TopLife ahead = *this;
  return std::max(least_stress_percent, ahead.live(ahead.now_, moisture));
}

}  // namespace tailblock

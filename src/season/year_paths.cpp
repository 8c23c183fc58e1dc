#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "season/outside.h"
#include "season/wood_path.h"
#include "wood/following.h"

namespace tailblock {
namespace {

constexpr double days_in_year = 365.25;
constexpr int furthest_ahead = 3653;
constexpr int furthest_back = 731;
constexpr int log_that_matters = 730;

/// What one day's weather still holds of today's, and what is new in it, for wood of one lag.
///
///     w(t) = g w(0) + new,  variances in units of the weather's
///     b = exp(-t/tau), k = T [exp(-t/T) - exp(-t/tau)]/(T - tau), C = T/(T + tau), g = b + k v
///     Var new = C - b^2 C - 2 b k C - k^2 + k^2 v (1 - v C)
///
/// v is the variance of today's air: 1 when nothing is logged, 0 when the log runs to today. Derived here
/// (docs/models/year.md): an Ornstein-Uhlenbeck air of memory T behind a first-order stage.
struct Carried {
  double of_today;
  double new_variance;
};

Carried carried(double t, double tau, double T, double air_variance) {
  const double b = std::exp(-t / tau);
  const double k = std::abs(T - tau) < 1e-6 * T ? t / tau * b : T * (std::exp(-t / T) - b) / (T - tau);
  const double C = T / (T + tau);
  const double v = air_variance;
  return {.of_today = b + k * v,
          .new_variance = std::max(0.0, C - b * b * C - 2 * b * k * C - k * k + k * k * v * (1 - v * C))};
}

/// What all hypotheses of one lag share.
struct LagYear {
  Days lag;
  double moisture_today_percent;
  std::vector<double> above_reference, years, of_today, new_variance;
  double weather_days;
};

/// 1 + twice the sum of the correlations of "outside on day 0" and "outside on day k", at a threshold in the middle:
/// (2/pi) asin rho_k for a normal process.
double weather_days(Days lag, Days memory) {
  const double now = followed_weather_covariance(1, memory, lag, days(0));
  double sum = 1;
  for (int k = 1; k <= 365; ++k) {
    const double rho = followed_weather_covariance(1, memory, lag, days(k)) / now;
    if (rho < 1e-3) break;
    sum += 4 / std::numbers::pi * std::asin(std::min(1.0, rho));
  }
  return sum;
}

/// Variance of today's air given the log: it grows from the last logged day.
double air_variance_today(const HomeAir& home, Date today) {
  int gap = -1;
  for (const LoggedDay& day : home.log) {
    const int ago = days_between(day.date, today);
    if (ago >= 0 && (gap < 0 || ago < gap)) gap = ago;
  }
  return gap < 0 ? 1 : -std::expm1(-2 * gap / in_days(home.weather_memory));
}

struct HomeAhead {
  AirSeries air, before;
  Date today, first;
  int count;
  double air_variance;
};

LagYear lag_year(const HomeAhead& ahead, const Hypothesis& h, double reference_percent) {
  const WoodPath path = wood_path(ahead.air, ahead.before, h.lag);
  const double tau = in_days(h.lag);
  const double T = in_days(ahead.air.weather_memory);
  const auto today = static_cast<std::size_t>(days_between(path.first, ahead.today));
  const double start = h.moisture_today_percent - path.moisture_percent[today];
  LagYear year{.lag = h.lag,
               .moisture_today_percent = h.moisture_today_percent,
               .above_reference = {},
               .years = {},
               .of_today = {},
               .new_variance = {},
               .weather_days = weather_days(h.lag, ahead.air.weather_memory)};
  for (int i = 0; i < ahead.count; ++i) {
    const int t = days_between(ahead.today, ahead.first) + i;
    const auto place = static_cast<std::size_t>(days_between(path.first, ahead.first) + i);
    const Carried weather = carried(std::abs(t), tau, T, t < 0 ? 1 : ahead.air_variance);
    const double scale = t < 0 ? path.departure_percent[place] : path.weather_percent[place];
    year.above_reference.push_back(path.moisture_percent[place] + (t < 0 ? 0 : start * std::exp(-t / tau)) -
                                   reference_percent);
    year.years.push_back(t / days_in_year);
    year.of_today.push_back(weather.of_today);
    year.new_variance.push_back(weather.new_variance * scale * scale);
  }
  return year;
}

/// Action on one side: level + ratio r x + drift t + (ratio r g) departure, the latents in the order of
/// Hypothesis::covariance, and new weather.
struct SideOfHypothesis {
  std::size_t level;
  double level_mm, level_sd, ratio;
  bool ratio_uncertain;
};

struct SideYear {
  std::vector<double> mean, loading, weather_sd, ratio;
};

SideYear side_year(const Hypothesis& h, const SideOfHypothesis& side, const LagYear& year) {
  const std::size_t count = year.years.size();
  SideYear out{.mean = std::vector<double>(count),
               .loading = std::vector<double>(count),
               .weather_sd = std::vector<double>(count),
               .ratio = std::vector<double>(side.ratio_uncertain ? count : 0)};
  const auto& c = h.covariance;
  const std::size_t l = side.level;
  const double r = h.response_mm_per_percent;
  const double swing = r * side.ratio;
  const double level_variance = c[l][l];
  const double ratio_with_level = c[l][2] / level_variance;
  const double ratio_sd = std::sqrt(std::max(0.0, c[2][2] - ratio_with_level * c[l][2]));  // the level given
  for (std::size_t i = 0; i < count; ++i) {
    const double x = year.above_reference[i];
    const double t = year.years[i];
    const double g = swing * year.of_today[i];
    const double a = side.ratio_uncertain ? r * x : 0;
    out.mean[i] = side.level_mm + swing * x + h.drift_mm_per_year * t + g * h.moisture_departure_percent;
    const double with_level = level_variance + a * c[l][2] + t * c[l][3] + g * c[l][4];
    const double rest = a * (a * c[2][2] + 2 * (c[l][2] + t * c[2][3] + g * c[2][4])) +
                        t * (t * c[3][3] + 2 * (c[l][3] + g * c[3][4])) + g * (g * c[4][4] + 2 * c[l][4]);
    const double variance = level_variance + rest + swing * swing * year.new_variance[i];
    out.loading[i] = with_level / level_variance;
    out.weather_sd[i] = std::sqrt(std::max(1e-12, variance - out.loading[i] * with_level));
    if (side.ratio_uncertain) out.ratio[i] = a * ratio_sd;
  }
  return out;
}

void require_near(Date first, Date today) {
  const int ahead = days_between(today, first);
  if (-furthest_back <= ahead && ahead <= furthest_ahead) return;
  throw Refused("first: " + iso_date(first) + " is outside two years before to ten years after today, " +
                iso_date(today));
}

/// The air from before today (or `first`, or the log) to the end of the year asked for.
HomeAhead look_ahead(const HomeAir& home, Date today, Date first, int count) {
  require_near(first, today);
  require_within("count", count, {1, 1100, "days"});
  const Date earliest = std::min(first, today);
  Date begin = earliest;
  for (const LoggedDay& day : home.log) {
    if (days_between(day.date, earliest) <= log_that_matters) begin = std::min(begin, day.date);
  }
  const Date end = std::max(first + std::chrono::days(count), today + std::chrono::days(1));
  return {.air = air_series(home, begin, days_between(begin, end)),
          .before = typical_year_before(home, begin),
          .today = today,
          .first = first,
          .count = count,
          .air_variance = air_variance_today(home, today)};
}

}  // namespace

std::vector<double> expected_moisture(const Hypothesis& hypothesis, Date today, const HomeAir& home, Date first,
                                      int count) {
  return lag_year(look_ahead(home, today, first, count), hypothesis, 0).above_reference;
}

YearPaths year_paths(const Calibration& calibration, const HomeAir& home, Date first, int count) {
  const HomeAhead ahead = look_ahead(home, calibration.today, first, count);
  std::vector<LagYear> years;
  YearPaths paths{.first = first, .count = count, .paths = {}};
  for (const Hypothesis& h : calibration.hypotheses) {
    auto year = std::find_if(years.begin(), years.end(), [&](const LagYear& y) {
      return y.lag == h.lag && y.moisture_today_percent == h.moisture_today_percent;
    });
    if (year == years.end()) {
      years.push_back(lag_year(ahead, h, calibration.reference_moisture_percent));
      year = years.end() - 1;
    }
    SideYear bass = side_year(h, {0, h.level_bass_mm, h.level_sd_bass_mm, 1, false}, *year);
    SideYear treble = side_year(h, {1, h.level_treble_mm, h.level_sd_treble_mm, h.treble_ratio, true}, *year);
    paths.paths.push_back({.weight = h.weight,
                           .response_mm_per_percent = h.response_mm_per_percent,
                           .level_sd_bass_mm = h.level_sd_bass_mm,
                           .level_sd_treble_mm = h.level_sd_treble_mm,
                           .level_correlation = h.covariance[0][1] / (h.level_sd_bass_mm * h.level_sd_treble_mm),
                           .weather_days = year->weather_days,
                           .bass_mm = std::move(bass.mean),
                           .treble_mm = std::move(treble.mean),
                           .level_loading_bass = std::move(bass.loading),
                           .level_loading_treble = std::move(treble.loading),
                           .weather_sd_bass_mm = std::move(bass.weather_sd),
                           .weather_sd_treble_mm = std::move(treble.weather_sd),
                           .ratio_mm = std::move(treble.ratio),
                           .above_reference_percent = year->above_reference});
  }
  return paths;
}

}  // namespace tailblock

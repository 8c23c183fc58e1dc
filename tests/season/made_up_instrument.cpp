#include "made_up_instrument.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "season/response_prior.h"
#include "wood/equilibrium.h"

namespace tailblock::testing {
namespace {

constexpr int steps_a_day = 4;
constexpr int settling_days = 250;
constexpr double box_share = 0.85;

double normal(std::mt19937_64& random) { return std::normal_distribution<double>()(random); }
double uniform(std::mt19937_64& random) { return std::uniform_real_distribution<double>()(random); }

HomeAir draw_home(std::mt19937_64& random) {
  static constexpr std::array<const char*, 4> places{"Winnipeg MB", "Washington-Dulles VA", "Denver-Aurora CO",
                                                     "San Francisco CA"};
  const auto place = static_cast<std::size_t>(4 * uniform(random));
  return heated_home(places[place], 2 + 2 * uniform(random), uniform(random) < 0.5 ? 0.0 : 0.2 + 0.2 * uniform(random));
}

Truth draw_truth(std::mt19937_64& random, const SeasonPrior& p) {
  const ResponsePrior prior = response_prior({}, {}, season_tables());
  return {.response = std::exp(prior.log_response + prior.log_response_sd * normal(random)),
          .lag_days = p.lag_median * std::exp(p.lag_log_sd * normal(random)),
          .treble_ratio = p.treble_ratio + p.treble_ratio_sd * normal(random),
          .drift_mm_per_year = p.drift + p.drift_sd * normal(random)};
}

/// Days on which it is seen, spread over up to three years, with a further one at the end.
std::vector<int> draw_visit_days(std::mt19937_64& random, int visits) {
  std::vector<int> days{0};
  for (int i = 0; i < visits; ++i) days.push_back(days.back() + 60 + static_cast<int>(240 * uniform(random)));
  return days;
}

struct History {
  std::vector<double> wood_percent;             // at noon of each day
  std::vector<double> humidity, temperature_c;  // daily means
};

/// The wood through `count` days from `first`, after settling.
History draw_history(std::mt19937_64& random, const HomeAir& home, Date first, int count, double lag) {
  const std::vector<HomeDay> typical = home_days(home, first - std::chrono::days(settling_days), settling_days + count);
  const double dt = 1.0 / steps_a_day;
  const double kept = std::exp(-dt / in_days(home.weather_memory));
  double weather = home.weather_sd_relative_humidity * normal(random);
  double box = in_percent(
      equilibrium_moisture(celsius(typical[0].temperature_c), humidity_fraction(typical[0].relative_humidity)));
  double plate = box;
  History history;
  for (std::size_t day = 0; day < typical.size(); ++day) {
    double sum = 0;
    double noon = plate;
    for (int step = 0; step < steps_a_day; ++step) {
      const double h = std::clamp(typical[day].relative_humidity + weather, 0.02, 0.98);
      const double asked = in_percent(equilibrium_moisture(celsius(typical[day].temperature_c), humidity_fraction(h)));
      box += (asked - box) * -std::expm1(-dt / (box_share * lag));
      plate += (box - plate) * -std::expm1(-dt / ((1 - box_share) * lag));
      if (step == 1) noon = plate;
      sum += h;
      weather = kept * weather + home.weather_sd_relative_humidity * std::sqrt(1 - kept * kept) * normal(random);
    }
    if (static_cast<int>(day) < settling_days) continue;
    history.wood_percent.push_back(noon);
    history.humidity.push_back(sum / steps_a_day);
    history.temperature_c.push_back(typical[day].temperature_c);
  }
  return history;
}

double as_read(std::mt19937_64& random, double height_mm, double gauge_sd_mm, double coarse_mm) {
  const double seen = height_mm + gauge_sd_mm * normal(random);
  return gauge_sd_mm < coarse_mm ? seen : std::round(seen * 10) / 10;
}

}  // namespace

MadeUp made_up_instrument(std::mt19937_64& random, const VisitPlan& plan) {
  const SeasonPrior& p = *season_tables().prior;
  constexpr int logged_before = 60;
  MadeUp made{};
  made.truth = draw_truth(random, p);
  HomeAir home = draw_home(random);
  const Date start = day("2020-01-01") + std::chrono::days(static_cast<int>(365 * uniform(random)));
  const std::vector<int> visits = draw_visit_days(random, plan.visits);
  const Date first_day = start - std::chrono::days(logged_before);
  const History history = draw_history(random, home, first_day, visits.back() + logged_before + 1, made.truth.lag_days);
  const int last = visits[static_cast<std::size_t>(plan.visits - 1)];
  if (plan.hygrometer_log) {
    for (int i = 0; i <= last + logged_before; ++i) {
      if (uniform(random) < 0.05) continue;  // the batteries were flat
      const auto place = static_cast<std::size_t>(i);
      home.log.push_back({.date = first_day + std::chrono::days(i),
                          .temperature_c = history.temperature_c[place],
                          .relative_humidity = history.humidity[place]});
    }
  }
  made.request.today = start + std::chrono::days(last);
  made.request.home = home;
  made.step_mm = plan.hidden_step_mm * (uniform(random) < 0.5 ? -1 : 1);

  const double common = p.level_sd * normal(random);
  double bass = p.level_bass + common;
  double treble = p.level_treble + common + p.level_side_sd * normal(random);
  double bridge = 0, bridge_drift = 0;
  if (plan.straightedge) {
    const ResponsePrior prior = response_prior({}, {}, season_tables());
    made.truth.top_share = prior.top_share + prior.top_share_sd * normal(random);
    bridge = p.bridge_level + p.bridge_level_sd * normal(random);
    bridge_drift = p.bridge_drift_sd * normal(random);
  }
  for (std::size_t visit = 0; visit < visits.size(); ++visit) {
    const bool further = visit + 1 == visits.size();
    if (static_cast<int>(visit) == plan.visits - 1) bass += made.step_mm, treble += made.step_mm;
    const int t = visits[visit];
    const Date date = start + std::chrono::days(t);
    const double moved = made.truth.response * (history.wood_percent[static_cast<std::size_t>(t + logged_before)] - 9);
    const double drifted = made.truth.drift_mm_per_year * t / 365.25;
    const double gauge = uniform(random) < plan.ruler_share ? plan.coarse_gauge_mm : plan.fine_gauge_mm;
    const auto read_now = [&](double height) { return as_read(random, height, gauge, plan.coarse_gauge_mm); };
    const double of_the_set = p.set_sd * normal(random);
    const double bass_read = read_now(bass + moved + drifted + of_the_set);
    const double treble_read = read_now(treble + made.truth.treble_ratio * moved + drifted + of_the_set);
    if (further) {
      made.next_day = date;
      made.next_bass_mm = bass_read;
      made.next_treble_mm = treble_read;
      made.next_noise_mm = std::hypot(gauge, p.set_sd);
      break;
    }
    read_both(made.request, date, bass_read, treble_read, gauge);
    if (plan.straightedge) {
      const double top = made.truth.top_share * (1 + made.truth.treble_ratio) * moved;
      const double seen = bridge + top + bridge_drift * t / 365.25 + p.bridge_set_sd * normal(random);
      made.request.readings.push_back(
          read(date, HeightKind::bridge_over_rim, seen + plan.coarse_gauge_mm * normal(random), plan.coarse_gauge_mm));
    }
    if (uniform(random) >= plan.saddle_work_share) continue;
    const double cut = -0.4 * uniform(random);
    const bool known = uniform(random) < 0.6;
    bass += cut;
    treble += cut;
    SetupChange change{.date = date,
                       .order = 1,
                       .what = "saddle lowered",
                       .action12_bass_change = {},
                       .action12_treble_change = {},
                       .change_sd = mm(0.05)};
    if (known) {
      change.action12_bass_change = mm(cut + 0.05 * normal(random));
      change.action12_treble_change = mm(cut + 0.05 * normal(random));
    }
    made.request.changes.push_back(change);
    const double of_the_next_set = p.set_sd * normal(random);
    read_both(made.request, date, read_now(bass + moved + drifted + of_the_next_set),
              read_now(treble + made.truth.treble_ratio * moved + drifted + of_the_next_set), gauge, 2);
  }
  return made;
}

}  // namespace tailblock::testing

#include "season/learning.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "season/relief.h"
#include "season/suspicion.h"
#include "wood/following.h"

namespace tailblock {
namespace {

constexpr int lag_nodes = 7;
constexpr double lag_reach = 2.8;  // prior standard deviations on either side
constexpr int coarse_responses = 25;
constexpr int fine_responses = 9;
constexpr double response_reach = 3.4;
constexpr int log_before_first_visit = 730;  // days of a hygrometer log before the first visit that are still used
constexpr int most_corrections = 12;

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

std::vector<LagNode> lag_grid(const ResponseRequest& request, const ResponsePrior& prior) {
  Date first = request.today;
  for (const HeightReading& reading : request.readings) first = std::min(first, reading.date);
  Date begin = first;
  for (const LoggedDay& day : request.home.log) begin = std::min(begin, day.date);
  begin = std::max(begin, first - std::chrono::days(log_before_first_visit));
  const AirSeries air = air_series(request.home, begin, days_between(begin, request.today) + 1);
  const AirSeries before = typical_year_before(request.home, begin);
  std::vector<LagNode> nodes;
  for (int i = 0; i < lag_nodes; ++i) {
    const double z = lag_reach * (2.0 * i / (lag_nodes - 1) - 1);
    const Days lag = days(std::exp(prior.log_lag + z * prior.log_lag_sd));
    nodes.push_back({.lag = lag, .log_prior = -z * z / 2, .path = wood_path(air, before, lag)});
  }
  return nodes;
}

struct Spread {
  double mean, sd;
};

/// Mean and spread of log response over the grid.
Spread log_response_of(const std::vector<Cell>& cells) {
  double mean = 0;
  for (const Cell& cell : cells) mean += cell.total() * std::log(cell.response);
  double variance = 0;
  for (const Cell& cell : cells) variance += cell.total() * std::pow(std::log(cell.response) - mean, 2);
  return {.mean = mean, .sd = std::sqrt(variance)};
}

std::vector<double> response_grid(Spread around, int count) {
  std::vector<double> grid;
  for (int i = 0; i < count; ++i) {
    grid.push_back(std::exp(around.mean + around.sd * response_reach * (2.0 * i / (count - 1) - 1)));
  }
  return grid;
}

/// Weighs every cell of the grid, without and with a move in the last interval.
void weigh(Learnt& learnt, const SeasonPrior& p) {
  const bool may_step = learnt.record.days.size() >= 2;
  const double log_no_step = std::log(1 - (may_step ? p.step_probability : 0));
  const double log_step = std::log(p.step_probability);
  learnt.cells.clear();
  double highest = -INFINITY;
  for (std::size_t lag = 0; lag < learnt.lags.size(); ++lag) {
    for (const double response : learnt.responses) {
      const double z = (std::log(response) - learnt.prior.log_response) / learnt.prior.log_response_sd;
      const double common = learnt.lags[lag].log_prior - z * z / 2 + learnt.plain.log_likelihood(lag, response);
      Cell cell{.lag = lag, .response = response, .weight = {common + log_no_step, -INFINITY}};
      if (may_step) {
        const std::size_t last = learnt.record.days.size() - 2;
        cell.weight[1] = common + log_step + learnt.plain.log_step_factor(lag, response, last);
      }
      highest = std::max({highest, cell.weight[0], cell.weight[1]});
      learnt.cells.push_back(cell);
    }
  }
  double total = 0;
  for (Cell& cell : learnt.cells) {
    for (double& weight : cell.weight) total += weight = std::exp(weight - highest);
  }
  learnt.step_probability = 0;
  for (Cell& cell : learnt.cells) {
    for (double& weight : cell.weight) weight /= total;
    learnt.step_probability += cell.weight[1];
  }
}

/// Narrows the grid of responses to where the posterior lies, until it is as fine as the posterior asks.
void refine(Learnt& learnt, const SeasonPrior& p) {
  learnt.responses = response_grid({learnt.prior.log_response, learnt.prior.log_response_sd}, coarse_responses);
  weigh(learnt, p);
  for (int pass = 0; pass < 6; ++pass) {
    const double spacing = std::log(learnt.responses[1] / learnt.responses[0]);
    Spread found = log_response_of(learnt.cells);
    const bool resolved = found.sd > 0.5 * spacing;
    found.sd = std::max(found.sd, 0.5 * spacing);
    learnt.responses = response_grid(found, fine_responses);
    weigh(learnt, p);
    if (resolved) return;
  }
}

void gather_evidence(Learnt& learnt, const SeasonPrior& p, Days weather_memory) {
  std::vector<DayMoisture> moisture;
  for (const LagNode& node : learnt.lags) {
    moisture.push_back(day_moisture(node, learnt.record.days, learnt.reference_percent, weather_memory));
  }
  const EvidencePrior prior = evidence_prior(learnt.prior, p);
  learnt.plain = Evidence(learnt.record, prior, moisture);
  learnt.stepped.reset();
  if (learnt.record.days.size() < 2) return;
  VisitRecord with_step = learnt.record;
  with_step.shifts.push_back(unrecorded_step(learnt.record, learnt.record.days.size() - 2, p));
  learnt.stepped.emplace(with_step, prior, moisture);
}

}  // namespace

EvidencePrior evidence_prior(const ResponsePrior& prior, const SeasonPrior& season) {
  const double both_sides = 1 + season.treble_ratio;
  return {.season = &season,
          .bridge_ratio = both_sides * prior.top_share,
          .bridge_ratio_sd = both_sides * prior.top_share_sd};
}

DayMoisture day_moisture(const LagNode& node, const std::vector<Date>& visit_days, double reference_percent,
                         Days weather_memory) {
  std::vector<std::size_t> places;
  for (const Date day : visit_days) places.push_back(static_cast<std::size_t>(days_between(node.path.first, day)));
  places.push_back(node.path.moisture_percent.size() - 1);
  DayMoisture moisture;
  for (const std::size_t place : places) {
    moisture.above_reference_percent.push_back(node.path.moisture_percent[place] - reference_percent);
    moisture.departure_percent.push_back(node.path.departure_percent[place]);
  }
  const std::size_t count = places.size();
  moisture.unit_covariance.resize(count * count);
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      const double apart = std::abs(static_cast<double>(places[i]) - static_cast<double>(places[j]));
      moisture.unit_covariance[i * count + j] = moisture.unit_covariance[j * count + i] =
          followed_weather_covariance(1, weather_memory, node.lag, days(apart));
    }
  }
  return moisture;
}

Learnt learn(const ResponseRequest& request, const SeasonTables& tables) {
  require_valid(request);
  const SeasonPrior& p = *tables.prior;
  std::vector<bool> set_aside = repeats(request.readings);
  VisitRecord record = visit_record(request, p, set_aside);
  Learnt learnt{.record = record,
                .prior = response_prior(request.design, request.kindred, tables),
                .reference_percent = 0,
                .typical = typical_leap_year(request.home),
                .lags = {},
                .responses = {},
                .cells = {},
                .plain = Evidence(VisitRecord{}, {&p, 1, 1}, {}),
                .stepped = std::nullopt,
                .step_probability = 0,
                .flagged = {},
                .supposed_steps = {}};
  learnt.reference_percent = mean_of(learnt.typical.asked_percent);
  learnt.lags = lag_grid(request, learnt.prior);
  std::vector<Date> steps_before;
  for (int correction = 0;; ++correction) {
    gather_evidence(learnt, p, request.home.weather_memory);
    refine(learnt, p);
    if (correction == most_corrections) break;
    const auto suspect = gravest_suspicion(learnt, p);
    if (!suspect) break;
    if (suspect->misread) {
      learnt.flagged.push_back(flagged_reading(request.readings[suspect->misread->reading], *suspect->misread));
      set_aside[suspect->misread->reading] = true;
    } else {
      steps_before.push_back(learnt.record.days[suspect->interval + 1]);
    }
    learnt.record = visit_record(request, p, set_aside);
    for (const Date day : steps_before) add_supposed_step(learnt.record, day, p);
  }
  for (const Date day : steps_before) {
    const auto place = std::lower_bound(learnt.record.days.begin(), learnt.record.days.end(), day);
    learnt.supposed_steps.push_back(static_cast<std::size_t>(place - learnt.record.days.begin()));
  }
  learn_relief(learnt, request, p);
  return learnt;
}

}  // namespace tailblock

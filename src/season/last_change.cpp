#include "season/last_change.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include "season/normal.h"
#include "season/words.h"

namespace tailblock {
namespace {

constexpr double barely_mm = 0.005;

/// What was read on one side over the last interval, recorded work taken out.
struct Measured {
  double change_mm;
  double variance;
  bool unknown_work;
};

struct Reading {
  double value_mm, variance;
  const Observation* any;
};

/// Mean of the readings of one side in one set, weighted by their gauges.
Reading read_set(const VisitRecord& record, std::size_t set, Side side, const SeasonPrior& p) {
  double precision = 0;
  double weighted = 0;
  const Observation* any = nullptr;
  for (const Observation& seen : record.observations) {
    if (seen.set != set || seen.side != side) continue;
    const double w = 1 / (seen.gauge_sd_mm * seen.gauge_sd_mm);
    precision += w;
    weighted += w * seen.value_mm;
    any = &seen;
  }
  return {.value_mm = weighted / precision, .variance = 1 / precision + p.set_sd * p.set_sd, .any = any};
}

std::optional<Measured> measured(const VisitRecord& record, Side side, const SeasonPrior& p) {
  const std::size_t to_day = record.days.size() - 1;
  const Observation* before = nullptr;
  const Observation* after = nullptr;
  for (const Observation& seen : record.observations) {
    if (seen.side != side) continue;
    if (seen.day + 1 == to_day) before = &seen;       // as left
    if (seen.day == to_day && !after) after = &seen;  // as found
  }
  if (!before || !after) return std::nullopt;
  const Reading from = read_set(record, before->set, side, p);
  const Reading to = read_set(record, after->set, side, p);
  Measured change{
      .change_mm = to.value_mm - from.value_mm, .variance = from.variance + to.variance, .unknown_work = false};
  const auto s = static_cast<std::size_t>(side);
  for (const Shift& shift : record.shifts) {
    if (!is_before(*from.any, shift) || is_before(*to.any, shift)) continue;
    change.change_mm -= shift.known_mm[s];
    change.variance += shift.sd_mm[s] * shift.sd_mm[s];
    if (shift.sd_mm[s] >= p.unknown_change_sd) change.unknown_work = true;
  }
  return change;
}

/// What the season did over the last interval, as weighted normals: bass, treble, and the sum of the sides read.
struct Season {
  std::array<NormalMixture, 3> parts;
};

struct Part {
  double mean, sd;
};

/// A sum of treble ratio and the two departures with these factors.
Part linear(const LatentNormal& latents, double constant, const std::array<double, 3>& factor) {
  static constexpr std::array<Latent, 3> which{treble_ratio, departure_from, departure_to};
  double mean = constant;
  double variance = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    mean += factor[i] * latents.mean[which[i]];
    for (std::size_t j = 0; j < 3; ++j) variance += factor[i] * factor[j] * latents.covariance[which[i]][which[j]];
  }
  return {.mean = mean, .sd = std::sqrt(std::max(0.0, variance))};
}

Season season_between(const Learnt& learnt, const std::array<bool, 2>& sides) {
  const Date from = learnt.record.days.end()[-2];
  const Date to = learnt.record.days.back();
  Season season;
  for (const Cell& cell : learnt.cells) {
    const WoodPath& path = learnt.lags[cell.lag].path;
    const auto moisture = [&](Date date) {
      return path.moisture_percent[static_cast<std::size_t>(days_between(path.first, date))];
    };
    const double rise = moisture(to) - moisture(from);
    const double r = cell.response;
    for (std::size_t model = 0; model < 2; ++model) {
      if (!(cell.weight[model] > 1e-6)) continue;
      const LatentNormal latents = (model == 0 ? learnt.plain : *learnt.stepped).latents(cell.lag, r);
      const double ratio = latents.mean[treble_ratio];
      const std::array<double, 3> treble{r * rise, -r * ratio, r * ratio};
      const double b = sides[0] ? 1 : 0;
      const double t = sides[1] ? 1 : 0;
      const std::array<Part, 3> parts{
          linear(latents, r * rise, {0, -r, r}), linear(latents, 0, treble),
          linear(latents, b * r * rise, {t * treble[0], b * -r + t * treble[1], b * r + t * treble[2]})};
      for (std::size_t i = 0; i < 3; ++i) season.parts[i].add(cell.weight[model], parts[i].mean, parts[i].sd);
    }
  }
  return season;
}

Estimate quantiles(const NormalMixture& mixture) {
  return {.median = mixture.quantile(0.5), .low = mixture.quantile(0.05), .high = mixture.quantile(0.95)};
}

Estimate normal_estimate(double mean, double variance) {
  const double reach = standard_normal_quantile(0.95) * std::sqrt(variance);
  return {.median = mean, .low = mean - reach, .high = mean + reach};
}

NormalMixture left_over(const Measured& change, const NormalMixture& season) {
  NormalMixture rest;
  for (std::size_t k = 0; k < season.weight.size(); ++k) {
    rest.add(season.weight[k], change.change_mm - season.mean[k],
             std::sqrt(season.sd[k] * season.sd[k] + change.variance));
  }
  return rest;
}

Estimate share_of(const Estimate& season, double measured_mm) {
  constexpr double most = 9.99;
  const double floor = std::copysign(std::max(std::abs(measured_mm), barely_mm), measured_mm);
  Estimate share{.median = std::clamp(season.median / floor, -most, most),
                 .low = std::clamp(season.low / floor, -most, most),
                 .high = std::clamp(season.high / floor, -most, most)};
  if (share.low > share.high) std::swap(share.low, share.high);
  return share;
}

std::string measured_in_words(const Measured& change, const char* side, Date from) {
  const std::string since = " on the " + std::string(side) + " since " + day_in_words(from);
  const double size = std::abs(change.change_mm);
  if (size < std::sqrt(change.variance)) {
    return "No change" + since + " beyond what the reading can tell (" + decimals(change.change_mm, 2) + " mm)";
  }
  return std::string(change.change_mm < 0 ? "Down " : "Up ") + decimals(size, 2) + " mm" + since;
}

std::string season_in_words(const Measured& change, const Estimate& season) {
  const double sign = change.change_mm < 0 ? -1 : 1;
  const std::string interval = " (" + decimals(sign < 0 ? -season.high : season.low, 2) + " to " +
                               decimals(sign < 0 ? -season.low : season.high, 2) + ")";
  if (std::abs(season.median) < barely_mm) return "the season explains nothing of it" + interval + ".";
  if (season.median * sign < 0 || std::abs(change.change_mm) < std::sqrt(change.variance)) {
    const std::string way = season.median < 0 ? "down " : "up ";
    return "the season alone would have moved it " + way + decimals(std::abs(season.median), 2) + " mm (" +
           decimals(season.low, 2) + " to " + decimals(season.high, 2) + ").";
  }
  return "the season explains " + decimals(std::abs(season.median), 2) + " mm of it" + interval + ".";
}

std::string something_else_in_words(double probability, bool said) {
  constexpr double worth_a_word = 0.15;
  const std::string chance = "(" + decimals(std::clamp(100 * probability, 1.0, 99.0), 0) + " in 100)";
  if (said) return " Something else has probably moved " + chance + ": look before anything is cut.";
  if (probability > worth_a_word) return " Something else may have moved " + chance + ".";
  return " Nothing else need have moved.";
}

}  // namespace

std::optional<ChangeShare> last_change(const Learnt& learnt, const SeasonPrior& prior, Days weather_memory) {
  const VisitRecord& record = learnt.record;
  if (record.days.size() < 2) return std::nullopt;
  const std::array<std::optional<Measured>, 2> sides{measured(record, Side::bass, prior),
                                                     measured(record, Side::treble, prior)};
  if (!sides[0] && !sides[1]) return std::nullopt;
  const Season season = season_between(learnt, {sides[0].has_value(), sides[1].has_value()});
  ChangeShare share;
  share.from = record.days.end()[-2];
  share.to = record.days.back();
  share.season_bass_mm = quantiles(season.parts[0]);
  share.season_treble_mm = quantiles(season.parts[1]);
  share.measured_bass_mm = share.season_bass_mm;
  share.measured_treble_mm = share.season_treble_mm;
  double both = 0;
  bool unknown_work = false;
  for (std::size_t s = 0; s < 2; ++s) {
    if (!sides[s]) continue;
    (s == 0 ? share.measured_bass_mm : share.measured_treble_mm) =
        normal_estimate(sides[s]->change_mm, sides[s]->variance);
    (s == 0 ? share.unexplained_bass_mm : share.unexplained_treble_mm) =
        quantiles(left_over(*sides[s], season.parts[s]));
    both += sides[s]->change_mm;
    unknown_work = unknown_work || sides[s]->unknown_work;
  }
  share.season_share = share_of(quantiles(season.parts[2]), both);
  share.something_else_probability = learnt.step_probability;
  share.something_else = learnt.step_probability > prior.step_threshold;
  const bool bass = sides[0].has_value();
  const Measured& told = bass ? *sides[0] : *sides[1];
  share.verdict = measured_in_words(told, bass ? "bass" : "treble", share.from) + "; ";
  if (unknown_work) {
    share.verdict += "work of unknown size was done in between, so its part and the season's cannot be told apart.";
  } else {
    share.verdict += season_in_words(told, bass ? share.season_bass_mm : share.season_treble_mm) +
                     something_else_in_words(share.something_else_probability, share.something_else);
    share.better_reading = better_reading(learnt, prior, weather_memory);
  }
  if (!sides[0]) share.verdict += " The bass was not read on both days.";
  if (!sides[1]) share.verdict += " The treble was not read on both days.";
  return share;
}

}  // namespace tailblock

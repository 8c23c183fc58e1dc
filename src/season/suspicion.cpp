#include "season/suspicion.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "season/words.h"

namespace tailblock {
namespace {

constexpr std::size_t least_others = 3;
constexpr double vaguest_expectation_mm = 0.5;
constexpr double least_cell = 1e-5;

double normal_density(double x, double variance) {
  return std::exp(-x * x / (2 * variance)) / std::sqrt(2 * std::numbers::pi * variance);
}

double odds(double probability) { return probability / (1 - probability); }

/// Sums over the grid for one reading.
struct Judged {
  double gross = 0;  // likelihood with the reading misread, over that of all readings as they are
  double mean = 0, square = 0, share = 0;
};

void judge(Judged& judged, double weight, double value_mm, const LeftOut& others, double misreading_sd) {
  const double off = value_mm - others.expected_mm;
  const double variance = others.sd_mm * others.sd_mm;
  // Both densities underflow far out, where their ratio is still plain.
  const double wide = variance + misreading_sd * misreading_sd;
  const double ratio =
      std::sqrt(variance / wide) * std::exp(std::min(600.0, off * off / 2 * (1 / variance - 1 / wide)));
  judged.gross += weight * ratio;
  // Expectation of the others alone: their weight is the cell's over the density of the reading.
  const double share = weight / std::max(normal_density(off, variance), 1e-250);
  judged.share += share;
  judged.mean += share * others.expected_mm;
  judged.square += share * (variance + others.expected_mm * others.expected_mm);
}

std::vector<Judged> judge_readings(const Learnt& learnt, const SeasonPrior& p) {
  std::vector<Judged> judged(learnt.record.observations.size());
  for (const Cell& cell : learnt.cells) {
    for (std::size_t model = 0; model < 2; ++model) {
      if (cell.weight[model] < least_cell) continue;
      const Evidence& evidence = model == 0 ? learnt.plain : *learnt.stepped;
      const std::vector<LeftOut> others = evidence.left_out(cell.lag, cell.response);
      for (std::size_t i = 0; i < judged.size(); ++i) {
        judge(judged[i], cell.weight[model], learnt.record.observations[i].value_mm, others[i], p.misreading_sd);
      }
    }
  }
  return judged;
}

/// Odds of an unrecorded move in one earlier interval.
double earlier_step_odds(const Learnt& learnt, std::size_t interval, const SeasonPrior& p) {
  double factor = 0;
  for (const Cell& cell : learnt.cells) {
    for (std::size_t model = 0; model < 2; ++model) {
      if (cell.weight[model] < least_cell) continue;
      const Evidence& evidence = model == 0 ? learnt.plain : *learnt.stepped;
      factor += cell.weight[model] * std::exp(evidence.log_step_factor(cell.lag, cell.response, interval));
    }
  }
  return odds(p.step_probability) * factor;
}

bool has_supposed_step(const VisitRecord& record, std::size_t interval) {
  return std::any_of(record.shifts.begin(), record.shifts.end(), [&](const Shift& shift) {
    return shift.order == std::numeric_limits<int>::min() && shift.date == record.days[interval + 1];
  });
}

}  // namespace

std::optional<Suspicion> gravest_suspicion(const Learnt& learnt, const SeasonPrior& p) {
  const std::vector<Observation>& observations = learnt.record.observations;
  if (observations.size() <= least_others) return std::nullopt;
  double gravest = 1;  // odds over the threshold's odds
  std::optional<Suspicion> suspicion;
  const std::vector<Judged> judged = judge_readings(learnt, p);
  for (std::size_t i = 0; i < judged.size(); ++i) {
    const double mean = judged[i].mean / judged[i].share;
    const double sd = std::sqrt(std::max(0.0, judged[i].square / judged[i].share - mean * mean));
    const double gravity = odds(p.misreading_probability) * judged[i].gross / odds(p.misreading_threshold);
    if (!(sd < vaguest_expectation_mm) || !(gravity > gravest)) continue;
    gravest = gravity;
    suspicion = Suspicion{.misread = Misreading{observations[i].reading, mean, sd}};
  }
  for (std::size_t interval = 0; interval + 2 < learnt.record.days.size(); ++interval) {
    if (has_supposed_step(learnt.record, interval)) continue;
    const double gravity = earlier_step_odds(learnt, interval, p) / odds(p.misreading_threshold);
    if (!(gravity > gravest)) continue;
    gravest = gravity;
    suspicion = Suspicion{.misread = std::nullopt, .interval = interval};
  }
  return suspicion;
}

void add_supposed_step(VisitRecord& record, Date day, const SeasonPrior& prior) {
  const auto place = std::lower_bound(record.days.begin(), record.days.end(), day);
  if (place == record.days.begin() || place == record.days.end()) return;
  const auto interval = static_cast<std::size_t>(place - record.days.begin()) - 1;
  record.shifts.push_back(unrecorded_step(record, interval, prior));
}

FlaggedReading flagged_reading(const HeightReading& reading, const Misreading& misread) {
  const double value = in_mm(reading.value);
  return {.date = reading.date,
          .order = reading.order,
          .kind = reading.kind,
          .value = reading.value,
          .expected = mm(misread.expected_mm),
          .expected_sd = mm(misread.expected_sd_mm),
          .why = "Read " + decimals(value, 2) + " mm where the other readings expect " +
                 decimals(misread.expected_mm, 2) + " mm, give or take " + decimals(misread.expected_sd_mm, 2) +
                 " mm: set aside. Read it again."};
}

}  // namespace tailblock

#include "bench/durations.h"

#include <array>
#include <cmath>

#include "quantity/named_values.h"

namespace tailblock {

DurationPrior duration_prior(std::string_view csv) {
  DurationPrior prior{};
  const std::array<NamedValue, 5> figures{{{"scatter", &prior.scatter, {0, 1.5, ""}},
                                           {"mean_worth", &prior.mean_worth, {0, 1000, ""}},
                                           {"scatter_worth", &prior.scatter_worth, {4, 1000, ""}},
                                           {"shared_by_instrument", &prior.shared_by_instrument, {0, 1, ""}},
                                           {"whole_day_allowance", &prior.whole_day_allowance, {0, 0.3, ""}}}};
  read_named_values({.name = "duration_prior.csv"}, csv, figures);
  return prior;
}

void describe(FieldVisitor& visit, FinishedWork& work) {
  visit.text({"kind", "the operation's kind, or its name"}, work.kind, 120);
  visit.number({"estimated_minutes", "what the plan gave it"}, work.estimated_minutes, {1, 6000, "minutes"});
  visit.number({"actual_minutes", "what it took"}, work.actual_minutes, {1, 60000, "minutes"});
}

LearntDuration learnt_duration(const std::vector<FinishedWork>& log, std::string_view kind,
                               const DurationPrior& prior) {
  int n = 0;
  double sum = 0, squares = 0;
  for (const FinishedWork& work : log) {
    if (work.kind != kind) continue;
    const double ratio = std::log(work.actual_minutes / work.estimated_minutes);
    ++n;
    sum += ratio;
    squares += ratio * ratio;
  }
  const double n0 = prior.mean_worth, v0 = prior.scatter_worth, s0 = prior.scatter;
  if (n == 0) return {.finished = 0, .mean = 0, .scale = s0, .freedom = v0};
  const double m = sum / n;
  const double spread = std::max(0.0, squares - n * m * m);  // (n - 1) s^2
  const double freedom = n - 1 + v0;
  const double variance = (spread + v0 * s0 * s0) / freedom;
  return {.finished = n, .mean = sum / (n + n0), .scale = std::sqrt(variance * (1 + 1 / (n + n0))), .freedom = freedom};
}

double times_estimate(const LearntDuration& learnt, double t) { return std::exp(learnt.mean + learnt.scale * t); }

double student_from_normal(double z, double freedom) {
  const double z2 = z * z;
  const double g1 = z * (z2 + 1) / 4;
  const double g2 = z * ((5 * z2 + 16) * z2 + 3) / 96;
  const double g3 = z * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384;
  const double g4 = z * ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945) / 92160;
  return z + (g1 + (g2 + (g3 + g4 / freedom) / freedom) / freedom) / freedom;
}

}  // namespace tailblock

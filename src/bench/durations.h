#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// What is taken for granted about durations: data/duration_prior.csv.
struct DurationPrior {
  double scatter, mean_worth, scatter_worth, shared_by_instrument, whole_day_allowance;
};

/// Reads data/duration_prior.csv.
/// @throws Refused naming the row.
[[nodiscard]] DurationPrior duration_prior(std::string_view csv);

/// One finished operation of the shop's log.
struct FinishedWork {
  std::string kind;
  double estimated_minutes = 30;
  double actual_minutes = 30;
};

void describe(FieldVisitor& visit, FinishedWork& work);

/// How long one kind of work takes against its estimate: ln(actual/estimate) is `mean` + `scale` times Student's t with
/// `freedom` degrees.
struct LearntDuration {
  int finished = 0;
  double mean = 0;
  double scale = 0;
  double freedom = 0;
};

/// What the log teaches of one kind, shrunk to the procedure's figures.
///
///     mean = n m / (n + n0)     variance = ((n - 1) s^2 + v0 s0^2) / (n - 1 + v0)
///     scale = sqrt(variance (1 + 1/(n + n0)))     freedom = n - 1 + v0
///
/// n, m, s count, mean and standard deviation of ln(actual/estimate); n0, v0, s0 from the prior. With nothing finished,
/// mean 0 and the prior's own scatter.
/// Source: log-normal durations shrunk to a prior, derived here (docs/models/promise.md).
[[nodiscard]] LearntDuration learnt_duration(const std::vector<FinishedWork>& log, std::string_view kind,
                                             const DurationPrior& prior);

/// How many times its estimate the work takes when `t` scales from the mean: exp(mean + scale t).
[[nodiscard]] double times_estimate(const LearntDuration& learnt, double t);

/// Student's t that is exceeded as seldom as the normal `z`: Cornish-Fisher expansion in 1/freedom, within 0.05 % of t
/// for freedom of 5 and more and |z| up to 2 (Abramowitz & Stegun 26.7.5, from memory).
[[nodiscard]] double student_from_normal(double z, double freedom);

}  // namespace tailblock

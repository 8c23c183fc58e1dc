#pragma once

#include "season/year.h"

namespace tailblock {

/// All six counts of days outside the limits at once. "Either" takes the two sides' weather as one, which it is, and
/// their levels as correlated. docs/models/year.md.
[[nodiscard]] DaysOutside days_outside(const YearPaths& paths, const ActionLimits& limits);

/// Expected moisture of the wood in percent under one hypothesis, day by day.
[[nodiscard]] std::vector<double> expected_moisture(const Hypothesis& hypothesis, Date today, const HomeAir& home,
                                                    Date first, int count);

}  // namespace tailblock

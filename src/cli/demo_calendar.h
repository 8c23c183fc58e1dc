#pragma once

#include "cli/demo_tables.h"

namespace tailblock {

/// The day of a visit, relative to today. The shop is shut on Sundays: a visit that would fall on one is moved to the
/// Saturday before.
[[nodiscard]] Date visit_day(const DemoWhen& when, Date today, int season_visit_least_days_ago);

/// Whether the wood in a home that is as its typical year says is in the driest, the middle or the dampest third of its
/// year's range on that day.
[[nodiscard]] DemoAir third_of_the_range(const HomeAir& typical, Date day);

}  // namespace tailblock

#pragma once

#include <optional>

#include "season/learning.h"

namespace tailblock {

/// The change between the last two visit days, split; absent when no side was read on both. docs/models/response.md.
[[nodiscard]] std::optional<ChangeShare> last_change(const Learnt& learnt, const SeasonPrior& prior,
                                                     Days weather_memory);

/// Which further reading would best tell whether something moved in the last interval, in one or two plain sentences:
/// a finer gauge today, a hygrometer log, another visit. Each is judged by how often it would find a hidden 0.5 mm.
[[nodiscard]] std::string better_reading(const Learnt& learnt, const SeasonPrior& prior, Days weather_memory);

/// How often an unrecorded move of `size_mm` on both sides would be found, when such a move can be estimated with the
/// standard deviation `sd_mm`. Everything taken as normal:
///
///     found when |estimate| > t,  t^2 = V (V + s^2)/s^2 [2 ln K + ln(1 + s^2/V)]
///
/// V = sd^2, s^2 the prior variance of a move common to both sides, K the odds of the threshold over the prior odds:
/// where the posterior odds pass the threshold. Derived here (docs/models/response.md).
[[nodiscard]] double detection_power(double size_mm, double sd_mm, const SeasonPrior& prior);

}  // namespace tailblock

#pragma once

#include <span>
#include <vector>

#include "season/year.h"
#include "setup/pooled_action.h"

namespace tailblock {

/// A stretch of the year in which the strings stand higher than now by so much at fret 12.
struct Raised {
  Stretch stretch;
  double bass_mm, treble_mm;
};

/// Days outside the limits with the strings raised part by part, each with its spread (season/outside.h).
[[nodiscard]] DaysOutside days_outside(const YearPaths& year, std::span<const Raised> parts,
                                       const ActionLimits& limits);

/// A figure of one side with one standard deviation.
struct WithSpread {
  double value, sd;
};

/// Mean action of a stretch, and what is not known of it: between the hypotheses and, in each, the level. The weather
/// of single days is left out, as it evens out over a stretch.
[[nodiscard]] WithSpread mean_action(const YearPaths& year, bool bass, Stretch stretch);

/// The action today in today's air under each path of the year at home, and, per path, what is not known of it even
/// when the year's level is: one standard deviation.
struct ActionToday {
  std::vector<double> bass_mm, treble_mm;
  std::vector<double> bass_open_mm, treble_open_mm;
};

/// Action today less the mean action of a stretch of the year that is served. Each hypothesis says how far today is
/// from that stretch; its level falls out, which is why a saddle is set by a reading and not by its height alone.
///
///     value = sum w_i (today_i - mean_i)      sd^2 = sum w_i [(today_i - mean_i - value)^2 + open_i^2]
[[nodiscard]] WithSpread today_over_mean(const YearPaths& year, bool bass, Stretch stretch, const ActionToday& today);

}  // namespace tailblock

#pragma once

#include <optional>

#include "setup/bridge_fit.h"
#include "setup/pooled_action.h"
#include "setup/saddle_limits.h"

namespace tailblock {

/// What is asked of one end of the saddle.
struct EndQuestion {
  double floor_mm, ceiling_mm, wanted_mm;  ///< of the action at fret 12
  double action_per_saddle;                ///< mm at fret 12 for 1 mm at the saddle
  double exposure_mm;                      ///< of the saddle fitted now
  double pull_to_usual;                    ///< weighted days a year for each mm outside the usual exposure
  ExposureBounds bounds;
};

struct SaddleQuestion {
  EndQuestion bass, treble;
};

/// Both ends through the same days.
struct EndActions {
  PooledAction bass, treble;
  EndActions(const YearPaths& year, Stretch stretch) : bass(year, true, stretch), treble(year, false, stretch) {}
};

/// Heights count in steps of `cut_precision` from the saddle fitted now: what is searched is what can be cut.
struct EndSteps {
  int bass = 0;
  int treble = 0;
  bool operator==(const EndSteps&) const = default;
};

/// By how much that raises the strings at fret 12.
[[nodiscard]] inline double raised_mm(const EndQuestion& end, int steps, const SaddleLimits& limits) {
  return steps * limits.cut_precision * end.action_per_saddle;
}

/// What a stretch of days costs at one end with the saddle raised by `steps`, in weighted days.
///
///     W_low B(floor - r) + W_high [N - B(ceiling - r)] + P N/365 [(mean + r - wanted)^2 + variance] + Q N/365 out
///
/// `out` is how far the exposure is outside its usual range. `Action` is anything that answers days(), mean_mm(),
/// variance_mm2(), days_under() and days_over(). Source: derived here; weights common practice, no source.
template <class Action>
[[nodiscard]] double end_cost(const Action& action, const EndQuestion& end, int steps, const SaddleLimits& limits) {
  const double up_mm = raised_mm(end, steps, limits);
  const double off_mm = action.mean_mm() + up_mm - end.wanted_mm;
  const double exposure_mm = end.exposure_mm + steps * limits.cut_precision;
  const double out_mm = exposure_mm < end.bounds.usual_least_mm
                            ? end.bounds.usual_least_mm - exposure_mm
                            : (exposure_mm > end.bounds.usual_most_mm ? exposure_mm - end.bounds.usual_most_mm : 0.0);
  const double years = action.days() / 365;
  return limits.weight_too_low * action.days_under(end.floor_mm - up_mm) +
         limits.weight_too_high * action.days_over(end.ceiling_mm - up_mm) +
         years * limits.pull_to_wanted * (off_mm * off_mm + action.variance_mm2()) + years * end.pull_to_usual * out_mm;
}

/// The steps that keep an end inside its bounds; `least` above `most` when there are none.
struct StepRange {
  int least, most;
};
[[nodiscard]] StepRange steps_within(const EndQuestion& end, const SaddleLimits& limits);

/// The cheapest height of one end inside its bounds; the saddle as it is where that costs hardly more (`least_gain`).
/// Absent when the bounds leave no height.
[[nodiscard]] std::optional<int> best_steps(const PooledAction& action, const EndQuestion& end,
                                            const SaddleLimits& limits);

/// The cheapest height of both ends; absent when the bounds leave one of them none.
[[nodiscard]] std::optional<EndSteps> best_heights(const EndActions& actions, const SaddleQuestion& question,
                                                   const SaddleLimits& limits);

/// What a saddle costs through its days, both ends.
[[nodiscard]] double saddle_cost(const EndActions& actions, const SaddleQuestion& question, EndSteps steps,
                                 const SaddleLimits& limits);

/// The saddle as it is, where its bounds allow that and the better heights would save less than a saddle must save
/// (`worth_one_saddle`); else those heights.
[[nodiscard]] EndSteps worth_cutting(const EndActions& actions, const SaddleQuestion& question, EndSteps better,
                                     const SaddleLimits& limits);

/// A saddle, the days that it is in, and the action on those days.
struct SaddleInPart {
  Stretch stretch;
  EndSteps steps;
  EndActions actions;
};

/// The year cut in two, and a saddle for each part.
struct TwoSaddles {
  SaddleInPart taller, lower;
};

/// The two dates, a whole number of weeks from the year's first day, and the four heights that cost least. Dates are
/// chosen with each week as one normal; heights then with every day. One of the two may be the saddle fitted now. Each
/// part lasts `season_least` at least. Absent when no height is left, the year is too short to be cut, or one saddle
/// does as well.
[[nodiscard]] std::optional<TwoSaddles> best_two_saddles(const YearPaths& year, const SaddleQuestion& question,
                                                         const SaddleLimits& limits);

}  // namespace tailblock

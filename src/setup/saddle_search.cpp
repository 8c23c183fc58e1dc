#include "setup/saddle_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace tailblock {
namespace {

constexpr int days_in_week = 7;
constexpr double huge = std::numeric_limits<double>::infinity();

/// Cost of every height in every week, summed up from the first week on, so that any run of weeks is one subtraction.
class WeeklyCosts {
 public:
  WeeklyCosts(const YearPaths& year, bool bass, const EndQuestion& end, const SaddleLimits& limits)
      : steps_(steps_within(end, limits)), width_(static_cast<std::size_t>(steps_.most - steps_.least + 1)) {
    sums_.assign(width_, 0.0);
    for (int from = 0; from < year.count; from += days_in_week) {
      const NormalDays week(year, bass, {from, std::min(from + days_in_week, year.count)});
      const std::size_t before = sums_.size() - width_;
      for (std::size_t k = 0; k < width_; ++k) {
        sums_.push_back(sums_[before + k] + end_cost(week, end, steps_.least + static_cast<int>(k), limits));
      }
    }
  }

  struct Best {
    double cost;
    int steps;
  };
  /// The cheapest height from week `from` to before week `until`, or, `others`, in all the other weeks.
  [[nodiscard]] Best best(int from, int until, bool others) const {
    const double* low = &sums_[static_cast<std::size_t>(from) * width_];
    const double* high = &sums_[static_cast<std::size_t>(until) * width_];
    const double* all = &sums_[sums_.size() - width_];
    Best best{huge, 0};
    for (std::size_t k = 0; k < width_; ++k) {
      const double inside = high[k] - low[k];
      const double cost = others ? all[k] - inside : inside;
      if (cost < best.cost) best = {cost, steps_.least + static_cast<int>(k)};
    }
    return best;
  }

 private:
  StepRange steps_;
  std::size_t width_;
  std::vector<double> sums_;
};

struct Split {
  int from_week, until_week;
  double cost;
};

Split cheapest_split(const WeeklyCosts& bass, const WeeklyCosts& treble, int weeks, int least_weeks) {
  Split best{0, 0, huge};
  for (int from = 0; from < weeks; ++from) {
    for (int until = from + least_weeks; until <= weeks && until - from <= weeks - least_weeks; ++until) {
      const double cost = bass.best(from, until, false).cost + bass.best(from, until, true).cost +
                          treble.best(from, until, false).cost + treble.best(from, until, true).cost;
      if (cost < best.cost) best = {from, until, cost};
    }
  }
  return best;
}

}  // namespace

StepRange steps_within(const EndQuestion& end, const SaddleLimits& limits) {
  constexpr double slack = 1e-6;  // a height exactly at a limit is inside it
  return {static_cast<int>(std::ceil((end.bounds.least_mm - end.exposure_mm) / limits.cut_precision - slack)),
          static_cast<int>(std::floor((end.bounds.most_mm - end.exposure_mm) / limits.cut_precision + slack))};
}

std::optional<int> best_steps(const PooledAction& action, const EndQuestion& end, const SaddleLimits& limits) {
  const StepRange range = steps_within(end, limits);
  std::optional<int> best;
  double least = huge;
  for (int steps = range.least; steps <= range.most; ++steps) {
    const double cost = end_cost(action, end, steps, limits);
    if (cost >= least) continue;
    least = cost;
    best = steps;
  }
  const bool may_stay = range.least <= 0 && 0 <= range.most;
  if (may_stay && end_cost(action, end, 0, limits) <= least + limits.least_gain) return 0;
  return best;
}

std::optional<EndSteps> best_heights(const EndActions& actions, const SaddleQuestion& question,
                                     const SaddleLimits& limits) {
  const auto bass = best_steps(actions.bass, question.bass, limits);
  const auto treble = best_steps(actions.treble, question.treble, limits);
  if (!bass || !treble) return std::nullopt;
  return EndSteps{*bass, *treble};
}

double saddle_cost(const EndActions& actions, const SaddleQuestion& question, EndSteps steps,
                   const SaddleLimits& limits) {
  return end_cost(actions.bass, question.bass, steps.bass, limits) +
         end_cost(actions.treble, question.treble, steps.treble, limits);
}

EndSteps worth_cutting(const EndActions& actions, const SaddleQuestion& question, EndSteps better,
                       const SaddleLimits& limits) {
  const auto may_stay = [&](const EndQuestion& end) {
    const StepRange range = steps_within(end, limits);
    return range.least <= 0 && 0 <= range.most;
  };
  if (!may_stay(question.bass) || !may_stay(question.treble)) return better;
  const double saved = saddle_cost(actions, question, {}, limits) - saddle_cost(actions, question, better, limits);
  return saved < limits.worth_one_saddle ? EndSteps{} : better;
}

std::optional<TwoSaddles> best_two_saddles(const YearPaths& year, const SaddleQuestion& question,
                                           const SaddleLimits& limits) {
  const auto empty = [](StepRange range) { return range.least > range.most; };
  if (empty(steps_within(question.bass, limits)) || empty(steps_within(question.treble, limits))) return std::nullopt;
  const int weeks = year.count / days_in_week;  // the odd day goes with the last week
  const int least_weeks = static_cast<int>(std::ceil(limits.season_least / days_in_week));
  if (weeks < 2 * least_weeks) return std::nullopt;

  const WeeklyCosts bass(year, true, question.bass, limits);
  const WeeklyCosts treble(year, false, question.treble, limits);
  const Split split = cheapest_split(bass, treble, weeks, least_weeks);
  const int from = split.from_week * days_in_week;
  const int until = split.until_week == weeks ? 0 : split.until_week * days_in_week;
  const Stretch inside{from, until == 0 ? year.count : until};
  const Stretch outside{inside.until % year.count, from};
  EndActions actions_inside(year, inside);
  EndActions actions_outside(year, outside);
  const auto heights = [&](const EndActions& actions) {
    return worth_cutting(actions, question, *best_heights(actions, question, limits), limits);
  };
  const EndSteps in = heights(actions_inside);
  const EndSteps out = heights(actions_outside);
  if (in == out) return std::nullopt;
  SaddleInPart first{inside, in, std::move(actions_inside)};
  SaddleInPart second{outside, out, std::move(actions_outside)};
  if (in.bass + in.treble >= out.bass + out.treble) return TwoSaddles{std::move(first), std::move(second)};
  return TwoSaddles{std::move(second), std::move(first)};
}

}  // namespace tailblock

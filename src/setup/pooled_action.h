#pragma once

#include <cstddef>
#include <vector>

#include "season/year.h"

namespace tailblock {

/// A stretch of the year, `from` to before `until`, counted from the year's first day. It may run over the end of the
/// year and on from its beginning: `from` >= `until`.
struct Stretch {
  int from;
  int until;
  bool operator==(const Stretch&) const = default;
};

/// Calls `visit` with the place of every day of the stretch in a year of `count` days.
template <class Visit>
void for_each_day(Stretch stretch, int count, Visit visit) {
  const auto part = [&](int from, int until) {
    for (int day = from; day < until; ++day) visit(static_cast<std::size_t>(day));
  };
  if (stretch.from < stretch.until) return part(stretch.from, stretch.until);
  part(0, stretch.until);
  part(stretch.from, count);
}

/// Expected days on which the action is under any height: every day under every hypothesis thrown into one heap.
///
///     B(z) = sum over hypotheses i and days t of  w_i Phi((z - a_it) / s_it)      s^2 = (loading level)^2 + weather^2
///
/// Raising the strings by r all through makes B(z) into B(z - r), so one heap answers for every saddle. Where the floor
/// moves with the relief a second heap holds the action less its rise: days under a floor are counted in that one, by
/// where the floor stands when it has not risen. The heap is kept on a grid of 0.01 mm, each normal shared between two
/// neighbouring bins and two neighbouring widths so that its mean and its variance stay exact; between grid points B
/// follows a cubic that never leaves its neighbours. Against the plain sum it is within 0.1 days a year for spreads of
/// 0.05 mm and more (tests/setup). Source: derived here.
class PooledAction {
 public:
  PooledAction(const YearPaths& year, bool bass, Stretch stretch);

  [[nodiscard]] double days() const { return days_; }
  [[nodiscard]] double mean_mm() const { return mean_mm_; }
  /// Within the year and between the hypotheses, the unknown level included.
  [[nodiscard]] double variance_mm2() const { return variance_mm2_; }
  [[nodiscard]] double days_under(double floor_mm) const {
    return over_floor_.under.empty() ? action_.days_under(floor_mm) : over_floor_.days_under(floor_mm);
  }
  [[nodiscard]] double days_over(double height_mm) const { return days_ - action_.days_under(height_mm); }

  struct Heap {
    double lowest_mm = 0, days = 0;
    std::vector<double> under;  ///< B at lowest + k grid steps
    [[nodiscard]] double days_under(double height_mm) const;
  };

 private:
  double days_ = 0;
  double mean_mm_ = 0;
  double variance_mm2_ = 0;
  Heap action_, over_floor_;  ///< the second empty where the floor stands still
};

/// A week or two as a single normal: good enough to choose dates with.
class NormalDays {
 public:
  NormalDays(const YearPaths& year, bool bass, Stretch stretch);

  [[nodiscard]] double days() const { return days_; }
  [[nodiscard]] double mean_mm() const { return mean_mm_; }
  [[nodiscard]] double variance_mm2() const { return variance_mm2_; }
  [[nodiscard]] double days_under(double floor_mm) const;
  [[nodiscard]] double days_over(double height_mm) const;

 private:
  double days_ = 0;
  double mean_mm_ = 0, variance_mm2_ = 0;
  double over_floor_mm_ = 0, over_floor_variance_mm2_ = 0;
};

}  // namespace tailblock

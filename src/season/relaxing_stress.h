#pragma once

#include <array>

namespace tailblock {

/// How a stress across the grain that wood's own shrinkage makes, against a restraint, fades again.
struct Relaxation {
  struct Branch {
    double share;  ///< of the elastic stress
    double days;   ///< in which it falls to 1/e in still air; 0: never
  };
  std::array<Branch, 3> branches;
  double per_percent;  ///< share lost for each percent of moisture that comes or goes
};

/// Nothing relaxes: stress is what a spring would have.
inline constexpr Relaxation no_relaxation{.branches = {{{1, 0}, {0, 0}, {0, 0}}}, .per_percent = 0};

/// Stress of fully held wood, as the percent of moisture whose sudden loss would make it: times the stress of one
/// percent it is megapascals. Positive is tension.
///
///     ds_k/dt = -g_k dM/dt - s_k (1/tau_k + m |dM/dt|)        s = s_1 + s_2 + s_3
///
/// Three Maxwell branches, all of which fade as well with every percent that comes or goes (mechano-sorption, linear in
/// the stress and the same in wetting and drying). From day to day M runs in straight lines, for which the step is
/// exact. Left out: stress that differs through the thickness, recovery of what has crept, yield.
/// Derived here; docs/models/crack-risk.md names what the numbers rest on.
class RelaxingStress {
 public:
  explicit RelaxingStress(const Relaxation& relaxation) : relaxation_(relaxation) {}

  /// One day in which the moisture changes by `change_percent`.
  void day(double change_percent);
  /// Time in still air.
  void rest(double days);
  [[nodiscard]] double percent() const { return stress_[0] + stress_[1] + stress_[2]; }

 private:
  Relaxation relaxation_;
  std::array<double, 3> stress_{};
};

}  // namespace tailblock

#pragma once

#include <vector>

/// Slow and obvious motions of a plucked string without frets, to judge the fast one by. SI throughout.
namespace tailblock::testing {

struct SlowString {
  double length = 0.645;
  double tension = 115.2;
  double kg_per_metre = 10.19e-3;
  double bending_stiffness = 9.586e-4;
  double loss_per_s = 0.7;
  double loss_m2_per_s = 4e-4;
  double pluck_from_stop = 0.525;
  double pluck_width = 0.002;
};

/// Per unit of pluck: deepest below the rest line when plucked away (`away`) and toward (`toward`).
struct Reach {
  double away;
  double toward;
};

/// What the shape at release is taken to be.
enum class Release {
  stiff_static,  ///< the static shape of a stiff string under a force over the width, 1 high at the pluck
  triangle       ///< the triangle of an ideal string, 1 high, only its partials weakened by the width
};

/// Every partial below `highest_hz` added up at every one of `samples_per_s` instants of 0.25 s.
[[nodiscard]] std::vector<Reach> added_up(const SlowString& string, const std::vector<double>& from_stop,
                                          Release release, double highest_hz, double samples_per_s);

/// The equation of motion stepped through 0.25 s (Runge-Kutta of fourth order) on a grid with differences of eighth
/// order: no partials, no sums.
[[nodiscard]] std::vector<Reach> stepped(const SlowString& string, const std::vector<double>& from_stop, double spacing,
                                         double steps_per_s);

}  // namespace tailblock::testing

#pragma once

#include <vector>

#include "strings/fretted_motion.h"

namespace tailblock {

/// One note's grid in space and time, and the step from one instant to the next:
///
///     u(n+1) = a0 u + a1 (u_left + u_right) + a2 (u_2left + u_2right) - u(n-1)
///
/// without losses. These are taken from both instants alike, every so many steps,
///
///     u <- u - M k (s0 u - s1 u_xx) = keep u + spread (u_left + u_right)
///
/// so that each partial is weakened by 1 - M k (s0 + s1 e), which is exp(-s M k) to second order, and its energy by the
/// square of that.
struct StringGrid {
  int intervals = 0;
  double h = 0;  ///< m
  double k = 0;  ///< s
  double a0 = 0, a1 = 0, a2 = 0;
  int steps_a_loss = 1;  ///< M
  double keep = 1, spread = 0;
  double height_per_impulse = 0;  ///< k^2/(m h): what a unit force at one point adds to its next height
};

/// The finest grid that is stable at so many steps a second.
///
///     h^2 >= [c^2 k^2 + sqrt(c^4 k^4 + 16 q^2 k^2)]/2,  c^2 = T/m,  q^2 = E I/m
///
/// Source: von Neumann analysis, as read in the design study's notes; derived again (docs/models/contact.md).
[[nodiscard]] StringGrid finest_grid(const SpeakingString& string, double steps_per_s);

/// What one taking of losses leaves of a partial whose second difference over itself is -e.
[[nodiscard]] double left_of_partial(const SpeakingString& string, const StringGrid& grid, double e);

/// How the pluck's force falls on the points of a grid: the overlap of its width with the hat over each point.
struct PointShare {
  std::size_t point = 0;
  double share = 0;
};
[[nodiscard]] std::vector<PointShare> pluck_shares(const StringGrid& grid, const PluckPlace& place);

/// What the heights of the last point and the last but one pull the bridge up with, N/m:
///
///     F = -T u_x + E I u_xxx at the saddle
struct BridgePull {
  double near = 0, far = 0;
};
[[nodiscard]] BridgePull bridge_pull(const SpeakingString& string, const StringGrid& grid);

/// The static shape of the string at the points of a grid, 0..intervals, under these shares of a force.
[[nodiscard]] std::vector<double> static_shape(const SpeakingString& string, const StringGrid& grid,
                                               const std::vector<PointShare>& shares, double force);

/// The heights one step before the release at which a string let go of the pluck's force moves as it should to second
/// order.
[[nodiscard]] std::vector<double> before_release(const SpeakingString& string, const StringGrid& grid,
                                                 const std::vector<PointShare>& shares, double force,
                                                 std::vector<double> shape);

}  // namespace tailblock

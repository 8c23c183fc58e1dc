#pragma once

#include <vector>

#include "strings/fretted_motion.h"

namespace tailblock {

/// One note's grid in space and time, and the update between two instants:
///
///     u(n+1) = a0 u + a1 (u_left + u_right) + a2 (u_2left + u_2right) + b0 u(n-1) + b1 (u_left + u_right)(n-1)
struct StringGrid {
  int intervals = 0;
  double h = 0;  ///< m
  double k = 0;  ///< s
  double a0 = 0, a1 = 0, a2 = 0, b0 = 0, b1 = 0;
  double height_per_impulse = 0;  ///< k^2/(m h (1 + s0 k)): what a unit force at one point adds to its next height
};

/// The finest grid that is stable at so many steps a second.
///
///     h^2 >= [g + sqrt(g^2 + 16 q^2 k^2)]/2,  g = c^2 k^2 + 4 s1 k,  c^2 = T/m,  q^2 = E I/m
///
/// Source: von Neumann analysis, as read in the design study's notes; derived again (docs/models/contact.md).
[[nodiscard]] StringGrid finest_grid(const SpeakingString& string, double steps_per_s);

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

/// The static shape of a held string at the points of a grid, 0..intervals, for a force spread over the pluck's width
/// and the height of the plucked point.
[[nodiscard]] std::vector<double> held_shape(const SpeakingString& string, const StringGrid& grid,
                                             const HeldPluck& pluck);

/// The heights one step before the release at which a string let go from rest moves as it should to second order.
[[nodiscard]] std::vector<double> before_release(const SpeakingString& string, const StringGrid& grid,
                                                 const std::vector<double>& shape);

}  // namespace tailblock

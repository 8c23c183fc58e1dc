#pragma once

namespace tailblock {

/// One fret in one step. Depths are of the string below the fret's top.
struct FretMeeting {
  double depth_before = 0;      ///< at the instant before this one
  double depth_free = 0;        ///< at the next instant if the fret did not push
  double height_per_force = 0;  ///< how much a unit force during this step lifts the string over the fret
};

/// How hard the fret pushes during one step, N.
///
///     F = [V(y) - V(y_before)]/(y - y_before),  V(y) = K [y]^2.5/2.5,  y = y_free - F height_per_force
///
/// y depth at the next instant, [y] zero where negative. V grows faster and faster, so the right side less the left is
/// an increasing and convex function of y: Newton's steps from y_free come down to its one root and never pass it. F is
/// never negative, and what it takes from the string's energy is exactly what V gains.
/// Source: discrete gradient, as in the design studies; derived here (docs/models/contact.md).
[[nodiscard]] double contact_force(const FretMeeting& meeting);

/// V, J.
[[nodiscard]] double contact_energy(double depth);

}  // namespace tailblock

#pragma once

#include "strings/string_line.h"

namespace tailblock {

/// A neck whose nut slots, and a saddle whose top, are held where they are over the fret plane.
struct HeldSetUp {
  NeckLine neck;
  StringAction action;  ///< by saddle_over_frets
};

/// The set-up with both string ends held, from what was measured.
/// @throws Refused as string_ends.
[[nodiscard]] HeldSetUp held_set_up(const NeckLine& neck, const StringAction& action);

/// The same strings after the rod has changed the relief: the tangent at the body joint is held, the neck bows evenly
/// from the joint to the nut and carries the nut; the saddle and the frets on the body stay with the body.
///
///     c = 4 dR/(x_j - x_1)^2
///     nut rises c x_1 x_j,  saddle rises c (x_j - x_1)(x_s - x_j),  crown n beyond the joint c (x_j - x_1)(x_n - x_j)
///
/// Heights are over the fret plane, which turns with fret 1. Fret 12 then moves by relief_effect(...).at_held_joint.
/// A real neck does not bow evenly.
///
/// Source: derived here (docs/models/string-line.md).
[[nodiscard]] HeldSetUp with_rod_turned(const HeldSetUp& before, Length relief_change);

}  // namespace tailblock

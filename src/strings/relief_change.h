#pragma once

#include <span>
#include <vector>

#include "strings/clearance.h"
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

/// The same strings after rod, heat or season has changed the relief: the body turns against the neck and takes saddle,
/// bridge and the frets on it along; the neck bows evenly and carries the nut.
///
///     nut rises 4 dR x_1 x_j/(x_j - x_1)^2,  saddle rises t (x_s - x_j),  crown n beyond the joint t (x_n - x_j)
///
/// t is the turn that makes fret 12 rise by `action12_per_relief` dR at the middle of the neck; with the tangent at the
/// joint held it is 4 dR/(x_j - x_1) and that figure relief_effect(...).at_held_joint of a mm. Heights are over the
/// fret plane, which turns with fret 1.
///
/// Source: derived here (docs/models/string-line.md).
[[nodiscard]] HeldSetUp with_relief_changed(const HeldSetUp& before, Length relief_change, double action12_per_relief);

/// The least clean action with each of these reliefs: the body turned and the nut carried with the tangent at the joint
/// held.
struct CleanAtRelief {
  Length relief;
  OuterHeights outer;
};
/// @throws Refused as least_clean_action.
[[nodiscard]] std::vector<CleanAtRelief> least_clean_by_relief(const ClearanceRequest& request,
                                                               const UnitEnvelopes& envelopes,
                                                               std::span<const Length> reliefs);

}  // namespace tailblock

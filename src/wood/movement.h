#pragma once

#include "quantity/length.h"
#include "quantity/physical.h"
#include "wood/species.h"

namespace tailblock {

/// How much a plate wants to move across its grain, as strain per percent of moisture.
///
///     C(a) = C_R cos^2 a + C_T sin^2 a        a the angle of the rings to the thickness: 0 quartersawn, 90 flat-sawn
///
/// Left out: the shear that comes with a slanting cut, hysteresis, and anything that holds the wood. The line holds
/// from 6 to 14 % of moisture and is continued beyond. Derived here (rotation of strain, docs/models/moisture.md); C_R
/// and C_T carry their own standing in the table of woods.
/// @throws Refused naming `ring_angle_deg` outside 0..90.
[[nodiscard]] double movement_per_percent(const Species& wood, Angle ring_angle);

/// A change of moisture, 0..25 % both.
struct MoistureSpan {
  Moisture from;
  Moisture to;
};

/// By how much a free plate grows (positive) or shrinks across its grain. Valid and left out as above.
/// @throws Refused naming `from_percent` or `to_percent` outside 0..25 %.
[[nodiscard]] Length width_change(const Species& wood, Angle ring_angle, Length width, const MoistureSpan& change);

/// Strain per percent of moisture near 10 % from the whole shrinkage S, green to oven-dry, in percent.
///
///     C = 1/(3000/S - 20)        fibre saturation at 30 %
///
/// Derived here from the Wood Handbook's dD = D (M_f - M_i)/(3000/S - 30 + M_i) (from memory) at M_i = 10 %.
/// @throws Refused naming `shrinkage_percent` outside 0.1..20 %.
[[nodiscard]] double movement_from_shrinkage(double shrinkage_percent);

}  // namespace tailblock

#pragma once

#include <string>

#include "quantity/fields.h"

namespace tailblock {

struct SpeciesTable;

/// The box and neck behind the top, as far as they move the strings.
struct NeckAndBack {
  Length scale_length = mm(645);
  int body_joint_fret = 14;
  Length block_depth = mm(95);  ///< of the neck block, top to back
  Length back_arch_radius = mm(4600);
  std::string back_species = "East Indian rosewood";
};
void describe(FieldVisitor&, NeckAndBack&);

/// Change of moisture, percent, of what moves apart.
struct MoistureChange {
  double top = 0, braces = 0, bridge = 0, back = 0;
};
void describe(FieldVisitor&, MoistureChange&);

/// What the neck and back are told of the top.
struct TopShrinkage {
  Length top_length;                 ///< neck edge to tail
  double top_along_per_percent = 0;  ///< strain
  double top_across_per_percent = 0;
  Length sink_per_percent;  ///< of the saddle, for one percent drier in top and braces; positive sinks
};

/// By how much the action at fret 12 changes when the neck turns about the body joint by one radian.
///
///     (L - x_j)/2       x_j the joint from the nut: 143.6 mm for 645 mm and fret 14
///
/// Source: geometry, derived here.
[[nodiscard]] Length action12_per_radian(const NeckAndBack& body);

/// How far the neck turns; positive lifts the nut end and raises the action.
///
///     turn = (b - t)/(2 H)     t = l C_t dM_top    b = l C_b dM_back + (16/3) s d/l
///
/// t, b how much longer top and back become along the body; half of each moves the block. l length, H block depth, C
/// strain along the grain, s = l^2/(8 R) the back's rise and d how far it sinks: taken to be as the top does, by its
/// own movement across the grain. The sides' own movement, their drawing in, the neck's relief and the slow turn of the
/// block under the strings are left out. A judgement of size, no more: its own uncertainty is as large as itself.
/// Source: derived here (docs/models/plate.md).
/// @throws Refused when the back's wood is not in the table.
[[nodiscard]] Angle neck_turn(const NeckAndBack& body, const TopShrinkage& top, const MoistureChange& change,
                              const SpeciesTable& species);

}  // namespace tailblock

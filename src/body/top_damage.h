#pragma once

#include <string>
#include <vector>

#include "body/triangle_mesh.h"
#include "quantity/fields.h"

/// What has happened to a top since it was built.
namespace tailblock {

enum class BraceEnd { first, second };

/// A stretch of a brace off the top. A loose stretch carries nothing: what little a free piece between two glued ones
/// still does is left out, so that the loss is never understated.
struct LooseBrace {
  std::string brace;
  BraceEnd end = BraceEnd::second;
  Length from_end{};  ///< where the looseness begins; 0 at the very end
  Length length{};
};
void describe(FieldVisitor&, LooseBrace&);

/// A patch glued across a crack.
struct Cleat {
  Length along;  ///< its middle, from the crack's first end
  Length length;
};
void describe(FieldVisitor&, Cleat&);

/// A crack right through the top, from edge to edge of the wood only: braces, bridge and cleats that cross it hold it.
struct Crack {
  Length from_x, from_y, to_x, to_y;
  std::vector<Cleat> cleats{};
};
void describe(FieldVisitor&, Crack&);

/// A measured thickness of the top.
struct ThicknessReading {
  Length x, y, thickness;
};
void describe(FieldVisitor&, ThicknessReading&);

struct TopDamage {
  std::vector<LooseBrace> loose_braces{};
  std::vector<Crack> cracks{};
  std::vector<ThicknessReading> thickness{};
  double bridge_plate_worn = 0;  ///< share of its thickness gone along the pin holes; 1 is worn through
  Length bridge_lifted{};        ///< from the back edge of the bridge, off the top
};
void describe(FieldVisitor&, TopDamage&);

/// The top's thickness at a place, mm: the readings weighted with the inverse square of their distance, any within 5 mm
/// about equally; without readings `otherwise`.
[[nodiscard]] double thickness_at(PlanePoint, const std::vector<ThicknessReading>& readings, double otherwise);

}  // namespace tailblock

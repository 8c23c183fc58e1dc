#pragma once

#include <vector>

#include "body/plate.h"

/// A calculated top as it is drawn: the same nodes for the sound and the damaged one, so that a difference can be taken
/// place by place.
namespace tailblock {

/// Where it lies. Triangles are three nodes each, one after the other.
struct TopShape {
  std::vector<double> x_mm, y_mm;
  std::vector<double> corners;
};
void describe(FieldVisitor&, TopShape&);

/// The greatest pull across the grain, and where; strings and moisture together.
struct GreatestAcross {
  double mpa = 0;
  Length x, y;
  bool inner = false;  ///< in the face towards the braces
};
void describe(FieldVisitor&, GreatestAcross&);

/// One state of a top: the numbers, and what is drawn, one value a node.
struct TopState {
  PlateResult numbers;  ///< without its lists
  std::vector<double> strings_height_mm, moisture_height_mm;
  std::vector<double> across_mpa;  ///< of the face that is pulled more
  GreatestAcross greatest_across;
};
void describe(FieldVisitor&, TopState&);

struct TopView {
  TopShape shape;
  TopState state;
};

/// Stress is the mean of the triangles round a node, weighted by their area. The greatest is taken where the mesh can
/// tell it: off bridge and bridge plate, and 12 mm from the hole's edge and from the rim, where it never converges.
/// `with_fields` must have been asked.
[[nodiscard]] TopView top_view(PlateResult result);

/// A top of the same lines on the nodes of another: where a crack parts the one and not the other, both of its edges
/// stand where the whole wood does.
[[nodiscard]] TopState state_on(const TopShape& shape, TopView view);

}  // namespace tailblock

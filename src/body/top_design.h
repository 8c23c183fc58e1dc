#pragma once

#include <optional>
#include <string>
#include <vector>

#include "body/body_size.h"
#include "quantity/fields.h"

/// A braced top as drawn. In the plane, x runs from the neck edge of the top along the centre line to the tail, y
/// across, treble side positive.
namespace tailblock {

struct OutlinePoint {
  Length x, half_width;
};
void describe(FieldVisitor&, OutlinePoint&);

/// Height of a brace at a place along it; straight between two of them, so that scallops and tapered ends are drawn.
struct BraceHeight {
  double share = 0;  ///< of the brace's length, from its first end
  Length height;
};
void describe(FieldVisitor&, BraceHeight&);

/// A stretch of a brace that is glued to the top.
struct GluedStretch {
  double from_share = 0, to_share = 1;
};
void describe(FieldVisitor&, GluedStretch&);

/// A straight brace under the top. What lies outside the outline is cut away, so that a brace to the rim may be drawn
/// longer.
struct Brace {
  std::string name;
  Length from_x, from_y, to_x, to_y;
  Length width = mm(8);
  std::vector<BraceHeight> heights;
  std::string species = "Sitka spruce";
  std::vector<GluedStretch> glued;  ///< empty: all along
};
void describe(FieldVisitor&, Brace&);

struct Soundhole {
  Length centre_x, radius;
  Length ring_width, ring_thickness;  ///< reinforcement glued under the top round the hole; 0: none
  std::string ring_species = "Sitka spruce";
};
void describe(FieldVisitor&, Soundhole&);

/// A flat piece across the top: a bridge on it or a bridge plate under it. Its grain runs across the top.
struct CrossPiece {
  Length front_x;    ///< its edge towards the neck
  Length depth;      ///< along the strings
  Length span;       ///< across
  Length thickness;  ///< 0: there is none
  std::string species;
};
void describe(FieldVisitor&, CrossPiece&);

struct BridgeDesign {
  CrossPiece body;
  Length saddle_x, saddle_length;
};
void describe(FieldVisitor&, BridgeDesign&);

/// What sides, linings and end blocks do at the edge of the top, per length of edge.
struct RimStiffness {
  double outward_n_mm2 = 0;  ///< in the plane, across the edge
  double along_n_mm2 = 0;    ///< in the plane, along the edge
  double up_n_mm2 = 0;       ///< out of the plane
  double slope_n = 0;        ///< moment per length for each radian of slope across the edge
  Length block_half_width;   ///< of the neck and tail blocks
  double block_in_plane_n_mm2 = 0, block_up_n_mm2 = 0, block_slope_n = 0;  ///< the same at the blocks
};
void describe(FieldVisitor&, RimStiffness&);

/// Everything the plate model knows of a top.
struct TopDesign {
  std::vector<OutlinePoint> outline;  ///< one half, neck edge to tail, on the centre line at both ends
  Length thickness = mm(2.8);
  std::string species = "Sitka spruce";
  Angle ring_angle;                   ///< 0 quartersawn, 90 flat-sawn
  std::optional<Length> arch_radius;  ///< absent: flat
  std::vector<Brace> braces;
  Soundhole soundhole;
  BridgeDesign bridge;
  CrossPiece bridge_plate;
  RimStiffness rim;
};
void describe(FieldVisitor&, TopDesign&);

/// The least a brace can be named by its place.
[[nodiscard]] const Brace& brace_named(const TopDesign& design, std::string_view name);

}  // namespace tailblock

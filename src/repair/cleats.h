#pragma once

#include <optional>
#include <string>
#include <vector>

#include "body/plate.h"
#include "quantity/fields.h"
#include "repair/repair_figures.h"

namespace tailblock {

/// Which plate the crack is in. The bracing of the top is known; that of the back is drawn by hand.
enum class CrackedPlate { top, back };

/// Something glued under the plate that a cleat must stay clear of, as a straight strip.
struct HoldingStrip {
  std::string name;
  Length from_x, from_y, to_x, to_y;
  Length width = mm(10);
};
void describe(FieldVisitor&, HoldingStrip&);

struct CleatsRequest {
  CrackedPlate plate = CrackedPlate::top;
  WhichTop top;                           ///< outline, bracing and soundhole
  Length from_x, from_y, to_x, to_y;      ///< of the crack, from the neck edge; treble side positive
  std::optional<Length> plate_thickness;  ///< beside the crack; absent: as built, and said so
  std::optional<Length> plate_thickness_sd;
  std::vector<HoldingStrip> braces;  ///< beside those of the top: all of them for a back
  bool glued_before = false;         ///< then a short crack gets cleats too
  std::string wood = "spruce";       ///< of the cleats
};
void describe(FieldVisitor&, CleatsRequest&);

/// One cleat where it goes.
struct CleatShown {
  Length along;  ///< its middle, from the crack's first end
  Length x, y;
  Length reach;  ///< from the edge of the soundhole
  bool within_reach = true;
};
void describe(FieldVisitor&, CleatShown&);

struct CleatsResult {
  bool called_for = false;
  std::string words;
  Length crack_length;
  std::vector<CleatShown> cleats;
  Length along_crack, across_crack, thickness;  ///< of each; its grain runs across the crack
  Angle grain;                                  ///< of the cleats, from the centre line
  Length longest_without_hold;                  ///< of crack, between cleats, braces and its ends
  Length strip_length, strip_width;             ///< to cut them from, grain along the strip
  std::vector<std::string> held_by;             ///< braces and plates that cross the crack
  std::vector<std::string> cautions;
  Crack as_damage;  ///< for the model `plate`
};
void describe(FieldVisitor&, CleatsResult&);

/// Where cleats go along a crack, how thick, and what to cut.
///
///     thickness = min(share x (plate - its sd), most)        never thicker than the plate; thinner than least: cloth
///     between two holds g apart:  n = ceil(g/spacing) - 1, evenly;  an open end counts as held by a cleat near it
///
/// Each is moved to the nearest place where it lies clear of braces, bridge, bridge plate, soundhole and rim; where
/// there is none within half a spacing it is left out, since what is in the way holds the crack. Valid for straight
/// cracks of 5..600 mm. Left out: whether the plate model calls for more; what a cleat itself stiffens. Source: common
/// practice, no source (data/repair_figures.csv); the trade disagrees on cleats at all.
/// @throws Refused naming the field outside the valid range, or a crack that leaves the plate.
[[nodiscard]] CleatsResult cleats(const CleatsRequest& request, const TopDesignTable& designs,
                                  const RepairFigures& figures);

}  // namespace tailblock

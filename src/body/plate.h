#pragma once

#include <optional>
#include <string>
#include <vector>

#include "body/neck_and_back.h"
#include "body/top_damage.h"
#include "body/top_design.h"

/// The braced top under its strings and through the seasons. Heights are out of the top, outward positive; turns of the
/// bridge are positive when its top leans towards the neck.
namespace tailblock {

struct PlateFigures;
struct SpeciesTable;
struct TopDesignTable;

/// What the strings do to the bridge.
struct StringLoad {
  Force pull = newtons(715);        ///< of all strings together, from `tension`
  Length height_over_top = mm(13);  ///< of the strings at the saddle
};
void describe(FieldVisitor&, StringLoad&);

/// Which top: one of the usual ones, changed where something is known, or one drawn whole.
struct WhichTop {
  BodySize body_size = BodySize::mid_size;
  std::string bracing = "x_scalloped";  ///< a pattern of data/top_braces.csv
  std::optional<Length> thickness{};
  std::optional<std::string> species{};
  std::optional<Angle> ring_angle{};
  std::optional<Length> arch_radius{};
  std::optional<TopDesign> drawn{};  ///< replaces all of the above
};
void describe(FieldVisitor&, WhichTop&);

struct PlateRequest {
  WhichTop top;
  TopDamage damage;
  StringLoad strings;
  MoistureChange moisture;
  std::optional<NeckAndBack> behind;  ///< absent: as usual for the body size
  Length mesh = mm(8);
  bool with_fields = false;
};
void describe(FieldVisitor&, PlateRequest&);

/// What decides, under the strings alone.
struct UnderStrings {
  Angle bridge_rotation;                                        ///< at once, on a new top; calibrated against solids
  Angle bridge_rotation_years_low, bridge_rotation_years_high;  ///< after years at pitch, creep included
  Length belly;                                                 ///< highest rise behind the saddle
  Length dip;                                                   ///< deepest sinking in front of it, negative
  Length saddle_rise;
  double stiffness_n_per_mm = 0;  ///< at the saddle, outward
};
void describe(FieldVisitor&, UnderStrings&);

/// What the change of moisture does, and to the action.
struct WithMoisture {
  Length saddle_rise, saddle_rise_bass, saddle_rise_treble;  ///< the top alone; negative sinks
  Angle bridge_rotation;
  Length greatest_move;                              ///< of any place of the top, signed
  Length action12_from_top;                          ///< half of the saddle's rise
  Length action12_from_thickness;                    ///< bridge and top shrink in height
  Length action12_from_neck;                         ///< the block turns as top and back move: a judgement of size
  Length action12_change;                            ///< all three
  Length action12_change_low, action12_change_high;  ///< 90 %, everything unknown included
  double stress_across_p95_mpa = 0;  ///< 95 % of the top stays below, middle of its thickness; nothing relaxed
};
void describe(FieldVisitor&, WithMoisture&);

/// Which part carries the strings' load.
struct PartEnergy {
  std::string part;  ///< top, bridge, bridge plate, hole reinforcement, rim, or a brace's name
  double energy_mj = 0;
  double share = 0;
};
void describe(FieldVisitor&, PartEnergy&);

/// Pictures. Lists run over nodes or over triangles.
struct PlateFields {
  std::vector<double> x_mm, y_mm;  ///< nodes
  std::vector<double> strings_height_mm, moisture_height_mm;
  std::vector<double> strings_slope_deg, moisture_slope_deg;      ///< along the strings; positive leans to the neck
  std::vector<double> first_corner, second_corner, third_corner;  ///< triangles: their nodes, from 0
  /// Stress of both load cases together, per triangle, along and across the grain, at the outer and the inner face.
  std::vector<double> outer_along_mpa, outer_across_mpa, inner_along_mpa, inner_across_mpa;
};
void describe(FieldVisitor&, PlateFields&);

struct PlateResult {
  UnderStrings strings;
  WithMoisture moisture;
  std::vector<PartEnergy> carries;  ///< under the strings, the greatest first
  int nodes = 0, triangles = 0, unknowns = 0;
  double worst_triangle = 1;  ///< 1 equilateral
  TopDesign design;           ///< the top that was calculated
  std::vector<std::string> cautions;
  std::optional<PlateFields> fields;
};
void describe(FieldVisitor&, PlateResult&);

struct PlateTables {
  const SpeciesTable* species;
  const TopDesignTable* designs;
  const PlateFigures* figures;
};

/// @throws Refused naming what is not in a table.
[[nodiscard]] TopDesign design_of(const WhichTop& which, const TopDesignTable& designs);

/// How far a top moves under its strings and with its moisture, how stiff it is at the saddle, and which part carries
/// the load. Formulation and validity: docs/models/plate.md.
///
/// Orthotropic plate on eccentric ribs that shear, elastic rim, shallow arch; linear, small deflections.
/// Left out: buckling, contact of a loose brace with the top, moisture gradients, mechano-sorptive creep, the tongue.
/// Stiffness is good to about 10 %, differences between tops to a few percent, absolute seasonal movement to a factor
/// of about two until readings sharpen it.
/// @throws Refused naming the field outside its range, or the deflection a linear model does not answer for.
[[nodiscard]] PlateResult plate(const PlateRequest& request, const PlateTables& tables);

}  // namespace tailblock

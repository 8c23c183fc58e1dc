#include "body/neck_and_back.h"

#include <cmath>

#include "strings/string_line.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr Need free_to_leave_out = Need::has_default;
constexpr Range changes{-8, 8, "percent"};

}  // namespace

Length action12_per_radian(const NeckAndBack& body) {
  return 0.5 * (body.scale_length - fret_from_nut(body.scale_length, body.body_joint_fret));
}

Angle neck_turn(const NeckAndBack& body, const TopShrinkage& top, const MoistureChange& change,
                const SpeciesTable& species) {
  const Species& back = species.named(body.back_species);
  const double l = in_mm(top.top_length), rise = l * l / (8 * in_mm(body.back_arch_radius));
  const double top_longer = l * top.top_along_per_percent * change.top;
  const double back_sinks =
      -in_mm(top.sink_per_percent) * change.back * back.radial_per_percent / top.top_across_per_percent;
  const double back_longer = l * back.longitudinal_per_percent * change.back + 16.0 / 3 * rise * back_sinks / l;
  return radians((back_longer - top_longer) / (2 * in_mm(body.block_depth)));
}

void describe(FieldVisitor& visit, NeckAndBack& body) {
  visit.length({"scale_length_mm", "twice nut to fret 12", free_to_leave_out}, body.scale_length, {300, 1000, "mm"});
  visit.integer({"body_joint_fret", "fret at the body joint", free_to_leave_out}, body.body_joint_fret, {9, 18, ""});
  visit.length({"block_depth_mm", "neck block, top to back", free_to_leave_out}, body.block_depth, {40, 200, "mm"});
  visit.length({"back_arch_radius_mm", "of the back's dome", free_to_leave_out}, body.back_arch_radius,
               {1500, 50000, "mm"});
  visit.text({"back_species", "wood of the back", free_to_leave_out}, body.back_species, 60);
}

void describe(FieldVisitor& visit, MoistureChange& change) {
  visit.number({"top_percent", "change of the top's moisture; negative dries", free_to_leave_out}, change.top, changes);
  visit.number({"braces_percent", "of braces, bridge plate and hole reinforcement", free_to_leave_out}, change.braces,
               changes);
  visit.number({"bridge_percent", "of the bridge", free_to_leave_out}, change.bridge, changes);
  visit.number({"back_percent", "of the back", free_to_leave_out}, change.back, changes);
}

}  // namespace tailblock

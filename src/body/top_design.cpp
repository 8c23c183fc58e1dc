#include "body/top_design.h"

#include <algorithm>

namespace tailblock {
namespace {

constexpr Need free_to_leave_out = Need::has_default;
constexpr std::size_t name_bytes = 60;
constexpr Range places{-600, 1200, "mm"};
constexpr Range shares{0, 1, ""};

}  // namespace

void describe(FieldVisitor& visit, OutlinePoint& point) {
  visit.length({"x_mm", "from the neck edge, along the centre line"}, point.x, {0, 700, "mm"});
  visit.length({"half_width_mm", "from the centre line to the edge"}, point.half_width, {0, 300, "mm"});
}

void describe(FieldVisitor& visit, BraceHeight& station) {
  visit.number({"share", "how far along the brace, 0 its first end, 1 its second"}, station.share, shares);
  visit.length({"height_mm", "of the brace there"}, station.height, {0.5, 30, "mm"});
}

void describe(FieldVisitor& visit, GluedStretch& stretch) {
  visit.number({"from_share", "where the glue begins, in shares of the brace"}, stretch.from_share, shares);
  visit.number({"to_share", "where it ends"}, stretch.to_share, shares);
}

void describe(FieldVisitor& visit, Brace& brace) {
  visit.text({"name", "what the brace is called"}, brace.name, name_bytes);
  visit.length({"from_x_mm", "first end, from the neck edge"}, brace.from_x, places);
  visit.length({"from_y_mm", "first end, from the centre line; treble positive"}, brace.from_y, places);
  visit.length({"to_x_mm", "second end"}, brace.to_x, places);
  visit.length({"to_y_mm", "second end"}, brace.to_y, places);
  visit.length({"width_mm", "of the brace", free_to_leave_out}, brace.width, {2, 40, "mm"});
  list(visit, {"heights", "along the brace; straight between them"}, brace.heights, {1, 20});
  visit.text({"species", "its wood", free_to_leave_out}, brace.species, name_bytes);
  list(visit, {"glued", "the stretches that hold; none: all along", free_to_leave_out}, brace.glued, {0, 10});
}

void describe(FieldVisitor& visit, Soundhole& hole) {
  visit.length({"centre_x_mm", "from the neck edge"}, hole.centre_x, {20, 500, "mm"});
  visit.length({"radius_mm", "of the hole"}, hole.radius, {10, 90, "mm"});
  visit.length({"ring_width_mm", "reinforcement round it, under the top", free_to_leave_out}, hole.ring_width,
               {0, 60, "mm"});
  visit.length({"ring_thickness_mm", "0: none", free_to_leave_out}, hole.ring_thickness, {0, 6, "mm"});
  visit.text({"ring_species", "its wood", free_to_leave_out}, hole.ring_species, name_bytes);
}

void describe(FieldVisitor& visit, CrossPiece& piece) {
  visit.length({"front_x_mm", "its edge towards the neck, from the neck edge of the top"}, piece.front_x,
               {20, 600, "mm"});
  visit.length({"depth_mm", "along the strings"}, piece.depth, {10, 120, "mm"});
  visit.length({"span_mm", "across"}, piece.span, {40, 260, "mm"});
  visit.length({"thickness_mm", "0: there is none"}, piece.thickness, {0, 15, "mm"});
  visit.text({"species", "its wood, grain across the top"}, piece.species, name_bytes);
}

void describe(FieldVisitor& visit, BridgeDesign& bridge) {
  object(visit, {"body", "the bridge itself"}, bridge.body);
  visit.length({"saddle_x_mm", "from the neck edge"}, bridge.saddle_x, {20, 600, "mm"});
  visit.length({"saddle_length_mm", "across"}, bridge.saddle_length, {30, 200, "mm"});
}

void describe(FieldVisitor& visit, RimStiffness& rim) {
  const Range in_plane{1e-4, 1e7, "N/mm2"}, slopes{0, 1e7, "N"};
  visit.number({"outward_n_mm2", "per length, in the plane, across the edge"}, rim.outward_n_mm2, in_plane);
  visit.number({"along_n_mm2", "in the plane, along the edge"}, rim.along_n_mm2, in_plane);
  visit.number({"up_n_mm2", "out of the plane"}, rim.up_n_mm2, {0.1, 1e7, "N/mm2"});
  visit.number({"slope_n", "moment per length for each radian of slope across the edge"}, rim.slope_n, slopes);
  visit.length({"block_half_width_mm", "of neck and tail block"}, rim.block_half_width, {0, 120, "mm"});
  visit.number({"block_in_plane_n_mm2", "at the blocks, in the plane"}, rim.block_in_plane_n_mm2, {0, 1e7, "N/mm2"});
  visit.number({"block_up_n_mm2", "at the blocks, out of the plane"}, rim.block_up_n_mm2, {0, 1e7, "N/mm2"});
  visit.number({"block_slope_n", "at the blocks, slope"}, rim.block_slope_n, slopes);
}

void describe(FieldVisitor& visit, TopDesign& design) {
  list(visit, {"outline", "one half from the neck edge to the tail, both on the centre line"}, design.outline, {5, 60});
  visit.length({"thickness_mm", "of the top"}, design.thickness, {1, 6, "mm"});
  visit.text({"species", "wood of the top", free_to_leave_out}, design.species, name_bytes);
  angle(visit, {"ring_angle_deg", "0 quartersawn, 90 flat-sawn", free_to_leave_out}, design.ring_angle,
        {0, 90, "degrees"});
  maybe(visit, {"arch_radius_mm", "of the dome; absent: flat"}, design.arch_radius,
        [&](const Field& field, Length& value) {
          visit.length(field, value, {1500, 50000, "mm"});
        });
  list(visit, {"braces", "under the top"}, design.braces, {0, 40});
  object(visit, {"soundhole", "and its reinforcement"}, design.soundhole);
  object(visit, {"bridge", "on the top"}, design.bridge);
  object(visit, {"bridge_plate", "under the bridge"}, design.bridge_plate);
  object(visit, {"rim", "what holds the edge"}, design.rim);
}

const Brace& brace_named(const TopDesign& design, std::string_view name) {
  const auto found = std::ranges::find(design.braces, name, &Brace::name);
  if (found != design.braces.end()) return *found;
  std::string known;
  for (const Brace& brace : design.braces) known += (known.empty() ? "" : ", ") + brace.name;
  throw Refused("brace: \"" + std::string(name) + "\" is not one of: " + known);
}

}  // namespace tailblock

#include "body/plate.h"

namespace tailblock {
namespace {

constexpr Need free_to_leave_out = Need::has_default;
constexpr Range any{-1e9, 1e9, "mm"};
constexpr Range numbers_any{-1e9, 1e9, ""};
constexpr Range turns{-90, 90, "degrees"};
constexpr std::size_t sentence = 400;
constexpr Count many{0, 200000};

}  // namespace

void describe(FieldVisitor& visit, StringLoad& load) {
  force(visit, {"pull_n", "of all strings together, from the tension computation", free_to_leave_out}, load.pull,
        {0, 2000, "N"});
  visit.length({"height_over_top_mm", "of the strings at the saddle, over the top", free_to_leave_out},
               load.height_over_top, {3, 30, "mm"});
}

void describe(FieldVisitor& visit, WhichTop& which) {
  const auto length = [&](const Range& in_mm) {
    return [&visit, in_mm](const Field& field, Length& value) { visit.length(field, value, in_mm); };
  };
  choice(visit, {"body_size", "in words of form", free_to_leave_out}, which.body_size, body_size_names);
  visit.text({"bracing", "a pattern: x_scalloped, x_braced, ladder, fan", free_to_leave_out}, which.bracing, 60);
  maybe(visit, {"thickness_mm", "of the top, when it is known"}, which.thickness, length({1, 6, "mm"}));
  maybe(visit, {"species", "of the top, when it is known"}, which.species,
        [&](const Field& field, std::string& value) { visit.text(field, value, 60); });
  maybe(visit, {"ring_angle_deg", "0 quartersawn, 90 flat-sawn"}, which.ring_angle,
        [&](const Field& field, Angle& value) {
          angle(visit, field, value, {0, 90, "degrees"});
        });
  maybe(visit, {"arch_radius_mm", "of the top's dome, when it is known"}, which.arch_radius,
        length({1500, 50000, "mm"}));
  maybe(visit, {"drawn", "a whole design; replaces all of the above"}, which.drawn,
        [&](const Field& field, TopDesign& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, PlateRequest& request) {
  object(visit, {"top", "which top", free_to_leave_out}, request.top);
  object(visit, {"damage", "what has happened to it", free_to_leave_out}, request.damage);
  object(visit, {"strings", "what they do to the bridge", free_to_leave_out}, request.strings);
  object(visit, {"moisture", "change of the woods' moisture", free_to_leave_out}, request.moisture);
  maybe(visit, {"behind", "neck and back; absent: as usual for the body size"}, request.behind,
        [&](const Field& field, NeckAndBack& value) { object(visit, field, value); });
  visit.length({"mesh_mm", "side of a triangle, about", free_to_leave_out}, request.mesh, {5, 14, "mm"});
  visit.flag({"with_fields", "answer with the lists for pictures too", free_to_leave_out}, request.with_fields);
}

void describe(FieldVisitor& visit, UnderStrings& result) {
  angle(visit, {"bridge_rotation_deg", "at once, as on a new top; positive leans towards the neck"},
        result.bridge_rotation, turns);
  angle(visit, {"bridge_rotation_years_low_deg", "after years at pitch, least creep"}, result.bridge_rotation_years_low,
        turns);
  angle(visit, {"bridge_rotation_years_high_deg", "after years at pitch, most creep"},
        result.bridge_rotation_years_high, turns);
  visit.length({"belly_mm", "highest rise behind the saddle"}, result.belly, any);
  visit.length({"dip_mm", "deepest sinking in front of it; negative"}, result.dip, any);
  visit.length({"saddle_rise_mm", "at the saddle, mean"}, result.saddle_rise, any);
  visit.number({"stiffness_n_per_mm", "at the saddle, outward"}, result.stiffness_n_per_mm, numbers_any);
}

void describe(FieldVisitor& visit, WithMoisture& result) {
  visit.length({"saddle_rise_mm", "the top alone; negative sinks"}, result.saddle_rise, any);
  visit.length({"saddle_rise_bass_mm", "under the bass string"}, result.saddle_rise_bass, any);
  visit.length({"saddle_rise_treble_mm", "under the treble string"}, result.saddle_rise_treble, any);
  angle(visit, {"bridge_rotation_deg", "positive leans towards the neck"}, result.bridge_rotation, turns);
  visit.length({"greatest_move_mm", "of any place of the top"}, result.greatest_move, any);
  visit.length({"action12_from_top_mm", "half of the saddle's rise"}, result.action12_from_top, any);
  visit.length({"action12_from_thickness_mm", "bridge and top change in height"}, result.action12_from_thickness, any);
  visit.length({"action12_from_neck_mm", "the neck block turns as top and back move: a judgement of size"},
               result.action12_from_neck, any);
  visit.length({"action12_change_mm", "all three"}, result.action12_change, any);
  visit.length({"action12_change_low_mm", "90 % between this"}, result.action12_change_low, any);
  visit.length({"action12_change_high_mm", "and this"}, result.action12_change_high, any);
  visit.number({"stress_across_p95_mpa", "across the grain; 95 % of the top stays below; nothing relaxed"},
               result.stress_across_p95_mpa, numbers_any);
}

void describe(FieldVisitor& visit, PartEnergy& part) {
  visit.text({"part", "top, bridge, bridge plate, hole reinforcement, rim or a brace"}, part.part, 60);
  visit.number({"energy_mj", "stored under the strings"}, part.energy_mj, numbers_any);
  visit.number({"share", "of all"}, part.share, {0, 1, ""});
}

void describe(FieldVisitor& visit, PlateFields& fields) {
  const auto list_of = [&](const Field& field, std::vector<double>& values) {
    visit.numbers(field, values, numbers_any, many);
  };
  list_of({"x_mm", "nodes: from the neck edge"}, fields.x_mm);
  list_of({"y_mm", "nodes: from the centre line; treble positive"}, fields.y_mm);
  list_of({"strings_height_mm", "nodes: rise under the strings"}, fields.strings_height_mm);
  list_of({"moisture_height_mm", "nodes: rise with the moisture"}, fields.moisture_height_mm);
  list_of({"strings_slope_deg", "nodes: turn along the strings, positive leans to the neck"}, fields.strings_slope_deg);
  list_of({"moisture_slope_deg", "nodes: the same with the moisture"}, fields.moisture_slope_deg);
  list_of({"first_corner", "triangles: node, from 0"}, fields.first_corner);
  list_of({"second_corner", "triangles: node, from 0"}, fields.second_corner);
  list_of({"third_corner", "triangles: node, from 0"}, fields.third_corner);
  list_of({"outer_along_mpa", "triangles: stress along the grain, outer face"}, fields.outer_along_mpa);
  list_of({"outer_across_mpa", "triangles: across the grain, outer face"}, fields.outer_across_mpa);
  list_of({"inner_along_mpa", "triangles: along the grain, inner face"}, fields.inner_along_mpa);
  list_of({"inner_across_mpa", "triangles: across the grain, inner face"}, fields.inner_across_mpa);
}

void describe(FieldVisitor& visit, PlateResult& result) {
  object(visit, {"strings", "under the strings alone"}, result.strings);
  object(visit, {"moisture", "with the change of moisture alone"}, result.moisture);
  list(visit, {"carries", "which part carries the strings, the greatest first"}, result.carries, {0, 60});
  visit.integer({"nodes", "of the mesh"}, result.nodes, {0, 1e6, ""});
  visit.integer({"triangles", "of the mesh"}, result.triangles, {0, 1e6, ""});
  visit.integer({"unknowns", "that were solved for"}, result.unknowns, {0, 1e7, ""});
  visit.number({"worst_triangle", "quality of the poorest triangle; 1 is equilateral"}, result.worst_triangle,
               {0, 1, ""});
  object(visit, {"design", "the top that was calculated"}, result.design);
  visit.texts({"cautions", "to read with the figures"}, result.cautions, sentence, {0, 20});
  maybe(visit, {"fields", "lists for pictures, when asked for"}, result.fields,
        [&](const Field& field, PlateFields& value) { object(visit, field, value); });
}

}  // namespace tailblock

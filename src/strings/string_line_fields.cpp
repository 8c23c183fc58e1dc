#include "strings/string_line.h"

namespace tailblock {
namespace {

using OptionalLength = std::optional<Length>;
}  // namespace

void describe(FieldVisitor& visit, NeckLine& neck) {
  const auto optional = Need::has_default;
  visit.length({"scale_length_mm", "scale length", optional}, neck.scale_length, {500, 700, "mm"});
  visit.integer({"body_joint_fret", "fret at the body joint", optional}, neck.body_joint_fret, {10, 18, ""});
  visit.integer({"fret_count", "number of frets", optional}, neck.fret_count, {12, 24, ""});
  visit.integer({"string_count", "number of strings, evenly spaced", optional}, neck.string_count, {1, 12, ""});
  visit.length({"nut_over_fret1_bass_mm", "open outer bass string over the crown of fret 1", optional},
               neck.nut_over_fret1_bass, {-1, 4, "mm"});
  visit.length({"nut_over_fret1_treble_mm", "open string 1 over the crown of fret 1", optional},
               neck.nut_over_fret1_treble, {-1, 4, "mm"});
  maybe_length(visit, {"nut_over_frets_bass_mm", "nut slot over the fret plane, bass; used instead when given"},
               neck.nut_over_frets_bass, {-2, 5, "mm"});
  maybe_length(visit, {"nut_over_frets_treble_mm", "nut slot over the fret plane, treble"}, neck.nut_over_frets_treble,
               {-2, 5, "mm"});
  visit.length({"relief_mm", "depth of the neck's bow below the chord of fret 1 and the joint fret", optional},
               neck.relief, {-1.5, 3, "mm"});
  visit.numbers(
      {"crown_departures_mm", "each crown over where the bow puts it, fret 1 first; empty when level", optional},
      neck.crown_departures_mm, {-2, 2, "mm"}, {0, 24});
  visit.length({"setback_bass_mm", "saddle crest behind the scale length, bass", optional}, neck.setback_bass,
               {-5, 15, "mm"});
  visit.length({"setback_treble_mm", "saddle crest behind the scale length, treble", optional}, neck.setback_treble,
               {-5, 15, "mm"});
  visit.length({"string_spread_at_saddle_mm", "between the outer strings at the saddle", optional},
               neck.string_spread_at_saddle, {20, 90, "mm"});
  maybe_length(visit, {"board_radius_mm", "crossways radius of the frets"}, neck.board_radius, {150, 5000, "mm"});
  maybe_length(visit, {"saddle_radius_mm", "crossways radius of the saddle top"}, neck.saddle_radius,
               {150, 5000, "mm"});
}

void describe(FieldVisitor& visit, StringAction& action) {
  maybe_length(visit, {"action12_bass_mm", "outer bass string over fret 12"}, action.action12_bass, {-1, 15, "mm"});
  maybe_length(visit, {"action12_treble_mm", "string 1 over fret 12"}, action.action12_treble, {-1, 15, "mm"});
  maybe_length(visit, {"saddle_over_frets_bass_mm", "saddle top over the fret plane, bass"},
               action.saddle_over_frets_bass, {-5, 30, "mm"});
  maybe_length(visit, {"saddle_over_frets_treble_mm", "saddle top over the fret plane, treble"},
               action.saddle_over_frets_treble, {-5, 30, "mm"});
}

void describe(FieldVisitor& visit, OuterHeights& outer) {
  visit.length({"action12_bass_mm", "outer bass string over fret 12"}, outer.action12_bass, {-50, 50, "mm"});
  visit.length({"action12_treble_mm", "string 1 over fret 12"}, outer.action12_treble, {-50, 50, "mm"});
  visit.length({"saddle_over_frets_bass_mm", "saddle top over the fret plane, bass"}, outer.saddle_over_frets_bass,
               {-100, 100, "mm"});
  visit.length({"saddle_over_frets_treble_mm", "saddle top over the fret plane, treble"},
               outer.saddle_over_frets_treble, {-100, 100, "mm"});
}

void describe(FieldVisitor& visit, StringLineRequest& request) {
  object(visit, {"neck", "neck, nut, relief and frets", Need::has_default}, request.neck);
  object(visit, {"action", "heights at fret 12 or at the saddle"}, request.action);
  maybe_length(visit, {"bridge_top_over_frets_bass_mm", "bridge top at the saddle over the fret plane, bass"},
               request.bridge_top_over_frets_bass, {-15, 15, "mm"});
  maybe_length(visit, {"bridge_top_over_frets_treble_mm", "bridge top at the saddle over the fret plane, treble"},
               request.bridge_top_over_frets_treble, {-15, 15, "mm"});
  visit.number({"lowest_pitch_hz", "pitch of the lowest open string", Need::has_default}, request.lowest_pitch_hz,
               {20, 1500, "Hz"});
}

void describe(FieldVisitor& visit, FretPoint& point) {
  visit.integer({"fret", "number of the fret"}, point.fret, {1, 24, ""});
  visit.length({"from_nut_mm", "distance from the nut"}, point.from_nut, {0, 700, "mm"});
  visit.length({"crown_over_plane_mm", "crown over the fret plane"}, point.crown_over_plane, {-20, 20, "mm"});
}

void describe(FieldVisitor& visit, StringPath& path) {
  visit.integer({"string", "1 is the thinnest"}, path.string, {1, 12, ""});
  visit.length({"nut_over_frets_mm", "nut slot over the fret plane"}, path.nut_over_frets, {-50, 50, "mm"});
  visit.length({"saddle_over_frets_mm", "saddle top over the fret plane"}, path.saddle_over_frets, {-100, 100, "mm"});
  visit.length({"saddle_from_nut_mm", "distance from the nut to the saddle crest"}, path.saddle_from_nut,
               {400, 800, "mm"});
  visit.numbers({"over_fret_mm", "open string over each crown, fret 1 first"}, path.over_fret_mm, {-100, 100, "mm"},
                {12, 24});
  visit.numbers({"over_next_fret_mm", "stopped at fret 1, 2 and so on: over the next crown"}, path.over_next_fret_mm,
                {-100, 100, "mm"}, {11, 23});
  maybe_length(visit, {"exposure_mm", "saddle top over the bridge top"}, path.exposure, {-100, 100, "mm"});
}

void describe(FieldVisitor& visit, StringLineResult& result) {
  list(visit, {"frets", "fret 1 first"}, result.frets, {12, 24});
  list(visit, {"strings", "string 1 first"}, result.strings, {1, 12});
  object(visit, {"outer", "the outer strings"}, result.outer);
  visit.number({"saddle_per_action12_bass", "mm of saddle for a mm at fret 12, bass"}, result.saddle_per_action12_bass,
               {1, 4, ""});
  visit.number({"saddle_per_action12_treble", "mm of saddle for a mm at fret 12, treble"},
               result.saddle_per_action12_treble, {1, 4, ""});
  visit.number(
      {"action12_per_relief_at_held_ends", "mm at fret 12 for a mm of relief, fret plane and string ends held"},
      result.action12_per_relief_at_held_ends, {-20, 20, ""});
  visit.number({"action12_per_relief_at_held_joint", "the same when the neck bows from a held body joint"},
               result.action12_per_relief_at_held_joint, {-20, 20, ""});
  visit.length({"sag_when_level_mm", "how far the lowest string hangs when the guitar lies on its back"},
               result.sag_when_level, {0, 2, "mm"});
  visit.texts({"cautions", "what to mind"}, result.cautions, 400, {0, 20});
}

}  // namespace tailblock

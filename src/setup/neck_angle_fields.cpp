#include <array>

#include "setup/neck_angle.h"

namespace tailblock {
namespace {

constexpr auto optional = Need::has_default;
constexpr std::array<std::string_view, 4> verdicts{"called_for", "not_needed", "withheld", "too_tall"};
constexpr Range heights{-50, 50, "mm"};

void maybe_years(FieldVisitor& visit, const Field& field, std::optional<double>& value) {
  maybe(visit, field, value, [&](const Field& inner, double& years) {
    visit.number(inner, years, {0, 1000, "years"});
  });
}

}  // namespace

void describe(FieldVisitor& visit, NeckSide& side) {
  visit.length({"action12_mm", "action at fret 12, mean of the year", optional}, side.action12, {0, 15, "mm"});
  visit.length({"action12_wanted_mm", "what that mean should be", optional}, side.action12_wanted, {0.3, 10, "mm"});
  visit.length({"action12_sd_mm", "one standard deviation of the mean", optional}, side.action12_sd, {0, 3, "mm"});
  visit.length({"exposure_mm", "saddle over the bridge now", optional}, side.exposure, {-5, 15, "mm"});
  visit.length({"exposure_wanted_mm", "saddle over the bridge afterwards", optional}, side.exposure_wanted,
               {0.5, 12, "mm"});
  visit.length({"exposure_least_mm", "a saddle that stands out less is not made", optional}, side.exposure_least,
               {0.2, 6, "mm"});
  visit.length({"exposure_most_mm", "nor one that stands out more", optional}, side.exposure_most, {1, 12, "mm"});
  visit.length({"highest_over_mean_mm", "action in the year's highest month over its mean", optional},
               side.highest_over_mean, {0, 5, "mm"});
  visit.length({"today_over_mean_mm", "action today over the year's mean", optional}, side.today_over_mean,
               {-5, 5, "mm"});
}

void describe(FieldVisitor& visit, NeckAngleRequest& request) {
  object(visit, {"bass", "the bass side", optional}, request.bass);
  object(visit, {"treble", "the treble side", optional}, request.treble);
  visit.length({"exposure_sd_mm", "one standard deviation of the exposures", optional}, request.exposure_sd,
               {0, 2, "mm"});
  visit.length({"nut_over_frets_mm", "bottom of the nut slots over the fret plane", optional}, request.nut_over_frets,
               {-2, 5, "mm"});
  visit.length({"scale_length_mm", "scale length", optional}, request.scale_length, {500, 700, "mm"});
  visit.length({"saddle_setback_mm", "crest behind the scale length", optional}, request.saddle_setback,
               {-5, 15, "mm"});
  visit.integer({"body_joint_fret", "fret at the body joint", optional}, request.body_joint_fret, {10, 18, ""});
  visit.integer({"fret_count", "number of frets", optional}, request.fret_count, {12, 24, ""});
  visit.length({"heel_depth_mm", "edge under the board down to the outside of the heel cap", optional},
               request.heel_depth, {40, 160, "mm"});
  visit.length({"heel_cap_thickness_mm", "the last of that depth", optional}, request.heel_cap_thickness,
               {0, 30, "mm"});
  visit.length({"hinge_under_frets_mm", "board and fret at the joint", optional}, request.hinge_under_frets,
               {0, 25, "mm"});
  maybe_length(visit, {"tongue_length_mm", "joint to the end of the board"}, request.tongue_length, {5, 250, "mm"});
  maybe_length(visit, {"rise_mm", "rise of the fret plane at the saddle, instead of what the exposures ask for"},
               request.rise, {-15, 15, "mm"});
  maybe_length(visit, {"straightedge_over_bridge_mm", "straightedge on the frets, over the bridge top"},
               request.straightedge_over_bridge, {-12, 12, "mm"});
  visit.length({"straightedge_sd_mm", "one standard deviation of that", optional}, request.straightedge_sd,
               {0, 2, "mm"});
  visit.length({"relief_mm", "as it was read", optional}, request.relief, {-1.5, 4, "mm"});
  visit.length({"relief_wanted_mm", "as it will be set", optional}, request.relief_wanted, {-1, 2, "mm"});
  maybe(visit, {"drift_mm_per_year", "of the action at fret 12; positive rises"}, request.drift_mm_per_year,
        [&](const Field& field, Estimate& drift) { object(visit, field, drift); });
}

void describe(FieldVisitor& visit, NeckStep& step) {
  visit.text({"words", "what is done"}, step.words, 500);
  visit.text({"caution", "what to mind; may be empty"}, step.caution, 500);
  visit.flag({"asks_owner", "only with the owner's yes: it cannot be undone"}, step.asks_owner);
}

void describe(FieldVisitor& visit, HeelDepth& line) {
  visit.length({"depth_mm", "down the heel from the edge under the board"}, line.depth, {0, 200, "mm"});
  visit.length({"remove_mm", "to take off there; negative: to build up"}, line.remove, {-30, 30, "mm"});
  visit.text({"where", "what stands there; may be empty"}, line.where, 100);
}

void describe(FieldVisitor& visit, TonguePlace& place) {
  visit.integer({"fret", "0: the end of the board"}, place.fret, {0, 24, ""});
  visit.length({"from_joint_mm", "from the body joint"}, place.from_joint, {0, 400, "mm"});
  visit.length({"shim_mm", "shim under it; without one it lies that much below the plane"}, place.shim,
               {-40, 40, "mm"});
}

void describe(FieldVisitor& visit, NeckSideAfter& after) {
  visit.length({"exposure_asked_mm", "neck as it is, action as wanted"}, after.exposure_asked, heights);
  visit.length({"exposure_asked_highest_mm", "the same, cut for the year's highest month"},
               after.exposure_asked_highest, heights);
  visit.length({"action12_saddle_kept_mm", "neck turned, saddle as it is"}, after.action12_saddle_kept, heights);
  visit.length({"action12_mm", "neck turned, new saddle"}, after.action12, heights);
  visit.length({"exposure_mm", "neck turned, new saddle"}, after.exposure, heights);
  visit.length({"saddle_raise_mm", "new saddle over the one fitted now"}, after.saddle_raise, heights);
}

void describe(FieldVisitor& visit, NeckAngleResult& result) {
  choice(visit, {"verdict", "whether the neck's angle is called for"}, result.verdict, verdicts);
  visit.text({"words", "one sentence"}, result.words, 500);
  visit.length({"uncertainty_mm", "one standard deviation of the exposure asked"}, result.uncertainty, {0, 50, "mm"});
  visit.length({"rise_mm", "rise of the fret plane at the saddle"}, result.rise, heights);
  angle(visit, {"turn_deg", "of the neck; positive is back"}, result.turn, {-10, 10, "deg"});
  list(visit, {"heel", "what to take off down the heel"}, result.heel, {2, 100});
  list(visit, {"tongue", "frets beyond the joint, and the end of the board"}, result.tongue, {1, 20});
  object(visit, {"bass", "the bass side"}, result.bass);
  object(visit, {"treble", "the treble side"}, result.treble);
  visit.length({"saddle_from_nut_change_mm", "along the frets; positive is longer"}, result.saddle_from_nut_change,
               heights);
  visit.length({"nut_back_mm", "how far the nut moves away from the body"}, result.nut_back, heights);
  visit.number({"saddle_per_heel", "mm at the saddle for 1 mm at the heel cap"}, result.saddle_per_heel, {0, 20, ""});
  visit.number({"action12_per_heel", "mm at fret 12 likewise"}, result.action12_per_heel, {0, 20, ""});
  maybe_length(visit, {"straightedge_of_year_mm", "straightedge over the bridge, season and relief taken out"},
               result.straightedge_of_year, heights);
  visit.length({"straightedge_by_season_mm", "what of that is the season"}, result.straightedge_by_season, heights);
  visit.length({"straightedge_by_relief_mm", "and what the relief"}, result.straightedge_by_relief, heights);
  maybe_years(visit, {"years_left", "until the drift has used the saddle up; absent: it does not"}, result.years_left);
  maybe_years(visit, {"years_left_least", "the same if it drifts as fast as it may"}, result.years_left_least);
  visit.texts({"cautions", "what to mind"}, result.cautions, 400, {0, 20});
  list(visit, {"steps", "the work in order"}, result.steps, {0, 40});
}

}  // namespace tailblock

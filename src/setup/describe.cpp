#include "setup/saddle.h"

namespace tailblock {
namespace {

constexpr Need free_to_leave_out = Need::has_default;
constexpr Range actions{0, 10, "mm"};
constexpr Range exposures{0, 12, "mm"};
constexpr Range any{-1e6, 1e6, ""};
constexpr std::size_t sentence = 1000;

auto length_in(FieldVisitor& visit, Range range) {
  return [&visit, range](const Field& field, Length& value) { visit.length(field, value, range); };
}

void sentences(FieldVisitor& visit, const Field& field, std::vector<std::string>& texts) {
  visit.texts(field, texts, sentence, {0, 30});
}

}  // namespace

void describe(FieldVisitor& visit, BridgeMeasures& bridge) {
  choice(visit, {"slot", "open_ended: it runs out at both ends of the bridge; closed: a drop-in saddle"}, bridge.slot,
         saddle_slot_names);
  visit.length({"exposure_bass_mm", "top of the saddle over the bridge at the bass string"}, bridge.exposure_bass,
               exposures);
  visit.length({"exposure_treble_mm", "the same at the treble string"}, bridge.exposure_treble, exposures);
  maybe(visit, {"exposure_centre_mm", "the same between the middle strings"}, bridge.exposure_centre,
        length_in(visit, exposures));
  visit.length({"exposure_sd_mm", "one standard deviation of those readings", free_to_leave_out}, bridge.exposure_sd,
               {0.005, 1, "mm"});
  maybe(visit, {"slot_depth_mm", "floor of the slot to the top of the bridge"}, bridge.slot_depth,
        length_in(visit, {0.5, 15, "mm"}));
  maybe(visit, {"slot_width_mm", "width of the slot, at one end when both are given"}, bridge.slot_width,
        length_in(visit, {1, 10, "mm"}));
  maybe(visit, {"slot_width_other_end_mm", "width at the other end"}, bridge.slot_width_other_end,
        length_in(visit, {1, 10, "mm"}));
  maybe(visit, {"slot_length_mm", "length of the slot; open-ended: across the bridge"}, bridge.slot_length,
        length_in(visit, {40, 200, "mm"}));
  maybe(visit, {"saddle_thickness_mm", "of the bone fitted now"}, bridge.saddle_thickness,
        length_in(visit, {1, 10, "mm"}));
  maybe(visit, {"break_angle_deg", "through which a middle string turns over the saddle"}, bridge.break_angle,
        [&](const Field& field, Angle& value) {
          angle(visit, field, value, {2, 80, "degrees"});
        });
  maybe(visit, {"pin_to_saddle_mm", "front of the pin hole to the back of the saddle"}, bridge.pin_to_saddle,
        length_in(visit, {2, 40, "mm"}));
}

void describe(FieldVisitor& visit, SaddleRequest& request) {
  object(visit, {"instrument", "what the season model is told of the instrument"}, request.instrument);
  visit.date({"first", "the year to serve begins here"}, request.first);
  visit.integer({"count", "its days", free_to_leave_out}, request.count, {28, 366, "days"});
  object(visit, {"limits", "least clean and highest comfortable action at fret 12", free_to_leave_out}, request.limits);
  visit.length({"wanted_bass_mm", "action this player likes best at fret 12, bass", free_to_leave_out},
               request.wanted_bass, actions);
  visit.length({"wanted_treble_mm", "the same, treble", free_to_leave_out}, request.wanted_treble, actions);
  object(visit, {"bridge", "the bridge as measured"}, request.bridge);
  visit.length({"scale_length_mm", "twice nut to fret 12", free_to_leave_out}, request.scale_length, {300, 1000, "mm"});
  visit.length({"saddle_setback_mm", "how far the saddle stands beyond the scale length", free_to_leave_out},
               request.saddle_setback, {-5, 15, "mm"});
  visit.integer({"body_joint_fret", "fret at the body joint", free_to_leave_out}, request.body_joint_fret, {9, 18, ""});
  visit.length({"heel_depth_mm", "fingerboard plane to heel cap", free_to_leave_out}, request.heel_depth,
               {40, 150, "mm"});
  maybe(visit, {"rod", "of a neck whose rod can be turned: what fret 12 does when it is"}, request.rod,
        [&](const Field& field, RodFigure& rod) { object(visit, field, rod); });
  maybe(visit, {"shop_moisture_percent", "of wood in the shop's air, when the instrument has been in it long enough"},
        request.shop_moisture_percent, [&](const Field& field, double& value) {
          visit.number(field, value, {2, 20, "percent"});
        });
}

void describe(FieldVisitor& visit, SaddleToMake& made) {
  visit.text({"season", "when it is in"}, made.season, sentence);
  visit.length({"raise_bass_mm", "at the saddle, against the one fitted now; positive is taller"}, made.raise_bass,
               any);
  visit.length({"raise_treble_mm", "the same, treble"}, made.raise_treble, any);
  visit.length({"raise_bass_sd_mm", "one standard deviation of the raise that would be right"}, made.raise_bass_sd,
               any);
  visit.length({"raise_treble_sd_mm", "the same, treble"}, made.raise_treble_sd, any);
  visit.length({"exposure_bass_mm", "over the bridge"}, made.exposure_bass, any);
  visit.length({"exposure_treble_mm", "over the bridge"}, made.exposure_treble, any);
  visit.length({"set_bass_today_mm", "what fret 12 should read today with this saddle in"}, made.set_bass_today, any);
  visit.length({"set_treble_today_mm", "the same, treble"}, made.set_treble_today, any);
  visit.flag({"new_bone", "taller somewhere, so it cannot be filed out of the present saddle"}, made.new_bone);
  visit.text({"how", "which way the cut goes"}, made.how, sentence);
  visit.length({"blank_height_mm", "with something to file off; 0 where the slot is not known"}, made.blank_height,
               any);
  visit.length({"blank_thickness_mm", "likewise"}, made.blank_thickness, any);
  visit.length({"blank_length_mm", "likewise"}, made.blank_length, any);
  visit.length({"fit_thickness_least_mm", "finished: thinner rattles; 0 where the slot is not known"},
               made.fit_thickness_least, any);
  visit.length({"fit_thickness_most_mm", "finished: thicker wedges"}, made.fit_thickness_most, any);
  visit.text({"from", "day it goes in, when there are two"}, made.from, sentence);
  visit.text({"until", "day it comes out, when there are two"}, made.until, sentence);
}

void describe(FieldVisitor& visit, LimitCheck& check) {
  visit.text({"limit", "what is limited"}, check.limit, sentence);
  visit.flag({"kept", "inside what can be done"}, check.kept);
  visit.flag({"usual", "inside what is usual"}, check.usual);
  visit.text({"figure", "the value against its range"}, check.figure, sentence);
  visit.text({"source", "where the range comes from"}, check.source, sentence);
}

void describe(FieldVisitor& visit, SaddleOption& option) {
  choice(visit, {"choice", "which of the six"}, option.choice, saddle_choice_names);
  visit.text({"title", "in plain words"}, option.title, sentence);
  visit.flag({"possible", "inside every limit, doable on this slot, and needed"}, option.possible);
  visit.text({"why_not", "when it is not"}, option.why_not, sentence);
  list(visit, {"saddles", "to make; none when the present one stays"}, option.saddles, {0, 2});
  object(visit, {"days", "too low and too high through the year"}, option.days);
  visit.length({"set_bass_today_mm", "action to leave at fret 12 today"}, option.set_bass_today, any);
  visit.length({"set_treble_today_mm", "the same, treble"}, option.set_treble_today, any);
  visit.length({"set_today_sd_mm", "one standard deviation of that, the wider side"}, option.set_today_sd, any);
  visit.number({"days_more_if_misread", "more days outside when set wrong by one standard deviation of the gauge"},
               option.days_more_if_misread, any);
  maybe(visit, {"relief_to_set_mm", "when the rod is turned"}, option.relief_to_set, length_in(visit, any));
  maybe(visit, {"keep_relative_humidity", "the room is never drier"}, option.keep_relative_humidity,
        [&](const Field& field, double& value) {
          visit.number(field, value, {0, 1, ""});
        });
  maybe(visit, {"heel_removal_mm", "at the heel cap"}, option.heel_removal, length_in(visit, any));
  maybe(visit, {"heel_removal_sd_mm", "one standard deviation of it"}, option.heel_removal_sd, length_in(visit, any));
  maybe(visit, {"neck_turn_deg", "by which the neck is set back"}, option.neck_turn,
        [&](const Field& field, Angle& value) {
          angle(visit, field, value, {-90, 90, "degrees"});
        });
  list(visit, {"checks", "structural limits, kept or broken"}, option.checks, {0, 20});
  sentences(visit, {"cautions", "to read before the work"}, option.cautions);
  visit.flag({"reversible", "the guitar can be put back as it came"}, option.reversible);
  visit.number({"cost", "weighted days outside and distance from what is wanted"}, option.cost, any);
  visit.number({"worth", "weighted days the work must save to be advised"}, option.worth, any);
}

void describe(FieldVisitor& visit, SaddleResult& result) {
  list(visit, {"options", "the six ways side by side, leaving it first"}, result.options, {0, 6});
  visit.integer({"best", "place of the one advised, from 0"}, result.best, {0, 5, ""});
  visit.text({"advice", "in one or two plain sentences"}, result.advice, 2 * sentence);
  visit.length({"reading_sd_mm", "one standard deviation of the gauge that last read the action"}, result.reading_sd,
               any);
  visit.number({"saddle_per_action", "mm at the saddle for 1 mm at fret 12"}, result.saddle_per_action, any);
  visit.length({"cut_precision_mm", "what a file and a dial caliper hold; heights are in steps of it"},
               result.cut_precision, any);
  sentences(visit, {"cautions", "for every option"}, result.cautions);
}

}  // namespace tailblock

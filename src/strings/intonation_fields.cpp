#include <array>

#include "strings/intonation.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 4> crest_places{"fits", "may_fit", "too_far_forward", "too_far_back"};
constexpr std::array<std::string_view, 4> slot_verdicts{"fits", "cannot_tell", "widen", "recut"};
constexpr Range setbacks{-60, 60, "mm"};
constexpr Count all_frets{12, 24};
constexpr Range any_cents{-2400, 2400, "cents"};

}  // namespace

void describe(FieldVisitor& visit, OctaveError& error) {
  visit.integer({"string", "1 is the thinnest"}, error.string, {1, 12, ""});
  visit.number({"cents", "fret 12 against the octave of the open string; sharp is positive"}, error.cents,
               {-100, 100, "cents"});
  visit.number({"sd_cents", "one standard deviation of that reading", Need::has_default}, error.sd_cents,
               {0.05, 20, "cents"});
}

void describe(FieldVisitor& visit, SaddleTop& top) {
  visit.length({"front_bass_mm", "front face of the saddle behind the scale length, at the last string"},
               top.front_bass, {-10, 15, "mm"});
  visit.length({"front_treble_mm", "the same at string 1"}, top.front_treble, {-10, 15, "mm"});
  visit.length({"thickness_mm", "of the saddle", Need::has_default}, top.thickness, {1, 10, "mm"});
  visit.length({"front_sd_mm", "one standard deviation of where the front face was read", Need::has_default},
               top.front_sd, {0, 2, "mm"});
}

void describe(FieldVisitor& visit, IntonationRequest& request) {
  object(visit, {"neck", "neck, nut, relief and frets", Need::has_default}, request.neck);
  object(visit, {"action", "heights at fret 12 or at the saddle"}, request.action);
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
  visit.numbers({"setbacks_mm",
                 "crest of each string behind the scale length, string 1 first; empty: straight between the neck's two",
                 Need::has_default},
                request.setbacks_mm, {-10, 20, "mm"}, {0, 12});
  visit.length({"setback_sd_mm", "one standard deviation of where a crest was read", Need::has_default},
               request.setback_sd, {0, 3, "mm"});
  list(visit, {"octave_errors", "what a tuner read at fret 12", Need::has_default}, request.octave_errors, {0, 12});
  maybe(visit, {"saddle", "the saddle and its slot from above"}, request.saddle,
        [&](const Field& field, SaddleTop& top) { object(visit, field, top); });
  visit.length({"dead_length_mm", "string beyond nut and saddle that slides freely over both", Need::has_default},
               request.dead_length, {0, 400, "mm"});
  visit.length({"press_depth_mm", "how far a finger pushes the string down behind the fret", Need::has_default},
               request.press_depth, {0, 1.5, "mm"});
  visit.integer({"last_fret", "frets 1 to this are weighed where nut and saddle are both free", Need::has_default},
                request.last_fret, {2, 24, ""});
}

void describe(FieldVisitor& visit, CrestOnTop& crest) {
  visit.integer({"string", "1 is the thinnest"}, crest.string, {1, 12, ""});
  visit.length({"behind_front_mm", "crest wanted behind the front face"}, crest.behind_front, {-80, 80, "mm"});
  visit.length({"behind_front_low_mm", "and not nearer the front than this"}, crest.behind_front_low, {-80, 80, "mm"});
  visit.length({"behind_front_high_mm", "nor further back than this"}, crest.behind_front_high, {-80, 80, "mm"});
  choice(visit, {"place", "whether it can be filed there"}, crest.place, crest_places);
  visit.flag({"to_be_read", "an octave error of this string would help to decide"}, crest.to_be_read);
}

void describe(FieldVisitor& visit, SlotFit& fit) {
  choice(visit, {"verdict", "what has to be done about the slot"}, fit.verdict, slot_verdicts);
  list(visit, {"crests", "string 1 first"}, fit.crests, {1, 12});
  visit.length({"widen_front_mm", "how far its front wall goes forward"}, fit.widen_front, {0, 20, "mm"});
  visit.length({"widen_back_mm", "how far its back wall goes back"}, fit.widen_back, {0, 20, "mm"});
  visit.length({"move_bass_mm", "how far a new slot's front wall lies behind the old one's, bass"}, fit.move_bass,
               {-100, 100, "mm"});
  visit.length({"move_treble_mm", "the same, treble"}, fit.move_treble, {-100, 100, "mm"});
  visit.length({"thickness_least_mm", "thinnest saddle that would hold all crests, best placed"}, fit.thickness_least,
               {0, 100, "mm"});
  visit.text({"words", "one sentence"}, fit.words, 400);
}

void describe(FieldVisitor& visit, StringIntonation& string) {
  visit.integer({"string", "1 is the thinnest"}, string.string, {1, 12, ""});
  visit.length({"setback_mm", "crest behind the scale length now"}, string.setback, setbacks);
  visit.length({"setback_a_firm_end_mm", "what each clamped end of the string asks of the crest"},
               string.setback_a_firm_end, {0, 30, "mm"});
  maybe(visit, {"octave_error_cents", "as read"}, string.octave_error_cents,
        [&](const Field& field, double& cents) { visit.number(field, cents, any_cents); });
  visit.number({"firm_ends_low", "clamped ends, at least"}, string.firm_ends_low, {-4, 8, ""});
  visit.number({"firm_ends", "clamped ends, as read or midway"}, string.firm_ends, {-4, 8, ""});
  visit.number({"firm_ends_high", "clamped ends, at most"}, string.firm_ends_high, {-4, 8, ""});
  visit.flag({"believable", "the octave error read can be explained by the ends"}, string.believable);
  visit.numbers({"stretch_cents", "sharp at fret 1, 2 ... by stretch alone"}, string.stretch_cents, any_cents,
                all_frets);
  visit.numbers({"low_cents", "with the ends as little firm as they may be"}, string.low_cents, any_cents, all_frets);
  visit.numbers({"high_cents", "with the ends as firm as they may be"}, string.high_cents, any_cents, all_frets);
  visit.length({"wanted_for_stretch_mm", "setback that stretch alone asks for"}, string.wanted_for_stretch, setbacks);
  visit.length({"wanted_low_mm", "setback wanted, at least"}, string.wanted_low, setbacks);
  visit.length({"wanted_mm", "setback wanted for the octave"}, string.wanted, setbacks);
  visit.length({"wanted_high_mm", "setback wanted, at most"}, string.wanted_high, setbacks);
  visit.numbers({"after_low_cents", "low_cents with the crest where it is wanted"}, string.after_low_cents, any_cents,
                all_frets);
  visit.numbers({"after_cents", "the same, midway"}, string.after_cents, any_cents, all_frets);
  visit.numbers({"after_high_cents", "high_cents with the crest where it is wanted"}, string.after_high_cents,
                any_cents, all_frets);
  visit.length({"both_setback_mm", "setback where the nut may move too"}, string.both_setback, setbacks);
  visit.length({"both_nut_shift_mm", "edge of the nut towards the saddle, likewise"}, string.both_nut_shift, setbacks);
  visit.number({"both_rms_cents", "error that is then left, root of the mean square"}, string.both_rms_cents,
               {0, 1200, "cents"});
  visit.number({"both_worst_cents", "and the largest"}, string.both_worst_cents, {0, 1200, "cents"});
  visit.number({"cents_per_mm", "at fret 12, for a crest set back by 1 mm"}, string.cents_per_mm, {-20, 20, "cents"});
  force(visit, {"finger_force_1_n", "least that lays the open string on fret 1"}, string.finger_force_1,
        {-100, 1000, "N"});
  force(visit, {"finger_force_12_n", "least that lays the open string on fret 12"}, string.finger_force_12,
        {-100, 1000, "N"});
}

void describe(FieldVisitor& visit, IntonationResult& result) {
  list(visit, {"strings", "string 1 first"}, result.strings, {1, 12});
  maybe(visit, {"slot", "whether the crests fit; where the saddle's top was given"}, result.slot,
        [&](const Field& field, SlotFit& fit) { object(visit, field, fit); });
  visit.text({"verdict", "one sentence"}, result.verdict, 500);
  visit.texts({"cautions", "what to mind"}, result.cautions, 400, {0, 20});
}

}  // namespace tailblock

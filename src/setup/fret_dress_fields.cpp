#include "setup/fret_dress.h"

namespace tailblock {
namespace {

constexpr auto free_to_leave_out = Need::has_default;
constexpr Range any{-1000, 1000, "mm"};
constexpr std::size_t sentence = 1000;

void maybe_figure(FieldVisitor& visit, const Field& field, std::optional<FretFigure>& value) {
  maybe(visit, field, value, [&](const Field& inner, FretFigure& figure) { object(visit, inner, figure); });
}

}  // namespace

void describe(FieldVisitor& visit, FretReading& reading) {
  choice(visit, {"kind", "how it was read"}, reading.kind, fret_reading_kind_names);
  visit.integer({"fret", "the fret read; of a rocker, the middle one"}, reading.fret, {1, 24, ""});
  choice(visit, {"side", "where across the board", free_to_leave_out}, reading.side, fret_side_names);
  visit.length({"value_mm", "departure: positive is high; straightedge: the gap; over_board: the metal left"},
               reading.value, {-3, 4, "mm"});
  maybe_length(visit, {"sd_mm", "one standard deviation of the reading"}, reading.sd, {0.001, 0.5, "mm"});
  visit.integer({"from_fret", "straightedge: the lower fret it lies on", free_to_leave_out}, reading.from_fret,
                {0, 24, ""});
  visit.integer({"to_fret", "straightedge: the higher fret it lies on", free_to_leave_out}, reading.to_fret,
                {0, 24, ""});
}

void describe(FieldVisitor& visit, FretDressRequest& request) {
  object(visit, {"neck", "neck, nut and relief as the crowns were read", free_to_leave_out}, request.neck);
  object(visit, {"action", "heights at fret 12 or at the saddle, today"}, request.action);
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
  object(visit, {"attack", "how hard the player plays"}, request.attack);
  list(visit, {"readings", "of the crowns, in any order"}, request.readings, {1, 400});
  maybe_length(visit, {"wanted_action12_bass_mm", "over the dressed crown of fret 12, bass"},
               request.wanted_action12_bass, {0, 10, "mm"});
  maybe_length(visit, {"wanted_action12_treble_mm", "the same, string 1"}, request.wanted_action12_treble,
               {0, 10, "mm"});
  maybe_length(visit, {"least_crown_mm", "every crown keeps this much over the board"}, request.least_crown,
               {0.1, 2, "mm"});
  maybe_length(visit, {"margin_mm", "room left under every note"}, request.margin, {0, 0.5, "mm"});
  maybe_length(visit, {"fall_away_mm", "last fret below the line of the frets before it"}, request.fall_away,
               {0, 2, "mm"});
  maybe(visit, {"fall_away_from_fret", "the last fret still on the line"}, request.fall_away_from,
        [&](const Field& field, int& fret) {
          visit.integer(field, fret, {8, 23, ""});
        });
  visit.flag({"adjustable_rod", "the neck has a rod that turns", free_to_leave_out}, request.adjustable_rod);
  maybe(visit, {"rod", "how far fret 12 rises with the relief, where this neck has shown it"}, request.rod,
        [&](const Field& field, RodFigure& rod) { object(visit, field, rod); });
  visit.flag({"neck_angle_changed", "since the frets were last level", free_to_leave_out}, request.neck_angle_changed);
  maybe(visit, {"body_relative_humidity", "in the body, as the crowns were read, 0..1"}, request.body_humidity,
        [&](const Field& field, RelativeHumidity& value) { relative_humidity(visit, field, value); });
}

void describe(FieldVisitor& visit, ForcingNote& note) {
  visit.integer({"string", "1 is the thinnest"}, note.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, note.stopped_fret, {0, 23, ""});
  visit.flag({"away", "when plucked away from the board; else toward it"}, note.away);
  visit.number({"share", "of this fret's own cut"}, note.share, {0, 1000, ""});
}

void describe(FieldVisitor& visit, UncleanNote& note) {
  visit.integer({"string", "1 is the thinnest"}, note.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, note.stopped_fret, {0, 23, ""});
  visit.integer({"fret", "whose crown it touches"}, note.fret, {1, 24, ""});
  visit.length({"short_by_mm", "how much is missing"}, note.short_by, any);
}

void describe(FieldVisitor& visit, FretToDress& fret) {
  visit.integer({"fret", "number of the fret"}, fret.fret, {1, 24, ""});
  visit.length({"from_nut_mm", "distance from the nut"}, fret.from_nut, {0, 700, "mm"});
  visit.flag({"read", "false: the line of its neighbours stands in"}, fret.read);
  visit.length({"crown_bass_mm", "over the neck's bow and the best line through all crowns, as found"}, fret.crown_bass,
               any);
  visit.length({"crown_treble_mm", "the same, treble"}, fret.crown_treble, any);
  visit.length({"crown_sd_mm", "one standard deviation"}, fret.crown_sd, any);
  visit.length({"line_bass_mm", "the one line that touches every crown"}, fret.line_bass, any);
  visit.length({"line_treble_mm", "the same, treble"}, fret.line_treble, any);
  visit.length({"remove_bass_mm", "least metal, note by note"}, fret.remove_bass, any);
  visit.length({"remove_treble_mm", "the same, treble"}, fret.remove_treble, any);
  visit.length({"level_bass_mm", "to the one line instead"}, fret.level_bass, any);
  visit.length({"level_treble_mm", "the same, treble"}, fret.level_treble, any);
  maybe_length(visit, {"left_bass_mm", "crown over the board after the least metal"}, fret.left_bass, any);
  maybe_length(visit, {"left_treble_mm", "the same, treble"}, fret.left_treble, any);
  visit.flag({"loose", "it springs down when pressed"}, fret.loose);
  visit.flag({"renew", "its crown does not hold what would have to come off"}, fret.renew);
  visit.text({"reason", "why it comes down"}, fret.reason, sentence);
  list(visit, {"forced_by", "the notes that force it, most telling first"}, fret.forced_by, {0, 300});
}

void describe(FieldVisitor& visit, ReliefInstead& relief) {
  visit.length({"change_least_mm", "of relief; positive is more"}, relief.change_least, any);
  visit.length({"change_most_mm", "when this neck lifts fret 12 least"}, relief.change_most, any);
  visit.length({"relief_after_least_mm", "what the feeler then reads"}, relief.relief_after_least, any);
  visit.length({"relief_after_most_mm", "at most"}, relief.relief_after_most, any);
  visit.length({"action12_rise_most_mm", "of the strings at fret 12 when the rod alone is turned"},
               relief.action12_rise_most, any);
}

void describe(FieldVisitor& visit, FretFigure& figure) {
  visit.length({"value_mm", "the figure"}, figure.value, any);
  visit.length({"sd_mm", "one standard deviation"}, figure.sd, any);
}

void describe(FieldVisitor& visit, FretDressResult& result) {
  choice(visit, {"verdict", "what it is"}, result.verdict, fret_verdict_names);
  visit.text({"sentence", "the verdict in plain words"}, result.sentence, sentence);
  visit.texts({"explanation", "what it rests on"}, result.explanation, sentence, {0, 20});
  visit.texts({"steps", "in order"}, result.steps, sentence, {0, 20});
  visit.texts({"cautions", "what to mind"}, result.cautions, sentence, {0, 20});
  list(visit, {"frets", "fret 1 first"}, result.frets, {12, 24});
  visit.flag({"apart", "bass and treble were read apart"}, result.apart);
  visit.flag({"cut_is_advised", "the metal is to come off; else it stands for comparison only"}, result.cut_is_advised);
  visit.length({"total_removed_mm", "sum over the frets of the least metal"}, result.total_removed, any);
  visit.length({"total_to_level_mm", "sum over the frets to the one line"}, result.total_to_level, any);
  visit.flag({"clean_when_level", "every note clean with all crowns on one line"}, result.clean_when_level);
  visit.integer({"touching_before", "notes nearer a crown than the margin, as found"}, result.touching_before,
                {0, 288, ""});
  visit.integer({"touching_after", "the same after the least metal"}, result.touching_after, {0, 288, ""});
  object(visit, {"worst_shortfall", "as found, of the worst note"}, result.worst_shortfall);
  maybe_figure(visit, {"hump", "crowns round the body joint above the lines on both sides"}, result.hump);
  maybe_figure(visit, {"tongue_rise", "last fret above the neck's line"}, result.tongue_rise);
  maybe(visit, {"relief_instead", "a turn of the rod that does it"}, result.relief_instead,
        [&](const Field& field, ReliefInstead& relief) { object(visit, field, relief); });
  maybe_length(visit, {"nut_rise_mm", "of the slots, when it is the nut"}, result.nut_rise, any);
  list(visit, {"unclean", "notes that cannot be made clean at the wanted action, worst first"}, result.unclean,
       {0, 300});
  maybe_length(visit, {"clean_action12_bass_mm", "the least action that can be had instead, bass"},
               result.clean_action12_bass, any);
  maybe_length(visit, {"clean_action12_treble_mm", "the same, treble"}, result.clean_action12_treble, any);
  visit.length({"wanted_action12_bass_mm", "over the dressed crown of fret 12"}, result.wanted_action12_bass, any);
  visit.length({"wanted_action12_treble_mm", "the same, treble"}, result.wanted_action12_treble, any);
  visit.length({"least_crown_mm", "that every crown keeps"}, result.least_crown, any);
  visit.length({"margin_mm", "room asked under every note"}, result.margin, any);
  visit.flag({"irreversible", "metal does not grow back"}, result.irreversible);
}

EnvelopeRequest envelope_request(const FretDressRequest& request) {
  return envelope_request(ClearanceRequest{
      .neck = request.neck, .action = request.action, .strings = request.strings, .attack = request.attack});
}

}  // namespace tailblock

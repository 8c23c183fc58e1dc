#include <array>

#include "strings/clearance.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 2> stopped_plucks{"same_force", "same_amplitude"};

}  // namespace

void describe(FieldVisitor& visit, Attack& attack) {
  visit.length({"amplitude_bass_mm", "swing normal to the board at the pluck, lowest string, open"},
               attack.amplitude_bass, {0.05, 5, "mm"});
  visit.length({"amplitude_treble_mm", "the same, string 1"}, attack.amplitude_treble, {0.05, 5, "mm"});
  visit.length({"pluck_from_saddle_mm", "where the string is plucked", Need::has_default}, attack.pluck_from_saddle,
               {20, 250, "mm"});
  visit.length({"pluck_width_mm", "width of finger or pick", Need::has_default}, attack.pluck_width, {0.5, 20, "mm"});
  choice(visit, {"stopped", "what a stopped note keeps of the open one's pluck", Need::has_default}, attack.stopped,
         stopped_plucks);
}

void describe(FieldVisitor& visit, ClearanceRequest& request) {
  object(visit, {"neck", "neck, nut, relief and frets", Need::has_default}, request.neck);
  object(visit, {"action", "heights at fret 12 or at the saddle"}, request.action);
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
  object(visit, {"attack", "how hard the player plays"}, request.attack);
}

void describe(FieldVisitor& visit, NoteClearance& note) {
  visit.integer({"string", "1 is the thinnest"}, note.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, note.stopped_fret, {0, 23, ""});
  visit.integer({"limiting_fret", "the fret it comes nearest to"}, note.limiting_fret, {1, 24, ""});
  visit.flag({"away", "nearest when plucked away from the board"}, note.away);
  visit.number({"ratio", "least of gap over reach: 1 just touches, above is clear"}, note.ratio, {-1e4, 1e4, ""});
  visit.length({"margin_mm", "gap less reach over that fret"}, note.margin, {-100, 100, "mm"});
  choice(visit, {"verdict", "what it means"}, note.verdict, clearance_verdict_names);
}

void describe(FieldVisitor& visit, ClearanceResult& result) {
  list(visit, {"notes", "string 1 open, string 1 at fret 1, and so on"}, result.notes, {12, 288});
  visit.integer({"clear", "notes that are clear"}, result.clear, {0, 288, ""});
  visit.integer({"doubtful", "notes too near to call"}, result.doubtful, {0, 288, ""});
  visit.integer({"touching", "notes that touch"}, result.touching, {0, 288, ""});
  visit.integer({"worst_note", "index of the note with the least ratio"}, result.worst_note, {0, 287, ""});
  visit.text({"verdict", "one sentence"}, result.verdict, 400);
}

void describe(FieldVisitor& visit, DecidingNote& note) {
  visit.integer({"string", "1 is the thinnest"}, note.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, note.stopped_fret, {0, 23, ""});
  visit.integer({"fret", "whose crown it would touch"}, note.fret, {1, 24, ""});
  visit.flag({"away", "when plucked away from the board; else toward it"}, note.away);
}

void describe(FieldVisitor& visit, LeastString& string) {
  visit.integer({"string", "1 is the thinnest"}, string.string, {1, 12, ""});
  visit.length({"saddle_over_frets_mm", "its lowest saddle over the fret plane"}, string.saddle_over_frets,
               {-200, 200, "mm"});
  visit.length({"action12_mm", "its lowest action at fret 12"}, string.action12, {-100, 100, "mm"});
  object(visit, {"decided_by", "the note that would touch"}, string.decided_by);
}

void describe(FieldVisitor& visit, LeastCleanAction& least) {
  object(visit, {"outer", "the lowest clean saddle and its action"}, least.outer);
  object(visit, {"bass", "what decides on the bass side"}, least.bass);
  object(visit, {"treble", "what decides on the treble side"}, least.treble);
  list(visit, {"strings", "each string by itself"}, least.strings, {1, 12});
}

}  // namespace tailblock

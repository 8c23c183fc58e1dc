#include <array>

#include "strings/contact_map.h"

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 3> verdicts{"clean", "on_hard_playing", "on_normal_playing"};

}  // namespace

void describe(FieldVisitor& visit, NoteAsked& note) {
  visit.integer({"string", "1 is the thinnest"}, note.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, note.stopped_fret, {0, 23, ""});
}

void describe(FieldVisitor& visit, ContactMapRequest& request) {
  object(visit, {"neck", "neck, nut, relief and frets", Need::has_default}, request.neck);
  object(visit, {"action", "heights at fret 12 or at the saddle"}, request.action);
  list(visit, {"strings", "string 1, the thinnest, first"}, request.strings, {1, 12});
  object(visit, {"attack", "how hard the player plays normally"}, request.attack);
  object(visit, {"hard_attack", "the hardest the player plays"}, request.hard_attack);
  list(visit, {"notes", "the notes asked for; empty: every note", Need::has_default}, request.notes, {0, 288});
}

void describe(FieldVisitor& visit, NoteContact& note) {
  visit.integer({"string", "1 is the thinnest"}, note.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, note.stopped_fret, {0, 23, ""});
  choice(visit, {"verdict", "when it buzzes"}, note.verdict, verdicts);
  visit.integer({"struck_fret", "the fret struck hardest; 0 when none is touched"}, note.struck_fret, {0, 24, ""});
  visit.flag({"lies_on_fret", "the string lies on that fret before it is plucked; nothing was run"}, note.lies_on_fret);
  visit.number({"gain_db_normal", "part of the bridge's force above 2 kHz, over the same note without frets"},
               note.gain_db_normal, {-100, 100, "dB"});
  visit.number({"gain_db_hard", "the same when played hard"}, note.gain_db_hard, {-100, 100, "dB"});
  visit.number({"impulse_normal_mns", "to all frets in a quarter of a second, mN s"}, note.impulse_normal_mns,
               {0, 1e6, "mN s"});
  visit.number({"impulse_hard_mns", "the same when played hard"}, note.impulse_hard_mns, {0, 1e6, "mN s"});
}

void describe(FieldVisitor& visit, ContactMapResult& result) {
  list(visit, {"notes", "in the order asked; else string 1 open, string 1 at fret 1, and so on"}, result.notes,
       {1, 288});
  visit.integer({"clean", "notes that are clean even when played hard"}, result.clean, {0, 288, ""});
  visit.integer({"on_hard_playing", "notes that buzz only when played hard"}, result.on_hard_playing, {0, 288, ""});
  visit.integer({"on_normal_playing", "notes that buzz in normal playing"}, result.on_normal_playing, {0, 288, ""});
  visit.text({"verdict", "one sentence"}, result.verdict, 400);
}

}  // namespace tailblock

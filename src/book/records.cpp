#include "book/records.h"

#include "book/book.h"
#include "book/record_fields.h"

namespace tailblock {
namespace {

constexpr Range actions{0, 10, "mm"};  // over the top of fret 12; a playable one is 1..4
constexpr Range height_changes{-10, 10, "mm"};

}  // namespace

void describe(FieldVisitor& visit, Owner& owner) {
  record_id(visit, owner.id);
  visit.text({"name", "the owner's name"}, owner.name, name_bytes);
  visit.text({"contact", "how to reach them", free_to_leave_out}, owner.contact, name_bytes);
  note(visit, owner.note);
}

void describe(FieldVisitor& visit, Home& home) {
  record_id(visit, home.id);
  visit.text({"name", "what the shop calls the place"}, home.name, name_bytes);
  object(visit,
         {"air", "its air through the year; logged days are kept beside it, never in air.log", free_to_leave_out},
         home.air);
  note(visit, home.note);
}

void describe(FieldVisitor& visit, Instrument& instrument) {
  constexpr Need free = free_to_leave_out;
  record_id(visit, instrument.id);
  visit.integer({"owner_id", "whose it is"}, instrument.owner_id, record_numbers);
  visit.integer({"home_id", "where it lives"}, instrument.home_id, record_numbers);
  visit.text({"name", "as the shop calls it"}, instrument.name, name_bytes);
  visit.text({"made", "year and maker as far as known, free text", free}, instrument.made, name_bytes);
  object(visit, {"design", "what bears on how it answers the air", free}, instrument.design);
  visit.length({"scale_length_mm", "nut to saddle, nominal: twice the distance from nut to fret 12", free},
               instrument.scale_length, {400, 750, "mm"});
  visit.integer({"body_joint_fret", "the fret over the body joint", free}, instrument.body_joint_fret, {10, 16, ""});
  visit.integer({"fret_count", "frets on the board", free}, instrument.fret_count, {12, 26, ""});
  visit.flag({"adjustable_rod", "whether relief can be set by a rod", free}, instrument.adjustable_rod);
  choice(visit, {"slot", "the saddle's slot: open at both ends of the bridge, or closed at both", free},
         instrument.slot, saddle_slot_names);
  maybe_length(visit, {"slot_depth_mm", "floor of the slot to the bridge top"}, instrument.slot_depth, {0.5, 15, "mm"});
  maybe_length(visit, {"slot_width_mm", "front wall to back wall"}, instrument.slot_width, {1, 10, "mm"});
  maybe_length(visit, {"slot_length_mm", "end to end"}, instrument.slot_length, {30, 200, "mm"});
  visit.text({"string_set", "a name in data/string_sets.csv", free}, instrument.string_set, id_bytes);
  visit.text({"tuning", "a name in data/tunings.csv", free}, instrument.tuning, id_bytes);
  choice(visit, {"attack", "how hard the player drives the strings", free}, instrument.attack, attack_level_names);
  maybe_length(visit, {"wanted_action12_bass_mm", "the action at fret 12 this player likes, bass"},
               instrument.wanted_action12_bass, actions);
  maybe_length(visit, {"wanted_action12_treble_mm", "the same, treble"}, instrument.wanted_action12_treble, actions);
  maybe_length(visit, {"highest_action12_bass_mm", "the highest this player puts up with, bass"},
               instrument.highest_action12_bass, actions);
  maybe_length(visit, {"highest_action12_treble_mm", "the same, treble"}, instrument.highest_action12_treble, actions);
  note(visit, instrument.note);
}

void describe(FieldVisitor& visit, Visit& kept) {
  record_id(visit, kept.id);
  visit.integer({"instrument_id", "which instrument came in"}, kept.instrument_id, record_numbers);
  visit.date({"date", "the day"}, kept.date);
  visit.text({"reason", "what the owner said, in the owner's words", free_to_leave_out}, kept.reason, note_bytes);
  note(visit, kept.note);
}

void describe(FieldVisitor& visit, Reading& reading) {
  constexpr Need free = free_to_leave_out;
  record_id(visit, reading.id);
  visit.integer({"visit_id", "the visit it was taken at"}, reading.visit_id, record_numbers);
  visit.text({"measure", "what was measured: an id in data/measures.csv"}, reading.measure, id_bytes);
  visit.text({"typed", "as it was entered: 5/64, 2,1 mm", free}, reading.typed, id_bytes);
  visit.number({"value", "in the measure's unit"}, reading.value, {-10000, 10000, ""});
  visit.text({"gauge", "read with: an id in data/gauges.csv"}, reading.gauge, id_bytes);
  visit.number({"gauge_sd",
                "one standard deviation of that gauge in this hand, in the measure's unit; 0: the gauge's own", free},
               reading.gauge_sd, {0, 1000, ""});
  choice(visit, {"state", "as found, before any work of the visit, or as left, after it", free}, reading.state,
         reading_state_names);
  visit.integer({"supersedes", "the reading this one corrects; 0: none", free}, reading.supersedes, record_numbers);
  visit.integer({"superseded_by", "the reading that corrects this one; 0: it stands. Set by the book", free},
                reading.superseded_by, record_numbers);
  note(visit, reading.note);
}

void describe(FieldVisitor& visit, Intervention& intervention) {
  record_id(visit, intervention.id);
  visit.integer({"visit_id", "the visit it was done at"}, intervention.visit_id, record_numbers);
  visit.text({"kind", "what was done: an id in data/interventions.csv"}, intervention.kind, id_bytes);
  maybe_length(visit, {"action12_bass_change_mm", "by how much it raised the strings at fret 12, bass"},
               intervention.action12_bass_change, height_changes);
  maybe_length(visit, {"action12_treble_change_mm", "the same, treble"}, intervention.action12_treble_change,
               height_changes);
  maybe_length(visit, {"change_sd_mm", "one standard deviation of those changes; left out: that of the kind of work"},
               intervention.change_sd, {0.001, 5, "mm"});
  note(visit, intervention.note);
}

void describe(FieldVisitor& visit, SaddleDecision& decision) {
  record_id(visit, decision.id);
  visit.integer({"visit_id", "the visit it was taken at"}, decision.visit_id, record_numbers);
  visit.text({"choice", "leave, turn_rod, one_saddle, two_saddles, humid_room or neck_angle"}, decision.choice,
             id_bytes);
  visit.length({"raise_bass_at_saddle_mm", "how much taller the saddle is made, bass; negative is lower"},
               decision.raise_bass_at_saddle, height_changes);
  visit.length({"raise_treble_at_saddle_mm", "the same, treble"}, decision.raise_treble_at_saddle, height_changes);
  visit.length({"set_bass_at_fret12_mm", "the action to leave today, in today's air, bass"},
               decision.set_bass_at_fret12, actions);
  visit.length({"set_treble_at_fret12_mm", "the same, treble"}, decision.set_treble_at_fret12, actions);
  visit.text({"reason", "why this one", free_to_leave_out}, decision.reason, note_bytes);
}

void describe(FieldVisitor& visit, InstrumentLine& line) {
  record_id(visit, line.id);
  visit.text({"name", "as the shop calls it"}, line.name, name_bytes);
  visit.text({"owner", "the owner's name"}, line.owner, name_bytes);
  visit.text({"home", "the home's name"}, line.home, name_bytes);
  choice(visit, {"body_size", "size of the body"}, line.body_size, body_size_names);
  choice(visit, {"bracing", "how the top is braced"}, line.bracing, bracing_names);
  choice(visit, {"slot", "the saddle's slot"}, line.slot, saddle_slot_names);
  visit.integer({"visits", "how often it came in"}, line.visits, record_numbers);
  maybe(visit, {"last_visit", "the newest visit's day"}, line.last_visit,
        [&](const Field& field, Date& date) { visit.date(field, date); });
  maybe_number(visit, {"last_action12_bass_mm", "the newest standing reading of action at fret 12, bass"},
               line.last_action12_bass_mm, {-1000, 1000, "mm"});
  maybe_number(visit, {"last_action12_treble_mm", "the same, treble"}, line.last_action12_treble_mm,
               {-1000, 1000, "mm"});
}

void describe(FieldVisitor& visit, InstrumentPage& page) {
  list(visit, {"lines", "newest visit first, then by name"}, page.lines, {0, 200});
  visit.integer({"page", "which page, the first being 0"}, page.page, record_numbers);
  visit.flag({"more", "whether another page follows"}, page.more);
  visit.integer({"total", "how many instruments match"}, page.total, record_numbers);
}

void describe(FieldVisitor& visit, VisitStory& story) {
  object(visit, {"visit", "the visit itself"}, story.visit);
  list(visit, {"readings", "every reading, superseded ones included, oldest first"}, story.readings, any_count);
  list(visit, {"interventions", "work that moved the strings"}, story.interventions, any_count);
  list(visit, {"decisions", "saddle choices taken"}, story.decisions, any_count);
}

void describe(FieldVisitor& visit, InstrumentStory& story) {
  object(visit, {"instrument", "the instrument"}, story.instrument);
  object(visit, {"owner", "whose it is"}, story.owner);
  object(visit, {"home", "where it lives"}, story.home);
  visit.integer({"logged_days", "how many days of air its home has logged"}, story.logged_days, record_numbers);
  list(visit, {"visits", "its visits, newest last"}, story.visits, any_count);
}

}  // namespace tailblock

#include "book/finding_records.h"

#include "book/record_fields.h"

namespace tailblock {
namespace {

constexpr Range along_a_part{0, 2000, "mm"};
constexpr Count extents{0, 20};
constexpr Count photos{0, 40};

void supersession(FieldVisitor& visit, RecordId& supersedes, RecordId& superseded_by) {
  visit.integer({"supersedes", "the one this corrects; 0: none", free_to_leave_out}, supersedes, record_numbers);
  visit.integer({"superseded_by", "the one that corrects this; 0: it stands. Set by the book", free_to_leave_out},
                superseded_by, record_numbers);
}

}  // namespace

void describe(FieldVisitor& visit, FindingExtent& extent) {
  visit.text({"measure", "what was read: an id in data/finding_measures.csv"}, extent.measure, id_bytes);
  visit.text({"typed", "as it was entered: .004, 2 mm", free_to_leave_out}, extent.typed, id_bytes);
  visit.length({"value_mm", "what it means"}, extent.value, {0, 2000, "mm"});
}

void describe(FieldVisitor& visit, FindingPhoto& photo) {
  visit.integer({"photo_id", "a photo in the book"}, photo.photo_id, record_numbers);
}

void describe(FieldVisitor& visit, Finding& finding) {
  constexpr Need free = free_to_leave_out;
  const auto length = [&](const Field& field, Length& value) { visit.length(field, value, along_a_part); };
  record_id(visit, finding.id);
  visit.integer({"visit_id", "the visit it was found at", free}, finding.visit_id, record_numbers);
  visit.text({"kind", "what it is: a name in data/finding_kinds.csv"}, finding.kind, id_bytes);
  choice(visit, {"view", "which drawing it is on"}, finding.view, drawing_view_names);
  choice(visit, {"shape", "how it lies there"}, finding.shape, finding_shape_names);
  list(visit, {"points", "one; a line's from end to end; an area's round its edge"}, finding.points, {1, 60});
  visit.text({"place", "in words: lower bout, bass side", free}, finding.place, name_bytes);
  visit.text({"part", "the drawn part it is of: lower tone bar, fret 3", free}, finding.part, name_bytes);
  maybe(visit, {"part_from_mm", "along that part from its first end"}, finding.part_from, length);
  maybe(visit, {"part_to_mm", "along that part from its first end"}, finding.part_to, length);
  choice(visit, {"opening", "whether it stands open", free}, finding.opening, opening_names);
  choice(visit, {"moving", "whether it moves under the hand or the strings", free}, finding.moving, moving_names);
  choice(visit, {"severity", "how much it matters", free}, finding.severity, severity_names);
  choice(visit, {"certainty", "how sure", free}, finding.certainty, certainty_names);
  list(visit, {"extents", "what was read at it", free}, finding.extents, extents);
  list(visit, {"photos", "that show it", free}, finding.photos, photos);
  visit.flag({"withdrawn", "true in a correction: what it corrects was no finding", free}, finding.withdrawn);
  supersession(visit, finding.supersedes, finding.superseded_by);
  note(visit, finding.note);
}

void describe(FieldVisitor& visit, FindingChange& change) {
  constexpr Need free = free_to_leave_out;
  record_id(visit, change.id);
  visit.integer({"visit_id", "the visit that says it", free}, change.visit_id, record_numbers);
  visit.integer({"finding_id", "the earlier finding"}, change.finding_id, record_numbers);
  choice(visit, {"state", "what has become of it"}, change.state, finding_state_names);
  list(visit, {"extents", "what was read at it now", free}, change.extents, extents);
  list(visit, {"photos", "that show it now", free}, change.photos, photos);
  supersession(visit, change.supersedes, change.superseded_by);
  note(visit, change.note);
}

void describe(FieldVisitor& visit, KeptPhoto& photo) {
  record_id(visit, photo.id);
  visit.text({"sha256", "of the whole picture's bytes"}, photo.sha256, id_bytes);
  visit.integer({"width_px", "upright"}, photo.width_px, {1, 100000, ""});
  visit.integer({"height_px", "upright"}, photo.height_px, {1, 100000, ""});
}

void describe(FieldVisitor& visit, DatedChange& dated) {
  visit.date({"date", "the day of the visit that says it"}, dated.date);
  object(visit, {"change", "what it says"}, dated.change);
}

void describe(FieldVisitor& visit, FindingStory& story) {
  visit.integer({"number", "on its instrument, from 1; a correction keeps it"}, story.number, {1, 1000000, ""});
  visit.date({"found_on", "the day of the visit that found it"}, story.found_on);
  object(visit, {"finding", "as it stands"}, story.finding);
  list(visit, {"changes", "what visits since have said of it, oldest first"}, story.changes, any_count);
  visit.flag({"open", "neither repaired nor gone"}, story.open);
}

void describe(FieldVisitor& visit, Survey& survey) {
  visit.integer({"visit_id", "the visit"}, survey.visit_id, record_numbers);
  visit.integer({"instrument_id", "its instrument"}, survey.instrument_id, record_numbers);
  visit.date({"date", "the day"}, survey.date);
  maybe(visit, {"visit_before", "the day of the visit before"}, survey.visit_before,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  list(visit, {"found_now", "at this visit, as they stand"}, survey.found_now, any_count);
  list(visit, {"found_before", "still open when this visit began"}, survey.found_before, any_count);
  list(visit, {"superseded", "what this visit's corrections replaced or withdrew, oldest first"}, survey.superseded,
       any_count);
  visit.texts({"what_changed", "since the visits before, the gravest first"}, survey.what_changed, note_bytes,
              any_count);
}

}  // namespace tailblock

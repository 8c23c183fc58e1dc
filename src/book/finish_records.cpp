#include "book/finish_records.h"

#include "book/record_fields.h"

namespace tailblock {
namespace {

constexpr std::size_t line_bytes = 500;

void record_number(FieldVisitor& visit, const Field& field, RecordId& id) { visit.integer(field, id, record_numbers); }

}  // namespace

void describe(FieldVisitor& visit, FinishTrial& trial) {
  constexpr Need free = free_to_leave_out;
  const auto line = [&](const Field& field, std::string& words) { visit.text(field, words, line_bytes); };
  record_id(visit, trial.id);
  record_number(visit, {"visit_id", "the visit it was made at", free}, trial.visit_id);
  choice(visit, {"kind", "what it tries", free}, trial.kind, trial_kind_names);
  line({"aim", "what it is to match, and where", free}, trial.aim);
  line({"carrier", "what the colour is in: an id in data/finishes.csv, or plain words", free}, trial.carrier);
  visit.text({"mix", "colours and how much of each"}, trial.mix, note_bytes);
  line({"dilution", "with what, how far", free}, trial.dilution);
  line({"substrate", "what it was put on, and what lies under it"}, trial.substrate);
  line({"application", "how, and how many passes", free}, trial.application);
  visit.text({"result", "dry, and in which light", free}, trial.result, note_bytes);
  choice(visit, {"verdict", "what becomes of it", free}, trial.verdict, trial_verdict_names);
  list(visit, {"photos", "that show it", free}, trial.photos, {0, 40});
  visit.date({"day", "when it was made or looked at"}, trial.day);
  visit.text({"who", "by whom", free}, trial.who, name_bytes);
  visit.flag({"withdrawn", "true in a correction: what it corrects was no trial", free}, trial.withdrawn);
  record_number(visit, {"supersedes", "the one this says more of, or corrects; 0: none", free}, trial.supersedes);
  record_number(visit, {"superseded_by", "the one that does; 0: it stands. Set by the book", free},
                trial.superseded_by);
  note(visit, trial.note);
}

void describe(FieldVisitor& visit, FinishTrialStory& story) {
  object(visit, {"trial", "as it stands"}, story.trial);
  record_number(visit, {"instrument_id", "it was made for"}, story.instrument_id);
  visit.text({"instrument", "its name"}, story.instrument, line_bytes);
  list(visit, {"earlier", "what was said of it before, the newest first"}, story.earlier, {0, 1000});
}

void describe(FieldVisitor& visit, FinishTrialPage& page) {
  list(visit, {"trials", "those that stand, the newest first"}, page.trials, {0, 200});
  visit.integer({"page", "0-based"}, page.page, record_numbers);
  visit.flag({"more", "there is a page after this one"}, page.more);
  visit.integer({"total", "on all pages"}, page.total, record_numbers);
}

void describe(FieldVisitor& visit, VisitPhoto& photo) {
  constexpr Need free = free_to_leave_out;
  record_id(visit, photo.id);
  record_number(visit, {"visit_id", "the visit it shows", free}, photo.visit_id);
  record_number(visit, {"photo_id", "a photo in the book"}, photo.photo_id);
  visit.text({"words", "what it shows", free}, photo.words, line_bytes);
  visit.flag({"left_out", "it is shown no longer", free}, photo.left_out);
}

}  // namespace tailblock

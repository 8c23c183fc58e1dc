#include "book/job_records.h"

#include "book/record_fields.h"

namespace tailblock {
namespace {

constexpr Range minutes_of_day{0, 24 * 60 - 1, "min"};
constexpr Range hour_counts{0, 2000, "h"};

void at_visit(FieldVisitor& visit, RecordId& id) {
  visit.integer({"visit_id", "of this visit", free_to_leave_out}, id, record_numbers);
}

void of_job(FieldVisitor& visit, RecordId& id) {
  visit.integer({"job_id", "of this job", free_to_leave_out}, id, record_numbers);
}

void said_by(FieldVisitor& visit, std::string& who) { visit.text({"who", "who said so"}, who, name_bytes); }

}  // namespace

Moment beginning(const WorkSpell& spell) { return {spell.began_on, spell.began_minute}; }

std::optional<Moment> ending(const WorkSpell& spell) {
  if (!spell.ended_on) return std::nullopt;
  return Moment{*spell.ended_on, spell.ended_minute};
}

void describe(FieldVisitor& visit, Job& job) {
  record_id(visit, job.id);
  at_visit(visit, job.visit_id);
  visit.integer({"finding_id", "the finding it is for; 0: none", free_to_leave_out}, job.finding_id, record_numbers);
  visit.text({"procedure", "an id in data/procedures.csv"}, job.procedure, id_bytes);
  choice(visit, {"advice", "what the shop thinks should become of it", free_to_leave_out}, job.advice,
         job_advice_names);
  visit.flag({"withdrawn", "thought better of", free_to_leave_out}, job.withdrawn);
  note(visit, job.note);
}

void describe(FieldVisitor& visit, JobAnswer& answer) {
  record_id(visit, answer.id);
  of_job(visit, answer.job_id);
  visit.text({"decision", "an id in data/procedure_decisions.csv"}, answer.decision, id_bytes);
  visit.text({"outcome", "one of its outcomes"}, answer.outcome, id_bytes);
  visit.date({"day", "the day"}, answer.day);
  said_by(visit, answer.who);
}

void describe(FieldVisitor& visit, JobAmount& amount) {
  record_id(visit, amount.id);
  of_job(visit, amount.job_id);
  visit.text({"amount", "what is counted, as data/operations.csv names it"}, amount.amount, id_bytes);
  visit.number({"count", "how many"}, amount.count, {0, 100000, ""});
}

void describe(FieldVisitor& visit, JobMaterial& material) {
  record_id(visit, material.id);
  of_job(visit, material.job_id);
  visit.text({"name", "what is bought"}, material.name, name_bytes);
  visit.text({"quantity", "an exact decimal; 0 takes it off", free_to_leave_out}, material.quantity, id_bytes);
  visit.text({"unit_price", "before tax, an exact decimal"}, material.unit_price, id_bytes);
}

void describe(FieldVisitor& visit, JobTerms& terms) {
  record_id(visit, terms.id);
  of_job(visit, terms.job_id);
  visit.text({"fixed_price", "for the labour, an exact decimal; empty: by its hours", free_to_leave_out},
             terms.fixed_price, id_bytes);
  visit.text({"tax_percent", "an exact decimal; empty: the shop's", free_to_leave_out}, terms.tax_percent, id_bytes);
  visit.text({"risk", "in words that an owner can accept or refuse", free_to_leave_out}, terms.risk, note_bytes);
}

void describe(FieldVisitor& visit, JobOffer& offer) {
  record_id(visit, offer.id);
  of_job(visit, offer.job_id);
  visit.date({"day", "the day it was offered"}, offer.day);
  visit.text({"words", "the line as the owner read it"}, offer.words, note_bytes);
  visit.number({"hours_low", "hands-on, seldom less"}, offer.hours_low, hour_counts);
  visit.number({"hours", "hands-on, as usual"}, offer.hours, hour_counts);
  visit.number({"hours_high", "hands-on, seldom more"}, offer.hours_high, hour_counts);
  visit.text({"net", "before tax, an exact decimal"}, offer.net, id_bytes);
  visit.text({"tax", "the tax on it, an exact decimal"}, offer.tax, id_bytes);
  visit.text({"currency", "ISO 4217"}, offer.currency, id_bytes);
  visit.text({"labour", "of the net", free_to_leave_out}, offer.labour, id_bytes);
  visit.text({"materials", "of the net", free_to_leave_out}, offer.materials, id_bytes);
  visit.text({"tax_percent", "the rate of the tax", free_to_leave_out}, offer.tax_percent, id_bytes);
  visit.text({"visit_net", "what it needs of arriving and finishing, paid once a visit beside the net", free_to_leave_out},
             offer.visit_net, id_bytes);
  visit.text({"visit_tax", "the tax on that", free_to_leave_out}, offer.visit_tax, id_bytes);
}

void describe(FieldVisitor& visit, OwnerWord& word) {
  record_id(visit, word.id);
  of_job(visit, word.job_id);
  visit.integer({"offer_id", "the offer it answers; 0: an operation", free_to_leave_out}, word.offer_id,
                record_numbers);
  visit.text({"operation", "the operation it is about; empty: an offer", free_to_leave_out}, word.operation, id_bytes);
  choice(visit, {"says", "the owner's answer"}, word.says, owner_says_names);
  visit.date({"day", "the day"}, word.day);
  said_by(visit, word.who);
}

void describe(FieldVisitor& visit, WorkSpell& spell) {
  record_id(visit, spell.id);
  of_job(visit, spell.job_id);
  visit.text({"operation", "an id in data/operations.csv"}, spell.operation, id_bytes);
  visit.text({"person", "whose hands", free_to_leave_out}, spell.person, name_bytes);
  visit.date({"began_on", "the day it began"}, spell.began_on);
  visit.integer({"began_minute", "since midnight, by the shop's clock"}, spell.began_minute, minutes_of_day);
  maybe_date(visit, {"ended_on", "the day it ended; absent: hands are still at it"}, spell.ended_on);
  visit.integer({"ended_minute", "since midnight", free_to_leave_out}, spell.ended_minute, minutes_of_day);
  visit.flag({"finished", "the hands-on part is done", free_to_leave_out}, spell.finished);
  visit.integer({"lot_id", "what it was glued or finished with; 0: not said", free_to_leave_out}, spell.lot_id,
                record_numbers);
  note(visit, spell.note);
}

void describe(FieldVisitor& visit, WorkEnd& end) {
  visit.date({"day", "the day it ended"}, end.day);
  visit.integer({"minute", "since midnight, by the shop's clock"}, end.minute, minutes_of_day);
  visit.flag({"finished", "the hands-on part is done; else it goes on later", free_to_leave_out}, end.finished);
  visit.integer({"lot_id", "what it was glued or finished with; 0: not said", free_to_leave_out}, end.lot_id,
                record_numbers);
  note(visit, end.note);
}

void describe(FieldVisitor& visit, WorkCorrection& correction) {
  record_id(visit, correction.id);
  visit.integer({"spell_id", "the stretch of work it puts right", free_to_leave_out}, correction.spell_id,
                record_numbers);
  visit.integer({"minutes", "how long hands were at it", Need::required}, correction.minutes, {0, 30 * 24 * 60, "min"});
  visit.flag({"finished", "the hands-on part is done", free_to_leave_out}, correction.finished);
  visit.date({"day", "the day it was put right"}, correction.day);
  visit.text({"who", "who says so", free_to_leave_out}, correction.who, name_bytes);
  note(visit, correction.note);
}

void describe(FieldVisitor& visit, SaidAtVisit& said) {
  record_id(visit, said.id);
  at_visit(visit, said.visit_id);
  choice(visit, {"about", "a symptom, or an answer to a question of the diagnosis"}, said.about, said_about_names);
  visit.text({"name", "an id in data/symptoms.csv or data/diagnosis_facts.csv"}, said.name, id_bytes);
  visit.flag({"holds", "no: it does not, or no longer"}, said.holds);
  visit.date({"day", "the day"}, said.day);
  visit.text({"who", "who said so", free_to_leave_out}, said.who, name_bytes);
}

void describe(FieldVisitor& visit, MaterialLot& lot) {
  record_id(visit, lot.id);
  visit.text({"material", "an id in data/adhesives.csv or data/finishes.csv, or plain words"}, lot.material,
             name_bytes);
  visit.text({"words", "as on the label", free_to_leave_out}, lot.words, name_bytes);
  visit.date({"opened_on", "the day it was opened or mixed"}, lot.opened_on);
  maybe_date(visit, {"good_until", "the last day it is used"}, lot.good_until);
  maybe_date(visit, {"empty_on", "used up or thrown away"}, lot.empty_on);
  note(visit, lot.note);
}

void describe(FieldVisitor& visit, GateRecord& gate) {
  record_id(visit, gate.id);
  at_visit(visit, gate.visit_id);
  said_by(visit, gate.who);
  visit.date({"day", "the day"}, gate.day);
  visit.text({"why", "why work goes on although the guitar is out of its range"}, gate.why, note_bytes);
}

void describe(FieldVisitor& visit, PromiseRecord& promise) {
  record_id(visit, promise.id);
  at_visit(visit, promise.visit_id);
  visit.date({"ready_on", "ready by the end of it"}, promise.ready_on);
  visit.number({"chance", "it was given with"}, promise.chance, {0, 1, ""});
  visit.date({"said_on", "the day it was said"}, promise.said_on);
}

void describe(FieldVisitor& visit, BenchWish& wish) {
  record_id(visit, wish.id);
  at_visit(visit, wish.visit_id);
  maybe_date(visit, {"due_on", "wanted by the end of that day"}, wish.due_on);
  visit.number({"weight", "how much its lateness counts against others", free_to_leave_out}, wish.weight, {0, 100, ""});
  maybe_date(visit, {"waits_until", "a part or the owner is waited for: no work before that day"}, wish.waits_until);
  note(visit, wish.note);
}

void describe(FieldVisitor& visit, Pin& pin) {
  record_id(visit, pin.id);
  of_job(visit, pin.job_id);
  visit.text({"operation", "an id in data/operations.csv"}, pin.operation, id_bytes);
  visit.integer({"which", "of the times that the job does this operation", free_to_leave_out}, pin.which, {1, 100, ""});
  maybe_date(visit, {"day", "it starts on that day; absent: let go again"}, pin.day);
  visit.integer({"minute", "since midnight", free_to_leave_out}, pin.minute, minutes_of_day);
}

void describe(FieldVisitor& visit, ShopAir& air) {
  record_id(visit, air.id);
  visit.date({"day", "the day"}, air.day);
  visit.integer({"minute", "since midnight", free_to_leave_out}, air.minute, minutes_of_day);
  visit.number({"temperature_c", "in the shop"}, air.temperature_c, {-20, 50, "C"});
  visit.number({"relative_humidity", "in the shop, 0..1"}, air.relative_humidity, {0, 1, ""});
  visit.flag({"forecast", "expected, not read", free_to_leave_out}, air.forecast);
}

void describe(FieldVisitor& visit, Handover& handover) {
  record_id(visit, handover.id);
  at_visit(visit, handover.visit_id);
  visit.date({"day", "the day it went home"}, handover.day);
  visit.text({"taken_by", "who took it", free_to_leave_out}, handover.taken_by, name_bytes);
}

void describe(FieldVisitor& visit, AnsweredBefore& answer) {
  visit.text({"procedure", "an id in data/procedures.csv"}, answer.procedure, id_bytes);
  visit.text({"decision", "an id in data/procedure_decisions.csv"}, answer.decision, id_bytes);
  visit.text({"outcome", "one of its outcomes"}, answer.outcome, id_bytes);
}

void describe(FieldVisitor& visit, JobStory& story) {
  object(visit, {"job", "the repair"}, story.job);
  visit.text({"finding_kind", "of the finding it is for; empty: none"}, story.finding_kind, id_bytes);
  visit.text({"finding_part", "that the finding is on; may be empty"}, story.finding_part, name_bytes);
  list(visit, {"at_finding", "the latest of each length read at the finding it is for"}, story.at_finding, any_count);
  maybe_length(visit, {"drawn_length_mm", "of that finding's line as it is drawn; absent: it is no line"},
               story.drawn_length, {0, 10000, "mm"});
  list(visit, {"answers", "to its questions, oldest first"}, story.answers, any_count);
  list(visit, {"amounts", "what it takes, oldest first"}, story.amounts, any_count);
  list(visit, {"materials", "bought for it, oldest first"}, story.materials, any_count);
  list(visit, {"terms", "it is priced by, oldest first"}, story.terms, any_count);
  list(visit, {"offers", "made to the owner, oldest first"}, story.offers, any_count);
  list(visit, {"words", "of the owner, oldest first"}, story.words, any_count);
  list(visit, {"spells", "of hands-on work as corrected, oldest first"}, story.spells, any_count);
  list(visit, {"corrections", "of the clock, oldest first"}, story.corrections, any_count);
  list(visit, {"pins", "of its operations, oldest first"}, story.pins, any_count);
}

void describe(FieldVisitor& visit, VisitWork& work) {
  object(visit, {"visit", "the visit"}, work.visit);
  list(visit, {"jobs", "repairs chosen at it"}, work.jobs, any_count);
  list(visit, {"overrides", "of the humidity gate"}, work.overrides, any_count);
  list(visit, {"said", "of what is wrong, oldest first"}, work.said, any_count);
  list(visit, {"promises", "oldest first"}, work.promises, any_count);
  list(visit, {"wishes", "when it is wanted, oldest first"}, work.wishes, any_count);
  list(visit, {"handovers", "once it went home"}, work.handovers, any_count);
  list(visit, {"papers", "given to the owner, oldest first"}, work.papers, any_count);
  list(visit, {"invoiced", "what those that are invoices ask for"}, work.invoiced, any_count);
  list(visit, {"before", "answered at earlier visits of the instrument, oldest first"}, work.before, any_count);
}

}  // namespace tailblock

#include <array>

#include "repair/procedure.h"

namespace tailblock {
namespace {

constexpr auto optional = Need::has_default;
constexpr Count few{0, 60};
constexpr Range minutes{0, 1e7, "min"};
constexpr std::array<std::string_view, 6> known_names{"answered", "read",      "too_near",
                                                      "assumed",  "on_record", "overridden"};

/// A spread of minutes as three fields.
void spread(FieldVisitor& visit, const std::array<std::string_view, 3>& names, std::string_view doc, Spread& value) {
  visit.number({names[0], doc}, value.low, minutes);
  visit.number({names[1], doc}, value.typical, minutes);
  visit.number({names[2], doc}, value.high, minutes);
}

}  // namespace

void describe(FieldVisitor& visit, GivenAnswer& answer) {
  visit.text({"decision", "the question"}, answer.decision, 60);
  visit.text({"outcome", "what was chosen"}, answer.outcome, 60);
}

void describe(FieldVisitor& visit, GivenAmount& amount) {
  visit.text({"amount", "what there are so many of, as in data/operations.csv"}, amount.amount, 60);
  visit.number({"count", "how many"}, amount.count, {0, 5000, ""});
}

void describe(FieldVisitor& visit, OwnerYes& yes) {
  visit.text({"operation", "id in data/operations.csv; all: what neither lowers value nor is done on request only"},
             yes.operation, 60);
  visit.text({"by", "who said yes"}, yes.by, 120);
  visit.date({"on", "when"}, yes.on);
}

void describe(FieldVisitor& visit, ProcedureRequest& request) {
  visit.text({"procedure", "id in data/procedures.csv"}, request.procedure, 60);
  list(visit, {"readings", "what was read", optional}, request.readings, {0, 200});
  list(visit, {"answers", "what was chosen by hand", optional}, request.answers, few);
  list(visit, {"found", "as the survey or an earlier job has it; an answer stands before it", optional}, request.found,
       few);
  list(visit, {"amounts", "how many cleats, frets, millimetres of crack ...", optional}, request.amounts, few);
  visit.texts({"on_record", "operations done already at this visit", optional}, request.on_record, 60, {0, 200});
  list(visit, {"yes", "the owner's recorded yes", optional}, request.yes, few);
  maybe(visit, {"humidity_override", "work goes on although the guitar is out of its range"}, request.humidity_override,
        [&](const Field& field, GateOverride& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, DecisionShown& decision) {
  visit.text({"decision", "its id"}, decision.decision, 60);
  visit.text({"question", "as asked"}, decision.question, 300);
  visit.text({"about", "a reading, or ask"}, decision.about, 60);
  visit.text({"before", "the operation that waits for it"}, decision.before, 60);
  visit.texts({"outcomes", "what it may come out as"}, decision.outcomes, 60, few);
  visit.text({"outcome", "what it comes out as now"}, decision.outcome, 60);
  choice(visit, {"known", "how"}, decision.known, known_names);
  maybe_number(visit, {"margin_repeatability", "from the nearest limit, in repeatabilities"},
               decision.margin_repeatability, {-1e12, 1e12, ""});
  visit.flag({"stops", "nothing more is done"}, decision.stops);
  visit.text({"says", "what follows; may be empty"}, decision.says, 300);
}

void describe(FieldVisitor& visit, StepShown& step) {
  visit.text({"operation", "id in data/operations.csv"}, step.operation, 60);
  visit.text({"name", "in words"}, step.name, 200);
  choice(visit, {"family", "part of the visit"}, step.family, work_family_names);
  spread(visit, {"hands_on_low_minutes", "hands_on_minutes", "hands_on_high_minutes"}, "hands-on work",
         step.hands_on_minutes);
  spread(visit, {"wait_low_minutes", "wait_minutes", "wait_high_minutes"}, "by the clock, after it", step.wait_minutes);
  visit.text({"wait_for", "what for; may be empty"}, step.wait_for, 200);
  visit.text({"hands_on_station", "place held through the hands-on work; may be empty"}, step.hands_on_station, 60);
  visit.text({"wait_station", "fixture held in the wait; may be empty"}, step.wait_station, 60);
  visit.number({"station_wait_minutes", "how long of the wait"}, step.station_wait_minutes, minutes);
  visit.flag({"wait_station_hands_on", "held through the hands-on work too, since hands put it on"},
             step.wait_station_hands_on);
  visit.text({"skill", "the sort of work it is, as data/work_skills.csv; empty: anyone does it"}, step.skill, 60);
  maybe_number(visit, {"greatest_gap_minutes", "from the end of its hands-on work to one of greatest_gap_to"},
               step.greatest_gap_minutes, minutes);
  visit.texts({"greatest_gap_to", "operations"}, step.greatest_gap_to, 60, few);
  visit.text({"where", "where and with what it is done"}, step.where, 300);
  visit.text({"materials", "may be empty"}, step.materials, 300);
  visit.text({"amount", "what its minutes grow with, as data/operations.csv names it; empty: nothing"}, step.amount,
             60);
  visit.texts({"adhesives", "a line each"}, step.adhesives, 300, few);
  visit.texts({"finishes", "a line each"}, step.finishes, 300, few);
  visit.texts({"clamps", "what holds and how long"}, step.clamps, 100, few);
  choice(visit, {"air", "what it does to the air of the room"}, step.air, work_air_names);
  visit.flag({"needs_dust_free", "no dust in the room for an hour before"}, step.needs_dust_free);
  maybe_number(visit, {"humidity_low_percent", "of the shop"}, step.humidity_percent.low, {0, 100, "percent"});
  maybe_number(visit, {"humidity_high_percent", "of the shop"}, step.humidity_percent.high, {0, 100, "percent"});
  maybe_number(visit, {"temperature_low_c", "of the shop"}, step.temperature_c.low, {-20, 60, "C"});
  maybe_number(visit, {"temperature_high_c", "of the shop"}, step.temperature_c.high, {-20, 60, "C"});
  visit.texts({"cautions", "read where the step is read"}, step.cautions, 2000, few);
  visit.texts({"hazards", "names of the hazards among them; such a caution begins with the name"}, step.hazards, 200,
              few);
  choice(visit, {"reversible", "whether it can be taken back"}, step.reversible, reversible_names);
  choice(visit, {"value", "what a collector thinks of it"}, step.value, value_effect_names);
  visit.flag({"asks_owner", "only with a recorded yes"}, step.asks_owner);
  visit.flag({"yes_recorded", "there is one"}, step.yes_recorded);
  visit.text({"gentler", "what may be done instead; may be empty"}, step.gentler, 300);
  visit.flag({"held_by_humidity", "waits for the humidity in the body"}, step.held_by_humidity);
  visit.text({"source", "where its minutes and limits come from"}, step.source, 500);
}

void describe(FieldVisitor& visit, ProcedureResult& result) {
  visit.text({"name", "of the repair"}, result.name, 200);
  visit.text({"never", "what is refused or put off in it"}, result.never, 500);
  list(visit, {"steps", "in order"}, result.steps, {0, 200});
  list(visit, {"decisions", "its questions, as they stand"}, result.decisions, few);
  list(visit, {"next_question", "none or one"}, result.next_question, {0, 1});
  visit.text({"stopped", "why no more is done; empty: it goes on"}, result.stopped, 300);
  visit.flag({"may_start", "nothing holds it"}, result.may_start);
  visit.texts({"holds", "what is missing"}, result.holds, 1000, {0, 200});
  object(visit, {"humidity", "the gate that the humidity keeps"}, result.humidity);
  spread(visit, {"hands_on_low_minutes", "hands_on_minutes", "hands_on_high_minutes"}, "hands-on work, all steps",
         result.hands_on_minutes);
  visit.number({"wait_minutes", "typical waits, one after the other"}, result.wait_minutes, minutes);
  visit.texts({"materials", "what is needed"}, result.materials, 500, {0, 200});
}

}  // namespace tailblock

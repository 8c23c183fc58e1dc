#include <array>

#include "repair/diagnose.h"

namespace tailblock {
namespace {

constexpr auto optional = Need::has_default;
constexpr Count few{0, 60};
constexpr std::array<std::string_view, 4> line_names{"for_it", "against_it", "too_near", "unread"};
constexpr std::array<std::string_view, 3> verdict_names{"stands", "open", "ruled_out"};

}  // namespace

void describe(FieldVisitor& visit, FindingSeen& finding) {
  visit.text({"kind", "kind of finding, data/finding_kinds.csv"}, finding.kind, 60);
  visit.text({"where", "in words", optional}, finding.where, 200);
  list(visit, {"readings", "what was read at it", optional}, finding.readings, few);
}

void describe(FieldVisitor& visit, SaidFact& said) {
  visit.text({"fact", "id in data/diagnosis_facts.csv"}, said.fact, 60);
  visit.flag({"holds", "the answer: yes is true"}, said.holds);
}

void describe(FieldVisitor& visit, DiagnoseRequest& request) {
  visit.texts({"symptoms", "complaints, data/symptoms.csv; findings raise theirs by themselves", optional},
              request.symptoms, 60, few);
  list(visit, {"readings", "readings of the instrument and figures of other models", optional}, request.readings,
       {0, 200});
  list(visit, {"findings", "what the survey found", optional}, request.findings, {0, 200});
  visit.flag({"surveyed", "kinds that are not among the findings were looked for", optional}, request.surveyed);
  list(visit, {"facts", "answers to data/diagnosis_facts.csv", optional}, request.facts, {0, 100});
  maybe(visit, {"humidity_override", "work goes on although the guitar is out of its range"}, request.humidity_override,
        [&](const Field& field, GateOverride& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, EvidenceShown& line) {
  visit.text({"words", "the line"}, line.words, 300);
  visit.text({"about", "reading, change:, finding:, fact: or cause:"}, line.about, 80);
  choice(visit, {"role", "what it does"}, line.role, evidence_role_names);
  choice(visit, {"stands", "how it stands; too_near: within the repeatability of its limit"}, line.stands, line_names);
  maybe_number(visit, {"value", "as read"}, line.value, {-1e6, 1e6, ""});
  maybe_number(visit, {"margin_repeatability", "from the nearest limit, in repeatabilities; positive where it holds"},
               line.margin_repeatability, {-1e12, 1e12, ""});
}

void describe(FieldVisitor& visit, CauseShown& cause) {
  visit.text({"cause", "id in data/causes.csv"}, cause.cause, 60);
  visit.text({"name", "in words"}, cause.name, 200);
  visit.text({"symptom", "the symptom it may be behind"}, cause.symptom, 60);
  choice(visit, {"class", "order of proposing"}, cause.kind, cause_class_names);
  choice(visit, {"verdict", "stands, open or ruled out"}, cause.verdict, verdict_names);
  list(visit, {"evidence", "for and against"}, cause.evidence, few);
  visit.text({"settled_by", "what parts it from its rivals"}, cause.settled_by, 300);
  visit.texts({"remedies", "procedures or operations"}, cause.remedies, 60, few);
  visit.flag({"wait", "nothing that cannot be undone until that is settled"}, cause.wait);
  visit.text({"says", "what to mind; may be empty"}, cause.says, 300);
}

void describe(FieldVisitor& visit, NextMeasurement& next) {
  visit.text({"about", "reading, change:, finding: or fact:"}, next.about, 80);
  visit.text({"words", "what to read and how, or the question"}, next.words, 500);
  visit.integer({"decides_at_least", "open causes decided, whichever way it comes out"}, next.decides_at_least,
                {-200, 200, ""});
  visit.integer({"decides_at_most", "open causes decided at best"}, next.decides_at_most, {-200, 200, ""});
}

void describe(FieldVisitor& visit, DiagnoseResult& result) {
  visit.text({"slacken_now", "why the strings come down at once; empty: they may stay"}, result.slacken_now, 200);
  object(visit, {"humidity", "the gate that the humidity keeps"}, result.humidity);
  visit.texts({"blocked", "operations that wait for it"}, result.blocked, 200, {0, 200});
  list(visit, {"causes", "in the order of proposing"}, result.causes, {0, 200});
  list(visit, {"next", "what to read or ask next, the best first"}, result.next, {0, 300});
  visit.text({"verdict", "one sentence"}, result.verdict, 2000);
}

}  // namespace tailblock

#include "repair/procedures.h"

#include <limits>

namespace tailblock {
namespace {

constexpr Range any_value{-100000, 100000, ""};

OutcomeIs outcome_is(const CsvRow& row, std::string_view column, const std::string& text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string::npos) throw Refused(row.where(column) + ": \"" + text + "\" has no =");
  return {text.substr(0, equals), text.substr(equals + 1)};
}

Condition condition_cell(const CsvRow& row) {
  Condition condition;
  for (const auto& any : all_of_any(row.text("when"))) {
    std::vector<OutcomeIs> alternatives;
    for (const std::string& one : any) alternatives.push_back(outcome_is(row, "when", one));
    condition.push_back(std::move(alternatives));
  }
  return condition;
}

std::vector<UsualAmount> amounts_cell(const CsvRow& row, const ProcedureTables& tables) {
  std::vector<UsualAmount> amounts;
  for (const std::string& one : listed(row.text("amounts"))) {
    const std::size_t equals = std::min(one.find('='), one.size());
    const std::string name = one.substr(0, equals);
    const auto count = number_from_text(std::string_view(one).substr(std::min(equals + 1, one.size())));
    const bool known = std::any_of(tables.operations.begin(), tables.operations.end(),
                                   [&](const OperationKind& kind) { return kind.grows && kind.grows->amount == name; });
    if (!known || !count) throw Refused(row.where("amounts") + ": \"" + one + "\" is no amount");
    amounts.push_back({name, *count});
  }
  return amounts;
}

RepairProcedure& procedure_of(const CsvRow& row, std::vector<RepairProcedure>& procedures) {
  const std::string_view id = row.name("procedure");
  for (RepairProcedure& procedure : procedures) {
    if (procedure.id == id) return procedure;
  }
  throw Refused(row.where("procedure") + ": \"" + std::string(id) + "\" is not in procedures.csv");
}

void require_asked_before(const CsvRow& row, const Condition& condition, const RepairProcedure& procedure) {
  for (const auto& any : condition) {
    for (const OutcomeIs& is : any) {
      const ProcedureDecision* decision = procedure.decision(is.decision);
      if (decision == nullptr) throw Refused(row.where("when") + ": \"" + is.decision + "\" is not asked before");
      const auto& outcomes = decision->outcomes;
      if (std::none_of(outcomes.begin(), outcomes.end(), [&](const auto& it) { return it.outcome == is.outcome; })) {
        throw Refused(row.where("when") + ": \"" + is.outcome + "\" is no outcome of " + is.decision);
      }
    }
  }
}

void add_decisions(std::string_view csv, const ProcedureTables& tables, std::vector<RepairProcedure>& procedures) {
  const CsvTable table("procedure_decisions.csv", csv);
  for (const CsvRow& row : table.rows()) {
    RepairProcedure& procedure = procedure_of(row, procedures);
    const std::string id = cell_name(row, "decision");
    (void)row.name("source");
    if (procedure.decisions.empty() || procedure.decisions.back().id != id) {
      if (procedure.decision(id) != nullptr) throw Refused(row.where("decision") + ": its rows are apart");
      ProcedureDecision decision{.id = id,
                                 .before = cell_name(row, "before"),
                                 .when = condition_cell(row),
                                 .must = cell_yes(row, "must"),
                                 .question = cell_name(row, "question"),
                                 .outcomes = {}};
      require_asked_before(row, decision.when, procedure);
      procedure.decisions.push_back(std::move(decision));
    }
    DecisionOutcome outcome{.outcome = cell_name(row, "outcome"),
                            .about = cell_name(row, "about"),
                            .from = row.number_if_given("from", any_value),
                            .to = row.number_if_given("to", any_value),
                            .usual = cell_yes(row, "usual"),
                            .stops = cell_choice(row, "effect", {"go", "stop"}) == 1,
                            .says = cell_text(row, "says"),
                            .settles = {}};
    for (const std::string& one : listed(row.text("settles"))) {
      outcome.settles.push_back(outcome_is(row, "settles", one));
    }
    if (outcome.about != "ask" && row_of_id(tables.readings, outcome.about) == nullptr) {
      throw Refused(row.where("about") + ": \"" + outcome.about + "\" is no reading");
    }
    if (outcome.stops && outcome.says.empty()) throw Refused(row.where("says") + ": a stop says why");
    procedure.decisions.back().outcomes.push_back(std::move(outcome));
  }
}

void add_steps(std::string_view csv, const ProcedureTables& tables, std::vector<RepairProcedure>& procedures) {
  const CsvTable table("procedure_steps.csv", csv);
  for (const CsvRow& row : table.rows()) {
    RepairProcedure& procedure = procedure_of(row, procedures);
    ProcedureStep step{.operation = cell_name(row, "operation"), .when = condition_cell(row)};
    (void)row.name("source");
    if (row_of_id(tables.operations, step.operation) == nullptr) {
      throw Refused(row.where("operation") + ": \"" + step.operation + "\" is not in operations.csv");
    }
    require_asked_before(row, step.when, procedure);
    procedure.steps.push_back(std::move(step));
  }
}

void require_one_outcome_everywhere(const std::string& where, const std::vector<DecisionOutcome>& outcomes) {
  constexpr double endless = std::numeric_limits<double>::infinity();
  double reached = -endless;
  for (const DecisionOutcome& outcome : outcomes) {
    if (outcome.from.value_or(-endless) != reached) throw Refused(where + ": its bands do not follow on each other");
    reached = outcome.to.value_or(endless);
  }
  if (reached != endless) throw Refused(where + ": its bands leave high values out");
}

void require_sound(const RepairProcedure& procedure) {
  if (procedure.steps.empty()) throw Refused("procedures.csv, " + procedure.id + ": has no steps");
  for (const std::string& operation : procedure.its_own) {
    if (std::ranges::find(procedure.steps, operation, &ProcedureStep::operation) == procedure.steps.end()) {
      throw Refused("procedures.csv, " + procedure.id + " its_own: " + operation + " is not one of its steps");
    }
  }
  for (const ProcedureDecision& decision : procedure.decisions) {
    const std::string where = "procedure_decisions.csv, " + procedure.id + " " + decision.id;
    const auto usual =
        std::count_if(decision.outcomes.begin(), decision.outcomes.end(), [](const auto& it) { return it.usual; });
    if (usual != 1) throw Refused(where + ": needs exactly one usual outcome");
    const std::string& about = decision.outcomes.front().about;
    for (const DecisionOutcome& outcome : decision.outcomes) {
      if (outcome.about != about) throw Refused(where + ": asks about two things");
      if (outcome.usual && outcome.stops) throw Refused(where + ": its usual outcome stops");
      if (about == "ask" && (outcome.from || outcome.to)) throw Refused(where + ": an answer has no band");
    }
    if (about != "ask") require_one_outcome_everywhere(where, decision.outcomes);
    const bool has_step = std::any_of(procedure.steps.begin(), procedure.steps.end(),
                                      [&](const ProcedureStep& step) { return step.operation == decision.before; });
    if (!has_step) throw Refused(where + ": " + decision.before + " is not one of its steps");
  }
}

}  // namespace

const ProcedureDecision* RepairProcedure::decision(std::string_view wanted) const {
  return row_of_id(decisions, wanted);
}

bool RepairProcedure::is_its_own(std::string_view operation) const {
  return std::ranges::find(its_own, operation) != its_own.end();
}

bool RepairProcedure::answers(std::string_view finding_kind, DrawingView view) const {
  const bool seen_there = finding_views.empty() || std::ranges::find(finding_views, view) != finding_views.end();
  return seen_there && std::ranges::find(for_findings, finding_kind) != for_findings.end();
}

std::vector<RepairProcedure> repair_procedures(const ProcedureTexts& csv, const ProcedureTables& tables) {
  auto procedures = rows_with_id<RepairProcedure>("procedures.csv", csv.procedures, [&](const CsvRow& row) {
    RepairProcedure procedure{.id = cell_name(row, "id"),
                              .name = cell_name(row, "name"),
                              .for_findings = listed(row.text("for_findings")),
                              .finding_views = {},
                              .finish = cell_text(row, "finish"),
                              .never = cell_name(row, "never"),
                              .source = cell_name(row, "source"),
                              .amounts = amounts_cell(row, tables),
                              .its_own = listed(row.text("its_own")),
                              .steps = {},
                              .decisions = {}};
    if (const std::string_view views = row.text("finding_views"); !views.empty()) {
      procedure.finding_views = views_from_text(row.where("finding_views"), views);
    }
    for (const std::string& finding : procedure.for_findings) {
      if (finding_kind(tables.findings, finding) == nullptr) {
        throw Refused(row.where("for_findings") + ": \"" + finding + "\" is not in finding_kinds.csv");
      }
    }
    return procedure;
  });
  add_decisions(csv.decisions, tables, procedures);
  add_steps(csv.steps, tables, procedures);
  for (const RepairProcedure& procedure : procedures) require_sound(procedure);
  return procedures;
}

}  // namespace tailblock

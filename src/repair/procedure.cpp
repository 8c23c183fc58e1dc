#include "repair/procedure.h"

#include <algorithm>
#include <set>

#include "quantity/quoted_text.h"
#include "repair/hours.h"
#include "repair/wait_in_words.h"

namespace tailblock {
namespace {

std::optional<double> count_of(const OperationKind& kind, const RepairProcedure& wanted,
                               const ProcedureRequest& request) {
  if (!kind.grows) return std::nullopt;
  for (const GivenAmount& amount : request.amounts) {
    if (amount.amount == kind.grows->amount) return amount.count;
  }
  for (const UsualAmount& usual : wanted.amounts) {
    if (usual.amount == kind.grows->amount) return usual.count;
  }
  return std::nullopt;
}

void require_known(const ProcedureRequest& request, const RepairTables& tables) {
  for (const GivenAmount& amount : request.amounts) {
    const bool known = std::any_of(tables.operations.begin(), tables.operations.end(), [&](const OperationKind& kind) {
      return kind.grows && kind.grows->amount == amount.amount;
    });
    if (!known) throw Refused("amounts: nothing grows with " + quoted_text(amount.amount));
  }
  const auto require_operation = [&](std::string_view field, const std::string& id) {
    if (row_of_id(tables.operations, id) == nullptr) {
      throw Refused(std::string(field) + ": " + quoted_text(id) + " is not in data/operations.csv");
    }
  };
  for (const std::string& id : request.on_record) require_operation("on_record", id);
  for (const OwnerYes& yes : request.yes) {
    if (yes.operation != "all") require_operation("yes", yes.operation);
    if (yes.by.empty()) throw Refused("yes: says who gave it");
  }
}

bool has_yes(const OperationKind& kind, const ProcedureRequest& request) {
  const bool by_name_only = kind.value == ValueEffect::lowers || !kind.offered;
  return std::any_of(request.yes.begin(), request.yes.end(), [&](const OwnerYes& yes) {
    return yes.operation == kind.id || (yes.operation == "all" && !by_name_only);
  });
}

void add_cautions(const OperationKind& kind, const RepairTables& tables, StepShown& step) {
  if (!kind.caution.empty()) step.cautions.push_back(kind.caution);
  for (const std::string& id : kind.finishes) {
    const FinishClass& finish = *row_of_id(tables.materials.finishes, id);
    if (!finish.caution.empty()) step.cautions.push_back(finish.name + ": " + finish.caution);
  }
  std::vector<std::string> ids = kind.hazards;
  for (const std::string& glue : kind.adhesives) {
    for (const std::string& id : row_of_id(tables.materials.adhesives, glue)->hazards) ids.push_back(id);
  }
  std::set<std::string> seen;
  for (const std::string& id : ids) {
    if (!seen.insert(id).second) continue;
    const Hazard& hazard = *row_of_id(tables.materials.hazards, id);
    step.hazards.push_back(hazard.name);
    step.cautions.push_back(hazard.caution());
  }
  if (!seen.empty()) step.cautions.emplace_back(defers_to);
}

StepShown step_shown(const OperationKind& kind, const RepairProcedure& wanted, const ProcedureRequest& request,
                     const RepairTables& tables) {
  StepShown step{.operation = kind.id,
                 .name = kind.name,
                 .family = kind.family,
                 .hands_on_minutes = hands_on_for(kind, count_of(kind, wanted, request)),
                 .wait_minutes = kind.wait,
                 .wait_for = kind.wait_for,
                 .hands_on_station = kind.hands_on_station,
                 .wait_station = kind.wait_station,
                 .station_wait_minutes = kind.station_wait,
                 .wait_station_hands_on = kind.wait_station_hands_on,
                 .skill = kind.skill,
                 .greatest_gap_minutes = kind.greatest_gap,
                 .greatest_gap_to = kind.greatest_gap_to,
                 .where = kind.where,
                 .materials = kind.materials,
                 .amount = kind.grows ? kind.grows->amount : std::string(),
                 .adhesives = {},
                 .finishes = {},
                 .clamps = {},
                 .air = kind.air,
                 .needs_dust_free = kind.needs_dust_free,
                 .humidity_percent = kind.humidity,
                 .temperature_c = kind.temperature,
                 .cautions = {},
                 .reversible = kind.reversible,
                 .value = kind.value,
                 .asks_owner = kind.asks_owner,
                 .yes_recorded = kind.asks_owner && has_yes(kind, request),
                 .gentler = kind.gentler,
                 .held_by_humidity = false,
                 .source = kind.source};
  add_cautions(kind, tables, step);
  for (const std::string& id : kind.adhesives) {
    step.adhesives.push_back(row_of_id(tables.materials.adhesives, id)->words());
  }
  for (const std::string& id : kind.finishes) {
    step.finishes.push_back(row_of_id(tables.materials.finishes, id)->words());
  }
  if (!kind.wait_station.empty() && kind.station_wait > 0) {
    step.clamps.push_back(kind.wait_station + " for " + wait_in_words(kind.station_wait));
  }
  return step;
}

std::vector<StepShown> steps_shown(const RepairProcedure& wanted, const ProcedureRequest& request,
                                   const ProcedureResult& so_far, const RepairTables& tables) {
  std::vector<StepShown> steps;
  for (const std::string& id : steps_of(wanted, so_far.decisions)) {
    const OperationKind& kind = *row_of_id(tables.operations, id);
    if (counts_as_done(id, tables.operations, request.on_record)) continue;
    steps.push_back(step_shown(kind, wanted, request, tables));
    steps.back().held_by_humidity = kind.humidity_gate && so_far.humidity.holds;
  }
  return steps;
}

void add_totals(ProcedureResult& result, const RepairFigures& figures) {
  std::vector<WorkMinutes> work;
  std::set<std::string> materials;
  for (const StepShown& step : result.steps) {
    work.push_back({.hands_on = step.hands_on_minutes});
    result.wait_minutes += step.wait_minutes.typical;
    if (!step.materials.empty() && materials.insert(step.materials).second) {
      result.materials.push_back(step.name + ": " + step.materials);
    }
  }
  result.hands_on_minutes = summed_minutes(work, figures.low_high_chance, figures.shared_scatter);
}

void add_holds(ProcedureResult& result, const RepairProcedure& wanted) {
  if (!result.stopped.empty()) result.holds.push_back("Stopped: " + result.stopped);
  for (const DecisionShown& decision : result.decisions) {
    const bool must = wanted.decision(decision.decision)->must;
    if (must && decision.known != OutcomeKnown::answered) {
      result.holds.push_back("Not answered: " + decision.question);
    }
    if (decision.known == OutcomeKnown::too_near) {
      result.holds.push_back("Too near its limit to tell, read it again or decide by hand: " + decision.question);
    }
  }
  const bool held = std::any_of(result.steps.begin(), result.steps.end(),
                                [](const StepShown& step) { return step.held_by_humidity; });
  if (held) result.holds.push_back(result.humidity.words);
  std::set<std::string> asked;
  for (const StepShown& step : result.steps) {
    if (!step.asks_owner || step.yes_recorded || !asked.insert(step.operation).second) continue;
    std::string hold = "No recorded yes of the owner for: " + step.name + ".";
    hold += step.value == ValueEffect::lowers ? " It lowers value." : " It is hard or impossible to undo.";
    result.holds.push_back(hold + " Gentler: " + step.gentler);
  }
  result.may_start = result.holds.empty();
}

}  // namespace

ProcedureResult procedure(const ProcedureRequest& request, const RepairTables& tables) {
  require_valid(request);
  require_known(request, tables);
  const RepairProcedure& wanted = tables.procedure(request.procedure);
  const ReadValues values(request.readings, tables.readings);
  ProcedureResult result;
  result.name = wanted.name;
  result.never = wanted.never;
  result.humidity = humidity_gate(values.now(gate_measure), request.humidity_override, tables.figures);
  result.decisions = decided(wanted, request, values, tables.figures.sure_margin);
  for (const DecisionShown& decision : result.decisions) {
    if (decision.stops && result.stopped.empty()) result.stopped = decision.says;
    const bool open = decision.known == OutcomeKnown::assumed || decision.known == OutcomeKnown::too_near;
    if (open && result.next_question.empty()) result.next_question.push_back(decision);
  }
  if (!result.stopped.empty()) result.next_question.clear();
  result.steps = steps_shown(wanted, request, result, tables);
  add_totals(result, tables.figures);
  add_holds(result, wanted);
  return result;
}

}  // namespace tailblock

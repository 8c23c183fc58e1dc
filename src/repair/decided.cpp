#include <algorithm>
#include <cmath>
#include <limits>

#include "quantity/quoted_text.h"
#include "repair/procedure.h"

namespace tailblock {
namespace {

constexpr double least_sd = 1e-9;

bool is_met(const Condition& condition, const std::vector<DecisionShown>& decisions) {
  return std::all_of(condition.begin(), condition.end(), [&](const std::vector<OutcomeIs>& any) {
    return std::any_of(any.begin(), any.end(), [&](const OutcomeIs& is) {
      return std::any_of(decisions.begin(), decisions.end(), [&](const DecisionShown& decision) {
        return decision.decision == is.decision && decision.outcome == is.outcome;
      });
    });
  });
}

const DecisionOutcome& outcome_named(const ProcedureDecision& decision, const std::string& name) {
  for (const DecisionOutcome& outcome : decision.outcomes) {
    if (outcome.outcome == name) return outcome;
  }
  std::string known;
  for (const DecisionOutcome& outcome : decision.outcomes) known += (known.empty() ? "" : ", ") + outcome.outcome;
  throw Refused("answers: " + quoted_text(name) + " is no outcome of " + decision.id + "; there are " + known);
}

const DecisionOutcome& band_of(const ProcedureDecision& decision, double value) {
  for (const DecisionOutcome& outcome : decision.outcomes) {
    if (!outcome.to || value < *outcome.to) return outcome;
  }
  return decision.outcomes.back();
}

double margin_of(const DecisionOutcome& band, const KnownValue& read) {
  constexpr double endless = std::numeric_limits<double>::infinity();
  return std::min(read.value - band.from.value_or(-endless), band.to.value_or(endless) - read.value) /
         std::max(read.sd, least_sd);
}

const DecisionOutcome& usual_of(const ProcedureDecision& decision) {
  return *std::find_if(decision.outcomes.begin(), decision.outcomes.end(), [](const auto& it) { return it.usual; });
}

DecisionShown asked(const ProcedureDecision& decision) {
  DecisionShown shown;
  shown.decision = decision.id;
  shown.question = decision.question;
  shown.about = decision.outcomes.front().about;
  shown.before = decision.before;
  for (const DecisionOutcome& outcome : decision.outcomes) {
    if (std::find(shown.outcomes.begin(), shown.outcomes.end(), outcome.outcome) == shown.outcomes.end()) {
      shown.outcomes.push_back(outcome.outcome);
    }
  }
  return shown;
}

/// What is on record of a question; null: nothing, or what it has no such outcome for.
const DecisionOutcome* on_record(const ProcedureDecision& decision, const std::vector<GivenAnswer>& found) {
  for (auto given = found.rbegin(); given != found.rend(); ++given) {
    if (given->decision != decision.id) continue;
    const auto outcome = std::ranges::find(decision.outcomes, given->outcome, &DecisionOutcome::outcome);
    if (outcome != decision.outcomes.end()) return &*outcome;
  }
  return nullptr;
}

DecisionShown with_outcome(const ProcedureDecision& decision, const ProcedureRequest& request,
                           const std::vector<GivenAnswer>& found, const ReadValues& values, double sure_margin) {
  DecisionShown shown = asked(decision);
  const DecisionOutcome* outcome = &usual_of(decision);
  const auto read = shown.about == "ask" ? std::nullopt : values.now(shown.about);
  if (read) {
    const DecisionOutcome& band = band_of(decision, read->value);
    shown.margin_repeatability = margin_of(band, *read);
    const bool sure = *shown.margin_repeatability >= sure_margin;
    shown.known = sure ? OutcomeKnown::read : OutcomeKnown::too_near;
    outcome = &band;
  }
  if (shown.about == gate_measure && request.humidity_override) {
    shown.known = OutcomeKnown::overridden;
    outcome = &usual_of(decision);
  }
  if (const DecisionOutcome* known = shown.about == "ask" ? on_record(decision, found) : nullptr) {
    shown.known = OutcomeKnown::on_record;
    outcome = known;
  }
  for (const GivenAnswer& answer : request.answers) {
    if (answer.decision != decision.id) continue;
    outcome = &outcome_named(decision, answer.outcome);
    shown.known = OutcomeKnown::answered;
  }
  shown.outcome = outcome->outcome;
  shown.says = outcome->says;
  // within the repeatability of its limit nothing is stopped either: the question stays open
  shown.stops = outcome->stops && shown.known != OutcomeKnown::too_near;
  return shown;
}

}  // namespace

std::vector<DecisionShown> decided(const RepairProcedure& procedure, const ProcedureRequest& request,
                                   const ReadValues& values, double sure_margin) {
  for (const GivenAnswer& answer : request.answers) {
    if (procedure.decision(answer.decision) == nullptr) {
      throw Refused("answers: " + procedure.id + " does not ask " + quoted_text(answer.decision));
    }
  }
  std::vector<DecisionShown> decisions;
  std::vector<GivenAnswer> found = request.found;
  for (const ProcedureDecision& decision : procedure.decisions) {
    if (!is_met(decision.when, decisions)) continue;
    decisions.push_back(with_outcome(decision, request, found, values, sure_margin));
    if (decisions.back().known != OutcomeKnown::answered) continue;
    for (const OutcomeIs& is : outcome_named(decision, decisions.back().outcome).settles) {
      found.push_back({is.decision, is.outcome});
    }
  }
  return decisions;
}

std::vector<std::string> steps_of(const RepairProcedure& procedure, const std::vector<DecisionShown>& decisions) {
  std::vector<std::string> steps;
  for (const ProcedureStep& step : procedure.steps) {
    const bool stopped = std::any_of(decisions.begin(), decisions.end(), [&](const DecisionShown& decision) {
      return decision.stops && decision.before == step.operation;
    });
    if (stopped) break;
    if (is_met(step.when, decisions)) steps.push_back(step.operation);
  }
  return steps;
}

}  // namespace tailblock

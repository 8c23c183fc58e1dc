#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "repair/finding_kinds.h"
#include "repair/known_readings.h"
#include "repair/operation_kinds.h"

namespace tailblock {

/// What an answer decides: all of these, each `decision=outcome` or one of several.
struct OutcomeIs {
  std::string decision, outcome;
};
using Condition = std::vector<std::vector<OutcomeIs>>;

/// One outcome of a question.
struct DecisionOutcome {
  std::string outcome;
  std::string about;               ///< a reading, or `ask`
  std::optional<double> from, to;  ///< of the reading
  bool usual = false;              ///< what is assumed until it is known
  bool stops = false;
  std::string says;
  std::vector<OutcomeIs> settles{};  ///< once answered: of later questions, and of the instrument's later jobs
};

/// A question that a procedure asks as readings arrive.
struct ProcedureDecision {
  std::string id;
  std::string before;  ///< the operation that waits for it
  Condition when;      ///< asked only then
  bool must = false;   ///< work does not start on an assumed answer
  std::string question;
  std::vector<DecisionOutcome> outcomes;
};

struct ProcedureStep {
  std::string operation;
  Condition when;
};

struct UsualAmount {
  std::string amount;
  double count = 1;
};

/// A whole repair: data/procedures.csv, procedure_steps.csv and procedure_decisions.csv.
struct RepairProcedure {
  std::string id, name;
  std::vector<std::string> for_findings;
  std::vector<DrawingView> finding_views;  ///< where those are drawn; empty: anywhere
  std::string finish, never, source;
  std::vector<UsualAmount> amounts;  ///< where the request gives none
  std::vector<std::string> its_own;  ///< arriving and finishing operations that are this repair's own work
  std::vector<ProcedureStep> steps;
  std::vector<ProcedureDecision> decisions;

  [[nodiscard]] const ProcedureDecision* decision(std::string_view wanted) const;
  [[nodiscard]] bool is_its_own(std::string_view operation) const;
  [[nodiscard]] bool answers(std::string_view finding_kind, DrawingView view) const;
};

struct ProcedureTexts {
  std::string_view procedures, steps, decisions;
};
struct ProcedureTables {
  const std::vector<OperationKind>& operations;
  const std::vector<KnownReading>& readings;
  const std::vector<FindingKind>& findings;
};

/// @throws Refused naming the row: an unknown id, a question without exactly one usual outcome, a usual outcome that
/// stops, bands that leave a value without outcome or give it two, a condition on a question that is asked later.
[[nodiscard]] std::vector<RepairProcedure> repair_procedures(const ProcedureTexts& csv, const ProcedureTables& tables);

}  // namespace tailblock

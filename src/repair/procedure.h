#pragma once

#include <optional>
#include <string>
#include <vector>

#include "repair/given.h"
#include "repair/repair_tables.h"

namespace tailblock {

/// What a person chose for one question of the procedure.
struct GivenAnswer {
  std::string decision, outcome;
};
void describe(FieldVisitor&, GivenAnswer&);

/// How many of something: cleats, frets, millimetres of crack. Named as in data/operations.csv.
struct GivenAmount {
  std::string amount;
  double count = 1;
};
void describe(FieldVisitor&, GivenAmount&);

/// The owner's recorded yes. For one operation by name, or for `all` that neither lower value nor are asked for by
/// name.
struct OwnerYes {
  std::string operation = "all";
  std::string by;
  Date on{};
};
void describe(FieldVisitor&, OwnerYes&);

struct ProcedureRequest {
  std::string procedure;
  std::vector<GivenReading> readings;
  std::vector<GivenAnswer> answers;
  std::vector<GivenAnswer> found{};  ///< as the survey or an earlier job has it; an answer stands before it
  std::vector<GivenAmount> amounts;
  std::vector<std::string> on_record;  ///< operations done already at this visit
  std::vector<OwnerYes> yes;
  std::optional<GateOverride> humidity_override;
};
void describe(FieldVisitor&, ProcedureRequest&);

/// How an outcome is known.
enum class OutcomeKnown { answered, read, too_near, assumed, on_record, overridden };

/// One question of the procedure as it stands.
struct DecisionShown {
  std::string decision, question;
  std::string about;                  ///< a reading, or `ask`
  std::string before;                 ///< the operation that waits for it
  std::vector<std::string> outcomes;  ///< what it may come out as
  std::string outcome;
  OutcomeKnown known = OutcomeKnown::assumed;
  std::optional<double> margin_repeatability;
  bool stops = false;
  std::string says;
};
void describe(FieldVisitor&, DecisionShown&);

/// One operation of the plan, with what must be read where it is done.
struct StepShown {
  std::string operation, name;
  WorkFamily family = WorkFamily::work;
  Spread hands_on_minutes, wait_minutes;
  std::string wait_for, hands_on_station, wait_station;
  double station_wait_minutes = 0;
  bool wait_station_hands_on = false;          ///< the wait's fixture is held through the hands-on work too
  std::string skill{};                         ///< the sort of work it is; empty: anyone does it
  std::optional<double> greatest_gap_minutes;  ///< from the end of its hands-on work to the next of greatest_gap_to
  std::vector<std::string> greatest_gap_to;
  std::string where, materials;
  std::string amount;                              ///< what its minutes grow with; empty: nothing
  std::vector<std::string> adhesives, finishes{};  ///< a line each
  std::vector<std::string> clamps;                 ///< how long in them
  WorkAir air = WorkAir::clean;
  bool needs_dust_free = false;
  OpenRange humidity_percent, temperature_c;
  std::vector<std::string> cautions;
  std::vector<std::string> hazards{};  ///< names of those whose caution begins with its name
  Reversible reversible = Reversible::yes;
  ValueEffect value = ValueEffect::neutral;
  bool asks_owner = false, yes_recorded = false;
  std::string gentler;
  bool held_by_humidity = false;
  std::string source;
};
void describe(FieldVisitor&, StepShown&);

struct ProcedureResult {
  std::string name, never;
  std::vector<StepShown> steps;
  std::vector<DecisionShown> decisions;
  std::vector<DecisionShown> next_question;  ///< none or one
  std::string stopped;                       ///< why no more is done; empty: it goes on
  bool may_start = false;
  std::vector<std::string> holds;  ///< what is missing before it may start or go on
  HumidityGate humidity;
  Spread hands_on_minutes;  ///< of all steps together
  double wait_minutes = 0;  ///< typical waits, one after the other
  std::vector<std::string> materials;
};
void describe(FieldVisitor&, ProcedureResult&);

/// The operations of one repair as it stands today: with the answers and readings there are, and what is usual assumed
/// for the rest.
///
/// A question about a reading is decided by the band it falls in; nearer a limit than sure_margin repeatabilities it
/// stays open. What an answer settles (data/procedure_decisions.csv) and what was found before answer a question that
/// is asked, until a person does; what they name and the procedure does not ask is passed over. A stop ends the plan at
/// the step that waits for it. Hands-on minutes grow with the amounts; totals are those of `summed_minutes`. Nothing is
/// proposed that is only done on request, unless an answer asks for it. Source: common practice, no source
/// (data/operations.csv and data/procedure_*.csv say so row by row).
/// @throws Refused naming an unknown procedure, question, outcome, amount or operation.
[[nodiscard]] ProcedureResult procedure(const ProcedureRequest& request, const RepairTables& tables);

/// The outcomes of the procedure's questions with these answers and readings.
[[nodiscard]] std::vector<DecisionShown> decided(const RepairProcedure& procedure, const ProcedureRequest& request,
                                                 const ReadValues& values, double sure_margin);

/// The steps that those outcomes ask for, in order, up to the one that a stop waits for.
[[nodiscard]] std::vector<std::string> steps_of(const RepairProcedure& procedure,
                                                const std::vector<DecisionShown>& decisions);

}  // namespace tailblock

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "repair/given.h"
#include "repair/repair_tables.h"

namespace tailblock {

/// What the survey found of one kind, with what was read at it.
struct FindingSeen {
  std::string kind;  ///< data/finding_kinds.csv
  std::string where;
  std::vector<GivenReading> readings;
};
void describe(FieldVisitor&, FindingSeen&);

/// What a person answered to one question of data/diagnosis_facts.csv.
struct SaidFact {
  std::string fact;
  bool holds = false;
};
void describe(FieldVisitor&, SaidFact&);

struct DiagnoseRequest {
  std::vector<std::string> symptoms;  ///< beside those that the findings raise
  std::vector<GivenReading> readings;
  std::vector<FindingSeen> findings;
  bool surveyed = false;  ///< a kind that is not among the findings was looked for and is not there
  std::vector<SaidFact> facts;
  std::optional<GateOverride> humidity_override;
};
void describe(FieldVisitor&, DiagnoseRequest&);

/// How one line stands.
enum class LineStands { for_it, against_it, too_near, unread };

/// One line of evidence as it stands.
struct EvidenceShown {
  std::string words;
  std::string about;  ///< as in data/cause_evidence.csv
  EvidenceRole role = EvidenceRole::needs;
  LineStands stands = LineStands::unread;
  std::optional<double> value;                 ///< in its own unit
  std::optional<double> margin_repeatability;  ///< from the nearest limit, positive where the line holds
};
void describe(FieldVisitor&, EvidenceShown&);

enum class CauseVerdict { stands, open, ruled_out };

struct CauseShown {
  std::string cause, name, symptom;
  CauseClass kind = CauseClass::reversible;
  CauseVerdict verdict = CauseVerdict::open;
  std::vector<EvidenceShown> evidence;
  std::string settled_by;             ///< the one reading or answer that parts it from its rivals
  std::vector<std::string> remedies;  ///< procedures or operations
  bool wait = false;
  std::string says;
};
void describe(FieldVisitor&, CauseShown&);

/// The next thing worth reading or asking.
struct NextMeasurement {
  std::string about;
  std::string words;         ///< what to read and how, or the question
  int decides_at_least = 0;  ///< open causes it decides, whichever way it comes out
  int decides_at_most = 0;
};
void describe(FieldVisitor&, NextMeasurement&);

struct DiagnoseResult {
  std::string slacken_now;  ///< why the strings come down before anything else; empty: they may stay
  HumidityGate humidity;
  std::vector<std::string> blocked;   ///< names of the operations that wait for the humidity
  std::vector<CauseShown> causes;     ///< in the order of proposing
  std::vector<NextMeasurement> next;  ///< the best first
  std::string verdict;
};
void describe(FieldVisitor&, DiagnoseResult&);

/// Which causes stand behind what was found, what speaks for and against each, and what to read next.
///
///     margin = distance of the reading from the nearest limit of its line / its repeatability
///     a line holds or fails only where the margin is sure_margin and more (or the line's own)
///
/// A cause stands when one line of every group of its needs holds, enough of its counts do and none is against it; it
/// is ruled out when a whole group fails, its counts cannot be reached or a line against it holds; else it is open. The
/// next reading is the one after which most open causes are decided, whichever way it comes out.
/// Left out: how likely causes are beforehand; rules are common practice without a source (data/causes.csv).
/// @throws Refused naming an unknown symptom, reading, finding or fact.
[[nodiscard]] DiagnoseResult diagnose(const DiagnoseRequest& request, const RepairTables& tables);

}  // namespace tailblock

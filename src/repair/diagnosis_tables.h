#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "repair/finding_kinds.h"
#include "repair/procedures.h"

namespace tailblock {

/// A complaint: data/symptoms.csv. `any` is asked whatever the complaint.
struct Symptom {
  std::string id, words;
  std::vector<std::string> findings;  ///< kinds of finding that raise it
};

/// In which order causes are proposed.
enum class CauseClass { safety, humidity, reversible, glue, frets_and_saddle, neck, finish, leave };
inline constexpr std::array<std::string_view, 8> cause_class_names{
    "safety", "humidity", "reversible", "glue", "frets_and_saddle", "neck", "finish", "leave"};

/// What a line of evidence does to its cause.
enum class EvidenceRole { needs, supports, counts, against };
inline constexpr std::array<std::string_view, 4> evidence_role_names{"needs", "supports", "counts", "against"};

/// What a line of evidence looks at.
enum class EvidenceOf { reading, change, finding, fact, cause };

/// One line for or against a cause: data/cause_evidence.csv. It holds from `from` up to `to`.
struct EvidenceLine {
  EvidenceRole role = EvidenceRole::needs;
  std::string group;  ///< needs of one group are alternatives
  EvidenceOf of = EvidenceOf::reading;
  std::string about;  ///< without its prefix
  std::optional<double> from, to;
  std::optional<double> margin;  ///< repeatabilities; absent: the usual
  std::string words;
};

/// What may be behind a symptom: data/causes.csv.
struct Cause {
  std::string id, symptom, name;
  CauseClass kind = CauseClass::reversible;
  int counts_least = 0;
  std::string settles;                ///< the reading or `fact:` that parts it from its rivals
  std::string settles_how;            ///< in words
  std::vector<std::string> remedies;  ///< procedures or operations
  bool wait = false;                  ///< nothing that cannot be undone until then
  std::string says, source;
  std::vector<EvidenceLine> evidence;
};

/// What only a person can say: data/diagnosis_facts.csv.
struct AskedFact {
  std::string id, question;
};

struct DiagnosisTables {
  std::vector<Symptom> symptoms;
  std::vector<Cause> causes;  ///< in the order asked: evidence on a cause looks back only
  std::vector<AskedFact> facts;
};

struct DiagnosisTexts {
  std::string_view symptoms, causes, evidence, facts;
};
struct KnownToDiagnosis {
  const std::vector<OperationKind>& operations;
  const std::vector<KnownReading>& readings;
  const std::vector<FindingKind>& findings;
  const std::vector<RepairProcedure>& procedures;
};

/// @throws Refused naming the row: an unknown id, evidence on a cause that is asked later, a cause without needs or
/// counts, a remedy that is neither procedure nor operation.
[[nodiscard]] DiagnosisTables diagnosis_tables(const DiagnosisTexts& csv, const KnownToDiagnosis& known);

}  // namespace tailblock

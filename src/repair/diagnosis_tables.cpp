#include "repair/diagnosis_tables.h"

namespace tailblock {
namespace {

constexpr Range any_value{-100000, 100000, ""};

[[noreturn]] void refuse(const CsvRow& row, std::string_view column, const std::string& id, const std::string& why) {
  throw Refused(row.where(column) + ": \"" + id + "\" " + why);
}

std::vector<Symptom> read_symptoms(std::string_view csv, const KnownToDiagnosis& known) {
  return rows_with_id<Symptom>("symptoms.csv", csv, [&](const CsvRow& row) {
    Symptom symptom{cell_name(row, "id"), cell_name(row, "words"), listed(row.text("findings"))};
    for (const std::string& finding : symptom.findings) {
      if (finding_kind(known.findings, finding) == nullptr) refuse(row, "findings", finding, "is no kind of finding");
    }
    return symptom;
  });
}

std::vector<Cause> read_causes(std::string_view csv, const DiagnosisTables& tables, const KnownToDiagnosis& known) {
  const CsvTable table("causes.csv", csv);
  std::vector<Cause> causes;
  for (const CsvRow& row : table.rows()) {
    (void)row.name("source");
    Cause cause{.id = cell_name(row, "cause"),
                .symptom = cell_name(row, "symptom"),
                .name = cell_name(row, "name"),
                .kind = static_cast<CauseClass>(
                    cell_choice(row, "class", {cause_class_names.begin(), cause_class_names.end()})),
                .counts_least = static_cast<int>(row.number_if_given("counts_least", {1, 20, ""}).value_or(0)),
                .settles = cell_name(row, "settles"),
                .settles_how = cell_name(row, "settles_how"),
                .remedies = listed(row.text("do")),
                .wait = cell_yes(row, "wait"),
                .says = cell_text(row, "says"),
                .source = cell_name(row, "source"),
                .evidence = {}};
    if (row_of_id(causes, cause.id) != nullptr) refuse(row, "cause", cause.id, "comes twice");
    if (row_of_id(tables.symptoms, cause.symptom) == nullptr) refuse(row, "symptom", cause.symptom, "is no symptom");
    for (const std::string& remedy : cause.remedies) {
      const bool is_known =
          row_of_id(known.procedures, remedy) != nullptr || row_of_id(known.operations, remedy) != nullptr;
      if (!is_known) refuse(row, "do", remedy, "is neither procedure nor operation");
    }
    causes.push_back(std::move(cause));
  }
  return causes;
}

/// Splits `fact:strings_old` and checks that the table behind it knows the rest.
EvidenceLine about_cell(const CsvRow& row, const Cause& cause, const DiagnosisTables& tables,
                        const KnownToDiagnosis& known) {
  const std::string cell = cell_name(row, "about");
  const std::size_t colon = cell.find(':');
  const std::string prefix = colon == std::string::npos ? "" : cell.substr(0, colon);
  EvidenceLine line;
  line.about = colon == std::string::npos ? cell : cell.substr(colon + 1);
  bool is_known = false;
  if (prefix.empty() || prefix == "change") {
    line.of = prefix.empty() ? EvidenceOf::reading : EvidenceOf::change;
    is_known = row_of_id(known.readings, line.about) != nullptr;
  } else if (prefix == "finding") {
    line.of = EvidenceOf::finding;
    is_known = finding_kind(known.findings, line.about) != nullptr;
  } else if (prefix == "fact") {
    line.of = EvidenceOf::fact;
    is_known = row_of_id(tables.facts, line.about) != nullptr;
  } else if (prefix == "cause") {
    line.of = EvidenceOf::cause;
    const Cause* other = row_of_id(tables.causes, line.about);
    is_known = other != nullptr && other < &cause;
  }
  if (!is_known) refuse(row, "about", cell, "is not known, or is a cause that is asked later");
  return line;
}

void add_evidence(std::string_view csv, DiagnosisTables& tables, const KnownToDiagnosis& known) {
  const CsvTable table("cause_evidence.csv", csv);
  for (const CsvRow& row : table.rows()) {
    const std::string id = cell_name(row, "cause");
    const auto cause =
        std::find_if(tables.causes.begin(), tables.causes.end(), [&](const Cause& one) { return one.id == id; });
    if (cause == tables.causes.end()) refuse(row, "cause", id, "is not in causes.csv");
    (void)row.name("source");
    EvidenceLine line = about_cell(row, *cause, tables, known);
    line.role =
        static_cast<EvidenceRole>(cell_choice(row, "role", {evidence_role_names.begin(), evidence_role_names.end()}));
    line.group = cell_text(row, "group");
    line.from = row.number_if_given("from", any_value);
    line.to = row.number_if_given("to", any_value);
    line.margin = row.number_if_given("margin", {0, 10, "repeatabilities"});
    line.words = cell_name(row, "words");
    const bool measured = line.of == EvidenceOf::reading || line.of == EvidenceOf::change;
    if (measured != (line.from.has_value() || line.to.has_value())) {
      throw Refused(row.where("from") + ": a reading has a limit, anything else has none");
    }
    cause->evidence.push_back(std::move(line));
  }
}

}  // namespace

DiagnosisTables diagnosis_tables(const DiagnosisTexts& csv, const KnownToDiagnosis& known) {
  DiagnosisTables tables;
  tables.symptoms = read_symptoms(csv.symptoms, known);
  tables.facts = rows_with_id<AskedFact>("diagnosis_facts.csv", csv.facts, [](const CsvRow& row) {
    return AskedFact{cell_name(row, "id"), cell_name(row, "question")};
  });
  tables.causes = read_causes(csv.causes, tables, known);
  add_evidence(csv.evidence, tables, known);
  for (const Cause& cause : tables.causes) {
    const bool decided = std::any_of(cause.evidence.begin(), cause.evidence.end(), [](const EvidenceLine& line) {
      return line.role == EvidenceRole::needs || line.role == EvidenceRole::counts;
    });
    if (!decided) throw Refused("causes.csv, " + cause.id + ": nothing decides it");
    const auto counted = std::count_if(cause.evidence.begin(), cause.evidence.end(),
                                       [](const EvidenceLine& line) { return line.role == EvidenceRole::counts; });
    if ((counted > 0) != (cause.counts_least > 0) || counted < cause.counts_least) {
      throw Refused("causes.csv, " + cause.id + ": counts_least does not go with its lines");
    }
  }
  return tables;
}

}  // namespace tailblock

#include "repair/repair_tables.h"

#include "quantity/quoted_text.h"

namespace tailblock {

RepairTables repair_tables(const std::function<std::string_view(std::string_view path)>& text) {
  RepairTables tables;
  tables.figures = repair_figures(text("data/repair_figures.csv"));
  tables.readings = known_readings({.measures = text("data/measures.csv"),
                                    .finding_measures = text("data/finding_measures.csv"),
                                    .model_figures = text("data/model_figures.csv"),
                                    .gauges = text("data/gauges.csv")});
  tables.findings = finding_kinds(text("data/finding_kinds.csv"), [&](std::string_view measure) {
    const KnownReading* known = row_of_id(tables.readings, measure);
    return known != nullptr && known->of == ReadingOf::finding;
  });
  tables.materials.hazards =
      hazards({.hazards = text("data/hazards.csv"), .exposure_limits = text("data/exposure_limits.csv")});
  tables.materials.adhesives = adhesive_classes(text("data/adhesives.csv"), tables.materials.hazards);
  tables.materials.finishes = finish_classes(text("data/finishes.csv"), tables.materials.hazards);
  tables.materials.stations = shop_stations(text("data/shop_stations.csv"));
  tables.materials.skills = work_skills(text("data/work_skills.csv"));
  tables.listed = listed_materials(text("data/listed_materials.csv"));
  tables.currencies = currencies(text("data/currencies.csv"));
  tables.operations = operation_kinds(text("data/operations.csv"), tables.materials);
  tables.amount_measures = amount_measures(text("data/amount_measures.csv"), tables.operations, tables.readings);
  tables.procedures = repair_procedures({.procedures = text("data/procedures.csv"),
                                         .steps = text("data/procedure_steps.csv"),
                                         .decisions = text("data/procedure_decisions.csv")},
                                        {tables.operations, tables.readings, tables.findings});
  tables.finding_answers = finding_answers(text("data/finding_answers.csv"), tables.procedures, tables.findings);
  tables.diagnosis = diagnosis_tables({.symptoms = text("data/symptoms.csv"),
                                       .causes = text("data/causes.csv"),
                                       .evidence = text("data/cause_evidence.csv"),
                                       .facts = text("data/diagnosis_facts.csv")},
                                      {tables.operations, tables.readings, tables.findings, tables.procedures});
  return tables;
}

const RepairProcedure& RepairTables::procedure(std::string_view id) const {
  if (const RepairProcedure* found = row_of_id(procedures, id)) return *found;
  std::string known;
  for (const RepairProcedure& one : procedures) known += (known.empty() ? "" : ", ") + one.id;
  throw Refused("procedure: " + quoted_text(id) + " is none of " + known);
}

}  // namespace tailblock

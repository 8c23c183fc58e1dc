#include "repair/cautions.h"

#include <algorithm>
#include <cmath>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

constexpr double minutes_of_a_shift = 480;
constexpr Range percents{0, 1e9, "percent"};

void add_hazard(CautionsResult& result, const std::string& field, const std::string& id, const RepairTables& tables) {
  const Hazard* hazard = row_of_id(tables.materials.hazards, id);
  if (hazard == nullptr) throw Refused(field + ": " + quoted_text(id) + " is not in data/hazards.csv");
  const bool shown = std::any_of(result.hazards.begin(), result.hazards.end(),
                                 [&](const HazardShown& one) { return one.hazard == id; });
  if (shown) return;
  result.hazards.push_back({hazard->id, hazard->name, hazard->harm, hazard->controls, hazard->waste, hazard->never,
                            hazard->limits, hazard->caution()});
}

void add_operations(CautionsResult& result, const CautionsRequest& request, const RepairTables& tables) {
  for (const std::string& id : request.operations) {
    const OperationKind* kind = row_of_id(tables.operations, id);
    if (kind == nullptr) throw Refused("operations: " + quoted_text(id) + " is not in data/operations.csv");
    for (const std::string& hazard : kind->hazards) add_hazard(result, "operations", hazard, tables);
  }
}

void add_noise(CautionsResult& result, const CautionsRequest& request, const RepairFigures& figures) {
  for (const NoiseAtWork& noise : request.noise) {
    NoiseShown shown{.what = noise.what, .level_db = noise.level_db, .minutes = noise.minutes};
    const bool over_ceiling = noise.level_db > figures.noise_ceiling;
    shown.allowed_minutes =
        over_ceiling ? 0 : allowed_minutes(noise.level_db, figures.noise_reference, figures.noise_exchange);
    shown.legal_allowed_minutes =
        over_ceiling ? 0 : allowed_minutes(noise.level_db, figures.noise_legal_reference, figures.noise_legal_exchange);
    shown.dose_percent =
        over_ceiling ? (noise.minutes > 0 ? percents.high : 0) : 100 * noise.minutes / shown.allowed_minutes;
    result.dose_percent += shown.dose_percent;
    result.noise.push_back(shown);
  }
  result.dose_percent = std::min(result.dose_percent, percents.high);
  if (result.noise.empty()) return;
  const std::string dose = plain_number(std::round(result.dose_percent)) + " percent";
  result.noise_words = result.dose_percent > 100
                           ? "Too much for one day: " + dose + " of what is recommended. Protection, or less of it."
                           : dose + " of what is recommended for a day; protection from " +
                                 plain_number(figures.noise_reference) + " dB(A).";
}

}  // namespace

double allowed_minutes(double level_db, double reference_db, double exchange_db) {
  return minutes_of_a_shift / std::exp2((level_db - reference_db) / exchange_db);
}

CautionsResult cautions(const CautionsRequest& request, const RepairTables& tables) {
  require_valid(request);
  CautionsResult result;
  add_operations(result, request, tables);
  for (const std::string& id : request.hazards) add_hazard(result, "hazards", id, tables);
  for (const std::string& id : request.materials) {
    const ListedMaterial* listed = row_of_id(tables.listed, id);
    if (listed == nullptr) throw Refused("materials: " + quoted_text(id) + " is not in data/listed_materials.csv");
    result.papers.push_back({listed->name, listed->rule, listed->ask, listed->authority});
  }
  add_noise(result, request, tables.figures);
  result.defers = defers_to;
  return result;
}

void describe(FieldVisitor& visit, NoiseAtWork& noise) {
  visit.text({"what", "the work"}, noise.what, 120);
  visit.number({"level_db", "dB(A) at the ear, measured"}, noise.level_db, {70, 160, "dB(A)"});
  visit.number({"minutes", "in the day"}, noise.minutes, {0, 1440, "min"});
}

void describe(FieldVisitor& visit, CautionsRequest& request) {
  constexpr Count few{0, 200};
  constexpr auto optional = Need::has_default;
  visit.texts({"operations", "ids in data/operations.csv", optional}, request.operations, 60, few);
  visit.texts({"hazards", "ids in data/hazards.csv", optional}, request.hazards, 60, few);
  visit.texts({"materials", "ids in data/listed_materials.csv", optional}, request.materials, 60, few);
  list(visit, {"noise", "measured at the ear", optional}, request.noise, few);
}

void describe(FieldVisitor& visit, HazardShown& hazard) {
  visit.text({"hazard", "id in data/hazards.csv"}, hazard.hazard, 60);
  visit.text({"name", "in words"}, hazard.name, 120);
  visit.text({"harm", "what it does"}, hazard.harm, 300);
  visit.text({"controls", "what keeps from it"}, hazard.controls, 500);
  visit.text({"waste", "may be empty"}, hazard.waste, 300);
  visit.flag({"never_proposed", "the program never proposes it by itself"}, hazard.never_proposed);
  list(visit, {"limits", "as published, each with its standing"}, hazard.limits, {0, 40});
  visit.text({"caution", "one line for the step"}, hazard.caution, 2000);
}

void describe(FieldVisitor& visit, NoiseShown& noise) {
  visit.text({"what", "the work"}, noise.what, 120);
  visit.number({"level_db", "dB(A)"}, noise.level_db, {70, 160, "dB(A)"});
  visit.number({"minutes", "in the day"}, noise.minutes, {0, 1440, "min"});
  visit.number({"allowed_minutes", "a day, recommended"}, noise.allowed_minutes, {0, 1e6, "min"});
  visit.number({"legal_allowed_minutes", "a day, legal limit of the United States"}, noise.legal_allowed_minutes,
               {0, 1e6, "min"});
  visit.number({"dose_percent", "of the recommended"}, noise.dose_percent, percents);
}

void describe(FieldVisitor& visit, PapersShown& papers) {
  visit.text({"material", "in words"}, papers.material, 120);
  visit.text({"rule", "that may protect it"}, papers.rule, 300);
  visit.text({"ask", "for what"}, papers.ask, 300);
  visit.text({"authority", "who decides"}, papers.authority, 200);
}

void describe(FieldVisitor& visit, CautionsResult& result) {
  list(visit, {"hazards", "each once"}, result.hazards, {0, 200});
  list(visit, {"noise", "as asked"}, result.noise, {0, 200});
  visit.number({"dose_percent", "of the day; 100 is the recommended limit"}, result.dose_percent, percents);
  visit.text({"noise_words", "one sentence; may be empty"}, result.noise_words, 300);
  list(visit, {"papers", "to be asked for"}, result.papers, {0, 200});
  visit.text({"defers", "what comes first"}, result.defers, 300);
}

}  // namespace tailblock

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/fields.h"
#include "repair/repair_tables.h"

namespace tailblock {

/// Noise at the ear, from one stretch of work.
struct NoiseAtWork {
  std::string what;
  double level_db = 85;  ///< dB(A), measured
  double minutes = 0;
};
void describe(FieldVisitor&, NoiseAtWork&);

struct CautionsRequest {
  std::vector<std::string> operations;  ///< data/operations.csv: brings its hazards
  std::vector<std::string> hazards;     ///< data/hazards.csv
  std::vector<std::string> materials;   ///< data/listed_materials.csv
  std::vector<NoiseAtWork> noise;
};
void describe(FieldVisitor&, CautionsRequest&);

struct HazardShown {
  std::string hazard, name, harm, controls, waste;
  bool never_proposed = false;
  std::vector<ExposureLimit> limits;
  std::string caution;  ///< one line for the step
};
void describe(FieldVisitor&, HazardShown&);

struct NoiseShown {
  std::string what;
  double level_db = 85, minutes = 0;
  double allowed_minutes = 480;        ///< a day, by the recommended limit
  double legal_allowed_minutes = 480;  ///< by the United States' legal limit, which protects less
  double dose_percent = 0;
};
void describe(FieldVisitor&, NoiseShown&);

/// That papers are to be asked for, and of whom. Never whether something is lawful.
struct PapersShown {
  std::string material, rule, ask, authority;
};
void describe(FieldVisitor&, PapersShown&);

struct CautionsResult {
  std::vector<HazardShown> hazards;
  std::vector<NoiseShown> noise;
  double dose_percent = 0;  ///< of the day; 100 is the recommended limit
  std::string noise_words;
  std::vector<PapersShown> papers;
  std::string defers;
};
void describe(FieldVisitor&, CautionsResult&);

/// What can hurt in this work, with the limits that were published, the day's noise, and papers to ask for.
///
///     allowed = 480/2^((L - reference)/exchange) minutes a day         dose = 100 sum minutes/allowed percent
///
/// Reference 85 dB(A) and exchange 3 dB (recommended), 90 and 5 (legal, United States). Levels from 70 dB(A); over the
/// ceiling nothing is allowed. Source: NIOSH 98-126 (1998); data/exposure_limits.csv, row by row.
/// @throws Refused naming an unknown operation, hazard or material.
[[nodiscard]] CautionsResult cautions(const CautionsRequest& request, const RepairTables& tables);

/// Minutes a day at a level.
[[nodiscard]] double allowed_minutes(double level_db, double reference_db, double exchange_db);

}  // namespace tailblock

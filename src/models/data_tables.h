#pragma once

#include <functional>
#include <string_view>
#include <vector>

#include "air/hygrometer.h"
#include "bench/durations.h"
#include "bench/weights.h"
#include "body/drawing_tables.h"
#include "body/plate.h"
#include "body/plate_figures.h"
#include "body/top_designs.h"
#include "body/top_findings.h"
#include "repair/repair_tables.h"
#include "season/body_designs.h"
#include "season/calibration.h"
#include "season/crack_figures.h"
#include "season/crack_risk.h"
#include "season/season_prior.h"
#include "season/top_movement.h"
#include "setup/fret_limits.h"
#include "setup/neck_angle.h"
#include "setup/player.h"
#include "setup/saddle_limits.h"
#include "strings/contact_verdicts.h"
#include "strings/intonation.h"
#include "strings/string_tables.h"
#include "wood/species.h"

namespace tailblock {

/// The tables of the trade that the models read, each from its file in data/, loaded once at the edge.
struct DataTables {
  SpeciesTable species;
  BodyDesignTable designs;
  SeasonPrior season_prior;
  TopMovements top_movements;
  CrackFigures crack_figures;
  SaddleLimits saddle_limits;
  FretLimits fret_limits;
  PlayerDefaults players;
  ClearanceVerdicts clearance_verdicts;
  ContactVerdicts contact_verdicts;
  NeckLimits neck_limits;
  std::vector<NeckStep> neck_steps;
  IntonationLimits intonation_limits;
  SaltTable salts;
  std::vector<StringSet> string_sets;
  std::vector<Tuning> tunings;
  std::vector<AttackLevelRow> attacks;
  BenchWeights bench_weights;
  DurationPrior duration_prior;
  PlateFigures plate_figures;
  TopDesignTable tops;
  std::vector<TopFindingKind> top_findings;
  RepairTables repairs;
  DrawingTables drawing;

  [[nodiscard]] SeasonTables season() const {
    return {&designs, &species, &season_prior, &top_movements, &tops, &plate_figures};
  }
  [[nodiscard]] PlateTables plate() const { return {&species, &tops, &plate_figures}; }
  [[nodiscard]] CrackTables cracks() const { return {plate(), &season_prior, &crack_figures}; }
};

/// Gives the text of a file by its path in the repository: `data/species.csv`.
using TextOfFile = std::function<std::string_view(std::string_view path)>;

/// @throws Refused naming the table, row and cell it refuses.
[[nodiscard]] DataTables load_data_tables(const TextOfFile& text);

}  // namespace tailblock

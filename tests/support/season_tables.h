#pragma once

#include "body/plate_figures.h"
#include "body/top_designs.h"
#include "published.h"
#include "season/body_designs.h"
#include "season/calibration.h"
#include "season/season_prior.h"
#include "season/top_movement.h"
#include "wood/species.h"

namespace tailblock::testing {

/// The tables of the repository, read once.
inline const SeasonTables& season_tables() {
  static const BodyDesignTable designs = body_design_table(repository_file("data/body_designs.csv"));
  static const SpeciesTable species = species_table(repository_file("data/species.csv"));
  static const SeasonPrior prior = season_prior(repository_file("data/season_prior.csv"));
  static const TopMovements movements = top_movements(repository_file("data/season_structure.csv"));
  static const PlateFigures figures = plate_figures(repository_file("data/plate_figures.csv"));
  static const TopDesignTable tops = top_design_table({.outlines = repository_text("data/top_outlines.csv"),
                                                       .builds = repository_text("data/top_builds.csv"),
                                                       .braces = repository_text("data/top_braces.csv")},
                                                      figures);
  static const SeasonTables tables{.designs = &designs,
                                   .species = &species,
                                   .prior = &prior,
                                   .movements = &movements,
                                   .tops = &tops,
                                   .plate = &figures};
  return tables;
}

}  // namespace tailblock::testing

#include "models/data_tables.h"

namespace tailblock {

DataTables load_data_tables(const TextOfFile& text) {
  const PlateFigures figures = plate_figures(text("data/plate_figures.csv"));
  return {.species = species_table(text("data/species.csv")),
          .designs = body_design_table(text("data/body_designs.csv")),
          .season_prior = season_prior(text("data/season_prior.csv")),
          .top_movements = top_movements(text("data/season_structure.csv")),
          .crack_figures = crack_figures(text("data/crack_figures.csv")),
          .saddle_limits = saddle_limits(text("data/saddle_limits.csv")),
          .fret_limits = fret_limits(text("data/fret_limits.csv")),
          .players = player_defaults(text("data/player_defaults.csv")),
          .clearance_verdicts = clearance_verdicts(text("data/clearance_verdicts.csv")),
          .contact_verdicts = contact_verdicts(text("data/contact_verdicts.csv")),
          .neck_limits = neck_limits(text("data/neck_limits.csv")),
          .neck_steps = neck_steps(text("data/neck_steps.csv")),
          .intonation_limits = intonation_limits(text("data/intonation_limits.csv")),
          .salts = salt_table(text("data/salts.csv")),
          .string_sets = string_sets(text("data/string_sets.csv")),
          .tunings = tunings(text("data/tunings.csv")),
          .attacks = attack_levels(text("data/attacks.csv")),
          .bench_weights = bench_weights(text("data/bench_weights.csv")),
          .duration_prior = duration_prior(text("data/duration_prior.csv")),
          .plate_figures = figures,
          .tops = top_design_table({.outlines = text("data/top_outlines.csv"),
                                    .builds = text("data/top_builds.csv"),
                                    .braces = text("data/top_braces.csv")},
                                   figures),
          .top_findings = top_findings(text("data/top_findings.csv")),
          .repairs = repair_tables(text),
          .drawing = drawing_tables({.back_braces = text("data/back_braces.csv"),
                                     .figures = text("data/drawing_figures.csv"),
                                     .places = text("data/drawing_places.csv")})};
}

}  // namespace tailblock

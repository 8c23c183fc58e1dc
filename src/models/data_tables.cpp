#include "models/data_tables.h"

namespace tailblock {

DataTables load_data_tables(const TextOfFile& text) {
  return {.species = species_table(text("data/species.csv")),
          .designs = body_design_table(text("data/body_designs.csv")),
          .season_prior = season_prior(text("data/season_prior.csv")),
          .saddle_limits = saddle_limits(text("data/saddle_limits.csv")),
          .players = player_defaults(text("data/player_defaults.csv")),
          .clearance_verdicts = clearance_verdicts(text("data/clearance_verdicts.csv")),
          .salts = salt_table(text("data/salts.csv")),
          .string_sets = string_sets(text("data/string_sets.csv")),
          .tunings = tunings(text("data/tunings.csv")),
          .attacks = attack_levels(text("data/attacks.csv")),
          .bench_weights = bench_weights(text("data/bench_weights.csv")),
          .duration_prior = duration_prior(text("data/duration_prior.csv"))};
}

}  // namespace tailblock

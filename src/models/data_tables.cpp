#include "models/data_tables.h"

namespace tailblock {

DataTables load_data_tables(const TextOfFile& text) {
  return {.species = species_table(text("data/species.csv")),
          .designs = body_design_table(text("data/body_designs.csv")),
          .season_prior = season_prior(text("data/season_prior.csv")),
          .saddle_limits = saddle_limits(text("data/saddle_limits.csv")),
          .neck_limits = neck_limits(text("data/neck_limits.csv")),
          .neck_steps = neck_steps(text("data/neck_steps.csv")),
          .players = player_defaults(text("data/player_defaults.csv")),
          .clearance_verdicts = clearance_verdicts(text("data/clearance_verdicts.csv")),
          .intonation_limits = intonation_limits(text("data/intonation_limits.csv")),
          .salts = salt_table(text("data/salts.csv")),
          .string_sets = string_sets(text("data/string_sets.csv")),
          .tunings = tunings(text("data/tunings.csv")),
          .attacks = attack_levels(text("data/attacks.csv"))};
}

}  // namespace tailblock

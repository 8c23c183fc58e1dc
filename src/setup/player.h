#pragma once

#include <string_view>

#include "quantity/length.h"

namespace tailblock {

/// What is taken for granted of a player who has not said, one side of the neck. Action at fret 12.
struct PlayerSide {
  Length wanted;        ///< action at fret 12 this player likes
  Length least_margin;  ///< and never nearer the frets than this over the least clean action
  Length comfort;       ///< how much higher is still put up with
};

struct PlayerDefaults {
  PlayerSide bass, treble;
  Length relief;  ///< of a neck whose relief was never read
};

/// Reads data/player_defaults.csv.
/// @throws Refused naming the cell, or the value that is missing, unknown or comes twice.
[[nodiscard]] PlayerDefaults player_defaults(std::string_view csv);

}  // namespace tailblock

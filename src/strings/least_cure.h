#pragma once

#include <optional>

#include "strings/clearance.h"

namespace tailblock {

/// One crown that stands over its neighbours and that notes touch.
struct HighCrown {
  int fret = 1;
  Length over_neighbours;  ///< over the straight line through the crowns on both sides, the bow taken off
  Length lower_by;         ///< never more than it stands over them
  int cures = 0;           ///< how many of the touching notes then clear every fret
};
void describe(FieldVisitor&, HighCrown&);

/// The least that would stop the touching notes, done one way or the other.
struct LeastCure {
  int touching = 0;
  Length saddle_raise_bass, saddle_raise_treble;  ///< never negative: bone is put under, not taken off
  std::optional<HighCrown> high_crown;            ///< absent when no one crown stands out
};
void describe(FieldVisitor&, LeastCure&);

/// What frees every note that touches: a taller saddle, or one high crown brought down to its neighbours.
///
/// Saddle: the line of least height in the middle that lies on or above every string's lowest saddle (as
/// least_clean_action) and on or above the saddle there is. Crown: for each fret that stands over its neighbours, the
/// map is computed again with that crown lowered by what the notes over it need, at most down to the neighbours' line;
/// the one that frees the most notes is named. Metal in a level row of crowns is never advised here: that is
/// fret-dress.
///
/// Source: derived here (docs/models/clearance.md).
/// @throws Refused as clearance.
[[nodiscard]] LeastCure least_cure(const ClearanceRequest&, const UnitEnvelopes&, const ClearanceVerdicts&);

}  // namespace tailblock

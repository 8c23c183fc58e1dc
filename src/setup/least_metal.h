#pragma once

#include <optional>
#include <vector>

#include "setup/fret_notes.h"
#include "setup/linear_program.h"

namespace tailblock {

/// What may and what must come off each crown, mm. Where bass and treble were not read apart only `bass` counts.
struct MetalBounds {
  CrownPair most;
  CrownPair least;  ///< for fall-away; never above `most`
  bool apart = false;
};

/// The notes as rows of a linear program in the metal taken off; one column a fret, or two (bass, treble) when apart.
/// Notes that stay clear whatever is taken off anywhere have no row.
struct MetalProgram {
  LinearProgram program;
  std::vector<NoteOverFret> row_note;
};
[[nodiscard]] MetalProgram metal_program(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds);

struct LeastMetal {
  CrownPair remove;
  double total = 0;  ///< sum over the frets, mean of both sides
  /// Which notes force each fret, most telling first; index 0 is fret 1.
  std::vector<std::vector<ForcingNote>> forced_by;
};

/// The least metal that makes every note clean; absent when no metal within the bounds does.
[[nodiscard]] std::optional<LeastMetal> least_metal(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds);

/// When nothing does: the least sum of what is missing over all notes, whatever is taken off. Worst first.
[[nodiscard]] std::vector<UncleanNote> unclean_notes(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds);

/// By how much the action, bass and treble alike, must be over the wanted one before metal within the bounds can make
/// every note clean.
[[nodiscard]] double least_action_raise(const std::vector<NoteOverFret>& notes, const MetalBounds& bounds);

}  // namespace tailblock

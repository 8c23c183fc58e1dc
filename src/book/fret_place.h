#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "setup/fret_dress.h"

namespace tailblock {

/// Measures whose id begins with `fret_` are read at one fret after another. A reading of one says where:
///
///     fret_crown@7       fret 7, the whole crown      fret_crown@7b  its bass end      fret_crown@7t  its treble end
///     fret_gap@7/1-14    under a straightedge that lies on frets 1 and 14
///
/// so that the book keeps such a reading like any other, and a correction of one fret corrects that fret.
struct FretPlace {
  std::string measure;  ///< fret_crown
  int fret = 1;
  FretSide side = FretSide::both;
  int from_fret = 0, to_fret = 0;  ///< 0: no straightedge
};

[[nodiscard]] bool is_read_at_frets(std::string_view measure);

/// Absent when the text is not of that form. A gap needs its straightedge's feet; nothing else takes them.
[[nodiscard]] std::optional<FretPlace> fret_place(std::string_view text);

/// How a measure read at frets is read, for the model.
[[nodiscard]] std::optional<FretReadingKind> fret_reading_kind(std::string_view measure);

}  // namespace tailblock

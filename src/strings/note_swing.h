#pragma once

#include <optional>
#include <vector>

#include "strings/clearance.h"

namespace tailblock {

/// One note over one higher fret.
struct SwingOverFret {
  int fret = 1;
  Length from_nut;
  Length string_over_plane;  ///< at rest, stopped as the note is
  Length lowest_over_plane;  ///< where its swing comes down to
  Length gap;                ///< between the string at rest and the crown
  double ratio = 0;          ///< gap over reach, as clearance has it
  ClearanceVerdict verdict = ClearanceVerdict::clear;
};
void describe(FieldVisitor&, SwingOverFret&);

/// How one note swings over the frets, and what would just free it.
struct NoteSwing {
  int string = 1;
  int stopped_fret = 0;
  std::vector<SwingOverFret> frets;  ///< every higher fret
  std::optional<Length>
      saddle_raise;  ///< at this string's saddle, so that it touches nothing; absent when it does not touch
};
void describe(FieldVisitor&, NoteSwing&);

/// The swing of one note: the same gaps and reaches that clearance compares, one fret at a time.
///
///     lowest_n = rest_n - a e_n        a amplitude, e_n the deeper reach of the two plucks per mm
///
/// Known over the frets only, not between the last of them and the saddle.
///
/// Source: derived here (docs/models/clearance.md).
/// @throws Refused as clearance, or when there is no such note.
[[nodiscard]] NoteSwing note_swing(const ClearanceRequest&, const UnitEnvelopes&, const ClearanceVerdicts&, int string,
                                   int stopped_fret);

}  // namespace tailblock

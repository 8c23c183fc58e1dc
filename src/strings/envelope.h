#pragma once

#include <cstddef>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// One string as it moves: stiff, damped, pinned at saddle and at nut or fret.
struct MovingString {
  double kg_per_metre = 0;
  Force tension;
  double bending_stiffness_n_m2 = 0;
  Length setback;  ///< saddle crest behind the scale length
  /// Loss of partial of wave number k: sigma = loss_per_s + loss_m2_per_s k^2. Common practice, no source; a first
  /// touch hardly depends on it (docs/models/clearance.md).
  double loss_per_s = 0.7;
  double loss_m2_per_s = 4e-4;
};
void describe(FieldVisitor&, MovingString&);

/// What the envelopes depend on; nothing of the set-up (heights, relief, crowns) is among it.
struct EnvelopeRequest {
  Length scale_length = mm(645);
  int fret_count = 20;
  std::vector<MovingString> strings;
  Length pluck_from_saddle = mm(120);
  Length pluck_width = mm(2);  ///< of finger or pick: rounds the corner of the plucked shape
};
void describe(FieldVisitor&, EnvelopeRequest&);

/// One note, contact-free, plucked 1 mm at the pluck point: how deep below its rest line the string ever comes over
/// each higher fret, in mm per mm of pluck. First entry is the fret after the stopped one.
struct UnitEnvelope {
  int string = 1;
  int stopped_fret = 0;        ///< 0 open
  std::vector<double> away;    ///< plucked away from the board, released on the far side
  std::vector<double> toward;  ///< plucked toward the board
};
void describe(FieldVisitor&, UnitEnvelope&);

struct UnitEnvelopes {
  int string_count = 0;
  int fret_count = 0;
  std::vector<UnitEnvelope> notes;  ///< string 1 open, string 1 at fret 1 ... fret_count - 1, string 2 open ...

  [[nodiscard]] const UnitEnvelope& note(int string, int stopped_fret) const {
    return notes[static_cast<std::size_t>(string - 1) * static_cast<std::size_t>(fret_count) +
                 static_cast<std::size_t>(stopped_fret)];
  }
};
void describe(FieldVisitor&, UnitEnvelopes&);

/// Where a note of this sounding length is plucked: the stated distance from the saddle, but never beyond three
/// quarters of what sounds, where a hand would be in its own way.
[[nodiscard]] Length pluck_from_saddle(Length stated, Length sounding_length);

/// How deep each note of each string reaches, per mm of pluck, whatever the set-up.
///
///     m u_tt = T u_xx - E I u_xxxx - 2 m s0 u_t + 2 m s1 u_xxt,   u = u_xx = 0 at both ends
///
/// released from rest in the static shape of a pluck of the stated width. A pluck toward the board is the same motion
/// upside down, so one run gives both. Pinned ends are the cautious choice: clamped ones let a stopped note be plucked
/// 5-10 % harder. Left out: second polarisation, stretch, yielding ends.
///
/// Source: derived here; prototype values of the design study (docs/models/clearance.md).
/// @throws Refused naming the field outside the valid range.
[[nodiscard]] UnitEnvelopes unit_envelopes(const EnvelopeRequest& request);

}  // namespace tailblock

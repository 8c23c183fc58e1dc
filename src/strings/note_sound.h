#pragma once

#include <cstdint>
#include <vector>

#include "strings/contact.h"

namespace tailblock {

/// One note to be heard.
struct NoteSoundRequest {
  ContactRequest note;
  bool with_frets = true;  ///< false: the same note, clean
};
void describe(FieldVisitor&, NoteSoundRequest&);

inline constexpr int sound_samples_per_s = 44100;

/// What the bridge is driven with, as sound: the force on it, loud enough to hear, the same loudness with frets and
/// without, so that the two can be compared. The body's own colour is left out.
/// Source: derived here (docs/models/contact.md).
/// @throws Refused as contact.
[[nodiscard]] std::vector<std::int16_t> note_sound(const NoteSoundRequest&);

}  // namespace tailblock

#pragma once

#include <vector>

#include "strings/bare_motion.h"
#include "strings/contact.h"
#include "strings/note_geometry.h"

namespace tailblock {

/// One note as it is stepped through time.
struct ContactNote {
  SpeakingString string;
  std::vector<FretPointUnder> frets;  ///< the higher frets
  double length = 0;
};

[[nodiscard]] ContactNote contact_note(const Geometry& g, const MovingString& moving, int string, int stopped_fret);

/// Where this attack plucks a note of this length.
[[nodiscard]] PluckPlace pluck_place(const Attack& attack, double length);

/// The fret the string lies on when nobody plucks it; 0 when it lies on none.
[[nodiscard]] int fret_lain_on(const ContactNote& note, int stopped_fret);

/// What the frets did to one pluck, held against the same pluck without them; nothing where nothing was touched.
[[nodiscard]] Buzz buzz_of(const PluckMotion& fretted, const BareMotion& bare, int stopped_fret);

}  // namespace tailblock

#pragma once

#include "strings/fretted_motion.h"
#include "strings/string_grid.h"

namespace tailblock {

/// What fretted_motion tells of a pluck without frets, in closed form.
struct BareMotion {
  double bridge_energy = 0;
  double bridge_energy_high = 0;
  double energy_at_end = 0;
};

/// The same steps on the same grid, but as the sum of the grid's own partials u_j = sin(q pi j/N), each of which goes
/// as g^n z^n: energies are geometric series.
///
///     z^2 - 2 c z + 1 = 0,  c = 1 - k^2 (T e + E I e^2)/2m,  g^M = 1 - M k (s0 + s1 e),  e = (4/h^2) sin^2(q pi/2N)
///
/// Two partials far apart beat so fast that their product adds nothing in a fifth of a second; those near each other
/// are kept. Gain within 0.01 dB of the stepped string. Source: derived here (docs/models/contact.md).
[[nodiscard]] BareMotion bare_motion(const SpeakingString& string, const StringGrid& grid, const HeldPluck& pluck,
                                     double seconds);

}  // namespace tailblock

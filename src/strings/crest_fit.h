#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

struct IntonationLimits;

/// The slot and the saddle in it, from above. A setback is a distance behind the scale length, towards the tail.
struct SaddleTop {
  Length front_bass,
      front_treble;  ///< front face of the saddle at the outer strings, as a setback; negative is in front
  Length thickness = mm(3);
  Length front_sd = mm(0.2);  ///< one standard deviation of where the front face was read
};
void describe(FieldVisitor&, SaddleTop&);

/// Where one crest is wanted, and how far that may be out: the truth lies between `low` and `high`.
struct WantedCrest {
  int string = 1;
  double share = 0;  ///< across the saddle: 0 at string 1, 1 at the last
  Length setback, low, high;
  bool read = false;  ///< an octave error of this string was read
};

/// Whether one crest can be filed where it is wanted.
enum class CrestPlace { fits, may_fit, too_far_forward, too_far_back };

/// One crest on the top of the saddle.
struct CrestOnTop {
  int string = 1;
  Length behind_front;  ///< wanted, behind the front face
  Length behind_front_low, behind_front_high;
  CrestPlace place = CrestPlace::fits;
  bool to_be_read = false;  ///< an octave error of this string would help to decide
};
void describe(FieldVisitor&, CrestOnTop&);

/// What has to be done about the slot.
enum class SlotVerdict {
  fits,         ///< every crest fits, wherever in its range it turns out to be
  cannot_tell,  ///< some range runs over an edge: more strings must be read
  widen,        ///< one wall moves and a thicker saddle goes in
  recut         ///< filled and cut anew elsewhere
};

/// The slot under the crests that are wanted.
struct SlotFit {
  SlotVerdict verdict = SlotVerdict::fits;
  std::vector<CrestOnTop> crests;  ///< string 1 first
  /// widen: by how much, forward at the front wall and back at the back wall; one of the two is zero.
  Length widen_front, widen_back;
  /// recut: how far the front wall moves at the outer strings, towards the tail positive.
  Length move_bass, move_treble;
  Length thickness_least;  ///< of a saddle that holds all crests, best placed
  std::string words;       ///< one sentence
};
void describe(FieldVisitor&, SlotFit&);

/// Whether the crests fit on the saddle's top, each with the least land before and behind it, and if not what the slot
/// needs. A recut slot moves as little as it can (sum of squares of its two ends); where no place of a saddle this
/// thick holds them all, it is as thick as it must be. Source: derived here (docs/models/intonation.md).
[[nodiscard]] SlotFit slot_fit(const SaddleTop& top, const std::vector<WantedCrest>& crests,
                               const IntonationLimits& limits);

}  // namespace tailblock

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "strings/contact.h"

namespace tailblock {

/// One note of one string, asked for.
struct NoteAsked {
  int string = 1;
  int stopped_fret = 0;
};
void describe(FieldVisitor&, NoteAsked&);

struct ContactMapRequest {
  NeckLine neck;
  StringAction action;
  std::vector<GuitarString> strings;  ///< string 1, the thinnest, first; as many as neck.string_count
  Attack attack;                      ///< the player's normal playing
  Attack hard_attack;                 ///< the hardest this player plays
  std::vector<NoteAsked> notes{};     ///< empty: every note
};
void describe(FieldVisitor&, ContactMapRequest&);

enum class NoteVerdict { clean, on_hard_playing, on_normal_playing };

/// One note, the worse of both pluck directions.
struct NoteContact {
  int string = 1;
  int stopped_fret = 0;
  NoteVerdict verdict = NoteVerdict::clean;
  int struck_fret = 0;  ///< struck hardest; 0 none
  bool lies_on_fret = false;
  double gain_db_normal = 0, gain_db_hard = 0;
  double impulse_normal_mns = 0, impulse_hard_mns = 0;
};
void describe(FieldVisitor&, NoteContact&);

struct ContactMapResult {
  std::vector<NoteContact> notes;
  int clean = 0, on_hard_playing = 0, on_normal_playing = 0;
  std::string verdict;  ///< one plain sentence
};
void describe(FieldVisitor&, ContactMapResult&);

/// Does `work(0)` .. `work(count - 1)`, each once, in any order, perhaps at the same time.
using DoEach = std::function<void(std::size_t count, const std::function<void(std::size_t)>& work)>;

/// The unit envelopes of the two attacks of a map request.
struct MapEnvelopes {
  const UnitEnvelopes& normal;
  const UnitEnvelopes& hard;
};
/// The two attacks each as clearance asks them.
[[nodiscard]] ClearanceRequest as_clearance(const ContactMapRequest& request, const Attack& attack);

/// Which notes buzz on this set-up, played normally and hard, both pluck directions.
///
/// A pluck whose contact-free envelope stays clear of every fret by three hundredths is clean without a run: no run
/// with contact touched above a ratio of 1.001 (docs/models/contact.md). The order of the work changes nothing. Source:
/// derived here (docs/models/contact.md).
/// @throws Refused naming the field outside the valid range.
[[nodiscard]] ContactMapResult contact_map(const ContactMapRequest&, const MapEnvelopes&, const ContactVerdicts&,
                                           const DoEach& do_each);

}  // namespace tailblock

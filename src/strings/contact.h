#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strings/clearance.h"
#include "strings/contact_verdicts.h"
#include "strings/fretted_motion.h"

namespace tailblock {

/// Which way the string is drawn before it is let go.
enum class PluckDirection { away, toward };

/// How long a string takes to fall by 60 dB, where the player wants other losses than the usual ones.
struct DecayTimes {
  double at_100_hz_s = 8;
  double at_2000_hz_s = 1;
};
void describe(FieldVisitor&, DecayTimes&);

/// One note, plucked once.
struct ContactRequest {
  NeckLine neck;
  StringAction action;
  std::vector<GuitarString> strings;  ///< string 1, the thinnest, first; as many as neck.string_count
  Attack attack;                      ///< where, how wide and, unless said below, how far
  int string = 1;
  int stopped_fret = 0;  ///< 0 open
  PluckDirection direction = PluckDirection::away;
  /// Normal to the board at the pluck, of this very note: one of the two at most, instead of the attack's.
  std::optional<Length> amplitude{};
  std::optional<Force> pluck_force{};
  double seconds = 0.25;
  std::optional<DecayTimes> decay{};
};
void describe(FieldVisitor&, ContactRequest&);

/// What the frets do to a note, in figures that do not change when the steps are made finer.
struct Buzz {
  double gain_db = 0;       ///< how much larger a part of the bridge's force lies above 2 kHz than without frets
  double energy_taken = 0;  ///< of the energy that the note would have at the end without frets
  double impulse_mns = 0;   ///< to all frets
  int struck_fret = 0;      ///< the fret that is struck hardest; 0 none
};

enum class ContactVerdict { clean, graze, buzzes };
[[nodiscard]] ContactVerdict verdict_of(const Buzz& buzz, const ContactVerdicts& limits);

/// One fret that was struck.
struct StruckFret {
  int fret = 1;
  double impulse_mns = 0;
};
void describe(FieldVisitor&, StruckFret&);

struct ContactResult {
  ContactVerdict verdict = ContactVerdict::clean;
  std::string sentence;
  Length amplitude;  ///< as let go
  Force pluck_force;
  std::optional<double> first_touch_ms;
  std::optional<int> first_fret;
  std::vector<StruckFret> struck;
  double impulse_mns = 0;
  double gain_db = 0;
  double energy_taken = 0;
  double pluck_energy_mj = 0;
  double energy_balance = 0;
  int steps_per_s = 0;
};
void describe(FieldVisitor&, ContactResult&);

/// How one note moves over the frets once it is plucked, and what they do to it.
///
/// The string is stiff, damped, pinned at nut or fret and at the saddle; frets are hard. Reported are converged figures
/// only: first touch, impulses, gain and energy; the number of touches and their peak forces are not, since they change
/// with every refinement. Left out: the second direction of swing, stretch, the body, yielding frets, loss in contact.
///
/// Source: derived here (docs/models/contact.md).
/// @throws Refused naming the field outside the valid range, or when the string lies on a fret before it is plucked.
[[nodiscard]] ContactResult contact(const ContactRequest&, const ContactVerdicts&);

/// The motion behind it, for whoever wants more than the report.
struct ContactMotion {
  SpeakingString string;
  HeldPluck pluck;
  Force pluck_force{};
  NoteMotions motions{};  ///< pluck 0 over the frets; pluck 1, where wanted, without
};
enum class Compare { nothing, same_note_without_frets };
[[nodiscard]] ContactMotion contact_motion(const ContactRequest&, const MotionWishes&, Compare compare);

}  // namespace tailblock

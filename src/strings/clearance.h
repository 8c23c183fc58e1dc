#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/fields.h"
#include "strings/envelope.h"
#include "strings/string_line.h"
#include "strings/tension.h"

namespace tailblock {

/// What a stopped note takes over from the open one: a finger or a pick lets go at a force, so the shorter string moves
/// less.
enum class StoppedPluck { same_force, same_amplitude };

/// How hard the player plays. Amplitude is the part normal to the board, at the pluck, of the open string; the part
/// along the board touches nothing. Amplitudes of the strings between go straight from one to the other. Levels are in
/// data/attacks.csv.
struct Attack {
  Length amplitude_bass;
  Length amplitude_treble;
  Length pluck_from_saddle = mm(120);
  Length pluck_width = mm(2);
  StoppedPluck stopped = StoppedPluck::same_force;
};
void describe(FieldVisitor&, Attack&);

struct ClearanceRequest {
  NeckLine neck;
  StringAction action;
  std::vector<GuitarString> strings;  ///< string 1, the thinnest, first; as many as neck.string_count
  Attack attack;
};
void describe(FieldVisitor&, ClearanceRequest&);

/// What the unit envelopes of this request depend on: two requests with equal envelope requests may share the
/// envelopes.
[[nodiscard]] EnvelopeRequest envelope_request(const ClearanceRequest& request);

enum class ClearanceVerdict { clear, doubtful, touches };
inline constexpr std::array<std::string_view, 3> clearance_verdict_names{"clear", "doubtful", "touches"};

/// Where a verdict changes, with the reason; from data/clearance_verdicts.csv.
struct ClearanceVerdicts {
  double touches_below_ratio = 0;
  double clear_from_ratio = 0;
  std::string touches_because;
  std::string clear_because;
};
/// @throws Refused naming the row it refuses.
[[nodiscard]] ClearanceVerdicts clearance_verdicts(std::string_view csv);

[[nodiscard]] ClearanceVerdict clearance_verdict(double ratio, const ClearanceVerdicts& limits);

/// One note of one string.
struct NoteClearance {
  int string = 1;
  int stopped_fret = 0;   ///< 0 open
  int limiting_fret = 1;  ///< the fret it comes nearest to, for its swing
  bool away = true;       ///< the pluck that comes nearest: away from the board, or toward it
  double ratio = 0;       ///< least of gap over reach: 1 just touches, above is clear
  Length margin{};        ///< gap less reach over the limiting fret; negative reaches below its crown
  ClearanceVerdict verdict = ClearanceVerdict::clear;
};
void describe(FieldVisitor&, NoteClearance&);

struct ClearanceResult {
  std::vector<NoteClearance> notes;  ///< string 1 open, string 1 at fret 1 ... fret_count - 1, string 2 open ...
  int clear = 0, doubtful = 0, touching = 0;
  int worst_note = 0;   ///< index into notes
  std::string verdict;  ///< one plain sentence
};
void describe(FieldVisitor&, ClearanceResult&);

/// Which notes of which strings clear every higher fret when played like this, on this set-up.
///
///     r = min over n of h_n/(a e_n)     h_n gap over fret n, a amplitude, e_n reach per mm of pluck
///
/// The deeper reach of the two pluck directions counts.
///
/// Contact-free: says whether it touches, not how it sounds. Agrees with a run with contact on "touches" in 99.7 % of
/// 1,097 runs (design study). Not modelled: buzz behind the stopped fret, loose frets, a string that is not round.
/// Source: derived here (docs/models/clearance.md).
/// @throws Refused naming the field outside the valid range, or when the envelopes are not those of this request's
/// strings.
[[nodiscard]] ClearanceResult clearance(const ClearanceRequest&, const UnitEnvelopes&, const ClearanceVerdicts&);
/// The same, computing the envelopes itself: tens of milliseconds instead of one.
[[nodiscard]] ClearanceResult clearance(const ClearanceRequest&, const ClearanceVerdicts&);

/// The note that keeps a saddle from going lower.
struct DecidingNote {
  int string = 1;
  int stopped_fret = 0;
  int fret = 1;  ///< whose crown it would touch
  bool away = true;
};
void describe(FieldVisitor&, DecidingNote&);

/// How low one string can go, all others aside.
struct LeastString {
  int string = 1;
  Length saddle_over_frets;
  Length action12;
  DecidingNote decided_by;
};
void describe(FieldVisitor&, LeastString&);

struct LeastCleanAction {
  OuterHeights outer;  ///< the lowest saddle, bass and treble, and its action at fret 12
  DecidingNote bass;   ///< string 6, 5 or 4 of six
  DecidingNote treble;
  std::vector<LeastString> strings;
};
void describe(FieldVisitor&, LeastCleanAction&);

/// The lowest saddle at which no note touches at this attack, nut and relief as they are.
///
/// Each gap grows straight with the saddle's height, so each string has its own lowest height s_i in closed form. The
/// two ends of a saddle are cut independently and its top runs from one to the other, so the saddle is the lowest such
/// line that lies on or above every s_i: lowest in the middle, that is in the mean of bass and treble. It rests on one
/// string of the bass half and one of the treble half, which are the ones that decide. The request's action is used
/// only to find the nut where it is given over fret 1.
///
/// Source: derived here (docs/models/clearance.md).
/// @throws Refused as clearance.
[[nodiscard]] LeastCleanAction least_clean_action(const ClearanceRequest&, const UnitEnvelopes&);

}  // namespace tailblock

#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "strings/rod_figure.h"
#include "strings/clearance.h"

namespace tailblock {

struct FretLimits;

/// Where across the board a crown was read.
enum class FretSide { both, bass, treble };
inline constexpr std::array<std::string_view, 3> fret_side_names{"both", "bass", "treble"};

/// How one crown was read.
enum class FretReadingKind {
  departure,     ///< crown over a true line (or the neck's own bow); positive is high
  straightedge,  ///< gap under a straightedge that lies on two frets; under one beyond them the gap may be negative
  rocker,      ///< gap under the free end of a short straightedge over three frets, its other end held down; 0: no rock
  over_board,  ///< crown over the board: the metal left
  springs      ///< how far the crown goes down when it is pressed home
};
inline constexpr std::array<std::string_view, 5> fret_reading_kind_names{"departure", "straightedge", "rocker",
                                                                         "over_board", "springs"};

struct FretReading {
  FretReadingKind kind = FretReadingKind::departure;
  int fret = 1;  ///< the one read; of a rocker, the middle one
  FretSide side = FretSide::both;
  Length value{};
  std::optional<Length> sd{};      ///< one standard deviation; where not given, that of data/fret_limits.csv
  int from_fret = 0, to_fret = 0;  ///< straightedge: the frets it lies on
};
void describe(FieldVisitor&, FretReading&);

struct FretDressRequest {
  NeckLine neck;        ///< as the crowns were read; its crown_departures_mm stay empty, the readings say them
  StringAction action;  ///< today; with the heights over fret 1 it tells where the nut slots are
  std::vector<GuitarString> strings;
  Attack attack;
  std::vector<FretReading> readings;
  /// Action over the dressed crown of fret 12; where not given, today's.
  std::optional<Length> wanted_action12_bass{}, wanted_action12_treble{};
  std::optional<Length> least_crown{};  ///< every crown keeps this much over the board
  std::optional<Length> margin{};       ///< room left under every note
  /// How far the last fret is to lie below the line of the frets before fall_away_from; none where not given.
  std::optional<Length> fall_away{};
  std::optional<int> fall_away_from{};  ///< the last fret still on the line; where not given, the body joint
  bool adjustable_rod = true;
  std::optional<RodFigure> rod{};   ///< how far fret 12 rises with the relief, where this neck has shown it
  bool neck_angle_changed = false;  ///< since the frets were last level
  std::optional<RelativeHumidity> body_humidity{};  ///< in the body, as the crowns were read
};
void describe(FieldVisitor&, FretDressRequest&);

/// A note that keeps a fret from staying as high as it is.
struct ForcingNote {
  int string = 1;
  int stopped_fret = 0;  ///< 0 open
  bool away = true;      ///< plucked away from the board, or toward it
  double share = 0;      ///< of the fret's own cut; several notes may share it
};
void describe(FieldVisitor&, ForcingNote&);

/// A note that cannot be made clean, and by how much.
struct UncleanNote {
  int string = 1;
  int stopped_fret = 0;
  int fret = 1;  ///< whose crown it touches
  Length short_by;
};
void describe(FieldVisitor&, UncleanNote&);

/// One fret: what was found, what comes off and why.
struct FretToDress {
  int fret = 1;
  Length from_nut{};
  bool read = true;                       ///< false: nobody read it, its neighbours' line stands in
  Length crown_bass{}, crown_treble{};    ///< over the neck's bow and the best line through all crowns, as found
  Length crown_sd{};                      ///< one standard deviation, the wider side
  Length line_bass{}, line_treble{};      ///< the one line that touches every crown, fall-away included
  Length remove_bass{}, remove_treble{};  ///< least metal, note by note
  Length level_bass{}, level_treble{};    ///< to that one line instead
  std::optional<Length> left_bass{},
      left_treble{};  ///< crown over the board after `remove`; absent where it was not read
  bool loose = false;
  bool renew = false;    ///< its crown does not hold what would have to come off, or is under the least already
  std::string reason{};  ///< one plain sentence; empty when nothing comes off
  std::vector<ForcingNote> forced_by{};  ///< most telling first
};
void describe(FieldVisitor&, FretToDress&);

enum class FretVerdict {
  clean,      ///< nothing to do
  withheld,   ///< what touches is inside the readings' own error
  loose,      ///< a crown springs down: seat it first
  nut,        ///< open strings would touch over level frets as well: a slot is too low
  relief,     ///< a turn of the rod does it
  action,     ///< level frets would touch too: the wanted action is too low for this playing
  hump,       ///< several crowns round the body joint stand high together
  kink,       ///< the tongue rises from the neck's line
  spot,       ///< one or two frets
  level_all,  ///< three or more
  refret      ///< the crowns do not hold what must come off
};
inline constexpr std::array<std::string_view, 11> fret_verdict_names{
    "clean", "withheld", "loose", "nut", "relief", "action", "hump", "kink", "spot", "level_all", "refret"};

/// A change of relief that makes every note clean with no metal off. A range, because a turn of the rod lifts fret 12
/// by a factor of the neck's own.
struct ReliefInstead {
  Length change_least, change_most;  ///< signed; positive is more relief
  Length relief_after_least, relief_after_most;
  Length action12_rise_most;  ///< of the strings when the rod alone is turned
};
void describe(FieldVisitor&, ReliefInstead&);

/// Figures with their own error.
struct FretFigure {
  Length value, sd;
};
void describe(FieldVisitor&, FretFigure&);

struct FretDressResult {
  FretVerdict verdict = FretVerdict::clean;
  std::string sentence;                  ///< the verdict, in one or two plain sentences
  std::vector<std::string> explanation;  ///< what it rests on
  std::vector<std::string> steps;        ///< in order, with the caution where it is read
  std::vector<std::string> cautions;
  std::vector<FretToDress> frets;               ///< fret 1 first
  bool apart = false;                           ///< bass and treble were read apart
  bool cut_is_advised = false;                  ///< whether `remove` is to be filed; else it stands for comparison only
  Length total_removed;                         ///< sum over the frets of `remove`, mean of both sides
  Length total_to_level;                        ///< the same of `level`
  bool clean_when_level = true;                 ///< every note clean with all crowns on one line
  int touching_before = 0, touching_after = 0;  ///< notes nearer a crown than the margin
  FretFigure worst_shortfall;                   ///< as found: by how much the worst note is short of the margin
  std::optional<FretFigure> hump, tongue_rise;  ///< absent on a neck with too few frets beyond its joint
  std::optional<ReliefInstead> relief_instead;
  std::optional<Length> nut_rise;    ///< of the slots, when it is the nut
  std::vector<UncleanNote> unclean;  ///< when the wanted action cannot be had: least sum of shortfalls, worst first
  std::optional<Length> clean_action12_bass, clean_action12_treble;  ///< the least that can be had instead
  Length wanted_action12_bass, wanted_action12_treble;
  Length least_crown;
  Length margin;             ///< room asked under every note: what was wanted, as far as level frets have it
  bool irreversible = true;  ///< metal does not grow back
};
void describe(FieldVisitor&, FretDressResult&);

/// What to file off which crown so that no note buzzes, or why the file stays in the drawer. docs/models/fret-dress.md.
///
///     min sum r_n,   gap_mn(r) >= a e_mn + margin for every note m and every higher fret n,   0 <= r_n <= crown -
///     least
///
/// r metal off, m the stopped fret, a e the string's reach over fret n. The string runs from the dressed crown m to the
/// saddle, which stands where the wanted action over the dressed crown 12 puts it, so every gap is linear in r and the
/// least metal is a linear program; its prices say which note forces which fret.
/// Left out: contact (a note that grazes), the crown's own shape, what a beam bends, frets worn in furrows under one
/// string. Valid where clearance is. Source: derived here; limits common practice, no source (data/fret_limits.csv).
/// @throws Refused naming the field, the fret read twice, or a reading that says nothing.
[[nodiscard]] FretDressResult fret_dress(const FretDressRequest& request, const UnitEnvelopes& envelopes,
                                         const FretLimits& limits);

/// What the unit envelopes of this request depend on.
[[nodiscard]] EnvelopeRequest envelope_request(const FretDressRequest& request);

}  // namespace tailblock

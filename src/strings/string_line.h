#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/fields.h"

/// The exact geometry of strings over frets. Heights are over the fret plane: the plane, under each string, through the
/// crowns of fret 1 and of the fret at the body joint. Positive is away from the board, so the crowns of a neck with
/// relief lie below zero. Distances along the string are from the nut's front edge. String 1 is the thinnest; lists run
/// from string 1 on.
namespace tailblock {

/// The neck and the string ends that a saddle slider leaves alone. Used by string-line, clearance and saddle.
struct NeckLine {
  Length scale_length = mm(645);
  int body_joint_fret = 14;
  int fret_count = 20;
  int string_count = 6;
  /// Open string over the crown of fret 1, as measured with the action of the same request. Defaults are assumed.
  Length nut_over_fret1_bass = mm(0.45);
  Length nut_over_fret1_treble = mm(0.35);
  /// Bottom of the nut slot over the fret plane. When given, used instead of the heights over fret 1.
  std::optional<Length> nut_over_frets_bass{}, nut_over_frets_treble{};
  Length relief{};  ///< depth of a parabola below the chord of fret 1 and the joint fret; a back-bowed neck is negative
  /// Height of each crown over where the parabola puts it, fret 1 first; empty when level. A measured profile is relief
  /// 0 and every crown here.
  std::vector<double> crown_departures_mm{};
  Length setback_bass = mm(4.5);  ///< saddle crest behind the scale length, at the outer strings; assumed
  Length setback_treble = mm(1.5);
  Length string_spread_at_saddle = mm(54);  ///< between the outer strings
  /// Crossways radius of the frets and of the saddle top; where either is not given the saddle follows the frets.
  std::optional<Length> board_radius{}, saddle_radius{};
};
void describe(FieldVisitor&, NeckLine&);

/// How high the strings are at the saddle end: action at fret 12, or the saddle itself over the fret plane; one pair of
/// the two.
struct StringAction {
  std::optional<Length> action12_bass{}, action12_treble{};                    ///< over the crown of fret 12
  std::optional<Length> saddle_over_frets_bass{}, saddle_over_frets_treble{};  ///< at the outer strings
};
void describe(FieldVisitor&, StringAction&);

/// Distance from the nut to fret n, n = 0 the nut itself.
///
///     x_n = L (1 - 2^(-n/12))
///
/// Source: twelve-tone equal temperament, first principles.
[[nodiscard]] Length fret_from_nut(Length scale_length, int fret);

/// Height of the crown of each fret over the fret plane, fret 1 first.
///
///     z_n = -4 R (x_n - x_1)(x_j - x_n)/(x_j - x_1)^2 + departure_n   between fret 1 and the joint fret j; departure_n
///     elsewhere
///
/// R relief. The parabola is uniform curvature to second order.
///
/// Source: derived here (docs/models/string-line.md).
[[nodiscard]] std::vector<Length> crowns_over_plane(const NeckLine& neck);

/// Where a string leaves the nut and meets the saddle. Straight between the two.
struct StringEnds {
  Length nut_over_frets;
  Length saddle_over_frets;
  Length saddle_from_nut;
};

/// How far across a string lies: 0 at string 1, 1 at the last. Strings are spaced evenly; a lone string counts as bass.
[[nodiscard]] double share_from_treble(const NeckLine& neck, int string);

/// What a saddle rounder or flatter than the frets adds, at a string, to the straight line between the outer strings.
///
///     arc(saddle radius) - arc(board radius),  arc(R) = sqrt(R^2 - y^2) - sqrt(R^2 - (w/2)^2)
///
/// y from the middle, w spread of the strings. Nothing where either radius is unknown.
///
/// Source: first principles.
[[nodiscard]] Length saddle_over_straight(const NeckLine& neck, int string);

/// The ends of every string, string 1 first, from what was measured. On a saddle whose radius differs from that of the
/// frets the inner strings are higher or lower than the straight line between the outer ones.
/// @throws Refused when not exactly one pair of heights is given.
[[nodiscard]] std::vector<StringEnds> string_ends(const NeckLine& neck, const StringAction& action);

/// The same neck with the nut slots fixed where this action shows them to be, so that the saddle can then be moved.
[[nodiscard]] NeckLine with_nut_held(const NeckLine& neck, const StringAction& action);

/// Action at fret 12, bass and treble, and the saddle heights that make it.
struct OuterHeights {
  Length action12_bass, action12_treble;
  Length saddle_over_frets_bass, saddle_over_frets_treble;
};
void describe(FieldVisitor&, OuterHeights&);
[[nodiscard]] OuterHeights outer_heights(const NeckLine& neck, const StringAction& action);

/// How far the saddle must move for the action at fret 12 to change by so much, the nut held; both positive upward.
///
///     ds = da (L + c)/x_12       c setback at that string: 2.01 mm a mm with 3 mm setback on 645 mm
///
/// Source: derived here (similar triangles).
struct SaddleMove {
  Length bass, treble;
};
[[nodiscard]] SaddleMove saddle_move(const NeckLine& neck, Length action12_change_bass, Length action12_change_treble);

/// What a change of relief does to the action at fret 12, middle of the neck.
struct ReliefEffect {
  /// Fret plane and both string ends held: what another reading of the same strings would show. A lower bound.
  ///     4 dR (x_12 - x_1)(x_j - x_12)/(x_j - x_1)^2
  Length at_held_ends;
  /// Tangent at the body joint held, uniform curvature from nut to joint, nut carried by the neck, saddle by the body:
  /// what turning the rod or the season does.
  ///     k = 8 dR/(x_j - x_1)^2,  lift(x) = k (x_j - x)^2/2,  lift(0)(1 - x_12/(L + c)) - lift(x_12)
  Length at_held_joint;
};
/// Source: derived here (docs/models/string-line.md).
[[nodiscard]] ReliefEffect relief_effect(const NeckLine& neck, Length relief_change);

/// How far a level string hangs below straight in its middle, by its own weight.
///
///     m g L^2/(8 T) = g/(32 f^2)     f pitch of the open string
///
/// Source: derived here (parabola of a shallow catenary, with T = m (2 L f)^2).
[[nodiscard]] Length string_sag(double pitch_hz);

struct StringLineRequest {
  NeckLine neck;
  StringAction action;
  /// Top of the bridge at the saddle over the fret plane, under the outer strings; negative when a straightedge passes
  /// above it.
  std::optional<Length> bridge_top_over_frets_bass{}, bridge_top_over_frets_treble{};
  double lowest_pitch_hz = 82.41;  ///< for the caution about sag
};
void describe(FieldVisitor&, StringLineRequest&);

/// One fret, to draw and to measure by.
struct FretPoint {
  int fret = 1;
  Length from_nut;
  Length crown_over_plane;
};
void describe(FieldVisitor&, FretPoint&);

/// One string, to draw and to measure by.
struct StringPath {
  int string = 1;
  Length nut_over_frets;
  Length saddle_over_frets;
  Length saddle_from_nut;
  std::vector<double> over_fret_mm;  ///< open string over each crown, fret 1 first
  std::vector<double>
      over_next_fret_mm;  ///< stopped at fret 1, 2 ... : over the crown of the next fret; one fewer than the frets
  std::optional<Length> exposure;  ///< saddle top over the bridge top, where the bridge top is known
};
void describe(FieldVisitor&, StringPath&);

struct StringLineResult {
  std::vector<FretPoint> frets;
  std::vector<StringPath> strings;
  OuterHeights outer;
  double saddle_per_action12_bass = 2;  ///< mm of saddle for a mm at fret 12
  double saddle_per_action12_treble = 2;
  /// mm at fret 12 for a mm of relief, read two ways: see ReliefEffect.
  double action12_per_relief_at_held_ends = 0;
  double action12_per_relief_at_held_joint = 0;
  Length sag_when_level;  ///< of the lowest string, guitar lying on its back
  std::vector<std::string> cautions;
};
void describe(FieldVisitor&, StringLineResult&);

/// Where every string lies over every fret, and what a move of saddle or relief would do.
/// Valid for scales of 500..700 mm, 12..24 frets, relief of -1..2 mm, heights up to 30 mm.
/// Left out: the fan of the strings over a cylindrical board (below 0.05 mm at the saddle), the height of the string's
/// centre over its underside, sag.
///
/// Source: derived here (docs/models/string-line.md).
/// @throws Refused naming the field outside the valid range.
[[nodiscard]] StringLineResult string_line(const StringLineRequest& request);

}  // namespace tailblock

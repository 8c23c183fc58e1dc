#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// The motion in time of one note over rigid points: the reference that everything about buzz is judged by. SI
/// throughout; places are from the stop (nut or fret), heights over the string's rest line, positive away from the
/// board.
namespace tailblock {

/// What sounds, from stop to saddle: stiff, damped, pinned at both ends.
struct SpeakingString {
  double length = 0;
  double tension = 0;
  double kg_per_metre = 0;
  double bending_stiffness = 0;
  double loss_per_s = 0;     ///< of slow partials
  double loss_m2_per_s = 0;  ///< grows with the square of the wave number
};

/// Where and how wide a finger or a pick holds the string.
struct PluckPlace {
  double from_stop = 0;
  double width = 0;
};

/// How far the plucked point of a stiff string gives to a unit force spread over the width.
///
///     [x (l - x)/l - w/8 - (d^2/w)(1 - exp(-w/2d))]/T      x place, w width, d = sqrt(E I/T)
///
/// The ends are many d away, so only their straight part counts. Source: derived here (docs/models/clearance.md).
[[nodiscard]] double height_per_force(const SpeakingString& string, const PluckPlace& place);

/// A rigid point under the string: it is struck where the string comes lower than `gap` below its rest line.
struct FretPointUnder {
  double from_stop = 0;
  double gap = 0;  ///< positive: the string at rest is clear of it
};

/// The string at rest, held aside, about to be let go.
struct HeldPluck {
  PluckPlace place;
  double height = 0;       ///< of the plucked point; positive: away from the board
  bool over_frets = true;  ///< false: the same string where there are no frets
};

/// Force of string on fret for a dent y.
///
///     F = K y^1.5
///
/// Crossed cylinders by Hertz give 4e9 N/m^1.5 for steel on steel and about half for bronze on nickel silver (first
/// principles; design study B12). Above 1e8 it changes the gain by less than 1 dB (design study): only that it is hard
/// matters.
inline constexpr double fret_hardness = 2e9;

/// What one run is wanted for.
struct MotionWishes {
  double seconds = 0.25;
  double least_steps_per_s = 88200;  ///< doubled as often as two frets would share a grid cell
  bool keep_bridge_force = false;
  bool watch_energy = false;
};

/// One pluck, told over the run.
struct PluckMotion {
  std::optional<double> first_touch_s;
  std::size_t first_point = 0;       ///< index of the point struck first
  std::vector<double> impulses;      ///< to each point, N s
  double least_force = 0;            ///< of any point at any step, N: never below 0, since frets do not pull
  double bridge_energy = 0;          ///< sum of squares of the force on the bridge from `settled_s` on, N2 s
  double bridge_energy_high = 0;     ///< the same above `high_band_hz`
  double energy_at_release = 0;      ///< J
  double energy_at_end = 0;          ///< J, what the damping left
  double energy_lost = 0;            ///< J, what the damping took; only when watched
  double energy_error = 0;           ///< largest of any step, over the energy at release; only when watched
  std::vector<double> bridge_force;  ///< N, upward, a value a step; only when kept
};

struct NoteMotions {
  int intervals = 0;  ///< of the grid
  double grid_m = 0;
  double step_s = 0;
  std::vector<PluckMotion> plucks;
};

inline constexpr std::size_t plucks_at_once = 4;
inline constexpr double settled_s = 0.02;     ///< the sound of the pluck itself is over
inline constexpr double high_band_hz = 2000;  ///< where buzz is heard

/// One note plucked in up to four ways, each by itself, stepped through time together.
///
///     m u_tt = T u_xx - E I u_xxxx - 2 m s0 u_t + 2 m s1 u_xxt + sum over points of F_i delta(x - x_i)
///
/// Explicit differences on the finest stable grid; each contact by a discrete gradient, so that energy is kept to
/// rounding, frets never pull and one monotone equation a fret and step is solved.
/// Source: scheme as in the design studies; derived here (docs/models/contact.md).
/// A pluck that would be held below a point starts bent over it.
/// @throws Refused when points lie too near each other, or the string is too stiff to be plucked like one.
[[nodiscard]] NoteMotions fretted_motion(const SpeakingString& string, std::span<const FretPointUnder> points,
                                         std::span<const HeldPluck> plucks, const MotionWishes& wishes);

}  // namespace tailblock

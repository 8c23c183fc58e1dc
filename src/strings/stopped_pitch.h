#pragma once

#include <vector>

#include "strings/string_line.h"
#include "strings/tension.h"

namespace tailblock {

/// How many of a string's two ends are held as if clamped: 0 none, 1 the fret or nut alone, 2 the saddle too. Any
/// figure between is an end that gives a little.
struct EndFirmness {
  double open = 1;
  double stopped = 1;
};

/// Where the crest of the saddle and the edge of the nut stand for one string.
struct StringPlace {
  Length setback;      ///< crest behind the scale length
  Length nut_shift{};  ///< edge of the nut towards the saddle
};

/// The finger's own share: how far it pushes the string under the straight line from nut to crown, and where.
struct Finger {
  Length press_depth{};
  Length behind_fret = mm(10);  ///< or half way to the fret before, where that is nearer
};

/// One string as its pitch at the frets needs it. Metres, newtons; heights over the fret plane; index 0 is the nut's.
struct StoppedString {
  double pull_n = 0, stretching_n = 0, bending_n_m2 = 0;
  double scale_m = 0;
  double nut_y = 0;
  double line12_y = 0;  ///< height of the open string at fret 12, kept while the crest is moved
  double dead_m = 0;    ///< string beyond nut and saddle that slides freely and shares the stretch
  std::vector<double> fret_x, crown_y;
};

/// @throws Refused when the string's diameter is not known.
[[nodiscard]] StoppedString stopped_string(const NeckLine& neck, const StringEnds& ends, const GuitarString& string,
                                           Length dead_length);

/// The first mode of a stiff string over that of a flexible one.
///
///     1 + q e + (q^2 + pi^2/2) e^2        e = sqrt(E I/T)/l, l speaking length, q clamped ends
///
/// Good to 1e-5 for e under 0.01. Source: both design studies, checked there and in tests/ against the roots of the
/// stiff string's characteristic equations.
[[nodiscard]] double stiff_first_mode(double sqrt_ei_over_t_m, double speaking_m, double firm_ends);

/// What stopping a string at a fret does to it.
struct Stopped {
  double open_m = 0;      ///< of the open string, along itself
  double sounding_m = 0;  ///< from the crown to the crest, along itself
  double longer_m = 0;    ///< nut to crown to crest, more than the open string
  double pull_n = 0;      ///< T + E A longer/(open + dead)
};
/// Source: derived here (exact lengths, Hooke).
[[nodiscard]] Stopped stopped(const StoppedString& string, int fret, const StringPlace& place,
                              const Finger& finger = {});

/// How sharp a stopped note is, against the fret's equal-tempered distance from the open string, which is in tune.
///
///     1200 log2(f_n/f_0) - 100 n,    f = sqrt(T/m)/(2 l) stiff_first_mode,    l and T_n as `stopped`
///
/// The pull T is that of the open string at the scale length; when the crest moves the action at fret 12 stays. Left
/// out: what the hand adds beyond `finger`, so the figure is a floor. Source: derived here (docs/models/intonation.md).
[[nodiscard]] double cents_sharp(const StoppedString& string, int fret, const StringPlace& place,
                                 const EndFirmness& ends, const Finger& finger = {});

/// The least force that lays the open string on the crown of a fret, at the open pull.
///
///     F = T d (1/x + 1/(l - x))        d height of the string over the crown
///
/// Source: derived here. A finger behind the fret needs more.
[[nodiscard]] Force least_finger_force(const StoppedString& string, int fret, Length setback);

}  // namespace tailblock

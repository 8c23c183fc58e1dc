#pragma once

#include <vector>

#include "strings/clearance.h"

namespace tailblock {

/// The set-up in plain metres, frets 1.. at index 1.., the nut at index 0.
struct Geometry {
  std::vector<double> fret_x;
  std::vector<double> crown;
  std::vector<StringEnds> ends;
  std::vector<double> share;  ///< from the treble, a string
};

[[nodiscard]] Geometry geometry(const NeckLine& neck, const StringAction& action);

/// One note as it is set up: where the string starts and how hard it is plucked, in metres.
struct Note {
  double start_x;  ///< nut or stopped fret
  double start_y;  ///< of the string there, over the fret plane
  double saddle_x;
  double amplitude;
};

/// The note of one string stopped at a fret, 0 open.
///
///     a = a_open give(l)/give(l_open),  give(l) = d (l - d)/l      when the force stays the same
///
/// l sounding length, d pluck from saddle: how far a flexible string gives to a force.
///
/// Source: first principles.
[[nodiscard]] Note note_of(const Geometry& g, const Attack& attack, int string, int stopped_fret);

/// @throws Refused when the strings are not as many as the neck has, or the envelopes are of other strings.
void require_matching(const ClearanceRequest& request, const UnitEnvelopes& envelopes);

}  // namespace tailblock

#include "strings/note_geometry.h"

namespace tailblock {
namespace {

/// Height of the plucked point for a unit force on a flexible string of unit tension.
double give(double length, double from_saddle) { return from_saddle * (length - from_saddle) / length; }

}  // namespace

Geometry geometry(const NeckLine& neck, const StringAction& action) {
  Geometry g{.fret_x = {0}, .crown = {0}, .ends = string_ends(neck, action)};
  for (const Length crown : crowns_over_plane(neck)) {
    g.fret_x.push_back(fret_from_nut(neck.scale_length, static_cast<int>(g.fret_x.size())).in_base());
    g.crown.push_back(crown.in_base());
  }
  return g;
}

Note note_of(const Geometry& g, const Attack& attack, int string, int stopped) {
  const StringEnds& ends = g.ends[static_cast<std::size_t>(string - 1)];
  const double count = static_cast<double>(g.ends.size());
  const double share = count > 1 ? (string - 1) / (count - 1) : 1;
  const Length open = attack.amplitude_treble + share * (attack.amplitude_bass - attack.amplitude_treble);
  const auto s = static_cast<std::size_t>(stopped);
  const double saddle_x = ends.saddle_from_nut.in_base();
  const double length = saddle_x - g.fret_x[s];
  const double kept =
      attack.stopped == StoppedPluck::same_amplitude
          ? 1
          : give(length, pluck_from_saddle(attack.pluck_from_saddle, Length::from_base(length)).in_base()) /
                give(saddle_x, pluck_from_saddle(attack.pluck_from_saddle, Length::from_base(saddle_x)).in_base());
  return {.start_x = g.fret_x[s],
          .start_y = stopped == 0 ? ends.nut_over_frets.in_base() : g.crown[s],
          .saddle_x = saddle_x,
          .amplitude = open.in_base() * kept};
}

void require_matching(const ClearanceRequest& request, const UnitEnvelopes& envelopes) {
  const auto strings = static_cast<int>(request.strings.size());
  if (strings != request.neck.string_count) {
    throw Refused("strings: " + std::to_string(strings) + " items, the neck has " +
                  std::to_string(request.neck.string_count) + " strings");
  }
  const auto notes = static_cast<std::size_t>(strings) * static_cast<std::size_t>(request.neck.fret_count);
  if (envelopes.string_count != strings || envelopes.fret_count != request.neck.fret_count ||
      envelopes.notes.size() != notes) {
    throw Refused("strings: the envelopes are not those of this request");
  }
}

}  // namespace tailblock

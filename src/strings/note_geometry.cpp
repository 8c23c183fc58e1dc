#include "strings/note_geometry.h"

namespace tailblock {
namespace {

/// How far the plucked point of a flexible string of unit tension gives to a unit force.
double give(Length sounding, Length stated_pluck) {
  const Length d = pluck_from_saddle(stated_pluck, sounding);
  return d * (1 - d / sounding) / mm(1);
}

}  // namespace

Geometry geometry(const NeckLine& neck, const StringAction& action) {
  Geometry g{.fret_x = {0}, .crown = {0}, .ends = string_ends(neck, action), .share = {}};
  for (const Length crown : crowns_over_plane(neck)) {
    g.fret_x.push_back(fret_from_nut(neck.scale_length, static_cast<int>(g.fret_x.size())).in_base());
    g.crown.push_back(crown.in_base());
  }
  for (int string = 1; string <= neck.string_count; ++string) g.share.push_back(share_from_treble(neck, string));
  return g;
}

Note note_of(const Geometry& g, const Attack& attack, int string, int stopped_fret) {
  const auto i = static_cast<std::size_t>(string - 1);
  const auto stopped = static_cast<std::size_t>(stopped_fret);
  const StringEnds& ends = g.ends[i];
  Length amplitude = attack.amplitude_treble + g.share[i] * (attack.amplitude_bass - attack.amplitude_treble);
  if (attack.stopped == StoppedPluck::same_force) {
    const Length sounding = ends.saddle_from_nut - Length::from_base(g.fret_x[stopped]);
    amplitude =
        give(sounding, attack.pluck_from_saddle) / give(ends.saddle_from_nut, attack.pluck_from_saddle) * amplitude;
  }
  return {.start_x = g.fret_x[stopped],
          .start_y = stopped_fret == 0 ? ends.nut_over_frets.in_base() : g.crown[stopped],
          .saddle_x = ends.saddle_from_nut.in_base(),
          .amplitude = amplitude.in_base()};
}

void require_matching(const ClearanceRequest& request, const UnitEnvelopes& envelopes) {
  const auto strings = static_cast<int>(request.strings.size());
  if (strings != request.neck.string_count) {
    throw Refused("strings: " + std::to_string(strings) + " items, the neck has " +
                  std::to_string(request.neck.string_count) + " strings");
  }
  const int frets = request.neck.fret_count;
  bool fits = envelopes.string_count == strings && envelopes.fret_count == frets &&
              envelopes.notes.size() == static_cast<std::size_t>(strings) * static_cast<std::size_t>(frets);
  for (int string = 1; fits && string <= strings; ++string) {
    for (int stopped = 0; fits && stopped < frets; ++stopped) {
      const UnitEnvelope& note = envelopes.note(string, stopped);
      const auto higher = static_cast<std::size_t>(frets - stopped);
      fits = note.string == string && note.stopped_fret == stopped && note.away.size() == higher &&
             note.toward.size() == higher;
    }
  }
  if (!fits) throw Refused("strings: the envelopes are not those of this request");
}

}  // namespace tailblock

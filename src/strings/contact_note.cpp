#include "strings/contact_note.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tailblock {

ContactNote contact_note(const Geometry& g, const MovingString& moving, int string, int stopped_fret) {
  const StringEnds& ends = g.ends[static_cast<std::size_t>(string - 1)];
  const auto stopped = static_cast<std::size_t>(stopped_fret);
  const double start_x = g.fret_x[stopped];
  const double start_y = stopped_fret == 0 ? ends.nut_over_frets.in_base() : g.crown[stopped];
  ContactNote note;
  note.length = ends.saddle_from_nut.in_base() - start_x;
  const double slope = (ends.saddle_over_frets.in_base() - start_y) / note.length;
  note.string = {.length = note.length,
                 .tension = in_newtons(moving.tension),
                 .kg_per_metre = moving.kg_per_metre,
                 .bending_stiffness = moving.bending_stiffness_n_m2,
                 .loss_per_s = moving.loss_per_s,
                 .loss_m2_per_s = moving.loss_m2_per_s};
  for (std::size_t n = stopped + 1; n < g.fret_x.size(); ++n) {
    const double from_stop = g.fret_x[n] - start_x;
    note.frets.push_back({.from_stop = from_stop, .gap = start_y + slope * from_stop - g.crown[n]});
  }
  return note;
}

PluckPlace pluck_place(const Attack& attack, double length) {
  const Length from_saddle = pluck_from_saddle(attack.pluck_from_saddle, Length::from_base(length));
  return {.from_stop = length - from_saddle.in_base(), .width = attack.pluck_width.in_base()};
}

int fret_lain_on(const ContactNote& note, int stopped_fret) {
  const auto lowest =
      std::ranges::min_element(note.frets, {}, [](const FretPointUnder& fret) { return fret.gap / fret.from_stop; });
  if (lowest == note.frets.end() || lowest->gap > 0) return 0;
  return stopped_fret + 1 + static_cast<int>(lowest - note.frets.begin());
}

Buzz buzz_of(const PluckMotion& fretted, const BareMotion& bare, int stopped_fret) {
  Buzz buzz;
  if (!fretted.first_touch_s) return buzz;
  buzz.gain_db = 10 * std::log10(fretted.bridge_energy_high / fretted.bridge_energy * bare.bridge_energy /
                                 bare.bridge_energy_high);
  buzz.energy_taken = 1 - fretted.energy_at_end / bare.energy_at_end;
  buzz.impulse_mns = 1000 * std::accumulate(fretted.impulses.begin(), fretted.impulses.end(), 0.0);
  const auto hardest = std::ranges::max_element(fretted.impulses);
  buzz.struck_fret = stopped_fret + 1 + static_cast<int>(hardest - fretted.impulses.begin());
  return buzz;
}

}  // namespace tailblock

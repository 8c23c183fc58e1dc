#include <algorithm>
#include <limits>

#include "strings/clearance.h"
#include "strings/note_geometry.h"

namespace tailblock {
namespace {

/// The lowest saddle at which one note touches nothing, and what it would touch.
struct LeastSaddle {
  double saddle_y = -std::numeric_limits<double>::infinity();
  DecidingNote decided_by;
};

LeastSaddle least_saddle(const Geometry& g, const Note& note, const UnitEnvelope& envelope) {
  LeastSaddle least;
  for (std::size_t i = 0; i < envelope.away.size(); ++i) {
    const auto n = static_cast<std::size_t>(envelope.stopped_fret) + 1 + i;
    const bool away = envelope.away[i] >= envelope.toward[i];
    const double lowest_line = g.crown[n] + note.amplitude * (away ? envelope.away[i] : envelope.toward[i]);
    const double saddle_y =
        note.start_y + (lowest_line - note.start_y) * (note.saddle_x - note.start_x) / (g.fret_x[n] - note.start_x);
    if (saddle_y <= least.saddle_y) continue;
    least.saddle_y = saddle_y;
    least.decided_by = {envelope.string, envelope.stopped_fret, static_cast<int>(n), away};
  }
  return least;
}

/// A string's least saddle with its place across, 0 at string 1, 1 at the last.
struct Peg {
  double share;
  double height;
  int string;
};

/// The two pegs that a straight edge laid across them all from above rests on, at the middle.
struct Rest {
  Peg treble, bass;
};

Rest resting_on(const std::vector<Peg>& pegs) {
  Rest best{pegs.front(), pegs.back()};
  double lowest = std::numeric_limits<double>::infinity();
  for (const Peg& treble : pegs) {
    for (const Peg& bass : pegs) {
      if (treble.share > 0.5 || bass.share < 0.5 || (bass.share <= treble.share && pegs.size() > 1)) continue;
      const double run = bass.share - treble.share;
      const double slope = run > 0 ? (bass.height - treble.height) / run : 0;
      const bool above_all = std::all_of(pegs.begin(), pegs.end(), [&](const Peg& peg) {
        return treble.height + slope * (peg.share - treble.share) >= peg.height - 1e-12;
      });
      const double middle = treble.height + slope * (0.5 - treble.share);
      if (above_all && middle < lowest) {
        lowest = middle;
        best = {treble, bass};
      }
    }
  }
  return best;
}

}  // namespace

LeastCleanAction least_clean_action(const ClearanceRequest& request, const UnitEnvelopes& envelopes) {
  require_valid(request);
  require_matching(request, envelopes);
  const NeckLine neck = with_nut_held(request.neck, request.action);
  const Geometry g = geometry(neck, request.action);
  // What the saddle's own arch gives each string over the straight line between its ends.
  const StringAction level{.saddle_over_frets_bass = Length{}, .saddle_over_frets_treble = Length{}};
  const std::vector<StringEnds> arch = string_ends(neck, level);

  std::vector<LeastSaddle> least(g.ends.size());
  for (const UnitEnvelope& envelope : envelopes.notes) {
    const Note note = note_of(g, request.attack, envelope.string, envelope.stopped_fret);
    const LeastSaddle of_note = least_saddle(g, note, envelope);
    LeastSaddle& of_string = least[static_cast<std::size_t>(envelope.string - 1)];
    if (of_note.saddle_y > of_string.saddle_y) of_string = of_note;
  }

  LeastCleanAction result;
  std::vector<Peg> pegs;
  for (std::size_t i = 0; i < least.size(); ++i) {
    const double share = least.size() > 1 ? static_cast<double>(i) / static_cast<double>(least.size() - 1) : 1;
    pegs.push_back({share, least[i].saddle_y - arch[i].saddle_over_frets.in_base(), static_cast<int>(i + 1)});
    const double x12 = g.fret_x[12];
    const double nut = g.ends[i].nut_over_frets.in_base();
    const double over12 = nut + (least[i].saddle_y - nut) * x12 / g.ends[i].saddle_from_nut.in_base() - g.crown[12];
    result.strings.push_back({.string = static_cast<int>(i + 1),
                              .saddle_over_frets = Length::from_base(least[i].saddle_y),
                              .action12 = Length::from_base(over12),
                              .decided_by = least[i].decided_by});
  }
  const Rest rest = resting_on(pegs);
  const double run = rest.bass.share - rest.treble.share;
  const double slope = run > 0 ? (rest.bass.height - rest.treble.height) / run : 0;
  const Length treble = Length::from_base(rest.treble.height - slope * rest.treble.share);
  const Length bass = Length::from_base(rest.treble.height + slope * (1 - rest.treble.share));
  result.outer = outer_heights(neck, {.saddle_over_frets_bass = bass, .saddle_over_frets_treble = treble});
  result.treble = least[static_cast<std::size_t>(rest.treble.string - 1)].decided_by;
  result.bass = least[static_cast<std::size_t>(rest.bass.string - 1)].decided_by;
  return result;
}

}  // namespace tailblock

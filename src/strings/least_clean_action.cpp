#include <limits>

#include "strings/clearance.h"
#include "strings/note_geometry.h"
#include "strings/resting_line.h"

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

/// One string alone rests level.
StringAction saddle_on(const RestingLine& rest) {
  return {.saddle_over_frets_bass = Length::from_base(rest.at(1)),
          .saddle_over_frets_treble = Length::from_base(rest.at(0))};
}

/// Each string's own lowest saddle, string 1 first.
std::vector<LeastSaddle> least_by_string(const ClearanceRequest& request, const UnitEnvelopes& envelopes,
                                         const Geometry& g) {
  std::vector<LeastSaddle> least(g.ends.size());
  for (const UnitEnvelope& envelope : envelopes.notes) {
    const Note note = note_of(g, request.attack, envelope.string, envelope.stopped_fret);
    const LeastSaddle of_note = least_saddle(g, note, envelope);
    LeastSaddle& of_string = least[static_cast<std::size_t>(envelope.string - 1)];
    if (of_note.saddle_y > of_string.saddle_y) of_string = of_note;
  }
  return least;
}

}  // namespace

LeastCleanAction least_clean_action(const ClearanceRequest& request, const UnitEnvelopes& envelopes) {
  require_valid(request);
  require_matching(request, envelopes);
  const NeckLine neck = with_nut_held(request.neck, request.action);
  const Geometry g = geometry(neck, request.action);
  const std::vector<LeastSaddle> least = least_by_string(request, envelopes, g);

  LeastCleanAction result;
  std::vector<Peg> pegs;
  for (std::size_t i = 0; i < least.size(); ++i) {
    const int string = static_cast<int>(i) + 1;
    const Length own = Length::from_base(least[i].saddle_y);
    const double nut = g.ends[i].nut_over_frets.in_base();
    const double at12 = nut + (least[i].saddle_y - nut) * g.fret_x[12] / g.ends[i].saddle_from_nut.in_base();
    pegs.push_back({share_from_treble(neck, string), (own - saddle_over_straight(neck, string)).in_base()});
    result.strings.push_back({.string = string,
                              .saddle_over_frets = own,
                              .action12 = Length::from_base(at12 - g.crown[12]),
                              .decided_by = least[i].decided_by});
  }
  const RestingLine rest = resting_line(pegs);
  result.outer = outer_heights(neck, saddle_on(rest));
  result.treble = least[rest.treble].decided_by;
  result.bass = least[rest.bass].decided_by;
  return result;
}

}  // namespace tailblock

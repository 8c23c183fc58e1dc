#include "strings/note_swing.h"

#include <algorithm>
#include <array>

#include "strings/note_geometry.h"

namespace tailblock {

NoteSwing note_swing(const ClearanceRequest& request, const UnitEnvelopes& envelopes, const ClearanceVerdicts& limits,
                     int string, int stopped_fret) {
  require_valid(request);
  require_matching(request, envelopes);
  (void)require_within("string", string, {1, static_cast<double>(request.neck.string_count), ""});
  (void)require_within("stopped_fret", stopped_fret, {0, request.neck.fret_count - 1.0, ""});
  const Geometry g = geometry(request.neck, request.action);
  const Note note = note_of(g, request.attack, string, stopped_fret);
  const UnitEnvelope& envelope = envelopes.note(string, stopped_fret);
  const double saddle_y = g.ends[static_cast<std::size_t>(string - 1)].saddle_over_frets.in_base();

  NoteSwing swing{.string = string, .stopped_fret = stopped_fret, .frets = {}, .saddle_raise = {}};
  for (std::size_t i = 0; i < envelope.away.size(); ++i) {
    const auto n = static_cast<std::size_t>(stopped_fret) + 1 + i;
    const double share = (g.fret_x[n] - note.start_x) / (note.saddle_x - note.start_x);
    const double rest = note.start_y + share * (saddle_y - note.start_y);
    const double reach = note.amplitude * std::max(envelope.away[i], envelope.toward[i]);
    const double gap = rest - g.crown[n];
    swing.frets.push_back({.fret = static_cast<int>(n),
                           .from_nut = Length::from_base(g.fret_x[n]),
                           .string_over_plane = Length::from_base(rest),
                           .lowest_over_plane = Length::from_base(rest - reach),
                           .gap = Length::from_base(gap),
                           .ratio = gap / reach,
                           .verdict = clearance_verdict(gap / reach, limits)});
    if (gap >= reach) continue;
    const Length raise = Length::from_base((reach - gap) / share);
    swing.saddle_raise = std::max(swing.saddle_raise.value_or(raise), raise);
  }
  return swing;
}

void describe(FieldVisitor& visit, SwingOverFret& over) {
  visit.integer({"fret", "over this crown"}, over.fret, {1, 24, ""});
  visit.length({"from_nut_mm", "where it stands"}, over.from_nut, {0, 700, "mm"});
  visit.length({"string_over_plane_mm", "the stopped string at rest"}, over.string_over_plane, {-200, 200, "mm"});
  visit.length({"lowest_over_plane_mm", "where its swing comes down to"}, over.lowest_over_plane, {-200, 200, "mm"});
  visit.length({"gap_mm", "string at rest over the crown"}, over.gap, {-200, 200, "mm"});
  visit.number({"ratio", "gap over reach: 1 just touches"}, over.ratio, {-1e4, 1e4, ""});
  choice(visit, {"verdict", "what it means"}, over.verdict, clearance_verdict_names);
}

void describe(FieldVisitor& visit, NoteSwing& swing) {
  visit.integer({"string", "1 is the thinnest"}, swing.string, {1, 12, ""});
  visit.integer({"stopped_fret", "0 is the open string"}, swing.stopped_fret, {0, 23, ""});
  list(visit, {"frets", "every higher fret"}, swing.frets, {1, 24});
  maybe(visit,
        {"saddle_raise_mm", "at this string's saddle, so that it touches nothing; absent when it does not touch"},
        swing.saddle_raise, [&](const Field& field, Length& raise) {
          visit.length(field, raise, {0, 1000, "mm"});
        });
}

}  // namespace tailblock

#include "setup/fret_notes.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "strings/note_geometry.h"

namespace tailblock {
namespace {

NeckLine with_crowns(NeckLine neck, std::vector<double> departures) {
  neck.crown_departures_mm = std::move(departures);
  return neck;
}

constexpr double touch_mm = 1e-6;  // well under any file, well over the solver's own rounding

}  // namespace

FretNotes::FretNotes(const FretDressRequest& request, const UnitEnvelopes& envelopes, const Crowns& crowns)
    : neck_(request.neck) {
  neck_.relief = crowns.relief;
  const NeckLine bass = with_crowns(neck_, crowns.bass.departure);
  const NeckLine treble = with_crowns(neck_, crowns.treble.departure);
  wanted_bass_ = request.wanted_action12_bass.value_or(outer_heights(bass, request.action).action12_bass);
  wanted_treble_ = request.wanted_action12_treble.value_or(outer_heights(treble, request.action).action12_treble);
  neck_.nut_over_frets_bass = with_nut_held(bass, request.action).nut_over_frets_bass;
  neck_.nut_over_frets_treble = with_nut_held(treble, request.action).nut_over_frets_treble;

  const Geometry g = geometry(bass, request.action);
  const double x12 = g.fret_x[12];
  saddle_per_action_bass_ = g.ends.back().saddle_from_nut.in_base() / x12;
  saddle_per_action_treble_ = g.ends.front().saddle_from_nut.in_base() / x12;
  share_ = g.share;
  for (const UnitEnvelope& envelope : envelopes.notes) {
    const Note note = note_of(g, request.attack, envelope.string, envelope.stopped_fret);
    for (std::size_t i = 0; i < envelope.away.size(); ++i) {
      const auto n = static_cast<std::size_t>(envelope.stopped_fret) + 1 + i;
      const bool away = envelope.away[i] >= envelope.toward[i];
      const double reach = note.amplitude * (away ? envelope.away[i] : envelope.toward[i]);
      reaches_.push_back({envelope.string, envelope.stopped_fret, static_cast<int>(n), away, reach * 1000,
                          (g.fret_x[n] - note.start_x) / (note.saddle_x - note.start_x)});
    }
  }
}

std::vector<NoteOverFret> FretNotes::over_frets(const CrownPair& crowns, const FretSetting& setting) const {
  NeckLine neck = neck_;
  neck.relief = setting.relief;
  const auto heights = [&](const std::vector<double>& departures) {
    std::vector<double> z;
    for (const Length crown : crowns_over_plane(with_crowns(neck, departures))) z.push_back(in_mm(crown));
    return z;
  };
  const std::vector<double> bass = heights(crowns.bass), treble = heights(crowns.treble);
  const double nut_bass = in_mm(*neck.nut_over_frets_bass), nut_treble = in_mm(*neck.nut_over_frets_treble);
  const auto saddle_at = [&](double nut, Length wanted, double crown12, double per_action) {
    return nut + (in_mm(wanted) + setting.action_raise_mm + crown12 - nut) * per_action;
  };
  const double saddle_bass = saddle_at(nut_bass, wanted_bass_, bass[11], saddle_per_action_bass_);
  const double saddle_treble = saddle_at(nut_treble, wanted_treble_, treble[11], saddle_per_action_treble_);

  std::vector<NoteOverFret> notes;
  notes.reserve(reaches_.size());
  for (const Reach& reach : reaches_) {
    const double share = share_[static_cast<std::size_t>(reach.string - 1)];
    const auto across = [share](double at_bass, double at_treble) { return at_treble + share * (at_bass - at_treble); };
    const auto crown = [&](int fret) {
      const auto i = static_cast<std::size_t>(fret - 1);
      return across(bass[i], treble[i]);
    };
    const double start = reach.stopped_fret == 0 ? across(nut_bass, nut_treble) : crown(reach.stopped_fret);
    const double saddle = across(saddle_bass, saddle_treble) + in_mm(saddle_over_straight(neck, reach.string));
    const double t = reach.over_stop;
    const double gap = start + t * (saddle - start) - crown(reach.fret);
    notes.push_back({.string = reach.string,
                     .stopped_fret = reach.stopped_fret,
                     .fret = reach.fret,
                     .away = reach.away,
                     .shortfall = reach.mm + setting.margin_mm - gap,
                     .over_stop = t,
                     .stopped_pull = reach.stopped_fret == 0 ? 0 : 1 - t,
                     .saddle_bass = t * share * saddle_per_action_bass_,
                     .saddle_treble = t * (1 - share) * saddle_per_action_treble_,
                     .bass_share = share});
  }
  return notes;
}

double FretNotes::shortfall_sd(const NoteOverFret& note, const Crowns& crowns) const {
  // Straight in every crown. The nut slot was found over crown 1 and by the action over crown 12, so it follows both.
  const double x1 = in_mm(fret_from_nut(neck_.scale_length, 1)), x12 = in_mm(fret_from_nut(neck_.scale_length, 12));
  const bool open = note.stopped_fret == 0;
  const double saddle_pull = note.saddle_bass + note.saddle_treble;
  const double nut_lift = (open ? 1 - note.over_stop : 0) + note.over_stop - saddle_pull;
  const std::size_t frets = crowns.bass.departure.size();
  std::vector<double> bass(frets), treble(frets);
  const auto add = [&](int fret, double weight) {
    bass[static_cast<std::size_t>(fret - 1)] += weight * note.bass_share;
    treble[static_cast<std::size_t>(fret - 1)] += weight * (1 - note.bass_share);
  };
  add(note.fret, 1);
  if (!open) add(note.stopped_fret, -note.stopped_pull);
  add(1, -nut_lift * x12 / (x12 - x1));
  add(12, nut_lift * x1 / (x12 - x1));
  bass[11] -= note.saddle_bass;
  treble[11] -= note.saddle_treble;
  if (crowns.apart) return std::sqrt(crowns.bass.variance(bass) + crowns.treble.variance(treble));
  for (std::size_t i = 0; i < frets; ++i) bass[i] += treble[i];
  return std::sqrt(crowns.bass.variance(bass));
}

int touching_notes(const std::vector<NoteOverFret>& notes) {
  std::set<std::pair<int, int>> touching;
  for (const NoteOverFret& note : notes) {
    if (note.shortfall > touch_mm) touching.insert({note.string, note.stopped_fret});
  }
  return static_cast<int>(touching.size());
}

const NoteOverFret& worst_note(const std::vector<NoteOverFret>& notes) {
  return *std::ranges::max_element(notes, {}, &NoteOverFret::shortfall);
}

}  // namespace tailblock

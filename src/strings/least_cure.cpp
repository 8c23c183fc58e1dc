#include "strings/least_cure.h"

#include <algorithm>

#include "strings/note_geometry.h"
#include "strings/resting_line.h"

namespace tailblock {
namespace {

/// How far a crown stands over the straight line through the crowns beside it, or beyond it at the ends of the board.
double over_neighbours_mm(const NeckLine& neck, int fret) {
  const std::vector<double>& crown = neck.crown_departures_mm;
  const int first = std::clamp(fret == 1 ? 2 : fret - 1, 1, neck.fret_count);
  const int second = fret == 1 ? 3 : fret == neck.fret_count ? fret - 2 : fret + 1;
  const auto x = [&](int n) { return in_mm(fret_from_nut(neck.scale_length, n)); };
  const auto z = [&](int n) { return crown[static_cast<std::size_t>(n - 1)]; };
  return z(fret) - (z(first) + (z(second) - z(first)) * (x(fret) - x(first)) / (x(second) - x(first)));
}

/// What the worst note over a fret lacks there, in mm.
double lacking_mm(const ClearanceResult& map, int fret) {
  double lacking = 0;
  for (const NoteClearance& note : map.notes) {
    if (note.limiting_fret == fret) lacking = std::max(lacking, -in_mm(note.margin));
  }
  return lacking;
}

std::optional<HighCrown> high_crown(const ClearanceRequest& request, const UnitEnvelopes& envelopes,
                                    const ClearanceVerdicts& limits, const ClearanceResult& now) {
  if (request.neck.crown_departures_mm.empty()) return std::nullopt;
  std::optional<HighCrown> best;
  for (int fret = 1; fret <= request.neck.fret_count; ++fret) {
    const double stands = over_neighbours_mm(request.neck, fret);
    const double lower_by = std::min(stands, lacking_mm(now, fret));
    if (lower_by <= 0) continue;
    ClearanceRequest lowered = request;
    lowered.neck.crown_departures_mm[static_cast<std::size_t>(fret - 1)] -= lower_by;
    const int cures = now.touching - clearance(lowered, envelopes, limits).touching;
    if (cures <= (best ? best->cures : 0)) continue;
    best = HighCrown{.fret = fret, .over_neighbours = mm(stands), .lower_by = mm(lower_by), .cures = cures};
  }
  return best;
}

}  // namespace

LeastCure least_cure(const ClearanceRequest& request, const UnitEnvelopes& envelopes, const ClearanceVerdicts& limits) {
  const ClearanceResult now = clearance(request, envelopes, limits);
  LeastCure cure{.touching = now.touching, .saddle_raise_bass = {}, .saddle_raise_treble = {}, .high_crown = {}};
  if (now.touching == 0) return cure;

  const NeckLine neck = with_nut_held(request.neck, request.action);
  const OuterHeights saddle = outer_heights(neck, request.action);
  std::vector<Peg> pegs{{0, saddle.saddle_over_frets_treble.in_base()}, {1, saddle.saddle_over_frets_bass.in_base()}};
  for (const LeastString& least : least_clean_action(request, envelopes).strings) {
    pegs.push_back({share_from_treble(neck, least.string),
                    (least.saddle_over_frets - saddle_over_straight(neck, least.string)).in_base()});
  }
  const RestingLine rest = resting_line(pegs);
  cure.saddle_raise_treble = std::max(Length{}, Length::from_base(rest.at(0)) - saddle.saddle_over_frets_treble);
  cure.saddle_raise_bass = std::max(Length{}, Length::from_base(rest.at(1)) - saddle.saddle_over_frets_bass);
  cure.high_crown = high_crown(request, envelopes, limits, now);
  return cure;
}

void describe(FieldVisitor& visit, HighCrown& crown) {
  visit.integer({"fret", "the crown that stands out"}, crown.fret, {1, 24, ""});
  visit.length({"over_neighbours_mm", "over the line through the crowns beside it"}, crown.over_neighbours,
               {0, 10, "mm"});
  visit.length({"lower_by_mm", "what would come off it"}, crown.lower_by, {0, 10, "mm"});
  visit.integer({"cures", "touching notes that then clear every fret"}, crown.cures, {1, 288, ""});
}

void describe(FieldVisitor& visit, LeastCure& cure) {
  visit.integer({"touching", "notes that touch now"}, cure.touching, {0, 288, ""});
  visit.length({"saddle_raise_bass_mm", "a saddle so much taller frees them all"}, cure.saddle_raise_bass,
               {0, 1000, "mm"});
  visit.length({"saddle_raise_treble_mm", "the same, treble end"}, cure.saddle_raise_treble, {0, 1000, "mm"});
  maybe(visit, {"high_crown", "one crown to bring down instead; absent when none stands out"}, cure.high_crown,
        [&](const Field& field, HighCrown& crown) { object(visit, field, crown); });
}

}  // namespace tailblock

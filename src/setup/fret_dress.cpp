#include "setup/fret_dress.h"

#include <algorithm>
#include <cmath>

#include "setup/fret_judgement.h"
#include "setup/fret_words.h"
#include "strings/note_geometry.h"

namespace tailblock {
namespace {

void require_complete(const FretDressRequest& request, const UnitEnvelopes& envelopes) {
  require_valid(request);
  if (!request.neck.crown_departures_mm.empty()) {
    throw Refused("neck.crown_departures_mm: leave it empty, the readings say how the crowns stand");
  }
  require_matching(
      {.neck = request.neck, .action = request.action, .strings = request.strings, .attack = request.attack},
      envelopes);
  const double last = request.neck.fret_count - 1.0;
  if (request.fall_away_from) require_within("fall_away_from_fret", *request.fall_away_from, {8, last, ""});
}

/// How far the wanted profile lies below its straight line at each fret.
std::vector<double> wanted_fall(const FretDressRequest& request, const std::vector<double>& from_nut) {
  std::vector<double> fall(from_nut.size());
  if (!request.fall_away) return fall;
  const int from = request.fall_away_from.value_or(request.neck.body_joint_fret);
  const double start = from_nut[static_cast<std::size_t>(from - 1)];
  for (std::size_t i = 0; i < from_nut.size(); ++i) {
    fall[i] = in_mm(*request.fall_away) * std::max(0.0, (from_nut[i] - start) / (from_nut.back() - start));
  }
  return fall;
}

/// The line the frets up to the fall-away share, the fall taken off.
std::vector<double> level_profile(const FretDressRequest& request, const std::vector<double>& from_nut,
                                  const std::vector<double>& departures, const std::vector<double>& fall) {
  const int from =
      request.fall_away ? request.fall_away_from.value_or(request.neck.body_joint_fret) : request.neck.fret_count;
  std::vector<bool> counts(from_nut.size());
  for (std::size_t i = 0; i < static_cast<std::size_t>(from); ++i) counts[i] = true;
  std::vector<double> profile = best_line(from_nut, departures, counts);
  for (std::size_t i = 0; i < profile.size(); ++i) profile[i] -= fall[i];
  return profile;
}

/// What may come off: metal over the least crown; where nobody read the metal, what stands over the line of the crowns
/// and a light dress below it.
std::vector<double> metal_most(const CrownSide& side, const std::vector<double>& departures,
                               const std::vector<double>& profile, double least_crown, const FretLimits& limits) {
  std::vector<double> most;
  for (std::size_t i = 0; i < side.over_board.size(); ++i) {
    const auto& over_board = side.over_board[i];
    most.push_back(over_board ? std::max(0.0, *over_board - least_crown)
                              : std::max(0.0, departures[i] - profile[i]) + limits.unread_metal);
  }
  return most;
}

/// What the wanted fall-away asks of each crown, as far as its metal goes.
std::vector<double> metal_least(const FretDressRequest& request, const std::vector<double>& departures,
                                const std::vector<double>& profile, const std::vector<double>& most) {
  std::vector<double> least(departures.size());
  if (!request.fall_away) return least;
  const int from = request.fall_away_from.value_or(request.neck.body_joint_fret);
  for (auto i = static_cast<std::size_t>(from); i < departures.size(); ++i) {
    least[i] = std::clamp(departures[i] - profile[i], 0.0, most[i]);
  }
  return least;
}

MetalBounds bounds_of(const FretCase& c, double least_crown) {
  MetalBounds bounds;
  bounds.apart = c.crowns.apart;
  bounds.most = {metal_most(c.crowns.bass, c.found.bass, c.level.bass, least_crown, c.limits),
                 metal_most(c.crowns.treble, c.found.treble, c.level.treble, least_crown, c.limits)};
  bounds.least = {metal_least(c.request, c.found.bass, c.level.bass, bounds.most.bass),
                  metal_least(c.request, c.found.treble, c.level.treble, bounds.most.treble)};
  return bounds;
}

/// The margin asked for, as far as level frets have it: metal never makes more room than that.
double margin_had(const FretCase& c, double wanted_margin) {
  const double room = -worst_note(c.notes_with(c.level)).shortfall;
  return std::clamp(room, 0.0, wanted_margin);
}

CrownPair no_metal(const FretCase& c) {
  return {std::vector<double>(c.from_nut.size()), std::vector<double>(c.from_nut.size())};
}

CrownPair less(const CrownPair& crowns, const CrownPair& cut) {
  CrownPair left = crowns;
  for (std::size_t i = 0; i < left.bass.size(); ++i) left.bass[i] -= cut.bass[i], left.treble[i] -= cut.treble[i];
  return left;
}

FretCase case_of(const FretDressRequest& request, const FretLimits& limits, const Crowns& crowns,
                 const FretNotes& notes) {
  FretCase c{request, limits, crowns, notes, {}, {crowns.bass.departure, crowns.treble.departure}, {}, {}, {}, {}};
  for (int fret = 1; fret <= request.neck.fret_count; ++fret) {
    c.from_nut.push_back(in_mm(fret_from_nut(request.neck.scale_length, fret)));
  }
  const std::vector<double> fall = wanted_fall(request, c.from_nut);
  c.level = {level_profile(request, c.from_nut, c.found.bass, fall),
             level_profile(request, c.from_nut, c.found.treble, fall)};
  c.touched = {line_touching_all(c.from_nut, c.found.bass, fall), line_touching_all(c.from_nut, c.found.treble, fall)};
  c.setting.relief = crowns.relief;
  c.setting.margin_mm = 0;
  c.setting.margin_mm = margin_had(c, request.margin ? in_mm(*request.margin) : limits.margin);
  c.bounds = bounds_of(c, request.least_crown ? in_mm(*request.least_crown) : limits.least_crown);
  return c;
}

FretToDress fret_found(const FretCase& c, std::size_t i, const std::vector<double>& line_bass,
                       const std::vector<double>& line_treble) {
  const CrownSide &bass = c.crowns.bass, &treble = c.crowns.treble;
  return {.fret = static_cast<int>(i) + 1,
          .from_nut = mm(c.from_nut[i]),
          .read = bass.read[i] && treble.read[i],
          .crown_bass = mm(c.found.bass[i] + (bass.loose[i] ? bass.springs[i] : 0) - line_bass[i]),
          .crown_treble = mm(c.found.treble[i] + (treble.loose[i] ? treble.springs[i] : 0) - line_treble[i]),
          .crown_sd = mm(std::max(bass.sd(i), treble.sd(i))),
          .line_bass = mm(c.touched.bass[i] - line_bass[i]),
          .line_treble = mm(c.touched.treble[i] - line_treble[i]),
          .level_bass = mm(c.found.bass[i] - c.touched.bass[i]),
          .level_treble = mm(c.found.treble[i] - c.touched.treble[i]),
          .loose = bass.loose[i] || treble.loose[i]};
}

void put_frets(FretDressResult& result, const FretCase& c) {
  const std::vector<bool> all(c.from_nut.size(), true);
  const std::vector<double> line_bass = best_line(c.from_nut, c.found.bass, all);
  const std::vector<double> line_treble = best_line(c.from_nut, c.found.treble, all);
  for (std::size_t i = 0; i < c.from_nut.size(); ++i) {
    result.frets.push_back(fret_found(c, i, line_bass, line_treble));
    result.total_to_level += 0.5 * (result.frets.back().level_bass + result.frets.back().level_treble);
  }
}

/// Writes a cut into the frets; what is left of each crown follows.
void put_cut(FretDressResult& result, const FretCase& c, const CrownPair& remove) {
  result.total_removed = {};
  for (std::size_t i = 0; i < result.frets.size(); ++i) {
    FretToDress& fret = result.frets[i];
    fret.remove_bass = mm(remove.bass[i]);
    fret.remove_treble = mm(remove.treble[i]);
    result.total_removed += 0.5 * (fret.remove_bass + fret.remove_treble);
    if (const auto& metal = c.crowns.bass.over_board[i]) fret.left_bass = mm(*metal - remove.bass[i]);
    if (const auto& metal = c.crowns.treble.over_board[i]) fret.left_treble = mm(*metal - remove.treble[i]);
  }
  result.touching_after = touching_notes(c.notes_with(less(c.found, remove)));
}

/// The least metal if crowns were as high as one likes; a board always allows it, since every fret may follow the next.
LeastMetal metal_unbounded(const FretCase& c, const std::vector<NoteOverFret>& as_found) {
  constexpr double any_metal_mm = 5;
  MetalBounds unbounded = c.bounds;
  for (auto* side : {&unbounded.most.bass, &unbounded.most.treble}) std::ranges::fill(*side, any_metal_mm);
  return least_metal(as_found, unbounded).value_or(LeastMetal{.remove = c.bounds.most, .total = 0, .forced_by = {}});
}

/// Which crowns a refret is for: the worn ones when renewing them alone is enough, else all that do not hold the cut.
void mark_renewals(FretDressResult& result, const FretCase& c, const LeastMetal& unbounded) {
  const WornFrets worn = worn_frets(c);
  std::vector<NoteOverFret> stopped = c.notes_with(worn.renewed);
  std::erase_if(stopped, [](const NoteOverFret& note) { return note.stopped_fret == 0; });  // the nut follows new frets
  if (!worn.frets.empty() && least_metal(stopped, c.bounds)) {
    for (const int fret : worn.frets) result.frets[static_cast<std::size_t>(fret - 1)].renew = true;
    return;
  }
  for (std::size_t i = 0; i < result.frets.size(); ++i) {
    result.frets[i].renew = unbounded.remove.bass[i] > c.bounds.most.bass[i] + 1e-6 ||
                            unbounded.remove.treble[i] > c.bounds.most.treble[i] + 1e-6;
  }
}

double share_of_cut(const FretDressResult& result, int from, int to) {
  double inside = 0, all = 0;
  for (const FretToDress& fret : result.frets) {
    const double cut = in_mm(fret.remove_bass) + in_mm(fret.remove_treble);
    all += cut;
    if (from <= fret.fret && fret.fret <= to) inside += cut;
  }
  return all > 0 ? inside / all : 0;
}

int frets_to_file(const FretDressResult& result, const FretLimits& limits) {
  return static_cast<int>(std::ranges::count_if(result.frets, [&](const FretToDress& fret) {
    return std::max(in_mm(fret.remove_bass), in_mm(fret.remove_treble)) >= limits.least_cut;
  }));
}

bool beyond(const FretFigure& figure, double limit, const FretLimits& limits) {
  return in_mm(figure.value) > limit && in_mm(figure.value) > limits.withheld_within_sd * in_mm(figure.sd);
}

/// Verdicts that keep the file in the drawer, in the order a bench asks for them; absent when it is the frets.
std::optional<FretVerdict> not_the_frets(FretDressResult& result, const FretCase& c,
                                         const std::vector<NoteOverFret>& as_found) {
  if (std::ranges::any_of(result.frets, &FretToDress::loose)) return FretVerdict::loose;
  const bool asked_to_fall = std::ranges::any_of(c.bounds.least.bass, [](double mm_least) { return mm_least > 0; }) ||
                             std::ranges::any_of(c.bounds.least.treble, [](double mm_least) { return mm_least > 0; });
  if (touching_notes(as_found) == 0 && !asked_to_fall) return FretVerdict::clean;
  const double relief = in_mm(c.crowns.relief);
  const bool rod_first = relief < c.limits.relief_least || relief > c.limits.relief_most;
  if (touching_notes(as_found) > 0 && rod_first) {
    // The rod can be turned back, so it need not wait until the readings tell for certain.
    result.relief_instead = relief_that_does(c, c.found);
    if (result.relief_instead) return FretVerdict::relief;
  }
  if (!asked_to_fall && !stands_out_of_the_readings(c, as_found)) return FretVerdict::withheld;
  if (const auto rise = nut_rise(c)) {
    result.nut_rise = mm(*rise);
    return FretVerdict::nut;
  }
  if (!result.clean_when_level) {
    result.relief_instead = relief_that_does(c, c.level);
    if (result.relief_instead) return FretVerdict::relief;
    const MetalBounds no_file{.most = no_metal(c), .least = no_metal(c), .apart = c.bounds.apart};
    const double raise = least_action_raise(c.notes_with(c.level), no_file);
    result.clean_action12_bass = c.notes.wanted_bass() + mm(raise);
    result.clean_action12_treble = c.notes.wanted_treble() + mm(raise);
    return FretVerdict::action;
  }
  if (touching_notes(as_found) > 0 && crowns_are_level(c)) {
    result.relief_instead = relief_that_does(c, c.found);
    if (result.relief_instead) return FretVerdict::relief;
  }
  return std::nullopt;
}

/// Most of the metal lies where crowns hang together for a reason of their own.
std::optional<FretVerdict> joint_verdict(const FretDressResult& result, const FretCase& c) {
  constexpr double mostly = 0.5;
  const int joint = c.request.neck.body_joint_fret;
  if (result.hump && beyond(*result.hump, c.limits.hump_most, c.limits) &&
      joint_shape(c.request.neck, c.crowns)->several && share_of_cut(result, joint - 2, joint + 2) > mostly) {
    return FretVerdict::hump;
  }
  if (result.tongue_rise && beyond(*result.tongue_rise, c.limits.tongue_rise_most, c.limits) &&
      share_of_cut(result, joint + 1, c.request.neck.fret_count) > mostly) {
    return FretVerdict::kink;
  }
  return std::nullopt;
}

/// It is the frets, or the board under them.
FretVerdict frets_verdict(FretDressResult& result, const FretCase& c, const std::vector<NoteOverFret>& as_found) {
  const auto held = least_metal(as_found, c.bounds);
  const LeastMetal least = held ? *held : metal_unbounded(c, as_found);
  put_cut(result, c, least.remove);
  const auto at_joint = joint_verdict(result, c);
  if (!held) {
    put_cut(result, c, no_metal(c));
    result.unclean = unclean_notes(as_found, c.bounds);
    const double raise = least_action_raise(as_found, c.bounds);
    result.clean_action12_bass = c.notes.wanted_bass() + mm(raise);
    result.clean_action12_treble = c.notes.wanted_treble() + mm(raise);
    if (at_joint) return *at_joint;
    mark_renewals(result, c, least);
    return FretVerdict::refret;
  }
  for (std::size_t i = 0; i < result.frets.size(); ++i) {
    FretToDress& fret = result.frets[i];
    if (std::max(in_mm(fret.remove_bass), in_mm(fret.remove_treble)) > 0) fret.forced_by = least.forced_by[i];
  }
  if (at_joint) return *at_joint;
  return frets_to_file(result, c.limits) <= c.limits.spot_frets_most ? FretVerdict::spot : FretVerdict::level_all;
}

bool in_band(const FretCase& c) {
  if (!c.request.body_humidity) return true;
  const double humidity = in_fraction(*c.request.body_humidity);
  return c.limits.body_humidity_least <= humidity && humidity <= c.limits.body_humidity_most;
}

}  // namespace

FretDressResult fret_dress(const FretDressRequest& request, const UnitEnvelopes& envelopes, const FretLimits& limits) {
  require_complete(request, envelopes);
  const Crowns crowns = crowns_from_readings(request, limits);
  const FretNotes notes(request, envelopes, crowns);
  const FretCase c = case_of(request, limits, crowns, notes);
  const std::vector<NoteOverFret> as_found = c.notes_with(c.found);

  FretDressResult result;
  result.apart = crowns.apart;
  result.wanted_action12_bass = notes.wanted_bass();
  result.wanted_action12_treble = notes.wanted_treble();
  result.least_crown = request.least_crown.value_or(mm(limits.least_crown));
  result.margin = mm(c.setting.margin_mm);
  result.cautions = crowns.cautions;
  put_frets(result, c);
  put_cut(result, c, no_metal(c));
  result.touching_before = touching_notes(as_found);
  result.clean_when_level = touching_notes(c.notes_with(c.level)) == 0;
  const NoteOverFret& worst = worst_note(as_found);
  result.worst_shortfall = {mm(worst.shortfall), mm(notes.shortfall_sd(worst, crowns))};
  if (const auto shape = joint_shape(request.neck, crowns)) {
    result.hump = shape->hump;
    result.tongue_rise = shape->tongue_rise;
  }

  const auto other = not_the_frets(result, c, as_found);
  result.verdict = other ? *other : frets_verdict(result, c, as_found);
  const bool file_it = result.verdict == FretVerdict::spot || result.verdict == FretVerdict::level_all ||
                       (result.verdict == FretVerdict::hump && in_mm(result.hump->value) <= limits.hump_local_most);
  result.cut_is_advised = file_it && result.unclean.empty() && in_band(c);
  speak(result, c);
  return result;
}

}  // namespace tailblock

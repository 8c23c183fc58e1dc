#include "strings/string_line.h"

#include <cmath>

namespace tailblock {
namespace {

constexpr double gravity_m_per_s2 = 9.80665;

Length between(Length treble, Length bass, double share) { return treble + share * (bass - treble); }

/// How far an arc of this radius stands above its chord between the outer strings, at a share of the way across.
double arc_above_chord(Length radius, Length spread, double share) {
  const double R = radius.in_base();
  const double half = spread.in_base() / 2;
  const double y = (2 * share - 1) * half;
  return std::sqrt(R * R - y * y) - std::sqrt(R * R - half * half);
}

/// A straight string through two points, read at a third.
Length line_at(Length x, Length x0, Length y0, Length x1, Length y1) { return y0 + (x - x0) / (x1 - x0) * (y1 - y0); }

void require_consistent(const NeckLine& neck, const StringAction& action) {
  const std::size_t crowns = neck.crown_departures_mm.size();
  if (crowns != 0 && crowns != static_cast<std::size_t>(neck.fret_count)) {
    throw Refused("crown_departures_mm: " + std::to_string(crowns) + " items, the neck has " +
                  std::to_string(neck.fret_count) + " frets");
  }
  if (neck.body_joint_fret > neck.fret_count) {
    throw Refused("body_joint_fret: " + std::to_string(neck.body_joint_fret) + " is outside 10.." +
                  std::to_string(neck.fret_count));
  }
  if (neck.nut_over_frets_bass.has_value() != neck.nut_over_frets_treble.has_value()) {
    throw Refused("nut_over_frets_bass_mm: give bass and treble, or neither");
  }
  const bool by_action = action.action12_bass && action.action12_treble;
  const bool by_saddle = action.saddle_over_frets_bass && action.saddle_over_frets_treble;
  const int given = int{action.action12_bass.has_value()} + int{action.action12_treble.has_value()} +
                    int{action.saddle_over_frets_bass.has_value()} + int{action.saddle_over_frets_treble.has_value()};
  if (given != 2 || !(by_action || by_saddle)) {
    throw Refused(
        "action12_bass_mm: give action12_bass_mm and action12_treble_mm, or saddle_over_frets_bass_mm and "
        "saddle_over_frets_treble_mm, not both");
  }
}

/// What is known of one outer string.
struct OuterString {
  Length setback;
  Length nut_over_fret1;
  std::optional<Length> nut_over_frets;
  std::optional<Length> action12, saddle_over_frets;
};

StringEnds outer_ends(const NeckLine& neck, const std::vector<Length>& crowns, const OuterString& outer) {
  const Length x1 = fret_from_nut(neck.scale_length, 1);
  const Length x12 = fret_from_nut(neck.scale_length, 12);
  const Length saddle_x = neck.scale_length + outer.setback;
  const Length near_x = outer.nut_over_frets ? Length{} : x1;
  const Length near_y = outer.nut_over_frets ? *outer.nut_over_frets : outer.nut_over_fret1 + crowns[0];
  const Length far_x = outer.action12 ? x12 : saddle_x;
  const Length far_y = outer.action12 ? *outer.action12 + crowns[11] : *outer.saddle_over_frets;
  return {.nut_over_frets = line_at({}, near_x, near_y, far_x, far_y),
          .saddle_over_frets = line_at(saddle_x, near_x, near_y, far_x, far_y),
          .saddle_from_nut = saddle_x};
}

struct BothOuter {
  StringEnds bass, treble;
};

BothOuter both_outer(const NeckLine& neck, const StringAction& action) {
  require_consistent(neck, action);
  const std::vector<Length> crowns = crowns_over_plane(neck);
  return {.bass = outer_ends(neck, crowns,
                             {.setback = neck.setback_bass,
                              .nut_over_fret1 = neck.nut_over_fret1_bass,
                              .nut_over_frets = neck.nut_over_frets_bass,
                              .action12 = action.action12_bass,
                              .saddle_over_frets = action.saddle_over_frets_bass}),
          .treble = outer_ends(neck, crowns,
                               {.setback = neck.setback_treble,
                                .nut_over_fret1 = neck.nut_over_fret1_treble,
                                .nut_over_frets = neck.nut_over_frets_treble,
                                .action12 = action.action12_treble,
                                .saddle_over_frets = action.saddle_over_frets_treble})};
}

Length action12(const NeckLine& neck, const StringEnds& ends, Length crown12) {
  const Length x12 = fret_from_nut(neck.scale_length, 12);
  return line_at(x12, {}, ends.nut_over_frets, ends.saddle_from_nut, ends.saddle_over_frets) - crown12;
}

StringPath string_path(const NeckLine& neck, int string, const StringEnds& ends, const std::vector<FretPoint>& frets) {
  StringPath path;
  path.string = string;
  path.nut_over_frets = ends.nut_over_frets;
  path.saddle_over_frets = ends.saddle_over_frets;
  path.saddle_from_nut = ends.saddle_from_nut;
  for (int n = 1; n <= neck.fret_count; ++n) {
    const FretPoint& fret = frets[static_cast<std::size_t>(n - 1)];
    const Length open = line_at(fret.from_nut, {}, ends.nut_over_frets, ends.saddle_from_nut, ends.saddle_over_frets);
    path.over_fret_mm.push_back(in_mm(open - fret.crown_over_plane));
    if (n == 1) continue;
    const FretPoint& stopped = frets[static_cast<std::size_t>(n - 2)];
    const Length held = line_at(fret.from_nut, stopped.from_nut, stopped.crown_over_plane, ends.saddle_from_nut,
                                ends.saddle_over_frets);
    path.over_next_fret_mm.push_back(in_mm(held - fret.crown_over_plane));
  }
  return path;
}

/// Saddle top over bridge top. The bridge top is straight across; the fret surface arches between the outer strings.
std::optional<Length> exposure(const StringLineRequest& request, int string, const StringEnds& ends) {
  if (!request.bridge_top_over_frets_bass || !request.bridge_top_over_frets_treble) return std::nullopt;
  const NeckLine& neck = request.neck;
  const double share = share_from_treble(neck, string);
  const Length arch = neck.board_radius
                          ? Length::from_base(arc_above_chord(*neck.board_radius, neck.string_spread_at_saddle, share))
                          : Length{};
  return ends.saddle_over_frets + arch -
         between(*request.bridge_top_over_frets_treble, *request.bridge_top_over_frets_bass, share);
}

std::vector<std::string> cautions(const StringLineRequest& request, const StringLineResult& result) {
  constexpr double caution_sag_mm = 0.03;  // a third of what a ruler tells apart
  std::vector<std::string> said;
  for (const StringPath& path : result.strings) {
    for (std::size_t i = 0; i < path.over_fret_mm.size(); ++i) {
      if (path.over_fret_mm[i] > 0) continue;
      said.push_back("String " + std::to_string(path.string) + " lies on fret " + std::to_string(i + 1) +
                     " when open: check the readings.");
      break;
    }
  }
  if (in_mm(result.sag_when_level) >= caution_sag_mm) {
    said.push_back("With the guitar on its back the lowest string hangs " +
                   plain_number(std::round(in_mm(result.sag_when_level) * 100) / 100) +
                   " mm below straight in its middle: read heights with the guitar in playing position, or always the "
                   "same way.");
  }
  if (request.neck.board_radius.has_value() != request.neck.saddle_radius.has_value()) {
    said.push_back("Only one of the two radii is known: the saddle is taken to follow the frets.");
  }
  return said;
}

}  // namespace

double share_from_treble(const NeckLine& neck, int string) {
  return neck.string_count > 1 ? (string - 1) / (neck.string_count - 1.0) : 1.0;
}

Length saddle_over_straight(const NeckLine& neck, int string) {
  if (!neck.board_radius || !neck.saddle_radius) return {};
  const double share = share_from_treble(neck, string);
  return Length::from_base(arc_above_chord(*neck.saddle_radius, neck.string_spread_at_saddle, share) -
                           arc_above_chord(*neck.board_radius, neck.string_spread_at_saddle, share));
}

Length fret_from_nut(Length scale_length, int fret) { return scale_length * (1 - std::exp2(-fret / 12.0)); }

std::vector<Length> crowns_over_plane(const NeckLine& neck) {
  const Length x1 = fret_from_nut(neck.scale_length, 1);
  const Length xj = fret_from_nut(neck.scale_length, neck.body_joint_fret);
  std::vector<Length> crowns;
  for (int n = 1; n <= neck.fret_count; ++n) {
    const double q = (fret_from_nut(neck.scale_length, n) - x1) / (xj - x1);
    const Length bow = n < neck.body_joint_fret ? -4 * q * (1 - q) * neck.relief : Length{};
    const auto i = static_cast<std::size_t>(n - 1);
    crowns.push_back(neck.crown_departures_mm.empty() ? bow : bow + mm(neck.crown_departures_mm[i]));
  }
  return crowns;
}

std::vector<StringEnds> string_ends(const NeckLine& neck, const StringAction& action) {
  const BothOuter outer = both_outer(neck, action);
  std::vector<StringEnds> ends;
  for (int string = 1; string <= neck.string_count; ++string) {
    const double share = share_from_treble(neck, string);
    ends.push_back({.nut_over_frets = between(outer.treble.nut_over_frets, outer.bass.nut_over_frets, share),
                    .saddle_over_frets = between(outer.treble.saddle_over_frets, outer.bass.saddle_over_frets, share) +
                                         saddle_over_straight(neck, string),
                    .saddle_from_nut = between(outer.treble.saddle_from_nut, outer.bass.saddle_from_nut, share)});
  }
  return ends;
}

NeckLine with_nut_held(const NeckLine& neck, const StringAction& action) {
  const BothOuter outer = both_outer(neck, action);
  NeckLine held = neck;
  held.nut_over_frets_bass = outer.bass.nut_over_frets;
  held.nut_over_frets_treble = outer.treble.nut_over_frets;
  return held;
}

OuterHeights outer_heights(const NeckLine& neck, const StringAction& action) {
  const BothOuter outer = both_outer(neck, action);
  const Length crown12 = crowns_over_plane(neck)[11];
  return {.action12_bass = action12(neck, outer.bass, crown12),
          .action12_treble = action12(neck, outer.treble, crown12),
          .saddle_over_frets_bass = outer.bass.saddle_over_frets,
          .saddle_over_frets_treble = outer.treble.saddle_over_frets};
}

SaddleMove saddle_move(const NeckLine& neck, Length action12_change_bass, Length action12_change_treble) {
  const Length x12 = fret_from_nut(neck.scale_length, 12);
  return {.bass = (neck.scale_length + neck.setback_bass) / x12 * action12_change_bass,
          .treble = (neck.scale_length + neck.setback_treble) / x12 * action12_change_treble};
}

ReliefEffect relief_effect(const NeckLine& neck, Length relief_change) {
  const Length L = neck.scale_length;
  const double x1 = fret_from_nut(L, 1).in_base();
  const double x12 = fret_from_nut(L, 12).in_base();
  const double xj = fret_from_nut(L, neck.body_joint_fret).in_base();
  const double saddle_x = (L + 0.5 * (neck.setback_bass + neck.setback_treble)).in_base();
  const double span = (xj - x1) * (xj - x1);
  // Beyond the joint (a 12-fret neck) the crowns do not follow the bow.
  const double beyond = xj - x12 > 0 ? xj - x12 : 0;
  const double curvature = 8 * relief_change.in_base() / span;
  const double nut_lift = curvature * xj * xj / 2;
  return {.at_held_ends = Length::from_base(4 * relief_change.in_base() * (x12 - x1) * beyond / span),
          .at_held_joint = Length::from_base(nut_lift * (1 - x12 / saddle_x) - curvature * beyond * beyond / 2)};
}

Length string_sag(double pitch_hz) { return Length::from_base(gravity_m_per_s2 / (32 * pitch_hz * pitch_hz)); }

StringLineResult string_line(const StringLineRequest& request) {
  require_valid(request);
  const NeckLine& neck = request.neck;
  const std::vector<StringEnds> ends = string_ends(neck, request.action);
  const std::vector<Length> crowns = crowns_over_plane(neck);
  StringLineResult result;
  for (int n = 1; n <= neck.fret_count; ++n) {
    result.frets.push_back({.fret = n,
                            .from_nut = fret_from_nut(neck.scale_length, n),
                            .crown_over_plane = crowns[static_cast<std::size_t>(n - 1)]});
  }
  for (int string = 1; string <= neck.string_count; ++string) {
    const StringEnds& end = ends[static_cast<std::size_t>(string - 1)];
    result.strings.push_back(string_path(neck, string, end, result.frets));
    result.strings.back().exposure = exposure(request, string, end);
  }
  result.outer = outer_heights(neck, request.action);
  const SaddleMove per_mm = saddle_move(neck, mm(1), mm(1));
  result.saddle_per_action12_bass = in_mm(per_mm.bass);
  result.saddle_per_action12_treble = in_mm(per_mm.treble);
  const ReliefEffect relief = relief_effect(neck, mm(1));
  result.action12_per_relief_at_held_ends = in_mm(relief.at_held_ends);
  result.action12_per_relief_at_held_joint = in_mm(relief.at_held_joint);
  result.sag_when_level = string_sag(request.lowest_pitch_hz);
  result.cautions = cautions(request, result);
  return result;
}

}  // namespace tailblock

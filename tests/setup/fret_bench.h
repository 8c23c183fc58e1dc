#pragma once

#include <random>
#include <vector>

#include "published.h"
#include "setup/fret_dress.h"
#include "setup/fret_limits.h"
#include "setup/least_metal.h"
#include "strings/string_tables.h"

namespace tailblock::testing {

inline const FretLimits& usual_fret_limits() {
  static const FretLimits limits = fret_limits(repository_file("data/fret_limits.csv"));
  return limits;
}

/// Light strings on 645 mm, 14 frets clear, 20 in all, relief 0.15 mm, a medium player who wants 2.4 and 1.9 mm.
inline FretDressRequest guitar() {
  FretDressRequest request;
  request.neck.relief = mm(0.15);
  request.action = {.action12_bass = mm(2.4), .action12_treble = mm(1.9)};
  request.strings = tuned(string_set_named(string_sets(repository_file("data/string_sets.csv")), "light"),
                          tuning_named(tunings(repository_file("data/tunings.csv")), "standard"));
  request.attack = attack_named(attack_levels(repository_file("data/attacks.csv")), "medium");
  return request;
}

inline const UnitEnvelopes& guitar_envelopes() {
  static const UnitEnvelopes envelopes = unit_envelopes(envelope_request(guitar()));
  return envelopes;
}

inline FretReading departure(int fret, double high_mm, FretSide side = FretSide::both) {
  return {.kind = FretReadingKind::departure, .fret = fret, .side = side, .value = mm(high_mm)};
}

inline FretReading over_board(int fret, double high_mm) {
  return {.kind = FretReadingKind::over_board, .fret = fret, .value = mm(high_mm)};
}

/// Twenty crowns with so much metal each, level but for those named.
inline FretDressRequest with_crowns(FretDressRequest request, const std::vector<std::pair<int, double>>& high,
                                    double metal_mm = 1.0) {
  std::vector<double> departures(static_cast<std::size_t>(request.neck.fret_count));
  for (const auto& [fret, by] : high) departures[static_cast<std::size_t>(fret - 1)] = by;
  for (int fret = 1; fret <= request.neck.fret_count; ++fret) {
    const double by = departures[static_cast<std::size_t>(fret - 1)];
    request.readings.push_back(departure(fret, by));
    request.readings.push_back(over_board(fret, metal_mm + by));
  }
  return request;
}

inline FretDressResult dress(const FretDressRequest& request) {
  return fret_dress(request, guitar_envelopes(), usual_fret_limits());
}

/// A neck drawn at random, as notes and bounds of its linear program.
struct DrawnNeck {
  FretDressRequest request;
  Crowns crowns;
  FretSetting setting;
  MetalBounds bounds;

  [[nodiscard]] std::vector<NoteOverFret> notes() const {
    return FretNotes(request, guitar_envelopes(), crowns)
        .over_frets({crowns.bass.departure, crowns.treble.departure}, setting);
  }
};

inline DrawnNeck drawn_neck(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967295.0;
  };
  DrawnNeck neck{.request = guitar(), .crowns = {}, .setting = {}, .bounds = {}};
  const bool apart = seed % 3 == 0;
  neck.request.neck.relief = mm(between(0, 0.3));
  neck.request.action = {.action12_bass = mm(between(2.0, 2.9)), .action12_treble = mm(between(1.6, 2.3))};
  const double uneven = between(0.01, 0.12);
  for (int fret = 1; fret <= 20; ++fret) {
    if (apart) {
      neck.request.readings.push_back(departure(fret, between(-uneven, uneven), FretSide::bass));
      neck.request.readings.push_back(departure(fret, between(-uneven, uneven), FretSide::treble));
    } else {
      neck.request.readings.push_back(departure(fret, between(-uneven, uneven)));
    }
  }
  neck.crowns = crowns_from_readings(neck.request, usual_fret_limits());
  neck.setting = {.relief = neck.crowns.relief, .action_raise_mm = 0, .margin_mm = between(0, 0.03)};
  neck.bounds.apart = apart;
  for (int fret = 1; fret <= 20; ++fret) {
    neck.bounds.most.bass.push_back(between(0.05, 0.5));
    neck.bounds.most.treble.push_back(apart ? between(0.05, 0.5) : neck.bounds.most.bass.back());
  }
  neck.bounds.least = {std::vector<double>(20), std::vector<double>(20)};
  return neck;
}

}  // namespace tailblock::testing

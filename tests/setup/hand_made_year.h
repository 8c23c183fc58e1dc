#pragma once

#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>

#include "published.h"
#include "quantity/date.h"
#include "setup/saddle_limits.h"
#include "setup/year_to_serve.h"

namespace tailblock::testing {

/// A path put in by hand. A spread of 1e-9 mm stands for none.
struct HandMade {
  double bass_mm = 2.4, treble_mm = 1.9;
  double swing_bass_mm = 0, swing_treble_mm = 0;  ///< amplitude of a sine, highest in the middle of the year
  double level_sd_mm = 1e-9, weather_sd_mm = 1e-9;
  double weight = 1;
};

inline Date day(const char* iso) { return date_from_iso("day", iso); }

/// Highest on day count/2, as a year that begins in mid-winter is.
inline double season(int t, int count) { return -std::cos(2 * std::numbers::pi * (t + 0.5) / count); }

inline YearPath hand_made_path(const HandMade& made, int count) {
  const auto size = static_cast<std::size_t>(count);
  YearPath path{};
  path.weight = made.weight;
  path.response_mm_per_percent = 0.1;
  path.level_sd_bass_mm = path.level_sd_treble_mm = made.level_sd_mm;
  path.level_correlation = 0.5;
  path.weather_days = 1;
  path.level_loading_bass = path.level_loading_treble = std::vector<double>(size, 1.0);
  path.weather_sd_bass_mm = path.weather_sd_treble_mm = std::vector<double>(size, made.weather_sd_mm);
  for (int t = 0; t < count; ++t) {
    path.bass_mm.push_back(made.bass_mm + made.swing_bass_mm * season(t, count));
    path.treble_mm.push_back(made.treble_mm + made.swing_treble_mm * season(t, count));
  }
  return path;
}

inline YearPaths hand_made_year(const std::vector<HandMade>& paths, int count = 365) {
  YearPaths year{.first = day("2026-01-15"), .count = count, .paths = {}};
  for (const HandMade& made : paths) year.paths.push_back(hand_made_path(made, count));
  return year;
}

/// A year to serve with those paths, the strings today as on its first day, no change of the room's air, and an
/// instrument of which everything is known.
inline YearToServe serving(const std::vector<HandMade>& paths, int count = 365) {
  YearToServe year;
  year.home = hand_made_year(paths, count);
  year.kept_above = [home = year.home](RelativeHumidity) { return home; };
  year.relative_humidity.assign(static_cast<std::size_t>(count), 0.45);
  for (const YearPath& path : year.home.paths) {
    year.today.bass_mm.push_back(path.bass_mm[0]);
    year.today.treble_mm.push_back(path.treble_mm[0]);
    year.today.bass_open_mm.push_back(0);
    year.today.treble_open_mm.push_back(0);
  }
  year.moisture_today_percent = 8;
  year.reading_sd_mm = 0.03;
  year.relief_mm = 0.2;
  year.prior_weight = 0.2;
  return year;
}

inline SaddleLimits usual_limits() { return saddle_limits(repository_file("data/saddle_limits.csv")); }

/// A drop-in saddle in the middle of its range, a player whose range is as wide below the wanted action as above it.
inline SaddleRequest drop_in() {
  SaddleRequest request;
  request.instrument.today = day("2026-01-15");
  request.first = day("2026-01-15");
  request.limits = {.lowest_bass = mm(1.8), .lowest_treble = mm(1.3), .highest_bass = mm(3), .highest_treble = mm(2.5)};
  request.wanted_bass = mm(2.4);
  request.wanted_treble = mm(1.9);
  request.bridge.slot = SaddleSlot::closed;
  request.bridge.exposure_bass = mm(3.2);
  request.bridge.exposure_treble = mm(2.8);
  request.bridge.slot_depth = mm(5);
  request.bridge.break_angle = degrees(28);
  return request;
}

inline const SaddleOption& option(const SaddleResult& result, SaddleChoice choice) {
  return result.options.at(static_cast<std::size_t>(choice));
}

inline bool says(const std::vector<std::string>& texts, std::string_view part) {
  for (const std::string& text : texts) {
    if (text.find(part) != std::string::npos) return true;
  }
  return false;
}

}  // namespace tailblock::testing

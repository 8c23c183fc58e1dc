#pragma once

#include <string>

#include "published.h"
#include "season/year.h"
#include "season_tables.h"

namespace tailblock::testing {

inline Date day(std::string_view iso) { return date_from_iso("day", iso); }

inline HeightReading read(Date date, HeightKind kind, double value_mm, double gauge_sd_mm, int order = 0) {
  return {.date = date, .order = order, .kind = kind, .value = mm(value_mm), .gauge_sd = mm(gauge_sd_mm)};
}

inline void read_both(ResponseRequest& request, Date date, double bass_mm, double treble_mm, double gauge_sd_mm,
                      int order = 0) {
  request.readings.push_back(read(date, HeightKind::action12_bass, bass_mm, gauge_sd_mm, order));
  request.readings.push_back(read(date, HeightKind::action12_treble, treble_mm, gauge_sd_mm, order));
}

/// A heated home in one of the places of tests/published/climate.csv (typical years, read).
inline HomeAir heated_home(const std::string& place, double gain_g_per_m3, double humidifier_floor) {
  static const CsvTable climate("climate.csv", repository_file("tests/published/climate.csv"));
  HomeAir home;
  home.kind = HomeKind::outdoor_months;
  home.temperature_c.clear();
  home.dew_point_c.clear();
  for (const CsvRow& row : climate.rows()) {
    if (row.text("table") != place) continue;
    home.temperature_c.push_back(row.number("temperature_c", {-60, 60, "C"}));
    home.dew_point_c.push_back(row.number("dew_point_c", {-60, 60, "C"}));
  }
  home.heating_set_point = celsius(21);
  home.moisture_gain_g_per_m3 = gain_g_per_m3;
  home.humidifier_floor = humidity_fraction(humidifier_floor);
  return home;
}

}  // namespace tailblock::testing

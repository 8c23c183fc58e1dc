#include "setup/saddle.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "season/moving_floor.h"
#include "setup/saddle_options.h"
#include "setup/year_to_serve.h"

namespace tailblock {
namespace {

void require_sensible(const SaddleRequest& request) {
  const ActionLimits& limits = request.limits;
  const auto side = [](const char* name, Length lowest, Length wanted, Length highest) {
    const std::string ending = std::string(name) + "_mm";
    if (!(lowest < highest)) {
      throw Refused("limits.highest_" + ending + ": " + plain_number(in_mm(highest)) +
                    " mm is not over limits.lowest_" + ending + " " + plain_number(in_mm(lowest)) + " mm");
    }
    require_within("wanted_" + ending, in_mm(wanted), {in_mm(lowest), in_mm(highest), "mm"});
  };
  side("bass", limits.lowest_bass, request.wanted_bass, limits.highest_bass);
  side("treble", limits.lowest_treble, request.wanted_treble, limits.highest_treble);
}

void require_read(const SaddleRequest& request, HeightKind kind) {
  const auto& readings = request.instrument.readings;
  const auto is_it = [&](const HeightReading& reading) { return reading.kind == kind; };
  if (std::any_of(readings.begin(), readings.end(), is_it)) return;
  throw Refused("instrument.readings: no " + std::string(height_kind_names[static_cast<std::size_t>(kind)]) +
                " among them; a saddle needs both sides read at least once");
}

const HeightReading* last_of(const std::vector<HeightReading>& readings, HeightKind kind) {
  const HeightReading* last = nullptr;
  for (const HeightReading& reading : readings) {
    if (reading.kind != kind) continue;
    const bool later =
        last == nullptr || last->date < reading.date || (last->date == reading.date && last->order <= reading.order);
    if (later) last = &reading;
  }
  return last;
}

double reading_sd_mm(const std::vector<HeightReading>& readings) {
  return std::max(in_mm(last_of(readings, HeightKind::action12_bass)->gauge_sd),
                  in_mm(last_of(readings, HeightKind::action12_treble)->gauge_sd));
}

/// In the air of its home: the paths themselves, on one day.
ActionToday today_at_home(const Calibration& calibration, const HomeAir& home) {
  ActionToday today;
  for (const YearPath& path : year_paths(calibration, home, calibration.today, 1).paths) {
    const auto open = [](double loading, double level_sd, double weather_sd) {
      return std::hypot((loading - 1) * level_sd, weather_sd);
    };
    today.bass_mm.push_back(path.bass_mm[0]);
    today.treble_mm.push_back(path.treble_mm[0]);
    today.bass_open_mm.push_back(open(path.level_loading_bass[0], path.level_sd_bass_mm, path.weather_sd_bass_mm[0]));
    today.treble_open_mm.push_back(
        open(path.level_loading_treble[0], path.level_sd_treble_mm, path.weather_sd_treble_mm[0]));
  }
  return today;
}

/// In the shop's air, when the wood has come to it.
ActionToday today_in_shop(const Calibration& calibration, double moisture_percent, double moisture_sd_percent) {
  ActionToday today;
  for (const Hypothesis& h : calibration.hypotheses) {
    const double moved = h.response_mm_per_percent * (moisture_percent - calibration.reference_moisture_percent);
    today.bass_mm.push_back(h.level_bass_mm + moved);
    today.treble_mm.push_back(h.level_treble_mm + moved * h.treble_ratio);
    today.bass_open_mm.push_back(h.response_mm_per_percent * moisture_sd_percent);
    today.treble_open_mm.push_back(h.response_mm_per_percent * h.treble_ratio * moisture_sd_percent);
  }
  return today;
}

double moisture_at_home(const Calibration& calibration) {
  double moisture = 0;
  for (const Hypothesis& h : calibration.hypotheses) {
    moisture += h.weight * (h.moisture_today_percent + h.moisture_departure_percent);
  }
  return moisture;
}

void take_room(const HomeAir& home, Date first, int count, YearToServe& year) {
  double driest = 2;
  for (const HomeDay& day : home_days(home, first, count)) {
    year.relative_humidity.push_back(day.relative_humidity);
    if (day.relative_humidity < driest) year.room_temperature_c = day.temperature_c;
    driest = std::min(driest, day.relative_humidity);
  }
}

void require_answerable(const SaddleRequest& request) {
  require_valid(request);
  require_sensible(request);
  require_read(request, HeightKind::action12_bass);
  require_read(request, HeightKind::action12_treble);
}

YearToServe year_to_serve(const SaddleRequest& request, const SeasonTables& tables, const SaddleLimits& limits) {
  const ResponseRequest& instrument = request.instrument;
  const Calibration calibration = calibrate(instrument, tables);
  const ResponseResult shown = response(instrument, tables);
  YearToServe year;
  const auto paths_in = [calibration, asked = request.limits, first = request.first,
                         count = request.count](const HomeAir& home) {
    YearPaths paths = year_paths(calibration, home, first, count);
    let_floor_move(paths, calibration.relief, asked);
    return paths;
  };
  year.home = paths_in(instrument.home);
  year.kept_above = [paths_in, home = instrument.home](RelativeHumidity floor) {
    HomeAir humid = home;
    humid.humidifier_floor = std::max(humid.humidifier_floor, floor);
    return paths_in(humid);
  };
  take_room(instrument.home, request.first, request.count, year);
  const auto shop = request.shop_moisture_percent;
  year.today =
      shop ? today_in_shop(calibration, *shop, limits.shop_moisture_sd) : today_at_home(calibration, instrument.home);
  year.moisture_today_percent = shop ? *shop : moisture_at_home(calibration);
  year.reading_sd_mm = reading_sd_mm(instrument.readings);
  if (const HeightReading* relief = last_of(instrument.readings, HeightKind::relief)) {
    year.relief_mm = in_mm(relief->value);
  }
  year.prior_weight = shown.prior_weight;
  year.last_change = shown.last_change;
  return year;
}

}  // namespace

SaddleResult saddle(const SaddleRequest& request, const SeasonTables& tables, const SaddleLimits& limits) {
  require_answerable(request);
  return choose_saddle(request, year_to_serve(request, tables, limits), limits);
}

NeckNeed neck_need(const SaddleRequest& request, const SeasonTables& tables, const SaddleLimits& limits) {
  require_answerable(request);
  const YearToServe year = year_to_serve(request, tables, limits);
  return neck_need(SaddleCase(request, year, limits));
}

}  // namespace tailblock

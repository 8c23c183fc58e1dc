#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/fields.h"
#include "repair/operation_kinds.h"
#include "repair/repair_figures.h"

namespace tailblock {

/// Thickness of a plate at one place, finish included.
struct PlateThickness {
  std::string where;
  Length now = mm(2.8);
  std::optional<Length> before;  ///< this job began
  std::optional<Length> sd;
};
void describe(FieldVisitor&, PlateThickness&);

struct FinishDayRequest {
  std::string finish = "nc_lacquer";  ///< data/finishes.csv
  Temperature air_temperature = celsius(21);
  RelativeHumidity relative_humidity = humidity_percent(45);
  std::optional<double> humidity_sd_percent, temperature_sd_c;
  std::optional<Temperature> work_temperature;  ///< of the instrument, where it differs
  int coats_wanted = 8, coats_done = 0;
  std::optional<double> hours_since_last_coat;
  double hours_left_today = 8;
  Date today{};
  std::vector<PlateThickness> thickness;
};
void describe(FieldVisitor&, FinishDayRequest&);

enum class CoatVerdict { stop, too_near, trial, free };

/// One line of the calendar.
struct FinishCalendarLine {
  std::string what;
  Date earliest{}, latest{};
};
void describe(FieldVisitor&, FinishCalendarLine&);

/// How much may still come off at one place.
struct ThicknessBudget {
  std::string where;
  Length may_come_off;  ///< surely: the reading's own error is taken off; 0: nothing
  std::string limited_by;
};
void describe(FieldVisitor&, ThicknessBudget&);

struct FinishDayResult {
  CoatVerdict verdict = CoatVerdict::stop;
  std::string words;
  Temperature dew_point{};
  double spread_c = 0, spread_sd_c = 0;
  double stop_spread_c = 0, free_spread_c = 0;
  std::vector<std::string> reasons;  ///< beside the dew point: humidity and temperature out of their range
  int coats_today = 0;
  std::string window;  ///< of the next coat
  std::optional<double> next_coat_from_hours, next_coat_until_hours;
  std::vector<FinishCalendarLine> calendar;
  double film_um = 0;                        ///< what the wanted coats leave
  double film_um_low = 0, film_um_high = 0;  ///< what is usual
  std::vector<ThicknessBudget> thickness;
  std::vector<std::string> cautions;
};
void describe(FieldVisitor&, FinishDayResult&);

/// Whether a coat will blush today, when the next one goes on, and when the finish is done.
///
///     spread = min(air, work) - dew point
///     sd^2 = (d spread/d T)^2 sd_T^2 + (d spread/d RH)^2 sd_RH^2        by central differences of `air`
///     stop under stop_spread, free over free_spread, a trial between; within one sd of the stop: too near
///     may come off = min(now - sd - plate_least, loss_most - (before - now) - sd)
///
/// Two rules of the trade for lacquer do not agree (65 % humidity; 11 C of spread, which is 49 % at 20 C): hence two
/// limits. Left out: how far a solvent film cools by itself. Source: data/finishes.csv, row by row.
/// @throws Refused naming an unknown finish or the field outside the valid range.
[[nodiscard]] FinishDayResult finish_day(const FinishDayRequest& request, const OperationTables& tables,
                                         const RepairFigures& figures);

}  // namespace tailblock

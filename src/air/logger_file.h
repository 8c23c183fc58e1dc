#pragma once

#include <optional>
#include <string>
#include <vector>

#include "air/home.h"
#include "air/hygrometer.h"
#include "air/logger_layout.h"
#include "air/time_stamp.h"

namespace tailblock {

/// The text of a logger's file, and what the person says where the file does not.
struct LoggerFile {
  std::string text;
  std::optional<TemperatureUnit> temperature_unit = {};
  std::optional<DayOrder> day_order = {};
  StatedColumns columns = {};
  HygrometerCorrection correction = {};  ///< of this logger (air/hygrometer.h)
};
void describe(FieldVisitor&, LoggerFile&);

/// A line that was not used, and why.
struct RefusedLine {
  int line = 0;
  std::string text;
  std::string reason;
};
void describe(FieldVisitor&, RefusedLine&);

/// A time without readings, much longer than the logger's own step.
struct LoggerGap {
  std::string from;  ///< `2024-04-03 18:30`
  std::string to;
  double hours = 0;
};
void describe(FieldVisitor&, LoggerGap&);

/// A day with less than half of its readings: not used.
struct ThinDay {
  Date date;
  int readings = 0;
  int expected = 0;
};
void describe(FieldVisitor&, ThinDay&);

/// Daily means, and everything that was not used.
struct LoggerReport {
  std::vector<LoggedDay> days;  ///< in order, corrected
  int readings = 0;             ///< used in them
  int preamble_lines = 0;       ///< before the readings, passed over
  int refused_count = 0;
  std::vector<RefusedLine> refused;  ///< the first hundred
  int gap_count = 0;
  std::vector<LoggerGap> gaps;  ///< the first hundred
  std::vector<ThinDay> thin_days;
  double step_minutes = 0;  ///< the usual time between two readings
  std::string first, last;  ///< `2024-04-03 18:30`
  std::string columns;      ///< which columns were taken for what
  std::vector<std::string> notes;
};
void describe(FieldVisitor&, LoggerReport&);

/// Reads the file of a temperature and humidity logger: cells parted by tab, semicolon or comma; decimal point or
/// comma; C or F by its heading, its cells or as stated; humidity in percent; stamps as air/time_stamp.h; lines before
/// the heading passed over. A reading is used only when it is whole and possible (-40..60 C, 1..100 %), and the first
/// of its time. Days and months of dates like 3/4/2024 are told apart by a date that can be read one way only, or by
/// the order that leaves no jump; else they have to be stated.
/// @throws Refused when columns, unit or day order cannot be told, or nothing can be used.
[[nodiscard]] LoggerReport read_logger_file(const LoggerFile& file);

}  // namespace tailblock

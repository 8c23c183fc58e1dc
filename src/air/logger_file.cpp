#include "air/logger_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

constexpr std::size_t most_listed = 100;
constexpr std::size_t most_bytes = 20'000'000;
constexpr Range possible_temperatures{-40, 60, "C"};
constexpr Range possible_humidities{1, 100, "%"};
constexpr Range any_count{0, 1e9, ""};
constexpr Count listed{0, most_listed};
constexpr Count any_days{0, 100'000};

struct Reading {
  int line;
  WrittenStamp stamp;
  WallTime time;
  double temperature;  ///< in the file's unit until it is known
  std::optional<TemperatureUnit> unit;
  double humidity_percent;
};

std::string written(WallTime time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(time - day).count();
  const std::string hour = std::to_string(100 + minutes / 60).substr(1);
  return iso_date(day) + " " + hour + ":" + std::to_string(100 + minutes % 60).substr(1);
}

/// Reads a file step by step; each step leaves fewer readings and more reasons.
class LoggerReader {
 public:
  explicit LoggerReader(const LoggerFile& file) : file_(file), lines_(logger_lines(file.text)) {}

  LoggerReport read() {
    layout_ = logger_layout(lines_, file_.columns);
    report_.columns = layout_.columns;
    report_.preamble_lines = static_cast<int>(layout_.first_line);
    for (std::size_t i = layout_.first_line; i < lines_.size(); ++i) read_line(i);
    put_in_celsius();
    put_in_order();
    find_gaps();
    take_days();
    if (report_.days.empty()) throw Refused("text: no day has enough readings that can be used" + first_reason());
    return std::move(report_);
  }

 private:
  void refuse(int line, const std::string& reason) {
    if (++report_.refused_count > static_cast<int>(most_listed)) return;
    const std::string quoted = quoted_text(lines_[static_cast<std::size_t>(line) - 1], 80);
    report_.refused.push_back({.line = line, .text = quoted.substr(1, quoted.size() - 2), .reason = reason});
  }

  [[nodiscard]] std::string first_reason() const {
    if (report_.refused.empty()) return {};
    return ": line " + std::to_string(report_.refused[0].line) + " " + report_.refused[0].reason;
  }

  /// Puts a line's reading in `readings_`, or says why not.
  void read_line(std::size_t index) {
    if (lines_[index].empty()) return;
    const int line = static_cast<int>(index) + 1;
    auto cells = logger_cells(lines_[index], layout_.delimiter);
    while (cells.size() > layout_.cells && cells.back().empty()) cells.pop_back();
    if (layout_.delimiter == ',' && layout_.cells > 0 && cells.size() > layout_.cells) {
      return refuse(line, "has more cells than columns: decimal commas and commas between cells cannot be told apart");
    }
    const std::size_t last = std::max({layout_.time, layout_.temperature, layout_.humidity, layout_.clock.value_or(0)});
    if (cells.size() <= last) return refuse(line, "has too few cells");
    auto stamp = read_stamp(cells[layout_.time]);
    if (!stamp) return refuse(line, "has a time that cannot be read: " + quoted_text(cells[layout_.time]));
    if (layout_.clock && !stamp->has_clock) {
      const auto of_day = read_clock(cells[*layout_.clock]);
      if (!of_day) return refuse(line, "has a time that cannot be read: " + quoted_text(cells[*layout_.clock]));
      stamp->of_day = *of_day;
    }
    const auto temperature = logger_number(cells[layout_.temperature]);
    if (!temperature) return refuse(line, "has no temperature: " + quoted_text(cells[layout_.temperature]));
    const auto humidity = logger_number(cells[layout_.humidity]);
    if (!humidity || humidity->unit) return refuse(line, "has no humidity: " + quoted_text(cells[layout_.humidity]));
    if (!(possible_humidities.low <= humidity->value && humidity->value <= possible_humidities.high)) {
      return refuse(line, "has an impossible humidity: " + plain_number(humidity->value) + " %");
    }
    readings_.push_back({.line = line,
                         .stamp = *stamp,
                         .time = {},
                         .temperature = temperature->value,
                         .unit = temperature->unit,
                         .humidity_percent = humidity->value});
  }

  void put_in_celsius() {
    const auto unit = file_.temperature_unit ? file_.temperature_unit : layout_.unit;
    if (file_.temperature_unit && layout_.unit && *file_.temperature_unit != *layout_.unit) {
      report_.notes.emplace_back("The heading names another unit of temperature than the one stated, which was taken.");
    }
    keep_if([&](Reading& reading) {
      const auto own = reading.unit ? reading.unit : unit;
      if (!own) throw Refused("text: the file does not say whether its temperatures are in C or F: say which");
      if (*own == TemperatureUnit::fahrenheit) reading.temperature = in_celsius(fahrenheit(reading.temperature));
      if (possible_temperatures.low <= reading.temperature && reading.temperature <= possible_temperatures.high)
        return true;
      const double rounded = std::round(reading.temperature * 10) / 10;
      refuse(reading.line, "has an impossible temperature: " + plain_number(rounded) + " C");
      return false;
    });
  }

  template <class Keep>
  void keep_if(Keep keep) {
    std::vector<Reading> kept;
    for (Reading& reading : readings_) {
      if (keep(reading)) kept.push_back(reading);
    }
    readings_ = std::move(kept);
  }

  /// The longest step between one line and the next, in days, when dates are read in this order.
  [[nodiscard]] double longest_step(DayOrder order) const {
    double longest = 0;
    std::optional<WallTime> before;
    for (const Reading& reading : readings_) {
      const auto time = wall_time(reading.stamp, order);
      if (!time) continue;
      if (before) longest = std::max(longest, std::abs(static_cast<double>((*time - *before).count())) / 86400);
      before = time;
    }
    return longest;
  }

  DayOrder day_order() {
    if (file_.day_order) return *file_.day_order;
    const auto open = [](const Reading& reading) { return !reading.stamp.order; };
    if (std::none_of(readings_.begin(), readings_.end(), open)) return DayOrder::month_first;
    const auto line_that = [&](auto tells) {
      const auto found = std::find_if(readings_.begin(), readings_.end(),
                                      [&](const Reading& reading) { return open(reading) && tells(reading.stamp); });
      return found == readings_.end() ? 0 : found->line;
    };
    const int day_line = line_that([](const WrittenStamp& stamp) { return stamp.first > 12; });
    const int month_line = line_that([](const WrittenStamp& stamp) { return stamp.second > 12; });
    if (day_line > 0 && month_line > 0) {
      throw Refused("text: line " + std::to_string(day_line) + " has the day before the month and line " +
                    std::to_string(month_line) + " the month before the day: say which it is");
    }
    if (day_line > 0)
      return told(DayOrder::day_first, "as line " + std::to_string(day_line) + " can be read no other way");
    if (month_line > 0) {
      return told(DayOrder::month_first, "as line " + std::to_string(month_line) + " can be read no other way");
    }
    const double as_days = longest_step(DayOrder::day_first);
    const double as_months = longest_step(DayOrder::month_first);
    constexpr double near = 2;
    constexpr double jump = 20;
    if (as_days <= near && as_months >= jump) return told(DayOrder::day_first, "since the readings jump otherwise");
    if (as_months <= near && as_days >= jump) return told(DayOrder::month_first, "since the readings jump otherwise");
    throw Refused("text: dates such as line " + std::to_string(readings_.front().line) +
                  "'s can be read as day and month or as month and day: say which comes first");
  }

  DayOrder told(DayOrder order, const std::string& why) {
    const std::string which = order == DayOrder::day_first ? "day before month" : "month before day";
    report_.notes.push_back("Dates were read " + which + ", " + why + ".");
    return order;
  }

  void put_in_order() {
    if (readings_.empty()) throw Refused("text: no line can be used" + first_reason());
    const DayOrder order = day_order();
    keep_if([&](Reading& reading) {
      const auto time = wall_time(reading.stamp, order);
      if (time) {
        reading.time = *time;
        return true;
      }
      refuse(reading.line, "has a day that does not exist");
      return false;
    });
    const auto earlier = [](const Reading& a, const Reading& b) { return a.time < b.time; };
    if (!std::is_sorted(readings_.begin(), readings_.end(), earlier)) {
      report_.notes.emplace_back("The lines were not in order of time and were sorted.");
      std::stable_sort(readings_.begin(), readings_.end(), earlier);
    }
    std::optional<Reading> first_of_its_time;
    keep_if([&](Reading& reading) {
      if (first_of_its_time && first_of_its_time->time == reading.time) {
        refuse(reading.line, "has the same time as line " + std::to_string(first_of_its_time->line));
        return false;
      }
      first_of_its_time = reading;
      return true;
    });
    if (readings_.empty()) throw Refused("text: no line can be used" + first_reason());
    report_.first = written(readings_.front().time);
    report_.last = written(readings_.back().time);
  }

  void find_gaps() {
    std::vector<double> steps;
    for (std::size_t i = 1; i < readings_.size(); ++i) {
      steps.push_back(static_cast<double>((readings_[i].time - readings_[i - 1].time).count()) / 60);
    }
    if (steps.empty()) {
      report_.step_minutes = 24 * 60;
      return;
    }
    std::vector<double> sorted = steps;
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    report_.step_minutes = *middle;
    const double longest = std::max(3 * report_.step_minutes, 180.0);
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (steps[i] <= longest || ++report_.gap_count > static_cast<int>(most_listed)) continue;
      report_.gaps.push_back({.from = written(readings_[i].time),
                              .to = written(readings_[i + 1].time),
                              .hours = std::round(steps[i] / 6) / 10});
    }
  }

  void take_days() {
    const int expected = std::max(1, static_cast<int>(24 * 60 / report_.step_minutes));
    for (std::size_t i = 0; i < readings_.size();) {
      const auto day = std::chrono::floor<std::chrono::days>(readings_[i].time);
      LoggedDay mean{.date = day, .temperature_c = 0, .relative_humidity = 0};
      int count = 0;
      for (; i < readings_.size() && readings_[i].time < day + std::chrono::days(1); ++i, ++count) {
        mean.temperature_c += readings_[i].temperature;
        mean.relative_humidity +=
            in_fraction(corrected(file_.correction, humidity_percent(readings_[i].humidity_percent)));
      }
      if (2 * count < expected) {
        report_.thin_days.push_back({.date = day, .readings = count, .expected = expected});
        continue;
      }
      mean.temperature_c /= count;
      mean.relative_humidity /= count;
      report_.days.push_back(mean);
      report_.readings += count;
    }
  }

  const LoggerFile& file_;
  std::vector<std::string> lines_;
  LoggerLayout layout_;
  std::vector<Reading> readings_;
  LoggerReport report_;
};

}  // namespace

void describe(FieldVisitor& visit, LoggerFile& file) {
  static constexpr std::array<std::string_view, 2> units{"C", "F"};
  static constexpr std::array<std::string_view, 2> orders{"day_first", "month_first"};
  const auto column = [&](const Field& field, int& value) { visit.integer(field, value, {1, 1000, ""}); };
  visit.text({"text", "the file, whole"}, file.text, most_bytes);
  maybe(visit, {"temperature_unit", "C or F, where the file does not say"}, file.temperature_unit,
        [&](const Field& field, TemperatureUnit& value) { choice(visit, field, value, units); });
  maybe(visit, {"day_order", "which comes first in 3/4/2024, where the file does not tell"}, file.day_order,
        [&](const Field& field, DayOrder& value) { choice(visit, field, value, orders); });
  maybe(visit, {"time_column", "counted from 1, where the file does not name it"}, file.columns.time, column);
  maybe(visit, {"temperature_column", "counted from 1, where the file does not name it"}, file.columns.temperature,
        column);
  maybe(visit, {"humidity_column", "counted from 1, where the file does not name it"}, file.columns.humidity, column);
  object(visit, {"correction", "how to put this logger's humidity right", Need::has_default}, file.correction);
}

void describe(FieldVisitor& visit, RefusedLine& line) {
  visit.integer({"line", "counted from 1"}, line.line, any_count);
  visit.text({"text", "the line, or its beginning"}, line.text, 200);
  visit.text({"reason", "why it was not used"}, line.reason, 300);
}

void describe(FieldVisitor& visit, LoggerGap& gap) {
  visit.text({"from", "last reading before it"}, gap.from, 20);
  visit.text({"to", "first reading after it"}, gap.to, 20);
  visit.number({"hours", "between the two"}, gap.hours, any_count);
}

void describe(FieldVisitor& visit, ThinDay& day) {
  visit.date({"date", "the day"}, day.date);
  visit.integer({"readings", "that it has"}, day.readings, any_count);
  visit.integer({"expected", "at the usual step"}, day.expected, any_count);
}

void describe(FieldVisitor& visit, LoggerReport& report) {
  list(visit, {"days", "daily means, corrected"}, report.days, any_days);
  visit.integer({"readings", "used in them"}, report.readings, any_count);
  visit.integer({"preamble_lines", "before the readings, passed over"}, report.preamble_lines, any_count);
  visit.integer({"refused_count", "lines not used"}, report.refused_count, any_count);
  list(visit, {"refused", "the first hundred of them"}, report.refused, listed);
  visit.integer({"gap_count", "times without readings"}, report.gap_count, any_count);
  list(visit, {"gaps", "the first hundred of them"}, report.gaps, listed);
  list(visit, {"thin_days", "days with less than half of their readings, not used"}, report.thin_days, any_days);
  visit.number({"step_minutes", "the usual time between two readings"}, report.step_minutes, any_count);
  visit.text({"first", "time of the first reading"}, report.first, 20);
  visit.text({"last", "time of the last reading"}, report.last, 20);
  visit.text({"columns", "which columns were taken for what"}, report.columns, 500);
  visit.texts({"notes", "what else was decided"}, report.notes, 300, {0, 20});
}

LoggerReport read_logger_file(const LoggerFile& file) {
  require_valid(file);
  return LoggerReader(file).read();
}

}  // namespace tailblock

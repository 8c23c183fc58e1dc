#include "air/logger_layout.h"

#include <algorithm>
#include <array>
#include <span>

#include "air/time_stamp.h"
#include "quantity/csv_table.h"
#include "quantity/quoted_text.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr std::size_t lines_looked_at = 200;

char lower(char c) { return 'A' <= c && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool is_letter(char c) { return 'a' <= lower(c) && lower(c) <= 'z'; }

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = lower(c);
  return result;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

/// `word` in `text`, not as part of a longer word.
bool has_word(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    const bool starts = at == 0 || !is_letter(text[at - 1]);
    const std::size_t end = at + word.size();
    if (starts && (end == text.size() || !is_letter(text[end]))) return true;
  }
  return false;
}

bool has_any(std::string_view text, std::span<const std::string_view> parts) {
  return std::any_of(parts.begin(), parts.end(), [&](std::string_view part) { return text.find(part) != text.npos; });
}

constexpr std::array<std::string_view, 10> other_names{"dew",   "taupunkt", "abs", "vpd",    "pressure",
                                                       "index", "feels",    "wet", "mixing", "alarm"};
constexpr std::array<std::string_view, 6> humidity_names{"humid", "feucht", "umid", "humed", "vocht", "fukt"};
constexpr std::array<std::string_view, 4> temperature_names{"temp", "celsius", "fahrenheit", "\xC2\xB0"};
constexpr std::array<std::string_view, 3> date_names{"date", "datum", "fecha"};
constexpr std::array<std::string_view, 6> clock_names{"time", "zeit", "hora", "heure", "clock", "stamp"};

bool names_other(std::string_view name) { return has_any(name, other_names); }
bool names_humidity(std::string_view name) {
  return !names_other(name) && (has_any(name, humidity_names) || has_word(name, "rh") || has_word(name, "hum"));
}
bool names_temperature(std::string_view name) {
  return !names_other(name) && !names_humidity(name) && (has_any(name, temperature_names) || has_word(name, "t"));
}
bool names_date(std::string_view name) { return has_any(name, date_names); }
bool names_clock(std::string_view name) { return has_any(name, clock_names) || has_word(name, "tid"); }

std::optional<TemperatureUnit> unit_named(std::string_view name) {
  if (name.find("celsius") != name.npos || has_word(name, "c") || has_word(name, "degc"))
    return TemperatureUnit::celsius;
  if (name.find("fahrenheit") != name.npos || has_word(name, "f") || has_word(name, "degf")) {
    return TemperatureUnit::fahrenheit;
  }
  return std::nullopt;
}

using Names = std::vector<std::string>;

std::optional<std::size_t> first_that(const Names& names, bool (*is)(std::string_view)) {
  const auto found = std::find_if(names.begin(), names.end(), [&](const std::string& name) { return is(name); });
  if (found == names.end()) return std::nullopt;
  return static_cast<std::size_t>(found - names.begin());
}

/// Tab, semicolon or comma: the first of them that cuts most lines.
char delimiter_of(const std::vector<std::string>& lines) {
  const std::size_t count = std::min(lines.size(), lines_looked_at);
  const auto cut_by = [&](char mark) {
    std::size_t cut = 0;
    for (std::size_t i = 0; i < count; ++i) cut += logger_cells(lines[i], mark).size() > 1 ? 1 : 0;
    return cut;
  };
  std::size_t filled = 0;
  for (std::size_t i = 0; i < count; ++i) filled += lines[i].empty() ? 0 : 1;
  for (const char mark : {'\t', ';'}) {
    if (2 * cut_by(mark) > filled) return mark;
  }
  return ',';
}

void take_names(LoggerLayout& layout, const Names& names) {
  layout.cells = names.size();
  const auto date = first_that(names, names_date);
  const auto clock = first_that(names, names_clock);
  layout.time = date ? *date : clock.value_or(0);
  if (date && clock && *clock != *date) layout.clock = *clock;
}

std::size_t stated_column(const char* field, int column) {
  return static_cast<std::size_t>(require_within(field, column, {1, 1000, ""})) - 1;
}

/// The line that names a temperature and a humidity; absent when none does.
std::optional<std::size_t> naming_line(const std::vector<std::string>& lines, LoggerLayout& layout) {
  for (std::size_t i = 0; i < std::min(lines.size(), lines_looked_at); ++i) {
    Names names = logger_cells(lines[i], layout.delimiter);
    for (std::string& name : names) name = lower(name);
    const auto temperature = first_that(names, names_temperature);
    const auto humidity = first_that(names, names_humidity);
    if (!temperature || !humidity) continue;
    layout.temperature = *temperature;
    layout.humidity = *humidity;
    layout.unit = unit_named(names[*temperature]);
    take_names(layout, names);
    return i;
  }
  return std::nullopt;
}

std::string taken(const LoggerLayout& layout, const std::vector<std::string>& names) {
  const auto one = [&](const char* what, std::size_t column) {
    const std::string name = column < names.size() ? " " + quoted_text(names[column]) : "";
    return std::string(what) + " from column " + std::to_string(column + 1) + name;
  };
  std::string text = one("time", layout.time);
  if (layout.clock) text += ", " + one("clock", *layout.clock);
  return text + ", " + one("temperature", layout.temperature) + ", " + one("humidity", layout.humidity);
}

std::string utf8_of_utf16(std::string_view bytes, bool big_endian) {
  std::string text;
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
    const auto high = static_cast<unsigned char>(bytes[big_endian ? i : i + 1]);
    const auto low = static_cast<unsigned char>(bytes[big_endian ? i + 1 : i]);
    const unsigned unit = high * 256U + low;
    if (unit < 0x80) {
      text += static_cast<char>(unit);
    } else if (unit < 0x800) {
      text += static_cast<char>(0xC0 | (unit >> 6U));
      text += static_cast<char>(0x80 | (unit & 0x3FU));
    } else {
      text += '?';  // no logger needs more than degree signs and accents
    }
  }
  return text;
}

}  // namespace

std::vector<std::string> logger_lines(std::string_view text) {
  std::string decoded;
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    decoded = utf8_of_utf16(text.substr(2), text.front() == '\xFE');
    text = decoded;
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    lines.emplace_back(trimmed(text.substr(0, end)));
    text.remove_prefix(end);
    if (text.starts_with("\r\n")) {
      text.remove_prefix(2);
    } else if (!text.empty()) {
      text.remove_prefix(1);
    }
  }
  return lines;
}

std::vector<std::string> logger_cells(std::string_view line, char delimiter) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == delimiter && !quoted) {
      cells.emplace_back();
    } else {
      cells.back() += c;
    }
  }
  for (std::string& cell : cells) cell = std::string(trimmed(cell));
  return cells;
}

std::optional<LoggerNumber> logger_number(std::string_view cell) {
  std::size_t length = 0;
  if (length < cell.size() && (cell[length] == '-' || cell[length] == '+')) ++length;
  while (length < cell.size() &&
         (('0' <= cell[length] && cell[length] <= '9') || cell[length] == '.' || cell[length] == ',')) {
    ++length;
  }
  std::string digits(cell.substr(0, length));
  if (digits.starts_with('+')) digits.erase(0, 1);
  for (char& c : digits) c = c == ',' ? '.' : c;
  const auto value = number_from_text(digits);
  if (!value) return std::nullopt;

  std::string behind = lower(trimmed(cell.substr(length)));
  for (const std::string_view degree : {"\xC2\xB0", "\xC2\xBA", "\xB0"}) {
    if (behind.starts_with(degree)) behind.erase(0, degree.size());
  }
  const std::string_view unit = trimmed(behind);
  if (unit == "c") return LoggerNumber{.value = *value, .unit = TemperatureUnit::celsius};
  if (unit == "f") return LoggerNumber{.value = *value, .unit = TemperatureUnit::fahrenheit};
  if (unit.empty() || unit == "%" || unit == "%rh" || unit == "% rh" || unit == "rh") {
    return LoggerNumber{.value = *value, .unit = std::nullopt};
  }
  return std::nullopt;
}

LoggerLayout logger_layout(const std::vector<std::string>& lines, const StatedColumns& stated) {
  LoggerLayout layout;
  layout.delimiter = delimiter_of(lines);
  const auto named = naming_line(lines, layout);
  if (!named && !(stated.temperature && stated.humidity)) {
    throw Refused("text: no line names a temperature and a humidity column: say which columns they are");
  }
  if (stated.time) {
    layout.time = stated_column("time_column", *stated.time);
    layout.clock.reset();
  }
  if (stated.temperature) layout.temperature = stated_column("temperature_column", *stated.temperature);
  if (stated.humidity) layout.humidity = stated_column("humidity_column", *stated.humidity);
  const Names names = named ? logger_cells(lines[*named], layout.delimiter) : Names{};
  if (named && stated.temperature && layout.temperature < names.size())
    layout.unit = unit_named(lower(names[layout.temperature]));
  layout.first_line = named ? *named + 1 : 0;
  layout.columns = taken(layout, names);
  return layout;
}

}  // namespace tailblock

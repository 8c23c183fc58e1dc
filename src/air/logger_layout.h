#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

enum class TemperatureUnit { celsius, fahrenheit };

/// Columns the person states, counted from 1, where the file does not name them.
struct StatedColumns {
  std::optional<int> time = {};
  std::optional<int> temperature = {};
  std::optional<int> humidity = {};
};

/// Where a logger's file keeps what.
struct LoggerLayout {
  char delimiter = ',';
  std::size_t time = 0, temperature = 0, humidity = 0;  ///< columns, counted from 0
  std::optional<std::size_t> clock;                     ///< where date and clock have a column each
  std::size_t cells = 0;                                ///< of the line that names the columns; 0 when there is none
  std::size_t first_line = 0;                           ///< index of the first line of readings
  std::optional<TemperatureUnit> unit;                  ///< as the line that names the columns has it
  std::string columns;                                  ///< the names of the columns taken, for the report
};

/// The text in UTF-8 without a byte order mark (UTF-16 is told by its mark), cut into lines at CR, LF or both.
[[nodiscard]] std::vector<std::string> logger_lines(std::string_view text);

/// The cells of one line, without the quotes and spaces round them.
[[nodiscard]] std::vector<std::string> logger_cells(std::string_view line, char delimiter);

/// A number as a logger writes it: decimal point or comma, its unit behind it or not.
struct LoggerNumber {
  double value;
  std::optional<TemperatureUnit> unit;
};
[[nodiscard]] std::optional<LoggerNumber> logger_number(std::string_view cell);

/// Finds the delimiter, the line that names the columns, and the columns themselves.
/// @throws Refused when no line names a temperature and a humidity, and they are not stated.
[[nodiscard]] LoggerLayout logger_layout(const std::vector<std::string>& lines, const StatedColumns& stated);

}  // namespace tailblock

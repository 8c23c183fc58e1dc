#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

/// Where a reading comes from.
enum class ReadingOf { instrument, finding, model };

/// Something that repairs can ask for: a measure of the instrument (data/measures.csv), a measure at a finding
/// (data/finding_measures.csv) or a figure that a computation gives (data/model_figures.csv).
struct KnownReading {
  std::string id;
  std::string name;
  std::string unit;
  ReadingOf of = ReadingOf::instrument;
  double sd = 0;  ///< one standard deviation of one reading with the usual gauge, in `unit`
  double hard_low = 0, hard_high = 0;
  std::string how;  ///< where and how it is read, or the model that gives it
};

struct KnownReadingTexts {
  std::string_view measures, finding_measures, model_figures, gauges;
};

/// @throws Refused naming the cell, an id that is in two tables, or a gauge that does not exist.
[[nodiscard]] std::vector<KnownReading> known_readings(const KnownReadingTexts& csv);

}  // namespace tailblock

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "season/calibration.h"

namespace tailblock {

/// The least action at fret 12 that plays clean with this relief.
struct FloorAtRelief {
  Length relief;
  Length lowest_bass, lowest_treble;
};
void describe(FieldVisitor&, FloorAtRelief&);

/// The heights between which this player is served.
struct ActionLimits {
  Length lowest_bass = mm(1.8), lowest_treble = mm(1.3);
  Length highest_bass = mm(3.0), highest_treble = mm(2.5);
  /// How the lowest follows the relief, by rising relief. With it, and the relief read at least once, the floor moves
  /// through the year as the relief does; without, it stands still.
  std::vector<FloorAtRelief> floors{};
};
void describe(FieldVisitor&, ActionLimits&);

struct YearRequest {
  ResponseRequest instrument;
  Date first;
  int count = 365;
  std::optional<ActionLimits> limits;
};
void describe(FieldVisitor&, YearRequest&);

/// Daily quantiles of one side's action at fret 12, in mm, from the first day on.
struct ActionBand {
  std::vector<double> low_mm;    ///< 5 %
  std::vector<double> lower_mm;  ///< 25 %
  std::vector<double> median_mm;
  std::vector<double> upper_mm;  ///< 75 %
  std::vector<double> high_mm;   ///< 95 %
};
void describe(FieldVisitor&, ActionBand&);

/// Days of the year outside the limits.
struct DaysOutside {
  Estimate low_bass, low_treble, high_bass, high_treble;
  Estimate low_either, high_either;
};
void describe(FieldVisitor&, DaysOutside&);

struct YearResult {
  Date first;
  ActionBand bass, treble;
  std::vector<double> relative_humidity;  ///< expected in the home, daily
  std::vector<double> moisture_percent;   ///< expected of the wood, daily, at the median lag
  std::vector<DaysOutside> days_outside;  ///< one when limits were given
  std::string lowest_day, highest_day;    ///< ISO dates of the extremes of the bass median
  std::string verdict;                    ///< one plain sentence
};
void describe(FieldVisitor&, YearResult&);

/// Each day's distribution of action at fret 12 in the year ahead. docs/models/year.md.
[[nodiscard]] YearResult year(const YearRequest& request, const SeasonTables& tables);

/// Quantile `p` of the mixture on day `day` (0-based), one side. Exact to 1e-4 mm.
[[nodiscard]] double action_quantile_mm(const YearPaths& paths, bool bass, int day, double p);

/// Days with the action under `floor_mm` and over `ceiling_mm` after the strings are raised by `raised_mm` all year.
struct SideDays {
  Estimate low, high;
};
[[nodiscard]] SideDays days_outside(const YearPaths& paths, bool bass, double raised_mm, double floor_mm,
                                    double ceiling_mm);

}  // namespace tailblock

#pragma once

#include <optional>

#include "paper/picture.h"
#include "quantity/date.h"

namespace tailblock {

/// One side's year of string heights over fret 12, as the model `year` gives it.
struct YearBand {
  std::string side = "bass";
  std::vector<double> low_mm, lower_mm, median_mm, upper_mm, high_mm;  ///< daily: 5, 25, 50, 75 and 95 %
  double lowest_clean_mm = 0;                                          ///< under it notes buzz; 0 leaves it out
  double highest_comfortable_mm = 0;                                   ///< over it the hand works; 0 leaves it out
  std::optional<double> today_mm{};                                    ///< read today, as left
};
void describe(FieldVisitor&, YearBand&);

/// The year ahead, its sides one under the other.
struct YearOnPaper {
  Date first;  ///< day of the first value
  Date today;
  std::vector<YearBand> sides;
};
void describe(FieldVisitor&, YearOnPaper&);

/// The bands, the limits and today, with months along and heights up. The same picture goes to the printer and to the
/// browser.
/// @throws Refused when the lists of a side are not all of one length.
[[nodiscard]] Picture year_picture(const YearOnPaper& year, double wide_mm = 170);

}  // namespace tailblock

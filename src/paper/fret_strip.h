#pragma once

#include <string>
#include <vector>

#include "quantity/date.h"
#include "setup/fret_dress.h"

namespace tailblock {

/// What the strip for the bench says, and of which neck.
struct FretStrip {
  std::string instrument;
  Date day;  ///< the crowns were read
  Length scale_length;
  int body_joint_fret = 14;
  FretDressResult result;
};

/// One row of the strip. A neck is longer than a sheet, so it is cut at a fret, which is drawn at the end of one row
/// and at the beginning of the next.
struct StripRow {
  int page = 0;
  int first_fret = 0, last_fret = 0;  ///< 0 is the nut
  double left_mm = 0;                 ///< of the first fret's line on the sheet
  double top_mm = 0;                  ///< of the board's edge on the sheet
};

/// Where the rows lie; distances on paper are distances on the neck.
[[nodiscard]] std::vector<StripRow> strip_rows(const FretStrip& strip);

/// A sheet or more of A4, landscape, true to scale, small enough for letter paper too. Under every fret what comes off,
/// in hundredths of a millimetre and thousandths of an inch; a line of exactly 100 mm proves that the printer did not
/// scale. The same strip always gives the same bytes.
/// @throws std::runtime_error when the drawing library fails.
[[nodiscard]] std::string fret_strip_pdf(const FretStrip& strip);

}  // namespace tailblock

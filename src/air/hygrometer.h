#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// A salt whose saturated solution holds the air in a shut box at a known humidity: data/salts.csv says how.
struct Salt {
  std::string name;
  double a0 = 0, a1 = 0, a2 = 0, a3 = 0;
  double low_c = 0, high_c = 0;
  double uncertainty_percent = 0;
  std::string standing;
  std::string source;
};

struct SaltTable {
  std::vector<Salt> salts;

  /// @throws Refused when there is no salt of that name.
  [[nodiscard]] const Salt& named(std::string_view name) const;
};

/// @throws Refused naming the row and the cell.
[[nodiscard]] SaltTable salt_table(std::string_view csv);

/// Source and standing are the salt's own. @throws Refused naming `temperature_c` outside the salt's range.
[[nodiscard]] RelativeHumidity humidity_over(const Salt& salt, Temperature temperature);

/// What the hygrometer showed when it had settled in the box over the slurry.
struct SaltReading {
  std::string salt = "sodium chloride";
  Temperature temperature = celsius(20);
  RelativeHumidity shown;
};
void describe(FieldVisitor&, SaltReading&);

/// One reading over one salt, or one over each of two.
struct HygrometerRequest {
  std::vector<SaltReading> readings;
  /// An error beyond this says: replace it. 8 points: common practice, no source.
  RelativeHumidity replace_beyond = humidity_percent(8);
};
void describe(FieldVisitor&, HygrometerRequest&);

/// true humidity = offset + slope x shown.
struct HygrometerCorrection {
  double offset = 0;
  double slope = 1;
};
void describe(FieldVisitor&, HygrometerCorrection&);

/// Held within 0..1.
[[nodiscard]] RelativeHumidity corrected(const HygrometerCorrection& correction, RelativeHumidity shown);

struct HygrometerResult {
  HygrometerCorrection correction;
  std::vector<double> true_relative_humidity;   ///< over each salt
  std::vector<double> error_relative_humidity;  ///< shown less true: positive reads too damp
  bool replace = false;
  std::string verdict;  ///< one plain sentence
};
void describe(FieldVisitor&, HygrometerResult&);

/// How far off a hygrometer is, and how to put it right. One salt shifts every reading by the error found, which is
/// right near that humidity only; two salts draw a line through both.
/// @throws Refused naming a salt not in the table, a temperature outside its range, or two salts less than 0.2 apart.
[[nodiscard]] HygrometerResult hygrometer(const HygrometerRequest& request, const SaltTable& salts);

}  // namespace tailblock

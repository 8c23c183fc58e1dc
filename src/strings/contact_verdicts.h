#pragma once

#include <string_view>

namespace tailblock {

/// Where a verdict changes, with the reason; from data/contact_verdicts.csv.
struct ContactVerdicts {
  double buzz_from_gain_db = 0;
  double buzz_from_energy_taken = 0;
};
/// @throws Refused naming the row it refuses.
[[nodiscard]] ContactVerdicts contact_verdicts(std::string_view csv);

}  // namespace tailblock

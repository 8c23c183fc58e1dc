#pragma once

#include <string>

#include "cli/demo_tables.h"

namespace tailblock {

/// A reading as it was written down, and what that means in the measure's unit.
struct WrittenReading {
  std::string typed;
  double value;
};

/// What a hand that strays reads off this gauge where the truth is `true_value`, to the gauge's step.
[[nodiscard]] WrittenReading read_off(const DemoGauge& gauge, double true_value, NamedChance& chance);

/// What was written in place of a reading.
[[nodiscard]] WrittenReading written_as(const DemoGauge& gauge, const std::string& typed);

}  // namespace tailblock

#pragma once

#include <string>
#include <vector>

#include "bench/serial_plan.h"

namespace tailblock {

/// A sentence for each station in which work at hand and waits that run hold more places than the shop has. They are
/// facts, so the plan stands, and lends no place of it until there is one again.
[[nodiscard]] std::vector<std::string> overfull_stations(const SerialPlan& plan, const BenchRequest& request);

}  // namespace tailblock

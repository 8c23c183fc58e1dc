#pragma once

#include <string>

#include "bench/serial_plan.h"

namespace tailblock {

/// Why an instrument is not ready before, in one sentence: where along its operations the longest hold-up lies and what
/// has the hands or the station then, or that its own work and waits take until then.
[[nodiscard]] std::string what_holds(const SerialPlan& plan, const BenchRequest& request, std::size_t job);

}  // namespace tailblock

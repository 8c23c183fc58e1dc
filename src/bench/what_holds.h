#pragma once

#include <string>

#include "bench/serial_plan.h"

namespace tailblock {

/// Why an instrument is not ready before, in one sentence: where along its operations the longest hold-up lies and what
/// has the hands or the station then, by name the one person who alone does that sort of work, or that its own work and
/// waits take until then. A hold-up of less than an hour, or of less than an eighth of how much later than wanted it
/// is, is not what keeps it, nor is a night.
[[nodiscard]] std::string what_holds(const SerialPlan& plan, const BenchRequest& request, std::size_t job);

}  // namespace tailblock

#pragma once

#include <chrono>
#include <vector>

#include "bench/request.h"

namespace tailblock {

// The shop's zone is that of the machine whose clock the book is asked by, as the system has it set (TZ, else
// /etc/localtime), with the system's own tables of when clocks change.

/// Every change of the shop's clock in the `days` days from `first` on.
[[nodiscard]] std::vector<ClockChange> clock_changes(Date first, int days);

/// The instant at which the shop's clock shows the moment. An hour that the clock leaves out is taken as if it had gone
/// on; of an hour that it shows twice, either.
[[nodiscard]] std::chrono::sys_seconds instant_of(const Moment& moment);

/// What the shop's clock shows once so many minutes have truly passed: a cure over the night in which clocks go forward
/// ends an hour later by the clock.
[[nodiscard]] Moment after_wait(const Moment& from, int minutes);

}  // namespace tailblock

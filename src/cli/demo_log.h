#pragma once

#include "cli/demo_tables.h"

namespace tailblock {

/// The daily means that a home's hygrometer wrote down of the air that the home had, up to today: its own error, its
/// rounding, and without the days it missed. Empty when the home keeps no log.
[[nodiscard]] std::vector<LoggedDay> hygrometer_log(const DemoHome& home, const std::vector<HomeDay>& air, Date today,
                                                    NamedChance chance);

}  // namespace tailblock

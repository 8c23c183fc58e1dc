#pragma once

#include <vector>

#include "bench/request.h"
#include "repair/repair_tables.h"

namespace tailblock {

/// The places and fixtures that a small shop has, until it lists its own.
[[nodiscard]] std::vector<Station> usual_places(const RepairTables& tables);

}  // namespace tailblock

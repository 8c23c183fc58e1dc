#pragma once

#include <vector>

#include "bench/request.h"
#include "repair/procedure.h"

namespace tailblock {

/// The steps of a repair as operations for the planner, in their order: hands-on minutes up to the next five, waits and
/// fixtures as they are. The kind is the step's id, so that the shop's log learns by it; a step done again is numbered.
///
/// A greatest gap that spans several steps is shared out: each step between keeps its wait and its hands-on time, and
/// what is left over is split evenly, so that the planner, which ties neighbours, places the whole group or nothing of
/// it. Dust before work that needs clean air is left an hour (least gap). Air that a finish needs is named by the
/// finish.
/// @throws Refused when a gap cannot be kept at all.
[[nodiscard]] std::vector<Operation> work_of_procedure(const ProcedureResult& plan);

/// The shop's fixtures as the tables name them, for a shop that has not listed its own.
[[nodiscard]] std::vector<Station> usual_stations(const std::vector<ShopStation>& stations);

}  // namespace tailblock

#pragma once

#include <vector>

#include "bench/request.h"
#include "repair/procedure.h"
#include "repair/repair_figures.h"

namespace tailblock {

/// A step of a repair in the order in which hands do the work of a whole visit, and which of its jobs it belongs to.
struct StepOfJob {
  const StepShown* step;
  int job = 0;
};

/// The steps as operations for the planner. The kind is the step's id, so that the shop's log learns by it, and the
/// skill its sort of work; a step done again is numbered.
///
/// Hands-on minutes and waits go up to the next five, so that no step is shorter than its sheet says and none takes no
/// time; greatest gaps go down. A greatest gap leads to the next step of the same job that it is about, however many
/// stand between. A place where it only rests (data/shop_stations.csv) is kept from when hands let go. Spraying
/// is air work of its own kind, since each kind has its own range of humidity. Dust before work that needs clean air is
/// left what data/repair_figures.csv says it settles in (least gap).
[[nodiscard]] std::vector<Operation> work_of_steps(const std::vector<StepOfJob>& steps, const RepairFigures& figures);

/// The shop's fixtures as the tables name them, for a shop that has not listed its own.
[[nodiscard]] std::vector<Station> usual_stations(const std::vector<ShopStation>& stations);

}  // namespace tailblock

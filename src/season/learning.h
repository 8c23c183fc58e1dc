#pragma once

#include <array>
#include <optional>
#include <vector>

#include "season/calibration.h"
#include "season/evidence.h"
#include "season/response_prior.h"
#include "season/visit_record.h"
#include "season/wood_path.h"

namespace tailblock {

/// One lag of the grid with what belongs to it.
struct LagNode {
  Days lag;
  double log_prior;
  WoodPath path;  ///< from the first visit (or the log) to today
};

/// One (lag, response) of the grid and its posterior share, without and with a move that nobody recorded between the
/// last two visits.
struct Cell {
  std::size_t lag;
  double response;
  std::array<double, 2> weight;  ///< [0] no such move, [1] one
  [[nodiscard]] double total() const { return weight[0] + weight[1]; }
};

/// Everything learnt of one instrument, from which calibration, response and the last change are read.
struct Learnt {
  VisitRecord record;  ///< readings that are obeyed, with the shifts found in earlier intervals
  ResponsePrior prior;
  double reference_percent;
  AirSeries typical;  ///< leap year from 1 January
  std::vector<LagNode> lags;
  std::vector<double> responses;  ///< of the grid, equally spaced in the logarithm
  std::vector<Cell> cells;        ///< lag by lag, then response; weights sum to 1
  Evidence plain;
  std::optional<Evidence> stepped;  ///< with the last interval's move; absent with fewer than two visit days
  double step_probability;          ///< of a move in the last interval
  std::vector<FlaggedReading> flagged;
  ReliefBelief relief{};
  std::vector<std::size_t> supposed_steps;  ///< visit days before which an earlier unrecorded move was found
};

[[nodiscard]] Learnt learn(const ResponseRequest& request, const SeasonTables& tables);

/// The bridge over the rim rises by 2 s (1 + rho)/2 for one of the bass action: the strings halve it, their middle
/// moves by the mean of the sides, and s of that is the top's. rho the treble ratio at its prior mean.
[[nodiscard]] EvidencePrior evidence_prior(const ResponsePrior& prior, const SeasonPrior& season);

/// The moisture of one lag on the record's days and today.
[[nodiscard]] DayMoisture day_moisture(const LagNode& node, const std::vector<Date>& days, double reference_percent,
                                       Days weather_memory);

}  // namespace tailblock

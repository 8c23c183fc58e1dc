#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "season/response.h"

namespace tailblock {

struct SeasonPrior;

/// Where a height is read: at either side of the strings, or at the bridge over the rim.
enum class Side { bass, treble, bridge };
inline constexpr std::size_t side_count = 3;

/// Something that moved the strings at a moment: recorded work, or a move that is supposed.
struct Shift {
  Date date;
  int order;
  std::array<double, side_count> known_mm;  ///< by side, positive is higher
  std::array<double, side_count> sd_mm;     ///< by side, of what is not known of it
  double correlation;                       ///< of bass and treble
  double bridge_correlation;                ///< of the bridge with either
};

/// One reading of the action in the model's terms.
struct Observation {
  std::size_t reading;  ///< its place in the request
  std::size_t day;      ///< its place in `days`
  std::size_t set;      ///< readings of one day and order share a set
  Side side;
  Date date;
  int order;
  double value_mm;
  double gauge_sd_mm;
};

/// The readings of the action and of the bridge in order of time, and the shifts between them.
struct VisitRecord {
  Date today;
  std::vector<Date> days;  ///< with at least one reading
  std::vector<Observation> observations;
  std::vector<Shift> shifts;
};

/// Readings of the action and of the bridge, and recorded changes in order of time. A reading that is written twice
/// (same day, order, kind, value and gauge) counts once; repeated readings that differ all count. `set_aside[i]` leaves
/// reading i out.
/// @throws Refused naming a reading or a change that lies after today, or a height that only a bridge can have.
[[nodiscard]] VisitRecord visit_record(const ResponseRequest& request, const SeasonPrior& prior,
                                       const std::vector<bool>& set_aside);

/// Whether a reading was taken before a shift: on an earlier day, or the same day at the same or an earlier order.
[[nodiscard]] bool is_before(const Observation& observation, const Shift& shift);

/// The unrecorded move that is weighed between visit day `interval` and the next.
[[nodiscard]] Shift unrecorded_step(const VisitRecord& record, std::size_t interval, const SeasonPrior& prior);

/// Readings that repeat an earlier one word for word.
[[nodiscard]] std::vector<bool> repeats(const std::vector<HeightReading>& readings);

}  // namespace tailblock

#pragma once

#include <optional>

#include "season/learning.h"

namespace tailblock {

/// A reading that the others do not believe.
struct Misreading {
  std::size_t reading;  ///< its place in the request
  double expected_mm, expected_sd_mm;
};

/// What is most likely wrong with the readings: one of them misread, or a move nobody recorded in an earlier interval.
struct Suspicion {
  std::optional<Misreading> misread;
  std::size_t interval = 0;  ///< when no reading is suspected
};

/// The gravest suspicion that passes its threshold, if any.
///
/// A misreading: y_i = truth + N(0, misreading_sd^2) against y_i as read, the rest of the readings as they are. An
/// earlier move: as the last interval's, at its prior probability. Both are judged with the last interval's own
/// move averaged over, so that a pair that moved together on the last day is not taken for two misreadings. A reading
/// is only judged when three others stand against it and expect it within 0.5 mm. docs/models/response.md.
[[nodiscard]] std::optional<Suspicion> gravest_suspicion(const Learnt& learnt, const SeasonPrior& prior);

/// Puts an unrecorded move before that day into the record; nothing when no reading is left on one side of it.
void add_supposed_step(VisitRecord& record, Date day, const SeasonPrior& prior);

[[nodiscard]] FlaggedReading flagged_reading(const HeightReading& reading, const Misreading& misread);

}  // namespace tailblock

#pragma once

#include <string>
#include <vector>

#include "bench/request.h"
#include "bench/weights.h"

namespace tailblock {

/// An operation of the bench, as the request names it.
struct NamedWork {
  std::string instrument, operation;
};

/// An instrument whose work fits no day though it were alone on the bench and nothing pinned.
struct FitsNoDay {
  std::string instrument, why;
};

/// A pin that cannot be kept beside the older ones.
struct PinLetGo {
  std::string instrument, operation, why;
};
void describe(FieldVisitor&, PinLetGo&);

struct WhatFits {
  BenchRequest request;  ///< without what follows
  std::vector<FitsNoDay> left_out;
  std::vector<PinLetGo> pins_let_go;
};

/// The part of a request that bench() refuses for which there is a plan: one instrument that can never be planned, or
/// one pin that clashes, keeps nothing else from it. Of pins that clash the older stand.
/// @param pins_by_age the pinned operations, the oldest pin first; one that is not named counts as the youngest
[[nodiscard]] WhatFits what_fits(const BenchRequest& request, const std::vector<NamedWork>& pins_by_age,
                                 const BenchWeights& weights);

}  // namespace tailblock

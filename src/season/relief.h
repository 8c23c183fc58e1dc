#pragma once

#include "season/learning.h"

namespace tailblock {

/// Learns the relief, and flags readings of it that the others do not believe.
///
///     R = level + response x + work + gauge        x moisture over the reference, at the middle lag
///
/// The response is of uncertain sign: neck and fingerboard pull against each other. Kept apart from the action.
/// docs/models/response.md.
void learn_relief(Learnt& learnt, const ResponseRequest& request, const SeasonPrior& prior);

}  // namespace tailblock

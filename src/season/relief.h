#pragma once

#include "season/learning.h"

namespace tailblock {

/// Flags readings of relief that the instrument's other readings of relief do not believe. Relief is a level, a
/// response of uncertain sign to the moisture at the middle lag, recorded work, and the gauge; it is kept apart from
/// the action. docs/models/response.md.
void flag_relief(Learnt& learnt, const ResponseRequest& request, const SeasonPrior& prior);

}  // namespace tailblock

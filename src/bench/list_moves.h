#pragma once

#include <vector>

#include "bench/list_search.h"
#include "bench/seeded.h"

namespace tailblock {

/// Changes a list of at least two entries at random, by one of six moves: shift one entry; exchange two; pull one job
/// out and spread it elsewhere; shuffle a short block; exchange two jobs' entries; pass over one place more or less.
void change_list(WorkList& list, Seeded& dice);

}  // namespace tailblock

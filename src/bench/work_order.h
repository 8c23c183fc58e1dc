#pragma once

#include "bench/list_search.h"

namespace tailblock {

/// The part of an earlier plan's order that is about instruments still asked for.
[[nodiscard]] std::vector<OrderEntry> order_of_those_here(std::vector<OrderEntry> order, const BenchRequest& request);

/// The order of an earlier plan as a list for this bench: what is done since falls away (the first mentions of its
/// instrument), what is new goes to the end by its slack. Empty when the request keeps none.
[[nodiscard]] WorkList list_from_order(const BenchNetwork& network, const BenchRequest& request);

[[nodiscard]] std::vector<OrderEntry> order_from_list(const BenchNetwork& network, const BenchRequest& request,
                                                      const WorkList& list);

}  // namespace tailblock

#include "bench/work_order.h"

#include <algorithm>
#include <map>
#include <string_view>

namespace tailblock {

std::vector<OrderEntry> order_of_those_here(std::vector<OrderEntry> order, const BenchRequest& request) {
  std::erase_if(order, [&](const OrderEntry& entry) {
    return std::ranges::none_of(request.instruments,
                                [&](const BenchInstrument& one) { return one.name == entry.instrument; });
  });
  return order;
}

WorkList list_from_order(const BenchNetwork& network, const BenchRequest& request) {
  WorkList list;
  if (request.kept_order.empty()) return list;
  std::map<std::string_view, std::size_t> jobs;
  std::vector<int> mentions(network.jobs.size()), first_item;
  int items = 0;
  for (std::size_t j = 0; j < network.jobs.size(); ++j) {
    jobs.emplace(request.instruments[j].name, j);
    first_item.push_back(items);
    items += static_cast<int>(network.jobs[j].items.size());
  }
  list.passed.assign(static_cast<std::size_t>(items), 0);
  for (const OrderEntry& entry : request.kept_order) {
    const auto job = jobs.find(entry.instrument);
    if (job != jobs.end()) ++mentions[job->second];
  }
  // Work that was done since was done first: an instrument with more mentions than work left loses its first ones.
  std::vector<int> done(network.jobs.size());
  for (std::size_t j = 0; j < network.jobs.size(); ++j)
    done[j] = std::max(0, mentions[j] - static_cast<int>(network.jobs[j].items.size()));
  mentions.assign(mentions.size(), 0);
  for (const OrderEntry& entry : request.kept_order) {
    const auto job = jobs.find(entry.instrument);
    if (job == jobs.end()) continue;  // collected since
    const std::size_t j = job->second;
    if (done[j]-- > 0) continue;
    list.passed[static_cast<std::size_t>(first_item[j] + mentions[j]++)] =
        static_cast<std::uint8_t>(entry.places_passed_over);
    list.jobs.push_back(static_cast<std::int16_t>(j));
  }
  for (const std::int16_t job : list_by_rule(network, BenchRule::slack).jobs) {
    const auto j = static_cast<std::size_t>(job);
    if (mentions[j] == static_cast<int>(network.jobs[j].items.size())) continue;
    ++mentions[j];
    list.jobs.push_back(job);
  }
  return list;
}

std::vector<OrderEntry> order_from_list(const BenchNetwork& network, const BenchRequest& request,
                                        const WorkList& list) {
  std::vector<int> next;
  int items = 0;
  for (const BenchJob& job : network.jobs) {
    next.push_back(items);
    items += static_cast<int>(job.items.size());
  }
  std::vector<OrderEntry> order;
  for (const std::int16_t job : list.jobs) {
    const auto j = static_cast<std::size_t>(job);
    const auto item = static_cast<std::size_t>(next[j]++);
    order.push_back({.instrument = request.instruments[j].name, .places_passed_over = list.passed[item]});
  }
  return order;
}

}  // namespace tailblock

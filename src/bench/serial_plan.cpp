#include "bench/serial_plan.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

constexpr int days_at_a_time = 64;
constexpr int days_of_ten_years = 3653;
constexpr int days_of_a_year = 366;
constexpr std::size_t most_people = 8;

bool stands_in_a_group(const BenchNetwork& net, const Step& step) {
  const BenchJob& job = net.jobs[static_cast<std::size_t>(step.instrument)];
  const int index = job.first_step + step.number;
  return std::ranges::any_of(job.items, [&](const Item& item) {
    return item.steps > 1 && item.first_step <= index && index < item.first_step + item.steps;
  });
}

}  // namespace

SerialPlan::SerialPlan(const BenchNetwork& network, const BenchWeights& weights, const BenchRequest& request)
    : net_(network),
      weights_(weights),
      request_(request),
      people_(network.hours.size()),
      fit_(network.unfit.size()),
      placed_(network.steps.size()),
      kept_(network.steps.size()),
      pieces_(network.steps.size()),
      kept_pieces_(network.steps.size()),
      next_item_(network.jobs.size()),
      ready_(network.jobs.size()) {
  most_days_ = days_of_ten_years;
  for (const int count : network.station_counts) stations_.emplace_back(count);
  extend({});
  rest_.resize(net_.steps.size());
  for (std::size_t s = net_.steps.size(); s-- > 0;) {
    const Step& step = net_.steps[s];
    for (const StepOrder& order : step.after) {
      Slot& rest = rest_[static_cast<std::size_t>(order.before)];
      rest = std::max(rest, step.hands + step.wait + rest_[s]);
    }
  }
  for (std::size_t j = 0; j < net_.jobs.size(); ++j) ready_[j] = net_.jobs[j].arrives;
  place_fixed(request);
  for (std::size_t j = 0; j < net_.jobs.size(); ++j) {
    const BenchJob& job = net_.jobs[j];
    const Slot least = std::max(ready_[j], job.least_ready);
    least_cost_.push_back(job.items.empty() ? job_cost(j, ready_[j]) : least_job_cost(j, least));
    jobs_cost_ += least_cost_.back();
  }
}

void SerialPlan::require_places() {
  Slot last = net_.now;
  for (const Slot ready : ready_) last = std::max(last, ready);
  most_days_ = day_of(last) + days_of_a_year;
  for (std::size_t j = 0; j < net_.jobs.size(); ++j) {
    for (std::size_t k = 0; k < net_.jobs[j].items.size(); ++k) {
      most_days_ = std::max(most_days_, day_of(ready_[j]) + days_of_a_year);
      place(static_cast<int>(j), 0);
    }
    take_back_to(0);
  }
  most_days_ = day_of(last) + days_of_ten_years;
}

void SerialPlan::extend(const Step& step) {
  if (days_ > 0 && days_ >= most_days_) {
    throw Refused(step_name(request_, step) + " fits no day " +
                  (stands_in_a_group(net_, step) ? "together with the work it is tied to, " : "") +
                  "in the year ahead: hours, holidays, stations and air leave no room for it");
  }
  for (std::size_t p = 0; p < people_.size(); ++p)
    people_[p].add_free_words(net_.frame, free_words(net_, p, days_, days_at_a_time));
  for (std::size_t a = 0; a < fit_.size(); ++a) {
    const BitWords more = fit_words(net_, a, days_, days_at_a_time);
    fit_[a].insert(fit_[a].end(), more.begin(), more.end());
  }
  days_ += days_at_a_time;
}

int SerialPlan::run(const Step& step, int person, int from, int length) {
  while (true) {
    const int bit = people_[static_cast<std::size_t>(person)].first_run(from, length, fit(step));
    if (bit != WorkCalendar::none) return bit;
    extend(step);
  }
}

Slot SerialPlan::could_begin(int index) const {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  Slot from = std::max(net_.jobs[static_cast<std::size_t>(step.instrument)].arrives, step.not_before);
  for (const StepOrder& order : step.after) {
    const Placed& before = placed(order.before);
    from = std::max(from, before.free_from);
    if (order.gap > 0) from = std::max(from, net_.clock.after(before.end, order.gap));
  }
  return from;
}

/// `start`, or the first later one that may do as far as each station by itself is concerned.
Slot SerialPlan::stations_free(const Step& step, Slot start, Slot end) const {
  if (step.at_hand) return start;
  Slot free = start;
  for (const StationHold& held : step.stations) {
    const Slot from = held.hands ? start : end;
    const StationUse& use = stations_[static_cast<std::size_t>(held.station)];
    Slot later = use.free_from(from, net_.clock.after(end, held.wait)) - from;
    if (later > 0 && !held.hands && step.splittable) later = 1;  // its end may move further than its start
    free = std::max(free, start + later);
  }
  return free;
}

std::pair<Slot, Slot> SerialPlan::keeps(int index, const StationHold& held) const {
  const Placed& here = placed(index);
  return {held.hands ? here.start : here.end, net_.clock.after(here.end, held.wait)};
}

Placed SerialPlan::earliest(int index, Slot from, int passed) {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  if (step.hands == 0) return earliest_without_hands(step, from);
  return step.splittable ? earliest_split(index, from, passed) : earliest_whole(step, from, passed);
}

Placed SerialPlan::earliest_without_hands(const Step& step, Slot from) const {
  while (true) {
    const Slot free = stations_free(step, from, from);
    if (free == from) return {.start = from, .end = from, .free_from = net_.clock.after(from, step.wait), .person = -1};
    from = free;
  }
}

Placed SerialPlan::earliest_whole(const Step& step, Slot from, int passed) {
  std::array<int, most_people> bits{};
  const int people = static_cast<int>(people_.size());
  const int first = net_.frame.bit(from);
  for (int p = 0; p < people; ++p) {
    bits[static_cast<std::size_t>(p)] = (step.people >> p & 1U) != 0 ? run(step, p, first, step.hands) : never;
  }
  while (true) {
    const auto soonest = std::min_element(bits.begin(), bits.begin() + people);
    const int p = static_cast<int>(soonest - bits.begin());
    const Slot start = net_.frame.slot(*soonest);
    const Slot end = start + step.hands;
    if (!step.stations.empty()) {
      const Slot free = stations_free(step, start, end);
      if (free > start) {
        const int bit = net_.frame.bit(free);
        for (int q = 0; q < people; ++q) {
          int& other = bits[static_cast<std::size_t>(q)];
          if (other < bit) other = run(step, q, bit, step.hands);
        }
        continue;
      }
    }
    if (passed == 0) return {.start = start, .end = end, .free_from = net_.clock.after(end, step.wait), .person = p};
    --passed;
    *soonest = run(step, p, people_[static_cast<std::size_t>(p)].run_end(*soonest, fit(step)), step.hands);
  }
}

/// Takes up the work in the first stretch worth it and goes on whenever there is one; returns its end.
Slot SerialPlan::split_from(const Step& step, int person, int from, std::vector<Piece>& pieces) {
  pieces.clear();
  int left = step.hands;
  while (left > 0) {
    const int bit = run(step, person, from, std::min(left, step.least_piece));
    const int stop = people_[static_cast<std::size_t>(person)].run_end(bit, fit(step));
    const int length = std::min(left, stop - bit);
    pieces.push_back({.bit = bit, .length = length});
    left -= length;
    from = bit + length;
  }
  return net_.frame.slot(pieces.back().bit + pieces.back().length - 1) + 1;
}

Placed SerialPlan::earliest_split(int index, Slot from, int passed) {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  std::vector<Piece>& best = pieces_[static_cast<std::size_t>(index)];
  while (true) {
    Placed found{.start = 0, .end = never, .free_from = 0, .person = -1};
    for (int p = 0; p < static_cast<int>(people_.size()); ++p) {
      if ((step.people >> p & 1U) == 0) continue;
      std::vector<Piece> pieces;
      const Slot end = split_from(step, p, net_.frame.bit(from), pieces);
      if (end >= found.end) continue;
      found = {.start = net_.frame.slot(pieces.front().bit), .end = end, .free_from = 0, .person = p};
      best = std::move(pieces);
    }
    const Slot free = stations_free(step, found.start, found.end);
    if (free > found.start) {
      from = free;
    } else if (passed > 0) {
      --passed;
      from = found.start + people_[static_cast<std::size_t>(found.person)].run_end(best.front().bit, fit(step)) -
             best.front().bit;
    } else {
      found.free_from = net_.clock.after(found.end, step.wait);
      return found;
    }
  }
}

/// The last of the work that `index` follows too late where it lies, or -1.
int SerialPlan::left_too_long(const Item& item, int index) const {
  int found = -1;
  for (const StepOrder& within : net_.steps[static_cast<std::size_t>(index)].within) {
    const bool in_group = within.before >= item.first_step;
    if (in_group && placed(index).start > net_.clock.after(placed(within.before).end, within.gap))
      found = std::max(found, within.before);
  }
  return found;
}

/// Places a group whole: each step as soon as it can after the one before; when that is past a greatest gap, the one
/// that the gap begins at begins later, and all after it anew. An empty day that fits the group always ends the search.
void SerialPlan::find_group(const Item& item, int passed) {
  std::array<Slot, 64> from{};
  from[0] = could_begin(item.first_step);
  int i = 0;
  while (i < item.steps) {
    const int index = item.first_step + i;
    placed_[static_cast<std::size_t>(index)] = earliest(index, from[static_cast<std::size_t>(i)], i == 0 ? passed : 0);
    const Slot start = placed(index).start;
    if (const int late = left_too_long(item, index); late >= 0) {
      const int spare_hour = 60 / minutes_a_slot;  // a clock change may lie between
      const Placed& before = placed(late);
      const auto& within = net_.steps[static_cast<std::size_t>(index)].within;
      const int gap = std::ranges::find(within, late, &StepOrder::before)->gap;
      i = late - item.first_step;
      from[static_cast<std::size_t>(i)] =
          std::max(before.start + 1, start - gap - (before.end - before.start) - spare_hour);
      continue;
    }
    if (++i < item.steps) from[static_cast<std::size_t>(i)] = could_begin(index + 1);
  }
}

void SerialPlan::mark(int index) {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  const Placed& here = placed(index);
  if (here.person >= 0) {
    WorkCalendar& person = people_[static_cast<std::size_t>(here.person)];
    if (step.splittable) {
      for (const Piece& piece : pieces_[static_cast<std::size_t>(index)])
        changes_ += person.take(net_.frame, piece.bit, piece.length, step.instrument);
    } else {
      changes_ += person.take(net_.frame, net_.frame.bit(here.start), step.hands, step.instrument);
    }
  }
  for (const StationHold& held : step.stations) {
    const auto [from, until] = keeps(index, held);
    stations_[static_cast<std::size_t>(held.station)].take(from, until);
  }
}

void SerialPlan::unmark(int index) {
  const Step& step = net_.steps[static_cast<std::size_t>(index)];
  const Placed& here = placed(index);
  if (here.person >= 0) {
    WorkCalendar& person = people_[static_cast<std::size_t>(here.person)];
    if (step.splittable) {
      for (const Piece& piece : pieces_[static_cast<std::size_t>(index)]) person.give_back(net_.frame, piece.bit, piece.length);
    } else {
      person.give_back(net_.frame, net_.frame.bit(here.start), step.hands);
    }
  }
  for (const StationHold& held : step.stations) {
    const auto [from, until] = keeps(index, held);
    stations_[static_cast<std::size_t>(held.station)].give_back(from, until);
  }
}

/// Takes the places found for the job's next item.
void SerialPlan::enter(int number) {
  const auto j = static_cast<std::size_t>(number);
  const BenchJob& job = net_.jobs[j];
  const Item& item = job.items[static_cast<std::size_t>(next_item_[j]++)];
  stack_.push_back({.job = number,
                    .ready = ready_[j],
                    .jobs_cost = jobs_cost_,
                    .job_least = least_cost_[j],
                    .missed = missed_,
                    .changes = changes_});
  Slot least_ready = ready_[j];
  for (int s = item.first_step; s < item.first_step + item.steps; ++s) {
    mark(s);
    const Slot free = placed(s).free_from;
    ready_[j] = std::max(ready_[j], free);
    least_ready = std::max(least_ready, free + rest_[static_cast<std::size_t>(s)]);
    const Step& step = net_.steps[static_cast<std::size_t>(s)];
    if (step.ends_by < never) missed_ += missed(s);
    if (step.begin_by < never) missed_ += overdue(s);
  }
  const bool whole = next_item_[j] == static_cast<int>(job.items.size());
  const double least = whole ? job_cost(j, ready_[j]) : std::max(least_cost_[j], least_job_cost(j, least_ready));
  jobs_cost_ += least - least_cost_[j];
  least_cost_[j] = least;
}

void SerialPlan::place(int number, int passed) {
  const auto j = static_cast<std::size_t>(number);
  const Item& item = net_.jobs[j].items[static_cast<std::size_t>(next_item_[j])];
  if (item.steps > 1) {
    find_group(item, passed);
  } else {
    placed_[static_cast<std::size_t>(item.first_step)] =
        earliest(item.first_step, could_begin(item.first_step), passed);
  }
  enter(number);
}

void SerialPlan::replay(int number) {
  const auto j = static_cast<std::size_t>(number);
  const Item& item = net_.jobs[j].items[static_cast<std::size_t>(next_item_[j])];
  for (auto s = static_cast<std::size_t>(item.first_step); s < static_cast<std::size_t>(item.first_step + item.steps);
       ++s) {
    placed_[s] = kept_[s];
    if (net_.steps[s].splittable) pieces_[s] = kept_pieces_[s];
  }
  enter(number);
}

void SerialPlan::keep_from(std::size_t first) {
  std::vector<int>& next = next_to_keep_;  // a member only to spare the allocation
  next = next_item_;
  for (std::size_t i = stack_.size(); i > first; --i) {
    const auto j = static_cast<std::size_t>(stack_[i - 1].job);
    const Item& item = net_.jobs[j].items[static_cast<std::size_t>(--next[j])];
    for (auto s = static_cast<std::size_t>(item.first_step); s < static_cast<std::size_t>(item.first_step + item.steps);
         ++s) {
      kept_[s] = placed_[s];
      if (net_.steps[s].splittable) kept_pieces_[s] = pieces_[s];
    }
  }
}

void SerialPlan::take_back_to(std::size_t count) {
  while (stack_.size() > count) {
    const Entry entry = stack_.back();
    stack_.pop_back();
    const auto j = static_cast<std::size_t>(entry.job);
    const Item& item = net_.jobs[j].items[static_cast<std::size_t>(--next_item_[j])];
    for (int s = item.first_step + item.steps - 1; s >= item.first_step; --s) unmark(s);
    ready_[j] = entry.ready;
    jobs_cost_ = entry.jobs_cost;
    least_cost_[j] = entry.job_least;
    missed_ = entry.missed;
    changes_ = entry.changes;
  }
}

}  // namespace tailblock

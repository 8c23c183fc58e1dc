#include "plan_checker.h"

#include <algorithm>
#include <map>

namespace tailblock::testing {
namespace {

using Faults = std::vector<std::string>;

/// Minutes of the wall clock since midnight before the plan's first day.
long wall(const BenchRequest& request, const Moment& moment) {
  return (moment.day - request.now.day).count() * 1440L + moment.minute;
}

/// True minutes: what a stop watch started at that midnight shows.
long elapsed(const BenchRequest& request, const Moment& moment) {
  long minutes = wall(request, moment);
  long shift = 0;
  for (const ClockChange& change : request.clock_changes) {
    if (wall(request, moment) >= wall(request, change.at)) shift += change.forward_minutes;
  }
  return minutes - shift;
}

long in_fives(long minutes) { return (minutes + 4) / 5 * 5; }

struct Looked {
  const BenchRequest& request;
  std::map<std::pair<std::string, std::string>, const PlannedOperation*> by_name;
  Faults faults;
  void say(const PlannedOperation& operation, const std::string& what) {
    faults.push_back(operation.operation + " of " + operation.instrument + ": " + what);
  }
};

bool at_work(const BenchPerson& person, const Moment& moment) {
  for (const DayOff& off : person.days_off) {
    if (off.day == moment.day) return false;
  }
  const unsigned weekday = std::chrono::weekday(moment.day).iso_encoding();
  return std::ranges::any_of(person.hours, [&](const ShopHours& hours) {
    return static_cast<unsigned>(hours.weekday) == weekday && hours.from_minute <= moment.minute &&
           moment.minute < hours.to_minute;
  });
}

Moment at_minute(const BenchRequest& request, long minute) {
  const long day = minute >= 0 ? minute / 1440 : -((1439 - minute) / 1440);
  return {.day = request.now.day + std::chrono::days(day), .minute = static_cast<int>(minute - day * 1440)};
}

void check_people(Looked& looked) {
  const BenchRequest& request = looked.request;
  for (const BenchPerson& person : request.people) {
    std::map<long, const PlannedOperation*> busy;
    for (const auto& [name, operation] : looked.by_name) {
      if (operation->person != person.name) continue;
      for (const WorkPiece& piece : operation->pieces) {
        for (long minute = wall(request, piece.from); minute < wall(request, piece.until); minute += 5) {
          if (!at_work(person, at_minute(request, minute))) looked.say(*operation, "outside hours");
          if (minute < wall(request, request.now)) looked.say(*operation, "in the past");
          if (!busy.emplace(minute, operation).second)
            looked.say(*operation, "hands are on " + busy[minute]->operation + " of " + busy[minute]->instrument);
        }
      }
    }
  }
}

void check_stations(Looked& looked) {
  const BenchRequest& request = looked.request;
  for (const Station& station : request.stations) {
    std::map<long, int> used, used_by_facts;
    for (const BenchInstrument& instrument : request.instruments) {
      for (const Operation& asked : instrument.operations) {
        const auto held = std::ranges::find(asked.stations, station.name, &HeldStation::name);
        if (held == asked.stations.end()) continue;
        const PlannedOperation& operation = *looked.by_name.at({instrument.name, asked.name});
        long from = elapsed(request, held->hands_on ? operation.starts : operation.hands_on_ends);
        long until = elapsed(request, operation.hands_on_ends) + in_fives(held->wait_minutes);
        if (asked.state == WorkState::waiting) {
          from = elapsed(request, request.now);
          until = held->wait_minutes == 0 ? from
                                          : elapsed(request, *asked.wait_ends) -
                                                (in_fives(asked.wait_minutes) - in_fives(held->wait_minutes));
        }
        const bool fact = asked.state != WorkState::to_do;
        for (long minute = from; minute < until; minute += 5) {
          ++used[minute];
          if (fact) ++used_by_facts[minute];
        }
      }
    }
    for (const auto& [minute, count] : used) {
      if (count > std::max(station.count, used_by_facts[minute])) {
        looked.faults.push_back(station.name + " holds " + std::to_string(count) + " at minute " +
                                std::to_string(minute));
        break;
      }
    }
  }
}

void check_work(Looked& looked, const Operation& asked, const PlannedOperation& operation) {
  const BenchRequest& request = looked.request;
  long worked = 0;
  for (const WorkPiece& piece : operation.pieces) worked += wall(request, piece.until) - wall(request, piece.from);
  const long wanted = asked.state == WorkState::waiting ? 0
                      : asked.state == WorkState::at_work
                          ? in_fives(asked.minutes_left.value_or(asked.hands_on_minutes))
                          : in_fives(asked.hands_on_minutes);
  if (worked != wanted) looked.say(operation, "works " + std::to_string(worked) + " of " + std::to_string(wanted));
  if (!asked.splittable && asked.state == WorkState::to_do && operation.pieces.size() > 1)
    looked.say(operation, "broken up");
  if (asked.state == WorkState::waiting) {
    if (operation.wait_ends != std::max(*asked.wait_ends, request.now))
      looked.say(operation, "its running wait was moved");
  } else if (elapsed(request, operation.wait_ends) - elapsed(request, operation.hands_on_ends) !=
             in_fives(asked.wait_minutes)) {
    looked.say(operation, "waits " + std::to_string(elapsed(request, operation.wait_ends) -
                                                    elapsed(request, operation.hands_on_ends)));
  }
  if (asked.pinned && asked.state == WorkState::to_do && operation.starts != *asked.pinned)
    looked.say(operation, "is not where it is pinned");
  if (!asked.person.empty() && wanted > 0 && operation.person != asked.person)
    looked.say(operation, "not by " + asked.person);
  const bool stays_with_whom_it_is = asked.state == WorkState::at_work && !asked.person.empty();
  if (!asked.skill.empty() && wanted > 0 && !stays_with_whom_it_is) {
    const auto person = std::ranges::find(request.people, operation.person, &BenchPerson::name);
    if (person == request.people.end() || std::ranges::count(person->leaves_to_others, asked.skill) > 0)
      looked.say(operation, "by someone who leaves " + asked.skill + " to others");
  }
  for (const UnfitAir& air : request.unfit_air) {
    if (air.work != asked.air_work || asked.air_work.empty()) continue;
    for (const WorkPiece& piece : operation.pieces) {
      if (piece.from < air.until && air.from < piece.until) looked.say(operation, "in unfit air");
    }
  }
}

void check_order(Looked& looked, const BenchInstrument& instrument) {
  const BenchRequest& request = looked.request;
  const PlannedOperation* before = nullptr;
  const Operation* asked_before = nullptr;
  for (const Operation& asked : instrument.operations) {
    const PlannedOperation& operation = *looked.by_name.at({instrument.name, asked.name});
    const long start = elapsed(request, operation.starts);
    if (asked.state == WorkState::to_do && operation.starts < instrument.arrives)
      looked.say(operation, "before it arrives");
    if (asked.state == WorkState::to_do && !asked.pinned && asked.not_before && operation.starts < *asked.not_before)
      looked.say(operation, "before what it waits for is there");
    const auto follows = [&](const PlannedOperation& earlier) {
      if (asked.state != WorkState::to_do) return;
      if (start < elapsed(request, earlier.wait_ends)) looked.say(operation, "before the wait of " + earlier.operation);
      if (start < elapsed(request, earlier.hands_on_ends) + in_fives(asked.least_gap_minutes))
        looked.say(operation, "too soon after " + earlier.operation);
    };
    for (const std::string& name : asked.after) follows(*looked.by_name.at({instrument.name, name}));
    if (asked.beside) continue;
    if (before != nullptr) follows(*before);
    const bool tied = before != nullptr && asked.greatest_gap_minutes && asked_before->state == WorkState::to_do;
    if (tied && start > elapsed(request, before->hands_on_ends) + *asked.greatest_gap_minutes)
      looked.say(operation, "too late after " + before->operation);
    for (const GreatestGap& gap : asked.greatest_gaps) {
      const auto from = std::ranges::find(instrument.operations, gap.from, &Operation::name);
      const PlannedOperation& earlier = *looked.by_name.at({instrument.name, gap.from});
      if (from->state == WorkState::to_do && !from->pinned &&
          start > elapsed(request, earlier.hands_on_ends) + gap.minutes)
        looked.say(operation, "too late after " + gap.from);
    }
    before = &operation;
    asked_before = &asked;
  }
}

}  // namespace

std::vector<std::string> faults_of(const BenchRequest& request, const BenchResult& result) {
  Looked looked{.request = request, .by_name = {}, .faults = {}};
  std::size_t asked_for = 0;
  for (const PlannedOperation& operation : result.operations) {
    if (!looked.by_name.emplace(std::pair(operation.instrument, operation.operation), &operation).second)
      looked.say(operation, "planned twice");
  }
  for (const BenchInstrument& instrument : request.instruments) {
    asked_for += instrument.operations.size();
    for (const Operation& asked : instrument.operations) {
      const auto found = looked.by_name.find({instrument.name, asked.name});
      if (found == looked.by_name.end()) return {asked.name + " of " + instrument.name + " is not planned"};
      check_work(looked, asked, *found->second);
    }
    check_order(looked, instrument);
  }
  if (result.operations.size() != asked_for) looked.faults.emplace_back("more is planned than was asked for");
  check_people(looked);
  check_stations(looked);
  return looked.faults;
}

double cost_again(const BenchRequest& request, const BenchResult& result, const BenchWeights& weights) {
  double cost = 0;
  for (const BenchInstrument& instrument : request.instruments) {
    for (const PlannedOperation& operation : result.operations) {
      if (operation.instrument != instrument.name) continue;
      const auto asked = std::ranges::find(instrument.operations, operation.operation, &Operation::name);
      if (!asked->begin_by || operation.starts <= *asked->begin_by) continue;
      const long by = wall(request, operation.starts) - wall(request, *asked->begin_by);
      cost += weights.begun_overdue + weights.begun_overdue_day * static_cast<double>(by) / 1440;
    }
    long ready = 0;
    for (const PlannedOperation& operation : result.operations) {
      if (operation.instrument == instrument.name) ready = std::max(ready, wall(request, operation.wait_ends));
    }
    const long from = std::max(wall(request, request.now), in_fives(wall(request, instrument.arrives)));
    cost += weights.shop_day * static_cast<double>(ready - from) / 1440;
    if (instrument.due) {
      const long due = ((*instrument.due - request.now.day).count() + 1) * 1440L;
      cost += weights.late_day * instrument.weight * static_cast<double>(std::max(0L, ready - due)) / 1440;
    }
    if (instrument.promised) {
      const long later = (ready - 1) / 1440 - (*instrument.promised - request.now.day).count();
      const long promise_ends = ((*instrument.promised - request.now.day).count() + 1) * 1440;
      cost += later > 0 ? weights.promise_later + weights.promise_later_day * static_cast<double>(later)
                        : weights.promise_earlier_day * static_cast<double>(promise_ends - ready) / 1440;
    }
  }
  for (const BenchPerson& person : request.people) {
    std::map<long, std::string> by_start;
    for (const PlannedOperation& operation : result.operations) {
      if (operation.person != person.name) continue;
      for (const WorkPiece& piece : operation.pieces) by_start[wall(request, piece.from)] = operation.instrument;
    }
    const std::pair<const long, std::string>* before = nullptr;
    for (const auto& piece : by_start) {
      if (before != nullptr && before->first / 1440 == piece.first / 1440 && before->second != piece.second)
        cost += weights.change_of_instrument;
      before = &piece;
    }
  }
  return cost;
}

}  // namespace tailblock::testing

#include "bench/network.h"

#include <algorithm>
#include <map>

#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

std::string item_path(std::string_view list, std::size_t i) {
  return std::string(list) + "[" + std::to_string(i) + "]";
}

/// Names to indices; a name that comes twice or is empty is refused.
template <class T>
std::map<std::string_view, int> indices(std::string_view list, const std::vector<T>& items) {
  std::map<std::string_view, int> found;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].name.empty()) throw Refused(item_path(list, i) + ".name: is empty");
    if (!found.emplace(items[i].name, static_cast<int>(i)).second) {
      throw Refused(item_path(list, i) + ".name: " + quoted_text(items[i].name) + " comes twice");
    }
  }
  return found;
}

/// Reads one request into a network; the members are what is looked up while reading.
class Reader {
 public:
  explicit Reader(const BenchRequest& request)
      : request_(request),
        people_(indices("people", request.people)),
        stations_(indices("stations", request.stations)),
        instruments_(indices("instruments", request.instruments)) {}

  BenchNetwork network() {
    net_.clock = ShopClock(request_.now.day, request_.clock_changes);
    net_.now = net_.clock.slot(request_.now);
    read_people();
    for (const Station& station : request_.stations) net_.station_counts.push_back(station.count);
    read_air();
    for (std::size_t i = 0; i < request_.instruments.size(); ++i) read_instrument(i);
    return std::move(net_);
  }

 private:
  void read_people() {
    Slot opens = slots_a_day, closes = 0;
    for (std::size_t p = 0; p < request_.people.size(); ++p) {
      const BenchPerson& person = request_.people[p];
      int longest = 0;
      for (std::size_t h = 0; h < person.hours.size(); ++h) {
        const ShopHours& hours = person.hours[h];
        if (!(hours.from_minute + minutes_a_slot <= hours.to_minute)) {
          throw Refused(item_path("people", p) + "." + item_path("hours", h) +
                        ".to_minute: " + std::to_string(hours.to_minute) + " minutes is not after from_minute, " +
                        std::to_string(hours.from_minute));
        }
        const Slot from = slots_for(hours.from_minute), to = hours.to_minute / minutes_a_slot;
        opens = std::min(opens, from);
        closes = std::max(closes, to);
        longest = std::max(longest, to - from);
      }
      longest_.push_back(longest);
      net_.hours.push_back(person.hours);
      std::vector<int> off;
      for (const DayOff& day : person.days_off) off.push_back(days_between(net_.clock.first_day(), day.day));
      std::ranges::sort(off);
      net_.days_off.push_back(std::move(off));
    }
    net_.frame = DayFrame(opens, closes);
  }

  void read_air() {
    for (std::size_t i = 0; i < request_.unfit_air.size(); ++i) {
      const UnfitAir& air = request_.unfit_air[i];
      if (!(air.from < air.until)) {
        throw Refused(item_path("unfit_air", i) + ".until: is not after from");
      }
      const int sort = air_sort(air.work);
      net_.unfit[static_cast<std::size_t>(sort)].push_back(
          {.from = net_.clock.slot(air.from), .until = net_.clock.slot(air.until)});
    }
  }

  int air_sort(const std::string& work) {
    const auto [place, fresh] = airs_.emplace(work, static_cast<int>(airs_.size()));
    if (fresh) net_.unfit.emplace_back();
    return place->second;
  }

  void read_instrument(std::size_t i) {
    const BenchInstrument& instrument = request_.instruments[i];
    BenchJob job;
    job.arrives = std::max(net_.now, net_.clock.slot(instrument.arrives));
    job.weight = instrument.weight;
    if (instrument.due) job.due_end = (days_between(net_.clock.first_day(), *instrument.due) + 1) * slots_a_day;
    if (instrument.promised) job.promised_day = days_between(net_.clock.first_day(), *instrument.promised);
    job.first_step = static_cast<int>(net_.steps.size());
    job.steps = static_cast<int>(instrument.operations.size());
    before_on_instrument_ = -1;
    tied_ = tied_operations(instrument);
    std::map<std::string_view, int> earlier;
    Slot least = job.arrives;
    for (std::size_t k = 0; k < instrument.operations.size(); ++k) {
      const Operation& operation = instrument.operations[k];
      here_ = item_path("instruments", i) + "." + item_path("operations", k);
      Step step = read_step(operation, earlier);
      step.instrument = static_cast<int>(i);
      step.number = static_cast<int>(k);
      const int index = static_cast<int>(net_.steps.size());
      const int before = before_on_instrument_;
      net_.steps.push_back(std::move(step));
      if (operation.greatest_gap_minutes) require_tie(operation, index, before);
      for (std::size_t g = 0; g < operation.greatest_gaps.size(); ++g) tie_further(operation, g, index, earlier);
      place_in_items(operation, index, job);
      if (!operation.beside) {
        before_on_instrument_ = index;
        if (operation.state == WorkState::to_do) least += net_.steps.back().hands + net_.steps.back().wait;
      }
      if (operation.name.empty()) refuse("name", "is empty");
      if (!earlier.emplace(operation.name, index).second) refuse("name", quoted_text(operation.name) + " comes twice");
    }
    job.least_ready = least;
    for (const FixedStep& fixed : net_.fixed) limit_before_pin(fixed, static_cast<int>(i));
    net_.jobs.push_back(std::move(job));
  }

  Step read_step(const Operation& operation, const std::map<std::string_view, int>& earlier) {
    Step step;
    step.hands = slots_for(operation.hands_on_minutes);
    step.wait = slots_for(operation.wait_minutes);
    step.least_gap = slots_for(operation.least_gap_minutes);
    step.splittable = operation.splittable;
    step.least_piece = slots_for(operation.least_piece_minutes);
    if (operation.not_before) step.not_before = net_.clock.slot(*operation.not_before);
    if (operation.begin_by) step.begin_by = net_.clock.slot(*operation.begin_by);
    for (std::size_t i = 0; i < operation.stations.size(); ++i) read_station(operation, i, step);
    if (!operation.air_work.empty()) step.air = air_sort(operation.air_work);
    find_people(operation, step);
    if (!operation.beside && before_on_instrument_ >= 0) {
      step.after.push_back({.before = before_on_instrument_, .gap = step.least_gap});
    }
    for (const std::string& name : operation.after) {
      const auto before = earlier.find(name);
      if (before == earlier.end())
        refuse("after", quoted_text(name) + " is not an earlier operation of this instrument");
      step.after.push_back({.before = before->second, .gap = step.least_gap});
    }
    return step;
  }

  void read_station(const Operation& operation, std::size_t i, Step& step) {
    const HeldStation& held = operation.stations[i];
    const std::string field = item_path("stations", i);
    const auto station = stations_.find(held.name);
    if (station == stations_.end()) refuse(field + ".name", quoted_text(held.name) + " is not a station of this shop");
    if (std::ranges::find(step.stations, station->second, &StationHold::station) != step.stations.end())
      refuse(field + ".name", quoted_text(held.name) + " comes twice");
    if (held.wait_minutes > operation.wait_minutes) {
      refuse(field + ".wait_minutes", std::to_string(held.wait_minutes) +
                                          " minutes is longer than the operation's own, " +
                                          std::to_string(operation.wait_minutes));
    }
    step.stations.push_back({.station = station->second, .hands = held.hands_on, .wait = slots_for(held.wait_minutes)});
  }

  /// Whether the person is passed over because the work is of a sort that they leave to others: what hands are at stays
  /// with them, and a wait asks for none.
  static bool left_by(const BenchPerson& person, const Operation& operation) {
    const bool begun =
        operation.state == WorkState::waiting || (operation.state == WorkState::at_work && !operation.person.empty());
    return !begun && leaves_to_others(person, operation.skill);
  }

  void find_people(const Operation& operation, Step& step) {
    if (!operation.person.empty() && !people_.contains(operation.person)) {
      refuse("person", quoted_text(operation.person) + " does not work here");
    }
    int longest = 0;
    for (std::size_t p = 0; p < request_.people.size(); ++p) {
      const BenchPerson& person = request_.people[p];
      if (!operation.person.empty() && person.name != operation.person) continue;
      if (left_by(person, operation)) continue;
      const bool whole = operation.splittable || operation.state != WorkState::to_do;
      if (!whole && step.hands > longest_[p]) {
        longest = std::max(longest, longest_[p]);
        continue;
      }
      step.people = static_cast<std::uint8_t>(step.people | 1U << p);
    }
    if (step.people != 0 || step.hands == 0) return;
    if (longest > 0) {
      refuse("hands_on_minutes", std::to_string(operation.hands_on_minutes) +
                                     " minutes unbroken do not fit a day; the "
                                     "longest stretch is " +
                                     std::to_string(longest * minutes_a_slot) + ": split " +
                                     quoted_text(operation.name) + " or let it be splittable");
    }
    if (!operation.skill.empty()) {
      const std::string who = operation.person.empty() ? "everyone" : quoted_text(operation.person);
      refuse("skill", who + " leaves " + quoted_text(operation.skill) + " to others");
    }
    refuse("person", "nobody can do it");
  }

  /// Which operations are placed with the one before them: the ends of greatest gaps, and all that stands between. What
  /// is pinned keeps its own place, and what it follows keeps up with it.
  static std::vector<bool> tied_operations(const BenchInstrument& instrument) {
    std::vector<bool> tied(instrument.operations.size());
    for (std::size_t k = 0; k < tied.size(); ++k) {
      const Operation& operation = instrument.operations[k];
      tied[k] = tied[k] || operation.greatest_gap_minutes;
      if (operation.pinned && operation.state == WorkState::to_do) continue;
      for (const GreatestGap& gap : operation.greatest_gaps) {
        for (std::size_t i = k; i > 0 && instrument.operations[i].name != gap.from; --i) tied[i] = true;
      }
    }
    return tied;
  }

  void place_in_items(const Operation& operation, int index, BenchJob& job) {
    Step& step = net_.steps[static_cast<std::size_t>(index)];
    const bool tied = tied_[static_cast<std::size_t>(step.number)];
    if (operation.state == WorkState::waiting) {
      if (!operation.wait_ends) refuse("wait_ends", "is needed for work that waits");
      leave_the_rest_of_the_wait(step, net_.clock.slot(*operation.wait_ends));
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::waiting});
    } else if (operation.state == WorkState::at_work) {
      if (operation.minutes_left) step.hands = slots_for(*operation.minutes_left);
      step.splittable = step.at_hand = true;
      step.least_piece = 1;
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::at_work});
    } else if (operation.pinned) {
      if (tied) refuse_pin_in_group(operation, index, job);
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::pinned, .at = net_.clock.slot(*operation.pinned)});
    } else if (tied && !net_.fixed.empty() && net_.fixed.back().step == index - 1) {
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::follows});
    } else if (tied && index > job.first_step) {
      ++job.items.back().steps;
    } else {
      job.items.push_back({.first_step = index, .steps = 1});
    }
  }

  void leave_the_rest_of_the_wait(Step& step, Slot ends) const {
    const int left = ends > net_.now ? net_.clock.between(net_.now, ends) : 0;
    for (StationHold& held : step.stations) held.wait = std::max(0, left - (step.wait - held.wait));
    step.hands = 0;
    step.wait = left;
  }

  /// What is placed whole is pinned by its first operation.
  [[noreturn]] void refuse_pin_in_group(const Operation& operation, int index, const BenchJob& job) const {
    const bool begun = job.items.empty() || job.items.back().first_step + job.items.back().steps != index;
    const Step& first = net_.steps[static_cast<std::size_t>(begun ? index - 1 : job.items.back().first_step)];
    const BenchInstrument& instrument = request_.instruments[static_cast<std::size_t>(first.instrument)];
    throw Refused(quoted_text(operation.name) + " of " + quoted_text(instrument.name) +
                  " cannot be pinned by itself, since it must follow " +
                  quoted_text(instrument.operations[static_cast<std::size_t>(first.number)].name) +
                  " closely: pin that one");
  }

  /// As asked for: work at hand is gone on with in pieces and yet ties what follows it.
  [[nodiscard]] bool may_be_split(int index) const {
    const Step& step = net_.steps[static_cast<std::size_t>(index)];
    const BenchInstrument& instrument = request_.instruments[static_cast<std::size_t>(step.instrument)];
    return instrument.operations[static_cast<std::size_t>(step.number)].splittable;
  }

  void require_tie(const Operation& operation, int index, int before) {
    constexpr auto field = "greatest_gap_minutes";
    if (operation.beside) refuse(field, "work beside the instrument is tied to nothing");
    if (operation.splittable) refuse(field, "work that may be split cannot be tied to the work before it");
    if (before < 0) return;  // the work that it was tied to is done
    if (before != index - 1) refuse(field, "the operation it is tied to must stand right before it");
    if (may_be_split(before)) refuse(field, "it cannot be tied to work that may be split");
    tie(field, *operation.greatest_gap_minutes, index, before);
  }

  void tie_further(const Operation& operation, std::size_t g, int index,
                   const std::map<std::string_view, int>& earlier) {
    const GreatestGap& gap = operation.greatest_gaps[g];
    const std::string field = item_path("greatest_gaps", g);
    const auto before = earlier.find(gap.from);
    if (before == earlier.end())
      refuse(field + ".from", quoted_text(gap.from) + " is not an earlier operation of this instrument");
    if (operation.splittable || may_be_split(before->second))
      refuse(field, "work that may be split is tied to nothing");
    if (operation.pinned && operation.state == WorkState::to_do) {
      Step& from = net_.steps[static_cast<std::size_t>(before->second)];
      const Slot begins = net_.clock.slot(*operation.pinned) - gap.minutes / minutes_a_slot - from.hands;
      from.not_before = std::max(from.not_before, begins);
      return;
    }
    tie(field + ".minutes", gap.minutes, index, before->second);
  }

  void tie(const std::string& field, int minutes, int index, int before) {
    const int least = least_between(net_.steps, before, index);
    if (least < 0) refuse(field, "it does not follow from the operation that it is tied to");
    const int gap = minutes / minutes_a_slot;
    if (gap < least) {
      refuse(field, std::to_string(minutes) + " minutes is less than the " + std::to_string(least * minutes_a_slot) +
                        " that must pass");
    }
    net_.steps[static_cast<std::size_t>(index)].within.push_back({.before = before, .gap = gap});
  }

  /// What comes before a pinned step on its instrument must have ended by then.
  void limit_before_pin(const FixedStep& fixed, int instrument) {
    if (fixed.kind != FixedStep::Kind::pinned) return;
    const Step& pinned = net_.steps[static_cast<std::size_t>(fixed.step)];
    if (pinned.instrument != instrument) return;
    for (const StepOrder& order : pinned.after) {
      Step& before = net_.steps[static_cast<std::size_t>(order.before)];
      before.ends_by = std::min(before.ends_by, fixed.at);
      before.hands_by = std::min(before.hands_by, fixed.at - order.gap);
    }
  }

  [[noreturn]] void refuse(const std::string& field, const std::string& why) const {
    throw Refused(here_ + "." + field + ": " + why);
  }

  const BenchRequest& request_;
  std::map<std::string_view, int> people_, stations_, instruments_;
  std::map<std::string, int> airs_;
  std::vector<int> longest_;
  int before_on_instrument_ = -1;
  std::vector<bool> tied_;
  std::string here_;
  BenchNetwork net_;
};

void set_bits(BitWords& words, const DayFrame& frame, Slot from, Slot until, bool on, int first_day, int days) {
  const int first = first_day * 64 * frame.words_a_day();
  const int low = std::max(frame.bit(std::max(from, 0)), first);
  const int stop = on ? frame.bit(until - 1) + 1 : frame.bit(std::max(until, 0));  // hours end where the night begins
  const int high = std::min(stop, first + days * 64 * frame.words_a_day());
  for (int bit = low; bit < high; ++bit) {
    const std::uint64_t mask = std::uint64_t{1} << (bit & 63);
    std::uint64_t& word = words[static_cast<std::size_t>((bit - first) >> 6)];
    word = on ? word | mask : word & ~mask;
  }
}

}  // namespace

BenchNetwork bench_network(const BenchRequest& request) { return Reader(request).network(); }

int least_between(const std::vector<Step>& steps, int before, int step) {
  std::vector<int> ways(static_cast<std::size_t>(step - before + 1), -1);  // to each step from `before` on
  for (int s = before + 1; s <= step; ++s) {
    int& way = ways[static_cast<std::size_t>(s - before)];
    for (const StepOrder& order : steps[static_cast<std::size_t>(s)].after) {
      if (order.before < before) continue;
      const Step& last = steps[static_cast<std::size_t>(order.before)];
      const int so_far = order.before == before ? 0 : ways[static_cast<std::size_t>(order.before - before)];
      if (so_far < 0) continue;
      way = std::max(way, so_far + (order.before == before ? 0 : last.hands) + std::max(last.wait, order.gap));
    }
  }
  return ways.back();
}

std::string step_name(const BenchRequest& request, const Step& step) {
  const BenchInstrument& instrument = request.instruments[static_cast<std::size_t>(step.instrument)];
  return quoted_text(instrument.operations[static_cast<std::size_t>(step.number)].name) + " of " +
         quoted_text(instrument.name);
}

BitWords free_words(const BenchNetwork& network, std::size_t person, int first_day, int days) {
  BitWords words(static_cast<std::size_t>(days * network.frame.words_a_day()));
  const std::vector<int>& off = network.days_off[person];
  for (int day = first_day; day < first_day + days; ++day) {
    if (std::ranges::binary_search(off, day)) continue;
    const unsigned weekday = std::chrono::weekday(network.clock.first_day() + std::chrono::days(day)).iso_encoding();
    for (const ShopHours& hours : network.hours[person]) {
      if (static_cast<unsigned>(hours.weekday) != weekday) continue;
      const Slot from = std::max(day * slots_a_day + slots_for(hours.from_minute), network.now);
      const Slot to = day * slots_a_day + hours.to_minute / minutes_a_slot;
      if (from < to) set_bits(words, network.frame, from, to, true, first_day, days);
    }
  }
  return words;
}

BitWords fit_words(const BenchNetwork& network, std::size_t air, int first_day, int days) {
  BitWords words(static_cast<std::size_t>(days * network.frame.words_a_day()), ~std::uint64_t{0});
  for (const BenchNetwork::Unfit& unfit : network.unfit[air]) {
    set_bits(words, network.frame, unfit.from, unfit.until, false, first_day, days);
  }
  return words;
}

}  // namespace tailblock

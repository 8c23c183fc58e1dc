#include "bench/network.h"

#include <algorithm>
#include <map>
#include <set>

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
    std::map<std::string_view, int> earlier;
    Slot least = job.arrives;
    for (std::size_t k = 0; k < instrument.operations.size(); ++k) {
      const Operation& operation = instrument.operations[k];
      here_ = item_path("instruments", i) + "." + item_path("operations", k);
      Step step = read_step(operation, earlier);
      step.instrument = static_cast<int>(i);
      step.number = static_cast<int>(k);
      const int index = static_cast<int>(net_.steps.size());
      place_in_items(operation, step, index, job);
      if (!operation.beside) {
        before_on_instrument_ = index;
        if (operation.state == WorkState::to_do) least += step.hands + step.wait;
      }
      if (operation.name.empty()) refuse("name", "is empty");
      if (!earlier.emplace(operation.name, index).second) refuse("name", quoted_text(operation.name) + " comes twice");
      net_.steps.push_back(std::move(step));
    }
    job.least_ready = least;
    for (const FixedStep& fixed : net_.fixed) limit_before_pin(fixed, static_cast<int>(i));
    net_.jobs.push_back(std::move(job));
  }

  Step read_step(const Operation& operation, const std::map<std::string_view, int>& earlier) {
    Step step;
    step.hands = slots_for(operation.hands_on_minutes);
    step.wait = slots_for(operation.wait_minutes);
    step.station_wait = slots_for(operation.station_wait_minutes);
    step.least_gap = slots_for(operation.least_gap_minutes);
    step.splittable = operation.splittable;
    step.least_piece = slots_for(operation.least_piece_minutes);
    if (operation.station_wait_minutes > operation.wait_minutes) {
      refuse("station_wait_minutes", std::to_string(operation.station_wait_minutes) +
                                         " minutes is longer than wait_minutes, " +
                                         std::to_string(operation.wait_minutes));
    }
    std::set<int> kept;
    for (const std::string& name : operation.stations) {
      const auto station = stations_.find(name);
      if (station == stations_.end()) refuse("stations", quoted_text(name) + " is not a station of this shop");
      kept.insert(station->second);
    }
    step.stations.assign(kept.begin(), kept.end());
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

  void find_people(const Operation& operation, Step& step) {
    if (!operation.person.empty() && !people_.contains(operation.person)) {
      refuse("person", quoted_text(operation.person) + " does not work here");
    }
    int longest = 0;
    for (std::size_t p = 0; p < request_.people.size(); ++p) {
      const BenchPerson& person = request_.people[p];
      if (!operation.person.empty() && person.name != operation.person) continue;
      if (!operation.skill.empty() && std::ranges::find(person.skills, operation.skill) == person.skills.end())
        continue;
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
    if (!operation.skill.empty()) refuse("skill", "nobody who may do it has " + quoted_text(operation.skill));
    refuse("person", "nobody can do it");
  }

  void place_in_items(const Operation& operation, Step& step, int index, BenchJob& job) {
    const bool tied = operation.greatest_gap_minutes.has_value();
    if (tied) require_tie(operation, step, index);
    if (operation.state == WorkState::waiting) {
      if (!operation.wait_ends) refuse("wait_ends", "is needed for work that waits");
      net_.fixed.push_back(
          {.step = index, .kind = FixedStep::Kind::waiting, .at = net_.clock.slot(*operation.wait_ends)});
    } else if (operation.state == WorkState::at_work) {
      if (operation.minutes_left) step.hands = slots_for(*operation.minutes_left);
      step.splittable = true;
      step.least_piece = 1;
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::at_work, .at = net_.now});
    } else if (operation.pinned) {
      if (tied) refuse("pinned", "pin the first operation of the group that " + quoted_text(operation.name) + " is in");
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::pinned, .at = net_.clock.slot(*operation.pinned)});
    } else if (tied && !net_.fixed.empty() && net_.fixed.back().step == index - 1) {
      net_.fixed.push_back({.step = index, .kind = FixedStep::Kind::follows, .at = 0});
    } else if (tied && index > job.first_step) {
      ++job.items.back().steps;
    } else {
      job.items.push_back({.first_step = index, .steps = 1});
    }
  }

  void require_tie(const Operation& operation, Step& step, int index) {
    if (operation.beside) refuse("greatest_gap_minutes", "work beside the instrument is tied to nothing");
    if (operation.splittable)
      refuse("greatest_gap_minutes", "work that may be split cannot be tied to the work before it");
    step.greatest_gap = slots_for(*operation.greatest_gap_minutes);
    if (before_on_instrument_ < 0) return;  // the work that it was tied to is done
    const Step& before = net_.steps[static_cast<std::size_t>(before_on_instrument_)];
    if (before_on_instrument_ != index - 1) {
      refuse("greatest_gap_minutes", "the operation it is tied to must stand right before it");
    }
    if (before.splittable) refuse("greatest_gap_minutes", "it cannot be tied to work that may be split");
    const int least = std::max(before.wait, step.least_gap);
    if (step.greatest_gap < least) {
      refuse("greatest_gap_minutes", std::to_string(*operation.greatest_gap_minutes) + " minutes is less than the " +
                                         std::to_string(least * minutes_a_slot) + " that must pass");
    }
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

  [[noreturn]] void refuse(std::string_view field, const std::string& why) const {
    throw Refused(here_ + "." + std::string(field) + ": " + why);
  }

  const BenchRequest& request_;
  std::map<std::string_view, int> people_, stations_, instruments_;
  std::map<std::string, int> airs_;
  std::vector<int> longest_;
  int before_on_instrument_ = -1;
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

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bench/request.h"
#include "bench/shop_clock.h"
#include "bench/work_calendar.h"

namespace tailblock {

/// That a step begins after another of the same instrument: after its wait, and `gap` after its hands-on work.
struct StepOrder {
  int before;
  int gap;
};

/// One place of a station, kept by a step.
struct StationHold {
  int station;
  bool hands;  ///< from the start of the hands-on work; else from its end
  int wait;    ///< and this much of the wait
};

/// One operation, in slots. Of a wait that runs only what is left of it.
struct Step {
  int instrument = 0;
  int number = 0;  ///< of its instrument's operations
  int hands = 0, wait = 0;
  int least_gap = 0;
  std::vector<StepOrder> within;  ///< begins at most `gap` after the hands-on work of another of its group
  std::uint8_t people = 0;        ///< who may do it, a bit each
  bool splittable = false;
  bool at_hand = false;  ///< hands are at it, so it has its places
  int least_piece = 1;
  int air = -1;  ///< index of the sort of work that the air may forbid
  std::vector<StationHold> stations;
  std::vector<StepOrder> after;
  Slot ends_by = never;      ///< it and its wait end by then, since something later is pinned
  Slot hands_by = never;     ///< and its hands-on work by then
  Slot not_before = -never;  ///< nor does it begin before: it waits for something, or a pin must follow soon enough
  Slot begin_by = never;     ///< should begin by then; later costs
};

/// What is placed whole: one step, or a group tied by greatest gaps.
struct Item {
  int first_step = 0;
  int steps = 1;
};

/// A step whose place is not the planner's to choose.
struct FixedStep {
  int step = 0;
  enum class Kind { waiting, at_work, pinned, follows } kind = Kind::pinned;
  Slot at = 0;  ///< where it is pinned
};

/// A fact, which the plan cannot but take as it is; a pin is a wish.
[[nodiscard]] constexpr bool is_begun(const FixedStep& fixed) {
  return fixed.kind == FixedStep::Kind::waiting || fixed.kind == FixedStep::Kind::at_work;
}

struct BenchJob {
  Slot arrives = 0;
  Slot due_end = never;
  double weight = 1;
  std::optional<int> promised_day;
  int first_step = 0, steps = 0;
  std::vector<Item> items;
  Slot least_ready = 0;  ///< not even alone, by the clock day and night, is it ready before
};

/// The bench in slots and indices: what serial generation walks over.
struct BenchNetwork {
  ShopClock clock;
  Slot now = 0;
  DayFrame frame;
  std::vector<Step> steps;
  std::vector<BenchJob> jobs;
  std::vector<FixedStep> fixed;  ///< in the order they are placed
  std::vector<int> station_counts;
  std::vector<std::vector<ShopHours>> hours;  ///< a person
  std::vector<std::vector<int>> days_off;     ///< a person, sorted day numbers
  struct Unfit {
    Slot from, until;
  };
  std::vector<std::vector<Unfit>> unfit;  ///< a sort of work
};

/// Lays the request out for planning.
/// @throws Refused naming the operation that can never be done: unknown names, work longer than any stretch of hours
/// that its people keep, work that everyone leaves to others, hours that end before they begin.
[[nodiscard]] BenchNetwork bench_network(const BenchRequest& request);

/// The least slots from the hands-on work of one step to that of a later one which follows from it; negative: it does
/// not.
[[nodiscard]] int least_between(const std::vector<Step>& steps, int before, int step);

/// `"glue bridge" of "parlour, 1930s"`.
[[nodiscard]] std::string step_name(const BenchRequest& request, const Step& step);

/// The free words of one person for `days` days from `first_day`.
[[nodiscard]] BitWords free_words(const BenchNetwork& network, std::size_t person, int first_day, int days);
/// The words in which the air is fit for one sort of work.
[[nodiscard]] BitWords fit_words(const BenchNetwork& network, std::size_t air, int first_day, int days);

}  // namespace tailblock

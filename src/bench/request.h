#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/fields.h"

namespace tailblock {

/// A moment of the shop's wall clock.
struct Moment {
  Date day{};
  int minute = 0;  ///< since midnight

  friend auto operator<=>(const Moment&, const Moment&) = default;
};

/// `minutes` later by the clock, earlier when negative; summer time aside.
[[nodiscard]] Moment later(const Moment& from, int minutes);
/// `2026-02-20 10:40`.
[[nodiscard]] std::string moment_text(const Moment& moment);
[[nodiscard]] int minutes_between(const Moment& from, const Moment& to);

/// A stretch of one day of the week in which a person works. A break is the gap between two stretches.
struct ShopHours {
  int weekday = 1;  ///< 1 Monday .. 7 Sunday
  int from_minute = 9 * 60;
  int to_minute = 17 * 60 + 30;
};

struct DayOff {
  Date day{};
};

/// Someone whose hands do the work.
struct BenchPerson {
  std::string name;
  std::vector<ShopHours> hours;
  std::vector<DayOff> days_off;
  std::vector<std::string> leaves_to_others;  ///< sorts of work; whatever is not among them they do
};

/// Whether the person leaves that sort of work to others; work of no sort is left by nobody.
[[nodiscard]] bool leaves_to_others(const BenchPerson& person, const std::string& skill);

/// A place or a fixture that work needs: spray place, go-bar deck, clamps, humid cabinet.
struct Station {
  std::string name;
  int count = 1;
};

/// A stretch in which the air forbids one sort of work, from the shop's forecast or log.
struct UnfitAir {
  std::string work;
  Moment from;
  Moment until;
};

/// The moment at which the clocks change, by the clock that ends there. Forward in spring is positive.
struct ClockChange {
  Moment at;
  int forward_minutes = 60;
};

enum class WorkState { to_do, at_work, waiting };

/// How long at most may pass from the hands-on work of an operation further back to this one's.
struct GreatestGap {
  std::string from;  ///< an earlier operation of the instrument
  int minutes = 0;
};

/// That an operation keeps one of a station's places.
struct HeldStation {
  std::string name;
  bool hands_on = true;  ///< through its hands-on work; else only from when hands let go
  int wait_minutes = 0;  ///< and this much of its wait
};

/// One operation on one instrument: hands-on minutes in shop hours, unbroken unless it may be split, then a wait by the
/// clock that keeps the instrument. Operations done are not sent.
struct Operation {
  std::string name;
  std::string kind;  ///< what it is called in the shop's log of durations; the name when empty
  int hands_on_minutes = 30;
  int wait_minutes = 0;
  int least_gap_minutes = 0;                ///< from the end of the hands-on work before it
  std::optional<int> greatest_gap_minutes;  ///< the same; ties it to the one before: both are placed or neither
  std::vector<GreatestGap> greatest_gaps;   ///< the same from further back: all that stands between is tied too
  std::optional<Moment> not_before;         ///< an answer or a part that it waits for is not there sooner
  std::optional<Moment> begin_by;           ///< it should begin by then: what it follows has stood since
  std::vector<HeldStation> stations;
  std::string skill;  ///< the sort of work it is: done by those who do not leave it to others
  std::string person;
  std::string air_work;  ///< the sort of work that the air may forbid
  bool splittable = false;
  int least_piece_minutes = 30;
  bool beside = false;  ///< work off the instrument: it neither waits for the one before it nor holds the next
  std::vector<std::string> after;  ///< further operations of this instrument that must have ended, wait included
  std::optional<Moment> pinned;
  WorkState state = WorkState::to_do;
  std::optional<int> minutes_left;  ///< of the hands-on work, when at work
  std::optional<Moment> wait_ends;  ///< when waiting
};

/// One instrument on the bench, its operations in their order.
struct BenchInstrument {
  std::string name;
  Moment arrives;
  std::optional<Date> due;
  double weight = 1;
  std::optional<Date> promised;
  std::vector<Operation> operations;
};

/// One entry of a kept order: an instrument's next operation or group, and how many places were passed over for it.
struct OrderEntry {
  std::string instrument;
  int places_passed_over = 0;
};

/// Everything the planner is told: who works when, what stands where, what the air forbids, and what is to be done.
struct BenchRequest {
  Moment now;
  std::vector<BenchPerson> people;
  std::vector<Station> stations;
  std::vector<UnfitAir> unfit_air;
  std::vector<ClockChange> clock_changes;
  std::vector<BenchInstrument> instruments;
  std::vector<OrderEntry> kept_order;  ///< of the plan before, to start from
  int plans = 0;                       ///< how many to judge; 0: as many as suit the bench's size
  int seed = 1;
};

void describe(FieldVisitor& visit, Moment& moment);
void describe(FieldVisitor& visit, ShopHours& hours);
void describe(FieldVisitor& visit, DayOff& day);
void describe(FieldVisitor& visit, BenchPerson& person);
void describe(FieldVisitor& visit, Station& station);
void describe(FieldVisitor& visit, UnfitAir& air);
void describe(FieldVisitor& visit, ClockChange& change);
void describe(FieldVisitor& visit, GreatestGap& gap);
void describe(FieldVisitor& visit, HeldStation& held);
void describe(FieldVisitor& visit, Operation& operation);
void describe(FieldVisitor& visit, BenchInstrument& instrument);
void describe(FieldVisitor& visit, OrderEntry& entry);
void describe(FieldVisitor& visit, BenchRequest& request);

}  // namespace tailblock

#include "bench/request.h"

#include <algorithm>
#include <array>

namespace tailblock {
namespace {

constexpr std::array<std::string_view, 3> states{"to_do", "at_work", "waiting"};
constexpr std::size_t name_bytes = 120;
constexpr Range of_day{0, 24 * 60, "minutes"};
constexpr Range of_wait{0, 200 * 24 * 60, "minutes"};

constexpr int day_minutes = 24 * 60;

}  // namespace

Moment later(const Moment& from, int minutes) {
  const int total = from.minute + minutes;
  const int days = total >= 0 ? total / day_minutes : -((day_minutes - 1 - total) / day_minutes);
  return {from.day + std::chrono::days(days), total - days * day_minutes};
}

std::string moment_text(const Moment& moment) {
  const auto two = [](int number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  return iso_date(moment.day) + " " + two(moment.minute / 60) + ":" + two(moment.minute % 60);
}

int minutes_between(const Moment& from, const Moment& to) {
  return static_cast<int>((to.day - from.day).count()) * day_minutes + to.minute - from.minute;
}

bool leaves_to_others(const BenchPerson& person, const std::string& skill) {
  return !skill.empty() && std::ranges::find(person.leaves_to_others, skill) != person.leaves_to_others.end();
}

void describe(FieldVisitor& visit, Moment& moment) {
  visit.date({"day", "day"}, moment.day);
  visit.integer({"minute", "minutes since midnight by the wall clock", Need::has_default}, moment.minute, of_day);
}

void describe(FieldVisitor& visit, ShopHours& hours) {
  visit.integer({"weekday", "1 Monday to 7 Sunday"}, hours.weekday, {1, 7, ""});
  visit.integer({"from_minute", "minutes since midnight"}, hours.from_minute, of_day);
  visit.integer({"to_minute", "minutes since midnight"}, hours.to_minute, of_day);
}

void describe(FieldVisitor& visit, DayOff& day) { visit.date({"day", "a holiday or a day away"}, day.day); }

void describe(FieldVisitor& visit, BenchPerson& person) {
  visit.text({"name", "who"}, person.name, name_bytes);
  list(visit, {"hours", "stretches of the week's days; a break is the gap between two"}, person.hours, {1, 42});
  list(visit, {"days_off", "holidays and days away", Need::has_default}, person.days_off, {0, 400});
  visit.texts({"leaves_to_others", "sorts of work that they do not do", Need::has_default}, person.leaves_to_others,
              name_bytes, {0, 40});
}

void describe(FieldVisitor& visit, Station& station) {
  visit.text({"name", "spray place, go-bar deck, clamps, humid cabinet"}, station.name, name_bytes);
  visit.integer({"count", "how many there are", Need::has_default}, station.count, {1, 50, ""});
}

void describe(FieldVisitor& visit, UnfitAir& air) {
  visit.text({"work", "the sort of work that this air forbids"}, air.work, name_bytes);
  object(visit, {"from", "from when"}, air.from);
  object(visit, {"until", "until when"}, air.until);
}

void describe(FieldVisitor& visit, ClockChange& change) {
  object(visit, {"at", "when the clocks change, by the clock that ends there"}, change.at);
  visit.integer({"forward_minutes", "how far they go forward; back is negative"}, change.forward_minutes,
                {-120, 120, "minutes"});
}

void describe(FieldVisitor& visit, GreatestGap& gap) {
  visit.text({"from", "an earlier operation of this instrument"}, gap.from, name_bytes);
  visit.integer({"minutes", "at most, from its hands-on work"}, gap.minutes, of_wait);
}

void describe(FieldVisitor& visit, HeldStation& held) {
  visit.text({"name", "a place or a fixture of the shop"}, held.name, name_bytes);
  visit.flag({"hands_on", "kept through the hands-on work; else from when hands let go", Need::has_default},
             held.hands_on);
  visit.integer({"wait_minutes", "and this much of the wait", Need::has_default}, held.wait_minutes, of_wait);
}

void describe(FieldVisitor& visit, Operation& operation) {
  visit.text({"name", "what is done"}, operation.name, name_bytes);
  visit.text({"kind", "its name in the log of durations; else its own", Need::has_default}, operation.kind, name_bytes);
  visit.integer({"hands_on_minutes", "work of hands, in shop hours"}, operation.hands_on_minutes, {0, 6000, "minutes"});
  visit.integer({"wait_minutes", "then a wait by the clock that keeps the instrument", Need::has_default},
                operation.wait_minutes, of_wait);
  visit.integer({"least_gap_minutes", "at least this long after the hands-on work before it", Need::has_default},
                operation.least_gap_minutes, of_wait);
  maybe(visit, {"greatest_gap_minutes", "and at most: it is then placed together with the one before it"},
        operation.greatest_gap_minutes, [&](const Field& field, int& value) { visit.integer(field, value, of_wait); });
  list(visit, {"greatest_gaps", "the same from further back, with all that stands between", Need::has_default},
       operation.greatest_gaps, {0, 8});
  maybe(visit, {"not_before", "an answer or a part that it waits for is not there sooner"}, operation.not_before,
        [&](const Field& field, Moment& value) { object(visit, field, value); });
  maybe(visit, {"begin_by", "it should begin by then, since what it follows has stood long enough"}, operation.begin_by,
        [&](const Field& field, Moment& value) { object(visit, field, value); });
  list(visit, {"stations", "places and fixtures it keeps", Need::has_default}, operation.stations, {0, 3});
  visit.text({"skill", "the sort of work it is, done by those who do not leave it to others", Need::has_default},
             operation.skill, name_bytes);
  visit.text({"person", "who must do it, or is doing it", Need::has_default}, operation.person, name_bytes);
  visit.text({"air_work", "the sort of work that the air may forbid", Need::has_default}, operation.air_work,
             name_bytes);
  visit.flag({"splittable", "may be broken off and gone on with", Need::has_default}, operation.splittable);
  visit.integer({"least_piece_minutes", "the shortest piece worth taking up", Need::has_default},
                operation.least_piece_minutes, {5, 480, "minutes"});
  visit.flag({"beside", "work off the instrument, such as a blank", Need::has_default}, operation.beside);
  visit.texts({"after", "earlier operations of this instrument that must have ended", Need::has_default},
              operation.after, name_bytes, {0, 20});
  maybe(visit, {"pinned", "starts then and at no other time"}, operation.pinned,
        [&](const Field& field, Moment& value) { object(visit, field, value); });
  choice(visit, {"state", "how far it is", Need::has_default}, operation.state, states);
  maybe(visit, {"minutes_left", "of the hands-on work, when at work"}, operation.minutes_left,
        [&](const Field& field, int& value) {
          visit.integer(field, value, {0, 6000, "minutes"});
        });
  maybe(visit, {"wait_ends", "when the wait that runs will end"}, operation.wait_ends,
        [&](const Field& field, Moment& value) { object(visit, field, value); });
}

void describe(FieldVisitor& visit, BenchInstrument& instrument) {
  visit.text({"name", "which"}, instrument.name, name_bytes);
  object(visit, {"arrives", "when work on it can begin"}, instrument.arrives);
  maybe(visit, {"due", "the day by whose end it is wanted"}, instrument.due,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  visit.number({"weight", "how much its lateness counts", Need::has_default}, instrument.weight, {0, 100, ""});
  maybe(visit, {"promised", "the day promised to its owner"}, instrument.promised,
        [&](const Field& field, Date& value) { visit.date(field, value); });
  list(visit, {"operations", "what is still to be done, in order"}, instrument.operations, {1, 60});
}

void describe(FieldVisitor& visit, OrderEntry& entry) {
  visit.text({"instrument", "whose next work"}, entry.instrument, name_bytes);
  visit.integer({"places_passed_over", "free places left for others", Need::has_default}, entry.places_passed_over,
                {0, 3, ""});
}

void describe(FieldVisitor& visit, BenchRequest& request) {
  object(visit, {"now", "the plan begins here"}, request.now);
  list(visit, {"people", "one or two, whose hands do the work"}, request.people, {1, 4});
  list(visit, {"stations", "places and fixtures", Need::has_default}, request.stations, {0, 40});
  list(visit, {"unfit_air", "when the air forbids what", Need::has_default}, request.unfit_air, {0, 2000});
  list(visit, {"clock_changes", "to and from summer time", Need::has_default}, request.clock_changes, {0, 8});
  list(visit, {"instruments", "on the bench or coming"}, request.instruments, {1, 400});
  list(visit, {"kept_order", "of the plan before, to start from", Need::has_default}, request.kept_order, {0, 24000});
  visit.integer({"plans", "how many plans to judge; 0: as many as suit the bench", Need::has_default}, request.plans,
                {0, 1000000, "plans"});
  visit.integer({"seed", "the same seed gives the same plan", Need::has_default}, request.seed, {0, 1000000, ""});
}

}  // namespace tailblock

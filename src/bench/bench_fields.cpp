#include "bench/bench.h"

namespace tailblock {
namespace {

constexpr std::size_t name_bytes = 120;
constexpr Range costs{-1e12, 1e12, ""};
constexpr Range many{0, 1e7, ""};
constexpr Count operations{0, 24000};

}  // namespace

void describe(FieldVisitor& visit, WorkPiece& piece) {
  object(visit, {"from", "taken up"}, piece.from);
  object(visit, {"until", "laid down"}, piece.until);
}

void describe(FieldVisitor& visit, PlannedOperation& operation) {
  visit.text({"instrument", "on which"}, operation.instrument, name_bytes);
  visit.text({"operation", "what"}, operation.operation, name_bytes);
  visit.text({"person", "whose hands; empty for a wait alone"}, operation.person, name_bytes);
  object(visit, {"starts", "hands on"}, operation.starts);
  object(visit, {"hands_on_ends", "hands off; the wait begins"}, operation.hands_on_ends);
  object(visit, {"wait_ends", "the instrument is free again"}, operation.wait_ends);
  list(visit, {"pieces", "the stretches of hands-on work"}, operation.pieces, {0, 1200});
}

void describe(FieldVisitor& visit, PlannedInstrument& instrument) {
  visit.text({"name", "which"}, instrument.name, name_bytes);
  object(visit, {"ready", "its last wait has ended"}, instrument.ready);
  visit.number({"days_late", "past the end of the day it is due"}, instrument.days_late, {0, 1e5, "days"});
  visit.number({"days_from_now", "until it is ready, from now or from its coming"}, instrument.days_from_now,
               {0, 1e5, "days"});
  visit.integer({"promise_days_later", "than promised; negative is before"}, instrument.promise_days_later,
                {-100000, 100000, "days"});
  visit.text({"why", "what holds it, when it is late or its promise moves later"}, instrument.why, 600);
}

void describe(FieldVisitor& visit, BenchCost& cost) {
  visit.number({"late", "days late"}, cost.late, costs);
  visit.number({"in_shop", "days in the shop"}, cost.in_shop, costs);
  visit.number({"changes", "changes of instrument within a day"}, cost.changes, costs);
  visit.number({"promises", "promises moved"}, cost.promises, costs);
  visit.number({"overdue", "work begun after what it follows has stood too long"}, cost.overdue, costs);
  visit.number({"total", "all five"}, cost.total, costs);
  visit.number({"first_come", "of first come, first served with its gaps filled"}, cost.first_come, costs);
  visit.number({"best_rule", "of the best order that needs no search"}, cost.best_rule, costs);
}

void describe(FieldVisitor& visit, BenchResult& result) {
  list(visit, {"next", "each person's next work"}, result.next, {0, 4});
  list(visit, {"operations", "all of them, by start"}, result.operations, operations);
  list(visit, {"instruments", "as asked"}, result.instruments, {1, 400});
  visit.texts({"moved_promises", "a sentence for each promise that moves later"}, result.moved_promises, 800, {0, 400});
  visit.texts({"overdue", "a sentence for each work begun after what it follows has stood too long"}, result.overdue,
              800, {0, 24000});
  visit.texts({"overfull", "a sentence for each station of which what is begun takes more than the shop has"},
              result.overfull, 24000, {0, 40});
  object(visit, {"cost", "by the shop's weights"}, result.cost);
  list(visit, {"order", "to be kept for the next plan"}, result.order, operations);
  visit.integer({"plans", "judged"}, result.plans, many);
  visit.integer({"changes_of_instrument", "within a day, all people"}, result.changes_of_instrument, many);
  visit.text({"verdict", "one sentence"}, result.verdict, 400);
}

}  // namespace tailblock

#pragma once

#include <string>
#include <vector>

#include "bench/promise.h"
#include "bench/what_fits.h"
#include "book/job_question.h"
#include "book/shop_settings.h"
#include "models/data_tables.h"

namespace tailblock {

/// What an operation of the plan is in the book.
struct BenchWork {
  std::string instrument, operation;  ///< as the plan names them
  RecordId instrument_id = 0, visit_id = 0, job_id = 0;
  std::string operation_id{};  ///< in data/operations.csv
  int which = 1;               ///< of the times that the job does it
  StepState state = StepState::to_do;
  RecordId running_spell = 0;
  std::string running_person{};  ///< whose hands are at it
  double hands_on_minutes = 0, minutes_spent = 0;
  std::string wait_for{};             ///< what its wait is
  std::optional<Moment> wait_ends{};  ///< once its hands-on part is finished
  std::optional<Moment> pinned{};
  std::optional<Moment> begin_by{};  ///< it should, since what it follows has stood long enough
  std::vector<std::string> holds{};  ///< why hands may not take it up yet
  std::string place{}, materials{};  ///< where hands do it, and with what
  std::vector<std::string> adhesives{}, clamps{}, cautions{};
};
void describe(FieldVisitor&, BenchWork&);

/// An instrument in the plan, with what was said of it.
struct OnTheBench {
  std::string instrument;  ///< as the plan names it
  RecordId instrument_id = 0, visit_id = 0;
  std::optional<Date> promised{}, due{};  ///< due: the promised day, or the day wished for
  std::optional<Date> waits_until{};
  double weight = 1;  ///< how much its lateness counts
};
void describe(FieldVisitor&, OnTheBench&);

/// An instrument in the shop that the plan leaves out, and why.
struct NotPlanned {
  RecordId visit_id = 0;
  std::string instrument, why;
  bool could_be_taken = false;  ///< there are jobs that the owner has not refused
};
void describe(FieldVisitor&, NotPlanned&);

/// Spraying that the air of one day forbids.
struct HeldByAir {
  Date day{};
  std::string operation, name;  ///< an id in data/operations.csv, and in words
  double humidity_percent = 0;
  bool forecast = false;
  std::optional<double> least_percent{}, most_percent{};  ///< in which it may be sprayed
};
void describe(FieldVisitor&, HeldByAir&);

/// The bench as the book has it.
struct BenchQuestion {
  BenchRequest request{};  ///< empty of instruments where there is nothing to do
  std::vector<BenchWork> work{};
  std::vector<OnTheBench> instruments{};
  std::vector<NotPlanned> left_out{};
  std::vector<HeldByAir> held_by_air{};
  std::vector<NamedWork> pins_by_age{};  ///< the oldest first
};

/// Everything the planner is told, from the facts in the book: jobs the owner agreed to, their operations still to do
/// or under way, promises, wishes, pins, and the air that spraying asks for. Arrival work of several jobs at one visit
/// is done once and first, finishing work once and last. What waits for the owner's yes is not begun today.
/// @param with_visit a visit whose jobs are planned whatever the owner has said; 0: none.
[[nodiscard]] BenchQuestion bench_question(const Book& book, const ShopSettings& settings, const RepairTables& repair,
                                           const Moment& now, RecordId with_visit = 0);

/// What the shop's finished operations took, against the procedure's figures: all of them, or those that ended before a
/// day.
[[nodiscard]] std::vector<FinishedWork> finished_work(const Book& book, const RepairTables& repair,
                                                      std::optional<Date> before = {});

}  // namespace tailblock

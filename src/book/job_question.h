#pragma once

#include <array>
#include <optional>
#include <vector>

#include "bench/request.h"
#include "book/job_records.h"
#include "repair/procedure.h"

namespace tailblock {

/// How far one operation of a job is.
enum class StepState { to_do, at_work, waiting, done };
inline constexpr std::array<std::string_view, 4> step_state_names{"to_do", "at_work", "waiting", "done"};

/// One operation of a job, as its procedure has it today, and what hands have done of it.
struct JobStep {
  StepShown step{};
  StepState state = StepState::to_do;
  double minutes_spent = 0;
  RecordId running_spell = 0;         ///< hands are at it; 0: they are not
  std::optional<Moment> wait_ends{};  ///< once its hands-on part is finished
};
void describe(FieldVisitor&, JobStep&);

/// Whether the owner has agreed to a job.
enum class OwnerStands { not_asked, asked, yes, no };
inline constexpr std::array<std::string_view, 4> owner_stands_names{"not_asked", "asked", "yes", "no"};

/// A job with its plan worked out.
struct JobPlan {
  JobStory story{};
  ProcedureResult plan{};
  std::vector<JobStep> steps{};
  OwnerStands owner = OwnerStands::not_asked;  ///< of the newest offer
};
void describe(FieldVisitor&, JobPlan&);

/// What the procedure model is asked for a job: the readings up to `today`, the latest answers and amounts, the owner's
/// words, and the arrival work that another job of the same visit has done already.
[[nodiscard]] ProcedureRequest procedure_request(const JobStory& job, const VisitWork& visit,
                                                 const InstrumentStory& story, const RepairTables& tables, Date today);

/// The jobs of a visit, planned. A wait that has run out by `now` is done.
/// @throws Refused as `procedure`.
[[nodiscard]] std::vector<JobPlan> job_plans(const VisitWork& visit, const InstrumentStory& story,
                                             const RepairTables& tables, const Moment& now);

/// `minutes` later by the clock, summer time aside.
[[nodiscard]] Moment later(const Moment& from, int minutes);

}  // namespace tailblock

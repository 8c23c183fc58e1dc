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
  RecordId last_spell = 0;            ///< the newest stretch of work on it; 0: none yet
  std::optional<Moment> wait_ends{};  ///< once its hands-on part is finished
  std::vector<std::string> holds{};   ///< why hands may not take it up now; empty: they may
};
void describe(FieldVisitor&, JobStep&);
/// Among what holds it: the owner has not said yes to it.
[[nodiscard]] bool waits_for_owners_yes(const StepShown& step);

/// Whether the owner has agreed to a job.
enum class OwnerStands { not_asked, asked, yes, no };
inline constexpr std::array<std::string_view, 4> owner_stands_names{"not_asked", "asked", "yes", "no"};

/// How many of something the job's work is reckoned for.
struct AmountTaken {
  std::string amount{};  ///< as data/operations.csv names it
  double count = 1;
  bool said = false;      ///< by a person
  bool measured = false;  ///< at the finding the job is for; neither: what is usual
};
void describe(FieldVisitor&, AmountTaken&);

/// One way that a question may come out, and what follows from it.
struct OutcomeOffered {
  std::string outcome{};
  std::string band{};  ///< of the reading that it is about: "40 to 55 percent"; empty: it is asked
  std::string says{};
  bool stops = false;
};
void describe(FieldVisitor&, OutcomeOffered&);

/// A question of the job that its present answers lead to.
struct QuestionOffered {
  std::string decision{};
  std::vector<OutcomeOffered> outcomes{};
};
void describe(FieldVisitor&, QuestionOffered&);

/// A job with its plan worked out.
struct JobPlan {
  JobStory story{};
  ProcedureResult plan{};
  std::vector<JobStep> steps{};
  std::vector<AmountTaken> amounts{};
  std::vector<QuestionOffered> questions{};
  OwnerStands owner = OwnerStands::not_asked;  ///< of the newest offer
};
void describe(FieldVisitor&, JobPlan&);

/// What the procedure model is asked for a job: the readings up to `today` and those at its finding, the latest answers
/// and amounts, the owner's words, and the arrival work that another job of the same visit has done already.
[[nodiscard]] ProcedureRequest procedure_request(const JobStory& job, const VisitWork& visit,
                                                 const InstrumentStory& story, const RepairTables& tables, Date today);

/// The jobs of a visit, planned. A wait that has run out by `now` is done.
/// @throws Refused as `procedure`.
[[nodiscard]] std::vector<JobPlan> job_plans(const VisitWork& visit, const InstrumentStory& story,
                                             const RepairTables& tables, const Moment& now);

/// Why hands may not take up an operation of a job now, as `job_plans` has it; empty: they may.
/// @throws Refused when the job as it stands has no such operation left.
[[nodiscard]] std::vector<std::string> holds_of(const JobPlan& plan, std::string_view operation);

}  // namespace tailblock

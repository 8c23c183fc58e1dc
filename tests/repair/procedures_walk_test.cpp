#include <gtest/gtest.h>

#include <iostream>
#include <map>
#include <set>

#include "repair/procedure.h"
#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::repository_repairs;

/// Follows every answer of every question that is asked, one after the other, and hands each plan to `look`.
class Walk {
 public:
  Walk(const RepairProcedure& procedure, std::function<void(const ProcedureRequest&, const ProcedureResult&)> look)
      : procedure_(procedure), look_(std::move(look)) {}

  int plans() {
    ProcedureRequest request;
    request.procedure = procedure_.id;
    go(request, 0);
    return plans_;
  }

 private:
  void go(ProcedureRequest request, std::size_t next) {
    const ReadValues none({}, repository_repairs().readings);
    const auto decisions = decided(procedure_, request, none, 1);
    for (const DecisionShown& decision : decisions) {
      if (decision.known == OutcomeKnown::answered) continue;
      for (const std::string& outcome : decision.outcomes) {
        ProcedureRequest more = request;
        more.answers.push_back({decision.decision, outcome});
        go(more, next + 1);
      }
      return;
    }
    ++plans_;
    look_(request, procedure(request, repository_repairs()));
  }

  const RepairProcedure& procedure_;
  std::function<void(const ProcedureRequest&, const ProcedureResult&)> look_;
  int plans_ = 0;
};

std::string told(const ProcedureRequest& request) {
  std::string words = request.procedure;
  for (const GivenAnswer& answer : request.answers) words += " " + answer.decision + "=" + answer.outcome;
  return words;
}

void every_step_has_what_it_needs_before_it(const ProcedureRequest& request, const ProcedureResult& plan) {
  std::vector<std::string> done;
  for (const StepShown& step : plan.steps) {
    const OperationKind& kind = *row_of_id(repository_repairs().operations, step.operation);
    for (const auto& any : kind.needs) {
      const bool met = std::any_of(any.begin(), any.end(), [&](const std::string& id) {
        return counts_as_done(id, repository_repairs().operations, done);
      });
      EXPECT_TRUE(met) << told(request) << ": " << step.operation << " needs " << any.front();
    }
    done.push_back(step.operation);
  }
}

/// `after` is an order only: where the step and some of those it follows are in the plan, one of them comes first.
void what_comes_after_comes_after(const ProcedureRequest& request, const ProcedureResult& plan) {
  const auto first_of = [&](const std::vector<std::string>& any) {
    return std::find_if(plan.steps.begin(), plan.steps.end(), [&](const StepShown& step) {
      return std::find(any.begin(), any.end(), step.operation) != any.end();
    });
  };
  for (auto step = plan.steps.begin(); step != plan.steps.end(); ++step) {
    for (const auto& any : row_of_id(repository_repairs().operations, step->operation)->after) {
      const auto first = first_of(any);
      EXPECT_TRUE(first == plan.steps.end() || first < step)
          << told(request) << ": " << step->operation << " comes before " << first->operation;
    }
  }
}

/// From the end of a step's hands-on work to the start of one of those it must not wait long for: the waits between and
/// the hands-on work between, typical.
void every_gap_can_be_kept(const ProcedureRequest& request, const ProcedureResult& plan) {
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    if (!plan.steps[i].greatest_gap_minutes) continue;
    const auto& to = plan.steps[i].greatest_gap_to;
    double passed = plan.steps[i].wait_minutes.typical;
    for (std::size_t j = i + 1; j < plan.steps.size(); ++j) {
      if (std::find(to.begin(), to.end(), plan.steps[j].operation) != to.end()) {
        EXPECT_LE(passed, *plan.steps[i].greatest_gap_minutes)
            << told(request) << ": " << plan.steps[i].operation << " to " << plan.steps[j].operation;
        break;
      }
      passed += plan.steps[j].hands_on_minutes.typical + plan.steps[j].wait_minutes.typical;
    }
  }
}

void nothing_dangerous_by_default(const ProcedureRequest& request, const ProcedureResult& plan) {
  for (const StepShown& step : plan.steps) {
    const OperationKind& kind = *row_of_id(repository_repairs().operations, step.operation);
    bool never = !kind.offered;
    for (const std::string& id : kind.hazards) never |= row_of_id(repository_repairs().materials.hazards, id)->never;
    EXPECT_FALSE(never && request.answers.empty()) << told(request) << ": " << step.operation;
    if (kind.asks_owner) {
      EXPECT_FALSE(step.gentler.empty()) << step.operation;
    }
  }
}

TEST(Procedures, every_branch_of_every_one_is_sound) {
  int plans = 0;
  std::set<std::string> operations;
  for (const RepairProcedure& one : repository_repairs().procedures) {
    const int its = Walk(one, [&](const ProcedureRequest& request, const ProcedureResult& plan) {
                      EXPECT_TRUE(!plan.steps.empty() || !plan.stopped.empty()) << told(request);
                      EXPECT_TRUE(plan.next_question.empty()) << told(request);
                      every_step_has_what_it_needs_before_it(request, plan);
                      what_comes_after_comes_after(request, plan);
                      every_gap_can_be_kept(request, plan);
                      for (const StepShown& step : plan.steps) operations.insert(step.operation);
                    }).plans();
    EXPECT_GE(its, 1) << one.id;
    plans += its;
  }
  std::cout << plans << " plans, " << operations.size() << " operations reached\n";
  EXPECT_GT(plans, 5000);
}

TEST(Procedures, propose_nothing_dangerous_unasked) {
  for (const RepairProcedure& one : repository_repairs().procedures) {
    ProcedureRequest request;
    request.procedure = one.id;
    nothing_dangerous_by_default(request, procedure(request, repository_repairs()));
  }
}

bool looks_at(const Condition& condition, const std::string& decision) {
  return std::any_of(condition.begin(), condition.end(), [&](const auto& any) {
    return std::any_of(any.begin(), any.end(), [&](const OutcomeIs& is) { return is.decision == decision; });
  });
}

TEST(Procedures, every_question_is_asked_and_every_outcome_that_matters_changes_the_plan) {
  for (const RepairProcedure& one : repository_repairs().procedures) {
    std::set<std::string> asked;
    (void)Walk(one, [&](const ProcedureRequest&, const ProcedureResult& plan) {
      for (const DecisionShown& decision : plan.decisions) asked.insert(decision.decision);
    }).plans();
    EXPECT_EQ(asked.size(), one.decisions.size()) << one.id;
    for (const ProcedureDecision& decision : one.decisions) {
      // an outcome either stops, changes the steps, leads to another question, or says what to mind
      for (const DecisionOutcome& outcome : decision.outcomes) {
        const auto looks = [&](const auto& it) { return looks_at(it.when, decision.id); };
        const bool used = std::any_of(one.steps.begin(), one.steps.end(), looks) ||
                          std::any_of(one.decisions.begin(), one.decisions.end(), looks);
        EXPECT_TRUE(used || outcome.stops || outcome.usual || !outcome.says.empty()) << one.id << " " << decision.id;
      }
    }
  }
}

TEST(Procedures, every_caution_of_the_tables_is_read_at_some_step) {
  std::set<std::string> cautions;
  for (const RepairProcedure& one : repository_repairs().procedures) {
    (void)Walk(one, [&](const ProcedureRequest&, const ProcedureResult& plan) {
      for (const StepShown& step : plan.steps) cautions.insert(step.cautions.begin(), step.cautions.end());
    }).plans();
  }
  // read elsewhere: at operations that stand outside whole procedures, or never used at all
  const std::set<std::string> elsewhere{"turpentine", "ipa", "dcm", "mineral_spirits", "benzyl_alcohol", "epoxy"};
  for (const Hazard& hazard : repository_repairs().materials.hazards) {
    const bool said = cautions.contains(hazard.caution());
    EXPECT_TRUE(said || elsewhere.contains(hazard.id)) << hazard.id;
  }
}

}  // namespace
}  // namespace tailblock

#include "repair/procedure.h"

#include <gtest/gtest.h>

#include <iostream>
#include <set>

#include "repair/wait_in_words.h"
#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::refusal;
using testing::repository_repairs;

ProcedureRequest asking(const std::string& id) {
  ProcedureRequest request;
  request.procedure = id;
  return request;
}
ProcedureResult asked(const ProcedureRequest& request) { return procedure(request, repository_repairs()); }

const StepShown* step(const ProcedureResult& plan, const std::string& id) {
  for (const StepShown& one : plan.steps) {
    if (one.operation == id) return &one;
  }
  return nullptr;
}
const DecisionShown& question(const ProcedureResult& plan, const std::string& id) {
  for (const DecisionShown& one : plan.decisions) {
    if (one.decision == id) return one;
  }
  throw std::runtime_error(id);
}

// ---- questions ----

ProcedureResult crack_of(double width, double sd = 0.03) {
  ProcedureRequest request = asking("top_crack");
  request.readings = {{.measure = "crack_width", .value = width, .sd = sd, .earlier = {}, .earlier_sd = {}}};
  return asked(request);
}

TEST(Procedure, the_width_of_the_crack_decides_glue_or_splint) {
  EXPECT_EQ(question(crack_of(0.05), "width").outcome, "closes");
  EXPECT_EQ(question(crack_of(0.3), "width").outcome, "clamp");
  EXPECT_NE(step(crack_of(0.3), "glue_crack_hide"), nullptr);
  EXPECT_EQ(step(crack_of(0.7), "glue_crack_hide"), nullptr);
  EXPECT_NE(step(crack_of(0.7), "splint_crack"), nullptr);
}

TEST(Procedure, says_how_long_in_clamps_as_a_person_would) {
  EXPECT_EQ(step(crack_of(0.3), "glue_crack_hide")->clamps, std::vector<std::string>{"clamps for 2 h"});
  EXPECT_EQ(wait_in_words(45), "45 min");
  EXPECT_EQ(wait_in_words(10080), "7 days");
}

TEST(Procedure, gives_no_verdict_within_the_repeatability_of_a_limit) {
  EXPECT_EQ(question(crack_of(0.469), "width").known, OutcomeKnown::read);
  EXPECT_EQ(question(crack_of(0.471), "width").known, OutcomeKnown::too_near);
  EXPECT_NEAR(question(crack_of(0.44), "width").margin_repeatability.value(), 2, 1e-9);
  const ProcedureResult near = crack_of(0.49);
  EXPECT_FALSE(near.may_start);
  const auto said = std::find_if(near.holds.begin(), near.holds.end(),
                                 [](const std::string& hold) { return hold.rfind("Too near its limit", 0) == 0; });
  EXPECT_NE(said, near.holds.end());
}

TEST(Procedure, asks_one_question_after_the_other_until_none_is_left) {
  ProcedureRequest request = asking("drop_in_saddle");
  std::set<std::string> asked_for;
  for (int i = 0; i < 20; ++i) {
    const ProcedureResult plan = asked(request);
    if (plan.next_question.empty()) break;
    const DecisionShown& next = plan.next_question.front();
    EXPECT_TRUE(asked_for.insert(next.decision).second) << next.decision;
    request.answers.push_back({next.decision, next.outcome});
  }
  EXPECT_EQ(asked_for.size(), repository_repairs().procedure("drop_in_saddle").decisions.size());
}

TEST(Procedure, a_stop_ends_the_plan_before_the_step_that_waits_for_it) {
  ProcedureRequest request = asking("neck_reset");
  request.answers = {{"moves", "no"}};
  const ProcedureResult plan = asked(request);
  EXPECT_EQ(plan.stopped, "Stop: look for a pin, a bolt or epoxy; refer it or change the method.");
  EXPECT_EQ(plan.steps.back().operation, "steam_neck_off");
  EXPECT_FALSE(plan.may_start);
}

TEST(Procedure, a_stop_on_a_reading_waits_for_its_margin) {
  ProcedureRequest request = asking("bridge_lifted");
  const auto lifted = [&](double depth) {
    request.readings = {{.measure = "bridge_lift_depth", .value = depth, .sd = 0.5, .earlier = {}, .earlier_sd = {}}};
    return asked(request).stopped;
  };
  EXPECT_EQ(lifted(1.0), "Log it and read it again in four weeks; a lift that does not grow may stay.");
  EXPECT_EQ(lifted(1.8), "");
  EXPECT_EQ(lifted(3.0), "");
}

// ---- amounts ----

TEST(Procedure, minutes_grow_with_the_amounts) {
  ProcedureRequest request = asking("top_crack");
  const auto minutes = [&](double cleats) {
    request.amounts = {{"cleats", cleats}};
    return step(asked(request), "make_cleats")->hands_on_minutes.typical;
  };
  EXPECT_NEAR(minutes(4), 20, 1e-9);               // the usual amount
  EXPECT_NEAR(minutes(8) - minutes(4), 12, 1e-9);  // 0.6 of 20 minutes for four more
  EXPECT_NEAR(minutes(0), 8, 1e-9);
}

TEST(Procedure, what_is_on_record_is_not_done_twice) {
  ProcedureRequest request = asking("back_brace");
  const std::size_t all = asked(request).steps.size();
  request.on_record = {"short_intake"};  // counts as record, photographs, surveys, probe, geometry and agreement
  const ProcedureResult plan = asked(request);
  EXPECT_EQ(step(plan, "survey_outside"), nullptr);
  EXPECT_EQ(step(plan, "measure_geometry"), nullptr);
  EXPECT_NE(step(plan, "survey_inside"), nullptr);
  EXPECT_EQ(plan.steps.size(), all - 6);
}

// ---- yes, gate, cautions ----

TEST(Procedure, what_lowers_value_needs_a_yes_by_name) {
  ProcedureRequest request = asking("refinish");
  request.answers = {{"proof", "two"}, {"value", "yes"}};
  request.readings = {{.measure = "body_humidity", .value = 48, .sd = {}, .earlier = {}, .earlier_sd = {}}};
  const OwnerYes all{.operation = "all", .by = "an invented owner", .on = Date(std::chrono::year(2026) / 2 / 1)};
  request.yes = {all};
  EXPECT_FALSE(step(asked(request), "strip_later_finish")->yes_recorded);
  EXPECT_TRUE(step(asked(request), "rub_out")->yes_recorded);
  EXPECT_FALSE(asked(request).may_start);
  for (const char* id : {"strip_later_finish", "scrape_to_wood", "spray_lacquer_coat"}) {
    request.yes.push_back({.operation = id, .by = all.by, .on = all.on});
  }
  EXPECT_TRUE(asked(request).may_start) << asked(request).holds.front();
  EXPECT_EQ(step(asked(request), "strip_later_finish")->gentler, "Clean and polish the later finish and leave it on.");
}

TEST(Procedure, proof_that_a_finish_is_not_original_is_never_assumed) {
  const ProcedureResult plan = asked(asking("refinish"));
  EXPECT_FALSE(plan.may_start);
  EXPECT_EQ(plan.holds.front(), "Not answered: How many independent signs show that the finish is not the first?");
}

TEST(Procedure, the_humidity_gate_holds_gluing_and_an_override_is_written_down) {
  ProcedureRequest request = asking("top_crack");
  const auto at = [&](double humidity) {
    request.readings = {{.measure = "body_humidity", .value = humidity, .sd = 2, .earlier = {}, .earlier_sd = {}}};
    return asked(request);
  };
  EXPECT_TRUE(step(at(36), "glue_crack_hide")->held_by_humidity);
  EXPECT_FALSE(step(at(36), "clean_crack")->held_by_humidity);
  EXPECT_NE(step(at(36), "humidify"), nullptr);
  EXPECT_FALSE(step(at(48), "glue_crack_hide")->held_by_humidity);
  EXPECT_EQ(step(at(48), "humidify"), nullptr);
  EXPECT_EQ(at(41).humidity.state, GateState::near_limit);
  EXPECT_EQ(asked(asking("top_crack")).humidity.state, GateState::not_read);
  request.humidity_override =
      GateOverride{.by = "the repairer", .on = Date(std::chrono::year(2026) / 2 / 3), .why = "a stage tonight"};
  EXPECT_FALSE(step(at(36), "glue_crack_hide")->held_by_humidity);
  EXPECT_EQ(at(36).humidity.overridden, "the repairer on 2026-02-03: a stage tonight");
  EXPECT_EQ(step(at(36), "humidify"), nullptr) << "who goes on against it does not wait for it";
  request.answers = {{.decision = "humidity", .outcome = "dry"}};
  EXPECT_NE(step(at(36), "humidify"), nullptr) << "unless it is said by hand";
}

TEST(Procedure, cautions_stand_at_their_step_and_defer) {
  const auto cautions = [](const char* id, const char* operation) {
    const ProcedureResult plan = asked(asking(id));
    std::string all;
    for (const std::string& one : step(plan, operation)->cautions) all += one + "\n";
    return all;
  };
  const auto said = [](const std::string& text, const char* words) { return text.find(words) != std::string::npos; };
  EXPECT_TRUE(said(cautions("top_crack", "slacken_strings"), "strings at pitch"));
  const std::string spray = cautions("refinish", "spray_lacquer_coat");
  EXPECT_TRUE(said(spray, "OSHA 200 ppm (mean of a working day)")) << spray;
  EXPECT_TRUE(said(spray, "flash point from"));
  EXPECT_TRUE(said(spray, defers_to.data()));
  EXPECT_TRUE(said(cautions("refinish", "strip_later_finish"), "celluloid"));
  EXPECT_FALSE(said(cautions("refinish", "strip_later_finish"), "OSHA 25 ppm"));  // dichloromethane is not planned
}

TEST(Procedure, an_unknown_finish_is_tried_from_the_mildest_solvent_up) {
  ProcedureRequest request = asking("identify_finish");
  std::vector<std::string> order;
  for (const StepShown& one : asked(request).steps) order.push_back(one.operation);
  EXPECT_EQ(order, (std::vector<std::string>{"short_intake", "cover_plastics", "spot_test_naphtha", "spot_test_alcohol",
                                             "spot_test_thinner", "write_report"}));
  request.answers = {{"alcohol", "softens"}};
  EXPECT_EQ(step(asked(request), "spot_test_thinner"), nullptr);
  request.answers = {{"naphtha", "moves"}};
  EXPECT_EQ(step(asked(request), "spot_test_alcohol"), nullptr);
}

std::vector<std::string> tests_of_finish(const ProcedureRequest& request) {
  std::vector<std::string> tests;
  for (const StepShown& one : asked(request).steps) {
    const std::string& id = one.operation;
    if (id.starts_with("spot_test") || id == "cover_plastics" || id == "read_finish_record") tests.push_back(id);
  }
  return tests;
}

/// Repairs that touch a finish with solvent, heat or water, and the answers under which they do.
std::vector<ProcedureRequest> on_a_finish() {
  std::vector<ProcedureRequest> all;
  for (const char* id : {"bridge_lifted", "neck_reset", "finish_touch_up", "refinish", "pickguard", "binding"}) {
    all.push_back(asking(id));
  }
  all.push_back(asking("top_crack"));
  all.back().answers = {{"finish", "yes"}};
  all.push_back(asking("bridge_plate"));
  all.back().answers = {{"replace", "yes"}};
  return all;
}

TEST(Procedure, every_repair_on_an_unknown_finish_tries_the_mildest_solvent_first_and_covers_old_plastics) {
  using Tests = std::vector<std::string>;
  for (ProcedureRequest request : on_a_finish()) {
    SCOPED_TRACE(request.procedure);
    const auto given = request.answers;
    EXPECT_EQ(tests_of_finish(request),
              (Tests{"cover_plastics", "spot_test_naphtha", "spot_test_alcohol", "spot_test_thinner"}));
    EXPECT_NE(step(asked(request), "cover_plastics")->cautions.front().find("no solvent may reach them"),
              std::string::npos);
    request.answers.push_back({"alcohol", "softens"});
    EXPECT_EQ(tests_of_finish(request), (Tests{"cover_plastics", "spot_test_naphtha", "spot_test_alcohol"}));
    request.answers.back() = {"naphtha", "moves"};
    EXPECT_EQ(tests_of_finish(request), (Tests{"cover_plastics", "spot_test_naphtha"}));
    request.answers = given;
    request.found = {{"finish_known", "known"}};
    EXPECT_EQ(tests_of_finish(request), Tests{"read_finish_record"});
    EXPECT_EQ(question(asked(request), "finish_known").known, OutcomeKnown::on_record);
  }
}

TEST(Procedure, what_a_spot_test_told_answers_what_is_asked_later) {
  ProcedureRequest request = asking("finish_touch_up");
  EXPECT_EQ(question(asked(request), "kind").outcome, "unknown");
  request.answers = {{"naphtha", "nothing"}, {"alcohol", "softens"}};
  EXPECT_EQ(question(asked(request), "kind").outcome, "shellac");
  EXPECT_EQ(question(asked(request), "kind").known, OutcomeKnown::on_record);
  EXPECT_NE(step(asked(request), "spot_test_naphtha"), nullptr) << "the tests of this job stay in its plan";
  request.answers.push_back({"kind", "lacquer"});
  EXPECT_EQ(question(asked(request), "kind").outcome, "lacquer") << "a person's answer stands before it";
}

TEST(Procedure, what_is_found_and_not_asked_or_no_outcome_is_passed_over) {
  ProcedureRequest request = asking("nut");
  const std::size_t steps = asked(request).steps.size();
  request.found = {{"finish_known", "known"}, {"slots", "sideways"}};
  EXPECT_EQ(asked(request).steps.size(), steps);
  EXPECT_EQ(question(asked(request), "slots").known, OutcomeKnown::assumed);
}

TEST(Procedure, what_an_answer_settles_is_asked_somewhere) {
  for (const RepairProcedure& one : repository_repairs().procedures) {
    for (const ProcedureDecision& decision : one.decisions) {
      for (const DecisionOutcome& outcome : decision.outcomes) {
        for (const OutcomeIs& is : outcome.settles) {
          const bool asked_for = std::ranges::any_of(repository_repairs().procedures, [&](const auto& other) {
            const ProcedureDecision* there = other.decision(is.decision);
            return there != nullptr &&
                   std::ranges::find(there->outcomes, is.outcome, &DecisionOutcome::outcome) != there->outcomes.end();
          });
          EXPECT_TRUE(asked_for) << one.id << " " << decision.id << ": " << is.decision << "=" << is.outcome;
        }
      }
    }
  }
}

std::vector<std::string> glued_with(const std::string& which) {
  ProcedureRequest request = asking("x_brace");
  request.answers = {{"which", which}};
  std::vector<std::string> steps;
  for (const StepShown& one : asked(request).steps) {
    if (one.operation.starts_with("reglue") || one.operation.starts_with("hand_over")) steps.push_back(one.operation);
  }
  return steps;
}

TEST(Procedure, a_leg_of_the_x_a_bar_and_a_small_brace_have_their_own_figures) {
  using Steps = std::vector<std::string>;
  EXPECT_EQ(glued_with("main"), (Steps{"reglue_x_leg", "hand_over"}));
  EXPECT_EQ(glued_with("bar"), (Steps{"reglue_other_brace", "hand_over"}));
  EXPECT_EQ(glued_with("small"), (Steps{"reglue_other_brace", "hand_over_light"}));
}

TEST(Procedure, the_centre_seam_is_glued_as_a_seam) {
  ProcedureRequest request = asking("top_crack");
  request.answers = {{"seam", "seam"}};
  EXPECT_NE(step(asked(request), "reglue_centre_seam"), nullptr);
  EXPECT_EQ(step(asked(request), "glue_crack_hide"), nullptr);
  request.answers.push_back({"light_force", "no"});
  EXPECT_EQ(step(asked(request), "reglue_centre_seam"), nullptr);
  EXPECT_NE(step(asked(request), "splint_crack"), nullptr);
}

// ---- refusals ----

TEST(Procedure, refuses_in_one_line) {
  const auto of = [](const ProcedureRequest& request) { return refusal([&] { (void)asked(request); }); };
  EXPECT_EQ(of(asking("repaint")).rfind("procedure: \"repaint\" is none of top_crack, back_brace", 0), 0U);
  ProcedureRequest request = asking("nut");
  request.answers = {{"width", "closes"}};
  EXPECT_EQ(of(request), "answers: nut does not ask \"width\"");
  request.answers = {{"slots", "all"}};
  EXPECT_EQ(of(request), "answers: \"all\" is no outcome of slots; there are new, one_low");
  request = asking("nut");
  request.amounts = {{"pegs", 6}};
  EXPECT_EQ(of(request), "amounts: nothing grows with \"pegs\"");
  request = asking("nut");
  request.on_record = {"dusting"};
  EXPECT_EQ(of(request), "on_record: \"dusting\" is not in data/operations.csv");
  request = asking("nut");
  request.readings = {{.measure = "relief", .value = 40, .sd = {}, .earlier = {}, .earlier_sd = {}}};
  EXPECT_EQ(of(request), "relief: 40 mm is outside -1.5..4 mm");
}

// ---- totals ----

/// What a practised hand would book for the common jobs, hours of hands-on work, the survey of the visit on record.
/// Common practice, no source: bounds that a repairer would not laugh at.
struct Booked {
  const char* id;
  double least, most;
};
constexpr Booked booked[] = {
    {"drop_in_saddle", 1.0, 1.5},  {"set_up", 1.0, 2.2},           {"nut", 1.25, 2.75},
    {"through_saddle", 2.0, 3.75}, {"two_saddles", 1.75, 3.0},     {"level_frets_job", 2.5, 4.25},
    {"partial_refret", 2.0, 4.0},  {"full_refret", 6.0, 10.5},     {"top_crack", 2.0, 3.5},
    {"back_brace", 1.25, 2.5},     {"x_brace", 1.75, 3.25},        {"bridge_lifted", 3.0, 4.75},
    {"bridge_plate", 2.0, 4.5},    {"neck_reset", 8.0, 14.0},      {"loose_heel", 5.0, 9.0},
    {"dry_guitar", 0.75, 2.0},     {"finish_touch_up", 2.5, 4.25}, {"refinish", 10.0, 22.0},
    {"pickguard", 1.0, 2.0},       {"pin_holes", 1.5, 3.5},        {"binding", 0.6, 1.5},
    {"tuner_bushings", 0.6, 1.5},  {"identify_finish", 0.3, 1.0}};

TEST(Procedure, totals_are_what_a_practised_hand_would_book) {
  std::set<std::string> checked;
  for (const Booked& one : booked) {
    ProcedureRequest request = asking(one.id);
    request.on_record = {"record_arrival", "photograph_before", "survey_outside",         "survey_inside",
                         "tap_and_probe",  "measure_geometry",  "check_listed_materials", "agree_work"};
    if (std::string(one.id) == "drop_in_saddle") request.on_record.clear();  // a known guitar, its short intake counted
    const ProcedureResult plan = asked(request);
    const Spread hours{plan.hands_on_minutes.low / 60, plan.hands_on_minutes.typical / 60,
                       plan.hands_on_minutes.high / 60};
    std::printf("| %s | %.1f / %.1f / %.1f | %.1f |\n", plan.name.c_str(), hours.low, hours.typical, hours.high,
                plan.wait_minutes / 1440);
    EXPECT_GE(hours.typical, one.least) << one.id;
    EXPECT_LE(hours.typical, one.most) << one.id;
    checked.insert(one.id);
  }
  EXPECT_EQ(checked.size(), repository_repairs().procedures.size());
}

TEST(Procedure, taking_a_guitar_in_and_surveying_all_of_it_is_an_hours_work) {
  for (const RepairProcedure& one : repository_repairs().procedures) {
    double arrival = 0, all = 0;
    for (const StepShown& shown : asked(asking(one.id)).steps) {
      const bool on_finish = shown.operation.starts_with("spot_test") || shown.operation == "cover_plastics";
      if (shown.family == WorkFamily::arrive && !on_finish) arrival += shown.hands_on_minutes.typical;
      all += shown.hands_on_minutes.typical;
    }
    std::printf("%s: arrival %.0f min, all %.1f h\n", one.id.c_str(), arrival, all / 60);
    EXPECT_LE(arrival, 90) << one.id;
    const auto steps = asked(asking(one.id)).steps;
    const bool whole = std::ranges::any_of(steps, [](const StepShown& it) { return it.operation == "record_arrival"; });
    EXPECT_GE(arrival, whole ? 45 : 0) << one.id;
  }
}

}  // namespace
}  // namespace tailblock

#include "book/job_question.h"

#include <gtest/gtest.h>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

const RepairTables& repairs() {
  static std::vector<std::unique_ptr<std::string>> texts;
  static const RepairTables tables = repair_tables([](std::string_view path) -> std::string_view {
    return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
  });
  return tables;
}

constexpr int morning = 9 * 60;

/// A guitar in its range with one repair chosen, on the day of its visit.
struct BookWithRepair : testing::TestBook {
  Date today = day(2025, 8, 20);
  RecordId humidity = book.add(std::vector{reading("body_humidity", 47, 0, "hygrometer")}).front();
  RecordId job = choose("top_crack");

  RecordId choose(const std::string& procedure) { return book.keep(Job{.visit_id = visit, .procedure = procedure}); }
  [[nodiscard]] JobPlan plan(RecordId of, int minute = morning, int days = 0) const {
    for (JobPlan& one : plans(minute, days)) {
      if (one.story.job.id == of) return one;
    }
    throw std::logic_error("no such job");
  }
  [[nodiscard]] std::vector<JobPlan> plans(int minute, int days) const {
    return job_plans(book.visit_work(visit), book.story(instrument), repairs(),
                     {today + std::chrono::days(days), minute});
  }
  RecordId begin(RecordId of, const std::string& operation, int minute) {
    return book.begin_work(
        {.job_id = of, .operation = operation, .person = "Ada", .began_on = today, .began_minute = minute});
  }
  RecordId work(RecordId of, const std::string& operation, int from, int until, bool finished = true) {
    const RecordId spell = begin(of, operation, from);
    book.end_work(spell, {.day = today, .minute = until, .finished = finished});
    return spell;
  }
  RecordId answer(RecordId of, const std::string& decision, const std::string& outcome) {
    return book.add(JobAnswer{.job_id = of, .decision = decision, .outcome = outcome, .day = today, .who = "Ada"});
  }
  RecordId offer(RecordId of, const std::string& net = "100.00") {
    return book.add(JobOffer{.job_id = of,
                             .day = today,
                             .words = "the line",
                             .hours_low = 1,
                             .hours = 2,
                             .hours_high = 3,
                             .net = net,
                             .tax = "0.00",
                             .currency = "EUR"});
  }
  void word(RecordId of, RecordId offer_id, const std::string& operation, OwnerSays says) {
    book.add(OwnerWord{
        .job_id = of, .offer_id = offer_id, .operation = operation, .says = says, .day = today, .who = "A. Player"});
  }
};

const JobStep& step_of(const JobPlan& plan, std::string_view operation, int which = 1) {
  for (const JobStep& step : plan.steps) {
    if (step.step.operation == operation && --which == 0) return step;
  }
  throw std::logic_error("the plan has no " + std::string(operation));
}

bool has_step(const JobPlan& plan, std::string_view operation) {
  return std::ranges::any_of(plan.steps, [&](const JobStep& step) { return step.step.operation == operation; });
}

const DecisionShown& asked_of(const JobPlan& plan, std::string_view decision) {
  for (const DecisionShown& one : plan.plan.decisions) {
    if (one.decision == decision) return one;
  }
  throw std::logic_error("the plan does not ask " + std::string(decision));
}

TEST(JobQuestions, the_brace_that_the_survey_names_is_the_one_that_is_glued) {
  BookWithRepair shop;
  Finding bar{.visit_id = shop.visit,
              .kind = "brace_loose",
              .view = DrawingView::top_inside,
              .shape = FindingShape::line,
              .points = {{mm(318), mm(-40)}, {mm(350), mm(0)}}};
  bar.part = "X leg to bass";
  bar.id = shop.book.add(bar);
  const RecordId job =
      shop.book.keep(Job{.visit_id = shop.visit, .finding_id = bar.id, .procedure = "x_brace"});
  EXPECT_EQ(asked_of(shop.plan(job), "which").outcome, "main");
  EXPECT_EQ(asked_of(shop.plan(job), "which").known, OutcomeKnown::on_record);
  Finding corrected = bar;
  corrected.id = 0;
  corrected.supersedes = bar.id;
  corrected.part = "upper tone bar";
  shop.book.add(corrected);
  EXPECT_EQ(asked_of(shop.plan(job), "which").outcome, "small") << "as the finding was corrected";
  EXPECT_TRUE(has_step(shop.plan(job), "reglue_other_brace"));
  EXPECT_FALSE(has_step(shop.plan(job), "reglue_x_leg"));
  shop.answer(job, "which", "main");
  EXPECT_TRUE(has_step(shop.plan(job), "reglue_x_leg")) << "a person's answer stands before the drawing";
}

TEST(JobQuestions, an_open_centre_seam_is_glued_as_one) {
  BookWithRepair shop;
  const RecordId seam = shop.book.add(Finding{.visit_id = shop.visit,
                                              .kind = "centre_seam_open",
                                              .view = DrawingView::front,
                                              .shape = FindingShape::line,
                                              .points = {{mm(400), mm(0)}, {mm(460), mm(0)}}});
  const RecordId job =
      shop.book.keep(Job{.visit_id = shop.visit, .finding_id = seam, .procedure = "top_crack"});
  EXPECT_TRUE(has_step(shop.plan(job), "reglue_centre_seam"));
  EXPECT_TRUE(has_step(shop.plan(shop.job), "glue_crack_hide")) << "a crack that no finding names";
}

TEST(JobQuestions, a_finish_that_was_tested_is_not_tested_again_now_nor_at_a_later_visit) {
  BookWithRepair shop;
  const RecordId touch_up = shop.choose("finish_touch_up"), binding = shop.choose("binding");
  EXPECT_TRUE(has_step(shop.plan(binding), "spot_test_naphtha"));
  shop.answer(touch_up, "naphtha", "nothing");
  EXPECT_TRUE(has_step(shop.plan(binding), "spot_test_naphtha")) << "naphtha alone tells nothing yet";
  shop.answer(touch_up, "alcohol", "softens");
  EXPECT_FALSE(has_step(shop.plan(binding), "spot_test_naphtha"));
  EXPECT_TRUE(has_step(shop.plan(binding), "read_finish_record"));
  EXPECT_TRUE(has_step(shop.plan(touch_up), "spot_test_alcohol")) << "its own tests stay in its plan";
  EXPECT_EQ(asked_of(shop.plan(touch_up), "kind").outcome, "shellac");

  const RecordId next = shop.book.keep(
      Visit{.instrument_id = shop.instrument, .date = shop.today + std::chrono::days(200), .reason = "a chip"});
  shop.book.keep(Job{.visit_id = next, .procedure = "finish_touch_up"});
  const auto plans = job_plans(shop.book.visit_work(next), shop.book.story(shop.instrument), repairs(),
                               {shop.today + std::chrono::days(200), morning});
  EXPECT_TRUE(has_step(plans.at(0), "read_finish_record"));
  EXPECT_EQ(asked_of(plans.at(0), "kind").outcome, "shellac");
  EXPECT_TRUE(shop.book.visit_work(shop.visit).before.empty()) << "what is said later is not of before";
}

TEST(JobQuestions, a_spot_test_waits_for_the_owners_yes) {
  BookWithRepair shop;
  const RecordId job = shop.choose("identify_finish");
  const auto holds = [&] { return step_of(shop.plan(job), "spot_test_naphtha").holds; };
  ASSERT_EQ(holds().size(), 1U);
  EXPECT_EQ(holds()[0], "It is hard or impossible to undo: it waits for the owner's recorded yes.");
  shop.word(job, shop.offer(job), "", OwnerSays::yes);
  EXPECT_TRUE(holds().empty());
}

TEST(JobSteps, follow_the_taps_from_to_do_to_done) {
  BookWithRepair shop;
  EXPECT_EQ(step_of(shop.plan(shop.job), "clean_crack").state, StepState::to_do);
  const RecordId spell = shop.begin(shop.job, "clean_crack", morning);
  const JobPlan running = shop.plan(shop.job, morning + 12);
  EXPECT_EQ(step_of(running, "clean_crack").state, StepState::at_work);
  EXPECT_EQ(step_of(running, "clean_crack").running_spell, spell);
  EXPECT_EQ(step_of(running, "clean_crack").minutes_spent, 12);
  shop.book.end_work(spell, {.day = shop.today, .minute = morning + 20});
  EXPECT_EQ(step_of(shop.plan(shop.job, morning + 20), "clean_crack").state, StepState::done);
}

TEST(JobSteps, left_for_now_go_on_later_and_their_minutes_add_up) {
  BookWithRepair shop;
  shop.work(shop.job, "clean_crack", morning, morning + 10, false);
  const JobPlan left = shop.plan(shop.job, morning + 60);
  EXPECT_EQ(step_of(left, "clean_crack").state, StepState::at_work);
  EXPECT_EQ(step_of(left, "clean_crack").running_spell, 0);
  EXPECT_EQ(step_of(left, "clean_crack").minutes_spent, 10);
  shop.work(shop.job, "clean_crack", morning + 60, morning + 65);
  const JobPlan done = shop.plan(shop.job, morning + 70);
  EXPECT_EQ(step_of(done, "clean_crack").state, StepState::done);
  EXPECT_EQ(step_of(done, "clean_crack").minutes_spent, 15);
}

TEST(JobSteps, wait_by_the_clock_once_hands_let_go) {
  BookWithRepair shop;
  shop.work(shop.job, "glue_cleats", morning, morning + 30);
  const double wait = step_of(shop.plan(shop.job), "glue_cleats").step.wait_minutes.typical;
  ASSERT_GT(wait, 60);
  const int end = morning + 30 + static_cast<int>(wait);
  const JobStep before = step_of(shop.plan(shop.job, end - 1), "glue_cleats");
  EXPECT_EQ(before.state, StepState::waiting);
  EXPECT_EQ(before.wait_ends, (Moment{shop.today, end}));
  EXPECT_EQ(step_of(shop.plan(shop.job, end), "glue_cleats").state, StepState::done);
}

TEST(JobSteps, of_one_operation_that_comes_twice_are_done_one_after_the_other) {
  BookWithRepair shop;
  for (const RepairProcedure& repair : repairs().procedures) {
    const RecordId job = shop.choose(repair.id);
    const JobPlan plan = shop.plan(job);
    for (const JobStep& step : plan.steps) {
      const std::string& operation = step.step.operation;
      const auto times =
          std::ranges::count_if(plan.steps, [&](const JobStep& one) { return one.step.operation == operation; });
      if (times < 2) continue;
      shop.work(job, operation, morning, morning + 5);
      const JobPlan after = shop.plan(job, morning + 10, 100);
      EXPECT_EQ(step_of(after, operation, 1).state, StepState::done) << operation;
      EXPECT_EQ(step_of(after, operation, 2).state, StepState::to_do) << operation;
      EXPECT_EQ(step_of(after, operation, 2).minutes_spent, 0);
      return;
    }
  }
  FAIL() << "no procedure does one operation twice: this test looks at nothing";
}

TEST(JobSteps, arrival_work_done_for_one_job_is_not_asked_of_another) {
  BookWithRepair shop;
  const RecordId other = shop.choose("back_brace");
  ASSERT_TRUE(has_step(shop.plan(other), "record_arrival"));
  shop.work(shop.job, "record_arrival", morning, morning + 10);
  EXPECT_FALSE(has_step(shop.plan(other), "record_arrival"));
  EXPECT_EQ(step_of(shop.plan(shop.job, morning + 10), "record_arrival").state, StepState::done);
  shop.work(shop.job, "clean_crack", morning + 10, morning + 20);
  EXPECT_TRUE(has_step(shop.plan(shop.job), "clean_crack")) << "only arrival work is shared";
}

TEST(JobSteps, are_put_right_afterwards_and_keep_what_was_tapped) {
  BookWithRepair shop;
  const RecordId spell = shop.work(shop.job, "clean_crack", morning, morning + 300);
  shop.book.add(WorkCorrection{.spell_id = spell, .minutes = 25, .day = shop.today, .who = "Ada"});
  EXPECT_EQ(step_of(shop.plan(shop.job, morning + 400), "clean_crack").minutes_spent, 25);
  EXPECT_EQ(shop.book.work_spell(spell).ended_minute, morning + 300);
  EXPECT_EQ(shop.book.work_done().front().ended_minute, morning + 25);
  shop.book.add(WorkCorrection{.spell_id = spell, .minutes = 25, .finished = false, .day = shop.today, .who = "Ada"});
  EXPECT_EQ(step_of(shop.plan(shop.job, morning + 400), "clean_crack").state, StepState::at_work);
  EXPECT_EQ(shop.book.job_story(shop.job).corrections.size(), 2U);
  shop.book.add(WorkCorrection{.spell_id = spell, .minutes = 330, .day = shop.today, .who = "Ada"});
  const JobStep longer = step_of(shop.plan(shop.job, morning + 300), "clean_crack");
  EXPECT_EQ(longer.minutes_spent, 330);
  EXPECT_EQ(longer.state, StepState::done) << "it began earlier: no work ends in time to come";
  shop.book.add(WorkCorrection{.spell_id = spell, .minutes = 5, .finished = false, .day = shop.today, .who = "Ada"});
  const RecordId running = shop.begin(shop.job, "clean_crack", morning + 500);
  expect_refused([&] { shop.book.add(WorkCorrection{.spell_id = running, .minutes = 5, .day = shop.today}); },
                 "spell_id: hands are still at it; end it first");
}

TEST(JobHolds, the_owners_no_holds_the_work_but_not_the_arrival) {
  BookWithRepair shop;
  EXPECT_TRUE(holds_of(shop.plan(shop.job), "clean_crack").empty());
  shop.word(shop.job, shop.offer(shop.job), "", OwnerSays::no);
  EXPECT_EQ(holds_of(shop.plan(shop.job), "clean_crack"), std::vector<std::string>{"The owner said no to this job."});
  EXPECT_TRUE(holds_of(shop.plan(shop.job), "survey_inside").empty());
  expect_refused([&] { (void)holds_of(shop.plan(shop.job), "level_frets"); },
                 "operation: \"level_frets\" is not left to do in this job as it stands");
}

TEST(JobHolds, a_new_offer_asks_again_and_the_earlier_yes_no_longer_counts) {
  BookWithRepair shop;
  EXPECT_EQ(shop.plan(shop.job).owner, OwnerStands::not_asked);
  const RecordId first = shop.offer(shop.job);
  EXPECT_EQ(shop.plan(shop.job).owner, OwnerStands::asked);
  shop.word(shop.job, first, "", OwnerSays::yes);
  EXPECT_EQ(shop.plan(shop.job).owner, OwnerStands::yes);
  shop.offer(shop.job, "140.00");
  EXPECT_EQ(shop.plan(shop.job).owner, OwnerStands::asked);
}

/// The first operation of a procedure that waits for the owner's yes.
std::optional<std::pair<std::string, StepShown>> that_asks_the_owner(ValueEffect value) {
  for (const RepairProcedure& repair : repairs().procedures) {
    for (const StepShown& step : procedure({.procedure = repair.id,
                                 .readings = {},
                                 .answers = {},
                                 .amounts = {},
                                 .on_record = {},
                                 .yes = {},
                                 .humidity_override = {}},
                                           repairs())
                                     .steps) {
      if (step.asks_owner && step.value == value && step.family == WorkFamily::work) return std::pair(repair.id, step);
    }
  }
  return std::nullopt;
}

TEST(JobHolds, what_cannot_be_undone_waits_for_the_owners_recorded_yes) {
  BookWithRepair shop;
  const auto asked = that_asks_the_owner(ValueEffect::neutral);
  ASSERT_TRUE(asked);
  const RecordId job = shop.choose(asked->first);
  const auto held = [&](std::string_view wanted) {
    const auto holds = holds_of(shop.plan(job), asked->second.operation);
    return std::ranges::find(holds, wanted) != holds.end();
  };
  const std::string line = "It is hard or impossible to undo: it waits for the owner's recorded yes.";
  EXPECT_TRUE(held(line));
  shop.word(job, 0, asked->second.operation, OwnerSays::no);
  EXPECT_TRUE(held("The owner said no to it on 2025-08-20."));
  shop.word(job, 0, asked->second.operation, OwnerSays::yes);
  EXPECT_FALSE(held(line));
  EXPECT_FALSE(held("The owner said no to it on 2025-08-20."));
}

TEST(JobHolds, a_yes_to_the_offer_covers_what_keeps_value_and_a_later_no_to_one_step_holds_it) {
  BookWithRepair shop;
  const auto asked = that_asks_the_owner(ValueEffect::neutral);
  ASSERT_TRUE(asked);
  const RecordId job = shop.choose(asked->first);
  shop.word(job, shop.offer(job), "", OwnerSays::yes);
  EXPECT_TRUE(step_of(shop.plan(job), asked->second.operation).step.yes_recorded);
  shop.word(job, 0, asked->second.operation, OwnerSays::no);
  const auto held = holds_of(shop.plan(job), asked->second.operation);
  EXPECT_NE(std::ranges::find(held, "The owner said no to it on 2025-08-20."), held.end());
}

TEST(JobHolds, out_of_range_the_gate_holds_until_somebody_records_why_not) {
  BookWithRepair shop;
  Reading dry = shop.reading("body_humidity", 30, 0, "hygrometer");
  dry.supersedes = shop.humidity;
  shop.book.add({dry});
  EXPECT_FALSE(holds_of(shop.plan(shop.job), "glue_crack_hide").empty());
  EXPECT_TRUE(holds_of(shop.plan(shop.job), "survey_inside").empty());
  shop.book.add(GateRecord{.visit_id = shop.visit, .who = "Ada", .day = shop.today, .why = "opens by itself in damp"});
  const JobPlan after = shop.plan(shop.job);
  EXPECT_TRUE(holds_of(after, "glue_crack_hide").empty());
  EXPECT_NE(after.plan.humidity.overridden.find("opens by itself in damp"), std::string::npos);
}

TEST(JobAmounts, are_what_is_usual_until_they_are_counted) {
  BookWithRepair shop;
  const auto cleats = [&] {
    const JobPlan plan = shop.plan(shop.job);
    return *std::ranges::find(plan.amounts, "cleats", &AmountTaken::amount);
  };
  EXPECT_FALSE(cleats().said);
  const double usual = step_of(shop.plan(shop.job), "make_cleats").step.hands_on_minutes.typical;
  shop.book.add(JobAmount{.job_id = shop.job, .amount = "cleats", .count = 3 * cleats().count});
  EXPECT_TRUE(cleats().said);
  EXPECT_GT(step_of(shop.plan(shop.job), "make_cleats").step.hands_on_minutes.typical, usual);
}

TEST(JobQuestions, say_what_each_outcome_leads_to_and_a_later_answer_stands) {
  BookWithRepair shop;
  const JobPlan plan = shop.plan(shop.job);
  ASSERT_FALSE(plan.plan.next_question.empty());
  const auto still = std::ranges::find(plan.questions, "still", &QuestionOffered::decision);
  ASSERT_NE(still, plan.questions.end());
  EXPECT_TRUE(std::ranges::find(still->outcomes, "no", &OutcomeOffered::outcome)->stops);
  const auto width = std::ranges::find(plan.questions, "width", &QuestionOffered::decision);
  EXPECT_EQ(width->outcomes.at(1).band, "0.1 to 0.5 mm");
  shop.answer(shop.job, "still", "no");
  const JobPlan stopped = shop.plan(shop.job);
  EXPECT_FALSE(stopped.plan.stopped.empty());
  EXPECT_FALSE(has_step(stopped, "clean_crack"));
  shop.answer(shop.job, "still", "yes");
  EXPECT_TRUE(has_step(shop.plan(shop.job), "clean_crack"));
}

/// The job for a crack drawn 180 mm long.
struct BookWithCrackJob : BookWithRepair {
  Finding crack{.visit_id = visit,
                .kind = "crack",
                .view = DrawingView::front,
                .shape = FindingShape::line,
                .points = {{mm(250), mm(95)}, {mm(340), mm(95)}, {mm(430), mm(95)}}};
  RecordId finding = book.add(crack);
  RecordId crack_job = book.keep(Job{.visit_id = visit, .finding_id = finding, .procedure = "top_crack"});

  [[nodiscard]] AmountTaken taken(const std::string& amount) const {
    for (const AmountTaken& one : plan(crack_job).amounts) {
      if (one.amount == amount) return one;
    }
    throw std::logic_error("no such amount");
  }
  [[nodiscard]] double minutes(const std::string& operation) const {
    for (const JobStep& step : plan(crack_job).steps) {
      if (step.step.operation == operation) return step.step.hands_on_minutes.typical;
    }
    throw std::logic_error("no such step");
  }
};

TEST(JobQuestion, an_amount_is_the_length_drawn_then_the_length_read_then_what_a_person_counted) {
  BookWithCrackJob test;
  EXPECT_EQ(test.taken("crack_mm").count, 180);
  EXPECT_TRUE(test.taken("crack_mm").measured);
  const double drawn = test.minutes("clean_crack");
  Finding read = test.crack;
  read.supersedes = test.finding;
  read.extents = {{.measure = "crack_length", .value = mm(240)}};
  test.book.add(read);
  EXPECT_EQ(test.taken("crack_mm").count, 240);
  EXPECT_GT(test.minutes("clean_crack"), drawn);
  test.book.add(JobAmount{.job_id = test.crack_job, .amount = "crack_mm", .count = 90});
  EXPECT_EQ(test.taken("crack_mm").count, 90);
  EXPECT_TRUE(test.taken("crack_mm").said);
  EXPECT_FALSE(test.taken("crack_mm").measured);
  EXPECT_LT(test.minutes("clean_crack"), drawn);
}

TEST(JobQuestion, an_amount_of_a_job_without_finding_is_what_is_usual) {
  BookWithRepair test;
  for (const AmountTaken& one : test.plan(test.job).amounts) EXPECT_FALSE(one.measured || one.said) << one.amount;
}

}  // namespace
}  // namespace tailblock

#include "book/estimate_question.h"

#include <gtest/gtest.h>

#include "book/bench_question.h"
#include "models/json.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

/// A guitar in its range with a crack to glue now and a saddle that can wait, at 60.00 EUR an hour and 20 percent tax.
struct BookToPrice : testing::TestBook {
  std::vector<std::unique_ptr<std::string>> texts;
  DataTables data = load_data_tables([this](std::string_view path) -> std::string_view {
    return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
  });
  Date today = day(2025, 8, 20);
  RecordId humidity = book.add(std::vector{reading("body_humidity", 47, 0, "hygrometer")}).front();
  RecordId crack = book.keep(Job{.visit_id = visit, .procedure = "top_crack"});
  RecordId saddle = book.keep(Job{.visit_id = visit, .procedure = "drop_in_saddle", .advice = JobAdvice::can_wait});
  ShopSettings settings{.hourly_rate = "60.00", .tax_percent = "20"};

  [[nodiscard]] EstimateAnswer estimate() {
    return estimate_answer(book.visit_work(visit), book.story(instrument), settings,
                           finished_work(book, data.repairs, today), data, today);
  }
  std::vector<JobOffer> offer() {
    const auto offers = offers_to_make(estimate(), book.visit_work(visit), today);
    for (const JobOffer& one : offers) book.add(one);
    return offers;
  }
  void say(RecordId job, OwnerSays says) {
    book.add(OwnerWord{.job_id = job,
                       .offer_id = book.job_story(job).offers.back().id,
                       .says = says,
                       .day = today,
                       .who = "A. Player"});
  }
  void work(RecordId job, const std::string& operation, int minutes) {
    const RecordId spell =
        book.begin_work({.job_id = job, .operation = operation, .began_on = today, .began_minute = 540});
    book.end_work(spell, {.day = today, .minute = 540 + minutes});
  }
};

/// Cents of a money text with two decimals.
long cents(const std::string& text) {
  const auto point = text.find('.');
  return std::stol(text.substr(0, point)) * 100 + std::stol(text.substr(point + 1));
}

TEST(EstimateQuestion, prices_billed_minutes_at_the_shops_rate_and_tax) {
  BookToPrice shop;
  const EstimateAnswer answer = shop.estimate();
  ASSERT_EQ(answer.result.lines.size(), 2U);
  for (const PricedLine& line : answer.result.lines) {
    EXPECT_EQ(cents(line.labour), line.billed_minutes * 100) << "60.00 an hour is 1.00 a minute";
    EXPECT_EQ(cents(line.tax), line.billed_minutes * 20);
  }
  ASSERT_EQ(answer.result.options.size(), 2U);
  const PricedLine &crack = answer.result.lines[0], &saddle = answer.result.lines[1];
  EXPECT_EQ(cents(answer.result.options[0].net), cents(crack.net) + cents(crack.visit.net));
  EXPECT_EQ(cents(answer.result.options[1].net), cents(crack.net) + cents(saddle.net) + cents(crack.visit.net))
      << "the crack needs the whole intake, the saddle a short one";
  EXPECT_EQ(answer.lines[0].job_id, shop.crack);
  EXPECT_NE(answer.lines[0].words.find("Open crack or seam glued, with cleats: "), std::string::npos);
}

TEST(EstimateQuestion, of_a_drop_in_saddle_alone_is_what_a_practised_hand_books) {
  BookToPrice shop;
  shop.book.keep(Job{.id = shop.crack, .visit_id = shop.visit, .procedure = "top_crack", .withdrawn = true});
  shop.book.keep(Job{.id = shop.saddle, .visit_id = shop.visit, .procedure = "drop_in_saddle"});
  const EstimateAnswer answer = shop.estimate();
  ASSERT_EQ(answer.result.lines.size(), 1U);
  EXPECT_GE(answer.result.options[0].hours.typical, 1);
  EXPECT_LE(answer.result.options[0].hours.typical, 1.5);
}

TEST(EstimateQuestion, counts_materials_and_a_fixed_price_and_the_latest_of_each_stands) {
  BookToPrice shop;
  shop.book.add(JobMaterial{.job_id = shop.crack, .name = "spruce", .quantity = "2", .unit_price = "3.50"});
  shop.book.add(JobMaterial{.job_id = shop.crack, .name = "glue", .quantity = "1", .unit_price = "9.00"});
  shop.book.add(JobMaterial{.job_id = shop.crack, .name = "glue", .quantity = "0", .unit_price = "9.00"});
  EXPECT_EQ(shop.estimate().result.lines[0].materials, "7.00");
  shop.book.add(JobTerms{.job_id = shop.crack, .fixed_price = "150.00", .tax_percent = "10", .risk = "it may show"});
  const PricedLine line = shop.estimate().result.lines[0];
  EXPECT_EQ(line.labour, "150.00");
  EXPECT_EQ(line.net, "157.00");
  EXPECT_EQ(line.tax, "15.70");
  EXPECT_NE(shop.estimate().lines[0].words.find("Risk: it may show"), std::string::npos);
}

TEST(EstimateQuestion, offers_each_line_once_and_again_only_when_it_differs) {
  BookToPrice shop;
  EXPECT_EQ(shop.offer().size(), 2U);
  EXPECT_TRUE(shop.offer().empty());
  shop.say(shop.crack, OwnerSays::yes);
  EXPECT_EQ(shop.estimate().lines[0].differs, "");
  const std::string before = shop.estimate().result.lines[0].net;
  shop.book.add(JobAmount{.job_id = shop.crack, .amount = "cleats", .count = 30});
  const EstimateAnswer changed = shop.estimate();
  EXPECT_EQ(changed.lines[0].differs,
            "Offered at " + before + " EUR before tax on 2025-08-20, now " + changed.result.lines[0].net + " EUR");
  const auto again = shop.offer();
  ASSERT_EQ(again.size(), 1U);
  EXPECT_EQ(again[0].job_id, shop.crack);
}

TEST(EstimateQuestion, a_refused_line_is_left_alone_and_not_offered_again) {
  BookToPrice shop;
  shop.offer();
  shop.say(shop.saddle, OwnerSays::no);
  const EstimateAnswer answer = shop.estimate();
  EXPECT_TRUE(answer.lines[1].refused);
  EXPECT_EQ(answer.result.lines[1].when, LineWhen::leave_alone);
  EXPECT_EQ(answer.result.options[1].net, answer.result.options[0].net);
  EXPECT_TRUE(shop.offer().empty());
}

TEST(EstimateQuestion, refusing_one_line_asks_nothing_again_of_the_others) {
  BookToPrice shop;
  shop.offer();
  const EstimateAnswer before = shop.estimate();
  EXPECT_NE(before.lines[1].words.find("; arriving and finishing, paid once for the visit, at most " +
                                       before.result.lines[1].visit.net + " EUR"),
            std::string::npos);
  shop.say(shop.saddle, OwnerSays::yes);
  shop.say(shop.crack, OwnerSays::no);
  const EstimateAnswer after = shop.estimate();
  ASSERT_EQ(after.lines[0].job_id, shop.saddle);
  EXPECT_EQ(after.lines[0].differs, "");
  EXPECT_EQ(after.result.lines[0].net, before.result.lines[1].net);
  EXPECT_EQ(after.result.options[1].visit.net, before.result.lines[1].visit.net);
  EXPECT_TRUE(shop.offer().empty());
}

TEST(EstimateQuestion, more_of_arriving_and_finishing_is_asked_again_and_said) {
  BookToPrice shop;
  shop.offer();
  shop.say(shop.saddle, OwnerSays::yes);
  shop.book.add(JobTerms{.job_id = shop.saddle, .tax_percent = "20", .risk = "none"});
  EXPECT_EQ(shop.estimate().lines[1].differs, "");
  const JobOffer offered = shop.book.job_story(shop.saddle).offers.back();
  JobOffer lower = offered;
  lower.id = 0;
  lower.visit_net = "1.00";
  shop.book.add(lower);
  EXPECT_EQ(shop.estimate().lines[1].differs,
            "Arriving and finishing, paid once for the visit: offered at 1.00, now " + offered.visit_net);
}

TEST(EstimateQuestion, work_done_at_the_visit_does_not_change_its_price) {
  BookToPrice shop;
  shop.offer();
  const std::string before = to_json(shop.estimate().result);
  shop.work(shop.saddle, "slacken_strings", 55);
  shop.work(shop.crack, "record_arrival", 90);
  EXPECT_EQ(to_json(shop.estimate().result), before);
}

TEST(EstimateQuestion, learns_from_what_was_finished_before_the_visit) {
  BookToPrice shop;
  const double before = shop.estimate().result.lines[0].hours.typical;
  std::vector<FinishedWork> slow;
  for (int i = 0; i < 30; ++i) slow.push_back({.kind = "glue_cleats", .estimated_minutes = 30, .actual_minutes = 90});
  const EstimateAnswer after = estimate_answer(shop.book.visit_work(shop.visit), shop.book.story(shop.instrument),
                                               shop.settings, slow, shop.data, shop.today);
  EXPECT_GT(after.result.lines[0].hours.typical, before + 0.5);
}

TEST(EstimateQuestion, of_a_visit_without_repairs_is_refused) {
  BookToPrice shop;
  shop.book.keep(Job{.id = shop.crack, .visit_id = shop.visit, .procedure = "top_crack", .withdrawn = true});
  shop.book.keep(Job{.id = shop.saddle, .visit_id = shop.visit, .procedure = "drop_in_saddle", .withdrawn = true});
  expect_refused([&] { (void)shop.estimate(); }, "lines: no repair is chosen at this visit yet");
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include "book/session.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

/// A book whose instrument has one repair chosen for it.
struct BookWithJob : testing::TestBook {
  RecordId job = book.keep(Job{.visit_id = visit, .procedure = "top_crack"});

  RecordId begin(const std::string& operation, int minute, const std::string& person = "Ada") {
    return book.begin_work({.job_id = job,
                            .operation = operation,
                            .person = person,
                            .began_on = day(2025, 8, 21),
                            .began_minute = minute});
  }
  RecordId offer(const std::string& net) {
    return book.add(JobOffer{.job_id = job,
                             .day = day(2025, 8, 21),
                             .words = "Crack glued, with cleats",
                             .hours_low = 2,
                             .hours = 3,
                             .hours_high = 5,
                             .net = net,
                             .tax = "0.00",
                             .currency = "EUR"});
  }
  OwnerWord word(RecordId offer_id) {
    return {.job_id = job, .offer_id = offer_id, .says = OwnerSays::yes, .day = day(2025, 8, 22), .who = "A. Player"};
  }
};

TEST(Jobs, keep_what_was_answered_offered_said_and_done) {
  BookWithJob shop;
  shop.book.add(JobAnswer{.job_id = shop.job, .decision = "d", .outcome = "o", .day = day(2025, 8, 21), .who = "Ada"});
  shop.book.add(JobAmount{.job_id = shop.job, .amount = "cleats", .count = 5});
  const RecordId offered = shop.offer("245.00");
  shop.book.add(shop.word(offered));
  const RecordId spell = shop.begin("glue_crack", 600);
  shop.book.end_work(spell, {.day = day(2025, 8, 21), .minute = 640});

  const JobStory story = shop.book.job_story(shop.job);
  EXPECT_EQ(story.job.procedure, "top_crack");
  EXPECT_EQ(story.job.finding_id, 0);
  EXPECT_EQ(story.answers.at(0).outcome, "o");
  EXPECT_EQ(story.amounts.at(0).count, 5);
  EXPECT_EQ(story.offers.at(0).net, "245.00");
  EXPECT_EQ(story.words.at(0).says, OwnerSays::yes);
  ASSERT_EQ(story.spells.size(), 1U);
  EXPECT_TRUE(story.spells[0].finished);
  EXPECT_EQ(story.spells[0].ended_minute, 640);
  EXPECT_EQ(shop.book.troubles(), std::vector<std::string>{});
}

TEST(Jobs, may_be_thought_better_of_but_stay_with_their_visit) {
  BookWithJob shop;
  shop.book.keep(Job{.id = shop.job, .visit_id = shop.visit, .procedure = "top_crack", .withdrawn = true});
  EXPECT_TRUE(shop.book.job_story(shop.job).job.withdrawn);
  const RecordId other = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2025, 9, 1)});
  expect_refused([&] { shop.book.keep(Job{.id = shop.job, .visit_id = other, .procedure = "top_crack"}); },
                 "visit_id: a job stays with the visit it was chosen at");
}

TEST(Offers, a_later_one_asks_the_owner_again) {
  BookWithJob shop;
  const RecordId first = shop.offer("245.00");
  shop.book.add(shop.word(first));
  const RecordId second = shop.offer("310.00");
  expect_refused([&] { shop.book.add(shop.word(first)); }, "offer_id: offer " + std::to_string(first) +
                                                               " is no longer the newest of its job; the owner is "
                                                               "asked again");
  shop.book.add(shop.word(second));
  EXPECT_EQ(shop.book.job_story(shop.job).words.size(), 2U);
}

TEST(Offers, a_word_is_on_an_offer_or_on_an_operation_and_has_a_name) {
  BookWithJob shop;
  OwnerWord both = shop.word(shop.offer("1.00"));
  both.operation = "strip_finish";
  expect_refused([&] { shop.book.add(both); },
                 "offer_id: the owner's word is on an offer or on an operation, one of the two");
  OwnerWord nobody = shop.word(0);
  nobody.operation = "strip_finish";
  nobody.who.clear();
  expect_refused([&] { shop.book.add(nobody); }, "who: is empty");
  expect_refused([&] { shop.book.add(shop.word(99)); }, "offer_id: 99 is not an offer for this job");
}

TEST(Work, one_pair_of_hands_is_at_one_thing) {
  BookWithJob shop;
  const RecordId spell = shop.begin("glue_crack", 600);
  expect_refused([&] { shop.begin("fit_cleats", 610); }, "person: Ada is still at glue_crack; end that first");
  shop.begin("fit_cleats", 610, "Ben");
  shop.book.end_work(spell, {.day = day(2025, 8, 21), .minute = 630, .finished = false});
  shop.begin("glue_crack", 700);
  EXPECT_EQ(shop.book.work_done().size(), 1U);
}

TEST(Work, ends_once_and_not_before_it_began) {
  BookWithJob shop;
  const RecordId spell = shop.begin("glue_crack", 600);
  expect_refused([&] { shop.book.end_work(spell, {.day = day(2025, 8, 21), .minute = 599}); },
                 "minute: work cannot end before it began, 2025-08-21");
  shop.book.end_work(spell, {.day = day(2025, 8, 22), .minute = 5});
  expect_refused([&] { shop.book.end_work(spell, {.day = day(2025, 8, 22), .minute = 9}); },
                 "spell_id: this work has ended already");
  Session outside(shop.file, Session::May::write);
  EXPECT_ANY_THROW(outside.run("UPDATE work_spells SET ended_minute = 7"));
  EXPECT_ANY_THROW(outside.run("DELETE FROM work_spells"));
}

TEST(Work, is_in_the_shop_until_the_instrument_goes_home) {
  BookWithJob shop;
  EXPECT_EQ(shop.book.work_in_the_shop().size(), 1U);
  const RecordId spell = shop.begin("glue_crack", 600);
  const Handover handover{.visit_id = shop.visit, .day = day(2025, 8, 30), .taken_by = "A. Player"};
  expect_refused([&] { shop.book.add(handover); }, "visit_id: hands are still at work on it");
  shop.book.end_work(spell, {.day = day(2025, 8, 21), .minute = 630});
  shop.book.add(handover);
  EXPECT_TRUE(shop.book.work_in_the_shop().empty());
  expect_refused([&] { shop.book.add(handover); }, "visit_id: the instrument of this visit has gone home already");
}

TEST(Work, says_what_it_was_glued_with) {
  BookWithJob shop;
  const RecordId lot = shop.book.keep(MaterialLot{
      .material = "hide_glue_hot", .words = "batch 3", .opened_on = day(2025, 8, 1), .good_until = day(2025, 8, 25)});
  const RecordId spell = shop.begin("glue_crack", 600);
  shop.book.end_work(spell, {.day = day(2025, 8, 21), .minute = 630, .lot_id = lot});
  EXPECT_EQ(shop.book.work_done().at(0).lot_id, lot);
  EXPECT_EQ(shop.book.material_lots().at(0).good_until, day(2025, 8, 25));
  expect_refused(
      [&] {
        shop.book.keep(MaterialLot{.material = "x", .opened_on = day(2025, 8, 2), .good_until = day(2025, 8, 1)});
      },
      "good_until: is before it was opened");
}

TEST(Promises, and_overrides_of_the_gate_are_kept_with_name_and_reason) {
  BookWithJob shop;
  shop.book.add(PromiseRecord{.visit_id = shop.visit, .ready_on = day(2025, 9, 5), .said_on = day(2025, 8, 21)});
  shop.book.add(GateRecord{.visit_id = shop.visit, .who = "Ada", .day = day(2025, 8, 21), .why = "concert tonight"});
  const VisitWork work = shop.book.visit_work(shop.visit);
  EXPECT_EQ(work.promises.at(0).ready_on, day(2025, 9, 5));
  EXPECT_EQ(work.overrides.at(0).why, "concert tonight");
  expect_refused([&] { shop.book.add(GateRecord{.visit_id = shop.visit, .who = "Ada", .day = day(2025, 8, 21)}); },
                 "why: is empty");
}

}  // namespace
}  // namespace tailblock

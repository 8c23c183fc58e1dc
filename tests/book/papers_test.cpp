#include <gtest/gtest.h>

#include "book/session.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

/// A book with a repair that was offered and said yes to.
struct BookWithYes : testing::TestBook {
  RecordId job = book.keep(Job{.visit_id = visit, .procedure = "top_crack"});
  RecordId offer = make_offer("245.00");

  RecordId make_offer(const std::string& net) { return book.add(offered(net)); }
  [[nodiscard]] JobOffer offered(const std::string& net) const {
    return {.job_id = job,
            .day = day(2025, 8, 21),
            .words = "Crack glued, with cleats",
            .hours_low = 2,
            .hours = 3,
            .hours_high = 5,
            .net = net,
            .tax = "49.00",
            .currency = "EUR",
            .labour = "240.00",
            .materials = "5.00",
            .tax_percent = "20"};
  }
  void say(OwnerSays says) {
    book.add(OwnerWord{.job_id = job, .offer_id = offer, .says = says, .day = day(2025, 8, 22), .who = "A. Player"});
  }
  GivenPaper give(PaperKind kind, Date on, std::vector<RecordId> invoiced = {}) {
    return book.give({.visit_id = visit, .kind = kind, .day = on, .invoiced = std::move(invoiced)},
                     [](const std::string& number) { return "paper " + number; });
  }
};

TEST(Papers, run_in_numbers_of_their_own_by_kind_and_year) {
  BookWithYes shop;
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2025, 8, 21)).number, "2025-0001");
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2025, 12, 31)).number, "2025-0002");
  EXPECT_EQ(shop.give(PaperKind::owners_report, day(2025, 12, 31)).number, "2025-0001");
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2026, 1, 1)).number, "2026-0001");
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2025, 12, 31)).number, "2025-0003");
}

TEST(Papers, run_on_beyond_four_digits) {
  BookWithYes shop;
  Session(shop.file, Session::May::write)
      .script("INSERT INTO papers VALUES (1, 1, 'estimate', '2025-9999', '2025-01-01', '" + std::string(64, 'a') +
              "', 'x')");
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2025, 8, 21)).number, "2025-10000");
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2025, 8, 21)).number, "2025-10001");
}

TEST(Papers, say_for_good_what_they_said_when_they_were_given) {
  BookWithYes shop;
  const GivenPaper paper = shop.give(PaperKind::estimate, day(2025, 8, 21));
  EXPECT_EQ(shop.book.paper_says(paper.id), "paper 2025-0001");
  EXPECT_EQ(shop.book.paper(paper.id).sha256.size(), 64U);
  ASSERT_EQ(shop.book.visit_work(shop.visit).papers.size(), 1U);
  EXPECT_EQ(shop.book.visit_work(shop.visit).papers[0].number, "2025-0001");
  for (const char* change : {"UPDATE papers SET says = 'less'", "DELETE FROM papers"}) {
    EXPECT_THROW(Session(shop.file, Session::May::write).script(change), std::exception) << change;
  }
  EXPECT_EQ(shop.book.troubles(), std::vector<std::string>{});
  Session(shop.file, Session::May::write)
      .script("DROP TRIGGER papers_are_never_changed; UPDATE papers SET says = 'less'");
  const std::vector<std::string> troubles = shop.book.troubles();
  EXPECT_NE(std::ranges::find(troubles, "paper 1: it does not say what it said when it was given"), troubles.end());
}

TEST(Papers, are_given_whole_or_not_at_all) {
  BookWithYes shop;
  const auto fail = [](const std::string&) -> std::string { throw Refused("paper: cannot be written"); };
  expect_refused(
      [&] {
        (void)shop.book.give(
            {.visit_id = shop.visit, .kind = PaperKind::estimate, .day = day(2025, 8, 21), .offers = {shop.offered("9")}},
            fail);
      },
      "paper: cannot be written");
  EXPECT_EQ(shop.book.job_story(shop.job).offers.size(), 1U);
  EXPECT_EQ(shop.give(PaperKind::estimate, day(2025, 8, 21)).number, "2025-0001") << "no number was used up";
  (void)shop.book.give(
      {.visit_id = shop.visit, .kind = PaperKind::estimate, .day = day(2025, 8, 21), .offers = {shop.offered("9")}},
      [](const std::string&) { return "x"; });
  EXPECT_EQ(shop.book.job_story(shop.job).offers.size(), 2U);
}

TEST(Papers, ask_to_be_paid_once_and_only_for_what_was_said_yes_to) {
  BookWithYes shop;
  const std::string number = std::to_string(shop.offer);
  const auto invoice = [&] { return shop.give(PaperKind::invoice, day(2025, 9, 1), {shop.offer}); };
  expect_refused(invoice, "invoiced: the owner has not said yes to offer " + number);
  shop.say(OwnerSays::yes);
  shop.say(OwnerSays::no);
  expect_refused(invoice, "invoiced: the owner has not said yes to offer " + number);
  shop.say(OwnerSays::yes);
  const RecordId elsewhere = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2025, 9, 1)});
  expect_refused(
      [&] {
        (void)shop.book.give(
            {.visit_id = elsewhere, .kind = PaperKind::invoice, .day = day(2025, 9, 1), .invoiced = {shop.offer}},
            [](const std::string&) { return "x"; });
      },
      "invoiced: " + number + " is not an offer of this visit");
  const GivenPaper paper = invoice();
  EXPECT_EQ(shop.book.visit_work(shop.visit).invoiced.at(0).paper_id, paper.id);
  expect_refused(invoice, "invoiced: offer " + number + " stands on invoice 2025-0001 already");
  EXPECT_EQ(shop.book.troubles(), std::vector<std::string>{});
}

}  // namespace
}  // namespace tailblock

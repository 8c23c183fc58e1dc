#include "book/invoice_question.h"

#include <gtest/gtest.h>

#include "models/data_tables.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

/// Three repairs, offered at prices of their own.
struct BookToInvoice : testing::TestBook {
  std::vector<std::unique_ptr<std::string>> texts;
  DataTables data = load_data_tables([this](std::string_view path) -> std::string_view {
    return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
  });
  RecordId crack = book.keep(Job{.visit_id = visit, .procedure = "top_crack"});
  RecordId saddle = book.keep(Job{.visit_id = visit, .procedure = "drop_in_saddle"});
  RecordId nut = book.keep(Job{.visit_id = visit, .procedure = "nut"});

  void offer(RecordId job, const std::string& net, const std::string& percent, const std::string& tax,
             const std::string& currency = "EUR", const std::string& visit_net = "",
             const std::string& visit_tax = "") {
    book.add(JobOffer{.job_id = job,
                      .day = day(2025, 8, 21),
                      .words = "a line",
                      .hours_low = 1,
                      .hours = 2,
                      .hours_high = 3,
                      .net = net,
                      .tax = tax,
                      .currency = currency,
                      .labour = net,
                      .materials = "0.00",
                      .tax_percent = percent,
                      .visit_net = visit_net,
                      .visit_tax = visit_tax});
  }
  void bill(const std::vector<RecordId>& offers) {
    (void)book.give({.visit_id = visit, .kind = PaperKind::invoice, .day = day(2025, 8, 24), .invoiced = offers},
                    [](const std::string&) { return "x"; });
  }
  void say(RecordId job, OwnerSays says) {
    book.add(OwnerWord{.job_id = job,
                       .offer_id = book.job_story(job).offers.back().id,
                       .says = says,
                       .day = day(2025, 8, 22),
                       .who = "A. Player"});
  }
  [[nodiscard]] InvoiceAnswer ask() const {
    const VisitWork work = book.visit_work(visit);
    const Moment now{day(2025, 8, 23), 600};
    return invoice_answer(work, job_plans(work, book.story(instrument), data.repairs, now), data.repairs);
  }
};

TEST(InvoiceQuestion, adds_up_exactly_what_was_agreed_rate_by_rate) {
  BookToInvoice shop;
  shop.offer(shop.crack, "0.10", "20", "0.02");
  shop.offer(shop.saddle, "0.20", "20", "0.04");
  shop.offer(shop.nut, "1000000000.03", "5", "50000000.00");
  for (const RecordId job : {shop.crack, shop.saddle, shop.nut}) shop.say(job, OwnerSays::yes);
  const InvoiceAnswer invoice = shop.ask();
  ASSERT_EQ(invoice.lines.size(), 3U);
  EXPECT_EQ(invoice.net, "1000000000.33") << "0.1 + 0.2 is 0.3 in money";
  EXPECT_EQ(invoice.tax, "50000000.06");
  EXPECT_EQ(invoice.total, "1050000000.39");
  ASSERT_EQ(invoice.taxes.size(), 2U);
  EXPECT_EQ(invoice.taxes[0].percent, "20");
  EXPECT_EQ(invoice.taxes[0].net, "0.30");
  EXPECT_EQ(invoice.taxes[0].tax, "0.06");
  EXPECT_EQ(invoice.taxes[1].tax, "50000000.00");
  EXPECT_EQ(invoice.lines[0].agreed_by, "A. Player");
  EXPECT_FALSE(invoice.lines[0].finished);
}

TEST(InvoiceQuestion, leaves_out_what_has_no_yes_and_says_why) {
  BookToInvoice shop;
  shop.offer(shop.crack, "100.00", "20", "20.00");
  shop.offer(shop.saddle, "50.00", "20", "10.00");
  shop.say(shop.saddle, OwnerSays::no);
  const InvoiceAnswer invoice = shop.ask();
  EXPECT_TRUE(invoice.lines.empty());
  EXPECT_EQ(invoice.total, "");
  ASSERT_EQ(invoice.left_out.size(), 3U);
  EXPECT_EQ(invoice.left_out[0], "Open crack or seam glued, with cleats: the owner has not answered yet.");
  EXPECT_EQ(invoice.left_out[1], "Drop-in saddle replaced: the owner said no.");
  EXPECT_NE(invoice.left_out[2].find(": it was not put before the owner."), std::string::npos);
}

TEST(InvoiceQuestion, an_offer_made_again_takes_the_yes_away) {
  BookToInvoice shop;
  shop.offer(shop.crack, "100.00", "20", "20.00");
  shop.say(shop.crack, OwnerSays::yes);
  EXPECT_EQ(shop.ask().total, "120.00");
  shop.offer(shop.crack, "130.00", "20", "26.00");
  EXPECT_TRUE(shop.ask().lines.empty());
  shop.say(shop.crack, OwnerSays::yes);
  EXPECT_EQ(shop.ask().total, "156.00");
}

TEST(InvoiceQuestion, a_repair_is_on_one_invoice_whatever_is_offered_afterwards) {
  BookToInvoice shop;
  shop.offer(shop.crack, "100.00", "20", "20.00");
  shop.say(shop.crack, OwnerSays::yes);
  (void)shop.book.give({.visit_id = shop.visit,
                        .kind = PaperKind::invoice,
                        .day = day(2025, 8, 21),
                        .invoiced = {shop.ask().lines.at(0).offer_id}},
                       [](const std::string&) { return "x"; });
  EXPECT_EQ(shop.ask().left_out.at(0), "Open crack or seam glued, with cleats: stands on invoice 2025-0001 already.");
  shop.book.add(JobOffer{.job_id = shop.crack,
                         .day = day(2025, 8, 25),
                         .words = "more",
                         .hours = 1,
                         .hours_high = 1,
                         .net = "130.00",
                         .tax = "26.00",
                         .currency = "EUR"});
  shop.say(shop.crack, OwnerSays::yes);
  EXPECT_TRUE(shop.ask().lines.empty());
  EXPECT_EQ(shop.ask().left_out.at(0),
            "Open crack or seam glued, with cleats: stands on invoice 2025-0001 already; what was offered since is on none.");
}

TEST(InvoiceQuestion, asks_once_for_arriving_and_finishing_as_the_line_agreed_to_needs_that_needs_most) {
  BookToInvoice shop;
  shop.offer(shop.crack, "100.00", "20", "20.00", "EUR", "62.00", "12.40");
  shop.offer(shop.saddle, "50.00", "20", "10.00", "EUR", "25.05", "5.01");
  shop.offer(shop.nut, "80.00", "20", "16.00", "EUR", "31.00", "6.20");
  shop.say(shop.saddle, OwnerSays::yes);
  shop.say(shop.nut, OwnerSays::yes);
  shop.say(shop.crack, OwnerSays::no);
  EXPECT_EQ(shop.ask().visit.net, "31.00") << "the crack was refused";
  EXPECT_EQ(shop.ask().net, "161.00");
  EXPECT_EQ(shop.ask().total, "193.20");
  ASSERT_EQ(shop.ask().taxes.size(), 1U);
  EXPECT_EQ(shop.ask().taxes[0].tax, "32.20");
}

TEST(InvoiceQuestion, a_second_invoice_asks_only_for_what_is_more_of_arriving_and_finishing) {
  BookToInvoice shop;
  shop.offer(shop.saddle, "50.00", "20", "10.00", "EUR", "25.05", "5.01");
  shop.say(shop.saddle, OwnerSays::yes);
  shop.bill({shop.ask().lines.at(0).offer_id});
  shop.offer(shop.nut, "80.00", "20", "16.00", "EUR", "20.00", "4.00");
  shop.say(shop.nut, OwnerSays::yes);
  EXPECT_EQ(shop.ask().visit.net, "") << "it was paid with the saddle";
  EXPECT_EQ(shop.ask().total, "96.00");
  shop.offer(shop.crack, "100.00", "20", "20.00", "EUR", "62.00", "12.40");
  shop.say(shop.crack, OwnerSays::yes);
  EXPECT_EQ(shop.ask().visit.net, "36.95");
  EXPECT_EQ(shop.ask().visit.tax, "7.39");
  EXPECT_EQ(shop.ask().total, "260.34");
}

TEST(InvoiceQuestion, refuses_two_currencies_on_one_paper) {
  BookToInvoice shop;
  shop.offer(shop.crack, "100.00", "20", "20.00");
  shop.offer(shop.saddle, "5000", "10", "500", "JPY");
  shop.say(shop.crack, OwnerSays::yes);
  shop.say(shop.saddle, OwnerSays::yes);
  expect_refused([&] { (void)shop.ask(); },
                 "currency: the owner agreed to lines in EUR and in JPY; put one of them before the owner again");
}

TEST(InvoiceQuestion, keeps_to_a_currency_without_decimals) {
  BookToInvoice shop;
  shop.offer(shop.saddle, "5000", "10", "500", "JPY");
  shop.say(shop.saddle, OwnerSays::yes);
  EXPECT_EQ(shop.ask().total, "5500");
}

}  // namespace
}  // namespace tailblock

// The papers of a visit, from what the book keeps to what is given, and given again as it was.

#include "empty_shop.h"

namespace tailblock {
namespace {

using testing::EmptyShop;
using testing::Json;
using testing::small_jpeg;

class ShopWithPapers : public EmptyShop {
 protected:
  void name_the_shop() {
    Json settings = done("GET", "/api/shop/settings");
    settings["name"] = "Under the Stairs, an invented shop";
    settings["address"] = "3 Invented Lane\nAnytown";
    settings["how_to_pay"] = "in the shop";
    settings["tax_percent"] = "20";
    done("PUT", "/api/shop/settings", {.body = settings.dump()});
  }
  /// Two repairs put before the owner, the second refused.
  void choose_two() {
    crack_ = kept("/api/visits/{id}/jobs", {{"procedure", "top_crack"}}, visit_);
    saddle_ = kept("/api/visits/{id}/jobs", {{"procedure", "drop_in_saddle"}, {"advice", "can_wait"}}, visit_);
  }
  void offer() { done("POST", "/api/visits/{id}/offers", {.id = visit_}); }
  void say(int job, const std::string& says) {
    int offer = 0;
    const Json work = done("GET", "/api/visits/{id}/work", {.id = visit_});
    for (const Json& one : work.at("jobs")) {
      const Json& story = one.at("story");
      if (story.at("job").at("id") == job) offer = story.at("offers").back().at("id");
    }
    kept("/api/jobs/{id}/words", {{"offer_id", offer}, {"says", says}, {"day", "2026-02-10"}, {"who", "A. Player"}},
         job);
  }
  Json papers() { return done("GET", "/api/visits/{id}/papers", {.id = visit_}); }
  std::string missing(const std::string& name) {
    const Json all = papers();
    for (const Json& paper : all.at("papers")) {
      if (paper.at("name") == name) return paper.at("missing");
    }
    return "no such paper";
  }
  Json give(const std::string& kind) {
    return done("POST", "/api/visits/{id}/papers", {.id = visit_, .body = Json{{"kind", kind}}.dump()});
  }
  std::string page(const std::string& path, int id) {
    const Answer answer = call("GET", path, {.id = id, .query = {{"as", "page"}}});
    EXPECT_EQ(answer.status, 200) << answer.body;
    return answer.body;
  }
  std::string pdf(int paper, const std::string& size = "a4") {
    return call("GET", "/api/papers/{id}", {.id = paper, .query = {{"size", size}}}).body;
  }
  int given_id(const std::string& kind) {
    int id = 0;
    const Json all = papers();
    for (const Json& paper : all.at("given")) {
      if (paper.at("kind") == kind) id = paper.at("id");
    }
    return id;
  }

  int instrument_ = instrument_read_twice();
  int visit_ =
      kept("/api/visits", {{"instrument_id", instrument_}, {"date", "2026-02-10"}, {"reason", "A crack has opened."}});
  int crack_ = 0, saddle_ = 0;
};

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

TEST_F(ShopWithPapers, say_in_plain_words_what_each_still_waits_for) {
  EXPECT_EQ(missing("claim_ticket"), "The shop has no name yet: its papers carry one.");
  EXPECT_EQ(Json::parse(call("GET", "/api/visits/{id}/claim-ticket", {.id = visit_}).body).at("refused"),
            "name: the shop has no name yet; say it on the Shop page, then its papers can be printed");
  name_the_shop();
  EXPECT_EQ(missing("claim_ticket"), "");
  EXPECT_EQ(missing("estimate"), "No repair is chosen yet.");
  EXPECT_EQ(missing("work_sheet"), "The owner has said yes to no repair yet.");
  EXPECT_EQ(missing("invoice"), "The owner has said yes to no repair yet.");
  EXPECT_EQ(missing("owners_report"), "Nothing is found, read or agreed at this visit yet.");
  EXPECT_EQ(call("GET", "/api/visits/{id}/work-sheet", {.id = visit_}).status, 422);
  EXPECT_EQ(call("GET", "/api/papers/{id}", {.id = 1}).status, 404);
}

TEST_F(ShopWithPapers, an_estimate_is_kept_as_it_was_put_before_the_owner) {
  name_the_shop();
  choose_two();
  offer();
  EXPECT_EQ(papers().at("given").size(), 1U);
  EXPECT_EQ(papers().at("given")[0].at("number"), "2026-0001");
  const int given = given_id("estimate");
  const std::string before = page("/api/papers/{id}", given), printed = pdf(given), letter = pdf(given, "letter");
  EXPECT_TRUE(has(before, "Open crack or seam glued, with cleats"));
  EXPECT_TRUE(has(before, "And what can wait"));
  EXPECT_TRUE(has(before, "Arriving and finishing, once for the visit"));
  EXPECT_TRUE(has(before, "a no to one line makes no other dearer"));
  EXPECT_FALSE(has(before, "draft"));
  say(saddle_, "no");
  kept("/api/jobs/{id}/materials", {{"name", "spruce"}, {"unit_price", "9.00"}}, crack_);
  EXPECT_EQ(page("/api/papers/{id}", given), before);
  EXPECT_EQ(pdf(given), printed);
  EXPECT_EQ(pdf(given, "letter"), letter);
  const std::string now = page("/api/visits/{id}/estimate-paper", visit_);
  EXPECT_TRUE(has(now, "A draft, to look at."));
  EXPECT_TRUE(has(now, "A. Player, 10 Feb 2026"));
  EXPECT_TRUE(has(now, "spruce"));
  offer();
  EXPECT_EQ(papers().at("given").size(), 2U) << "what changed is put before the owner again";
  offer();
  EXPECT_EQ(papers().at("given").size(), 2U) << "nothing has changed since";
}

TEST_F(ShopWithPapers, an_invoice_asks_for_what_was_agreed_once_and_at_that_price) {
  name_the_shop();
  choose_two();
  offer();
  say(crack_, "yes");
  say(saddle_, "no");
  const Json invoice = papers().at("invoice");
  ASSERT_EQ(invoice.at("lines").size(), 1U);
  EXPECT_EQ(invoice.at("left_out")[0], "Drop-in saddle replaced: the owner said no.");
  const std::string net = invoice.at("net"), total = invoice.at("total");
  EXPECT_GT(std::stod(invoice.at("visit").at("net").get<std::string>()), 30) << "arriving and finishing, once";
  EXPECT_NEAR(std::stod(net),
              std::stod(invoice.at("lines")[0].at("net").get<std::string>()) +
                  std::stod(invoice.at("visit").at("net").get<std::string>()),
              1e-6);
  EXPECT_NEAR(std::stod(total), 1.2 * std::stod(net), 0.0051);
  const Json given = give("invoice");
  EXPECT_EQ(given.at("number"), "2026-0001") << "its own row of numbers, not the estimates'";
  const std::string before = page("/api/papers/{id}", given.at("id")), printed = pdf(given.at("id"));
  EXPECT_TRUE(has(before, "Invoice 2026-0001"));
  EXPECT_TRUE(has(before, "Arriving and finishing, once for the visit"));
  EXPECT_TRUE(has(before, total + " EUR"));
  EXPECT_TRUE(has(before, "in the shop"));
  EXPECT_FALSE(has(before, "Drop-in saddle"));

  Json settings = done("GET", "/api/shop/settings");
  settings["hourly_rate"] = "99.00";
  settings["name"] = "Another name";
  done("PUT", "/api/shop/settings", {.body = settings.dump()});
  EXPECT_EQ(page("/api/papers/{id}", given.at("id")), before);
  EXPECT_EQ(pdf(given.at("id")), printed);

  EXPECT_EQ(missing("invoice"), "All that the owner said yes to stands on an invoice.");
  const Answer again = call("POST", "/api/visits/{id}/papers", {.id = visit_, .body = R"({"kind":"invoice"})"});
  EXPECT_EQ(again.status, 422);
  EXPECT_EQ(Json::parse(again.body).at("refused"),
            "lines: there is nothing to ask to be paid for; Open crack or seam glued, with cleats: stands on invoice "
            "2026-0001 already; Drop-in saddle replaced: the owner said no");
}

TEST_F(ShopWithPapers, a_work_sheet_says_who_went_on_against_the_humidity_and_why) {
  name_the_shop();
  choose_two();
  offer();
  say(crack_, "yes");
  EXPECT_FALSE(has(page("/api/visits/{id}/work-sheet", visit_), "goes on all the same"));
  kept("/api/visits/{id}/gate",
       {{"who", "Ada"}, {"day", "2026-02-10"}, {"why", "It stood in the cabinet since."}}, visit_);
  const std::string sheet = page("/api/visits/{id}/work-sheet", visit_);
  EXPECT_TRUE(has(sheet, "Work goes on all the same, by Ada on 2026-02-10: It stood in the cabinet since."));
  EXPECT_TRUE(has(sheet, "What can hurt"));
  EXPECT_TRUE(has(sheet, "hot glue"));
}

TEST_F(ShopWithPapers, a_report_shows_findings_on_the_drawing_with_their_photos) {
  name_the_shop();
  const int photo = done("POST", "/api/photos", {.body = small_jpeg()}).at("id");
  const int finding = kept("/api/visits/{id}/findings",
                           {{"kind", "crack"},
                            {"view", "front"},
                            {"shape", "line"},
                            {"points", {{{"x_mm", 300}, {"y_mm", -60}}, {{"x_mm", 360}, {"y_mm", -60}}}},
                            {"certainty", "likely"},
                            {"photos", {{{"photo_id", photo}}}}},
                           visit_);
  const int job = kept("/api/visits/{id}/jobs", {{"procedure", "top_crack"}, {"finding_id", finding}}, visit_);
  const std::string open = page("/api/visits/{id}/owners-report", visit_);
  EXPECT_TRUE(has(open, "Not decided yet."));
  EXPECT_TRUE(has(open, "Front: 1."));
  EXPECT_TRUE(has(open, "data:image/jpeg;base64,"));
  EXPECT_TRUE(has(open, "likely, not certain"));
  EXPECT_TRUE(has(open, "Keep the air round it between"));
  EXPECT_TRUE(has(open, "learnt from 4 readings so far"));
  offer();
  say(job, "no");
  EXPECT_TRUE(has(page("/api/visits/{id}/owners-report", visit_), "you said no to it"));
  const int given = give("owners_report").at("id");
  const std::string before = page("/api/papers/{id}", given), printed = pdf(given);
  kept("/api/visits/{id}/findings",
       {{"kind", "crack"},
        {"view", "back"},
        {"shape", "line"},
        {"points", {{{"x_mm", 300}, {"y_mm", -60}}, {{"x_mm", 360}, {"y_mm", -60}}}}},
       visit_);
  EXPECT_EQ(page("/api/papers/{id}", given), before);
  EXPECT_EQ(pdf(given), printed);
  EXPECT_TRUE(has(page("/api/visits/{id}/owners-report", visit_), "Back: 2."));
}

TEST_F(ShopWithPapers, a_report_says_that_the_season_is_a_first_guess_until_it_is_read_in_two) {
  name_the_shop();
  Json once = done("GET", "/api/instruments/{id}", {.id = instrument_}).at("instrument");
  once.erase("id");
  const int visit = kept("/api/visits", {{"instrument_id", kept("/api/instruments", once)}, {"date", "2026-02-10"}});
  const auto height = [&](const char* measure) -> Json {
    return {{"visit_id", visit}, {"measure", measure}, {"typed", "2.4 mm"}, {"value", 2.4}, {"gauge", "ruler_64ths"}};
  };
  const Json heights{{"readings", {height("action12_bass"), height("action12_treble")}}};
  done("POST", "/api/visits/{id}/readings", {.id = visit, .body = heights.dump()});
  EXPECT_TRUE(has(page("/api/visits/{id}/owners-report", visit),
                  "mostly a first guess, good to a factor of about two: 2 readings so far"));
}

TEST_F(ShopWithPapers, a_ticket_says_what_it_is_when_it_is_scanned) {
  name_the_shop();
  const int given = give("claim_ticket").at("id");
  const std::string ticket = page("/api/papers/{id}", given);
  EXPECT_TRUE(has(ticket, "A crack has opened."));
  EXPECT_TRUE(has(ticket, "A code to scan that says: Ticket " + std::to_string(visit_) + "\nthe old one"));
}

}  // namespace
}  // namespace tailblock

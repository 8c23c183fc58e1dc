#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>

#include "http/endpoints.h"
#include "http/program.h"

namespace tailblock {
namespace {

using Json = nlohmann::json;
namespace fs = std::filesystem;
using namespace std::chrono;

/// A shop on Tuesday 10 February 2026 at ten, whose clock the test moves.
class BenchShop : public testing::Test {
 protected:
  BenchShop() : endpoints_(all_endpoints(shop_)) {}
  ~BenchShop() override { fs::remove_all(folder_); }

  Answer call(const std::string& method, const std::string& path, const Ask& ask = {}) {
    for (const Endpoint& each : endpoints_) {
      if (each.method == method && each.path == path) return answer(each, ask);
    }
    throw std::out_of_range(method + " " + path);
  }
  Json done(const std::string& method, const std::string& path, const Ask& ask = {}) {
    const Answer given = call(method, path, ask);
    EXPECT_EQ(given.status, 200) << method << " " << path << ": " << given.body;
    return Json::parse(given.body);
  }
  int kept(const std::string& path, const Json& record, int id = 0) {
    return done("POST", path, {.id = id, .body = record.dump()}).at("id");
  }
  std::string refusal(const std::string& path, const Json& record, int id = 0) {
    const Answer given = call("POST", path, {.id = id, .body = record.dump()});
    EXPECT_EQ(given.status, 422) << given.body;
    return Json::parse(given.body).at("refused");
  }
  /// An instrument with a visit and one repair offered at it.
  struct Offered {
    int visit, job, offer;
  };
  Offered offered(const std::string& name, const std::string& procedure) {
    const int owner = kept("/api/owners", {{"name", "A. Player"}});
    const Json air{{"temperature_c", std::vector<double>(12, 20)},
                   {"relative_humidity", std::vector<double>(12, 0.45)}};
    const int home = kept("/api/homes", {{"name", "a house"}, {"air", air}});
    const int instrument =
        kept("/api/instruments", {{"owner_id", owner}, {"home_id", home}, {"name", name}, {"scale_length_mm", 645}});
    const int visit = kept("/api/visits", {{"instrument_id", instrument}, {"date", "2026-02-09"}});
    const int job = kept("/api/visits/{id}/jobs", {{"procedure", procedure}}, visit);
    const int offer = kept("/api/jobs/{id}/offers",
                           {{"day", "2026-02-09"},
                            {"words", procedure},
                            {"hours_low", 1},
                            {"hours", 2},
                            {"hours_high", 3},
                            {"net", "100.00"},
                            {"tax", "0.00"},
                            {"currency", "EUR"}},
                           job);
    return {visit, job, offer};
  }
  Offered agreed(const std::string& name, const std::string& procedure) {
    const Offered one = offered(name, procedure);
    kept("/api/jobs/{id}/words",
         {{"offer_id", one.offer}, {"says", "yes"}, {"day", "2026-02-09"}, {"who", "A. Player"}}, one.job);
    return one;
  }
  Json bench(int with_visit = 0) {
    Ask ask;
    if (with_visit != 0) ask.query = {{"with_visit", std::to_string(with_visit)}};
    return done("GET", "/api/bench", ask);
  }
  static Json work(const Json& answer, const std::string& operation) {
    for (const Json& one : answer.at("work")) {
      if (one.at("operation_id") == operation) return one;
    }
    return nullptr;
  }

  std::string diary() {
    const Answer given = call("GET", "/api/bench/calendar.ics");
    EXPECT_EQ(given.status, 200) << given.body;
    EXPECT_EQ(given.content_type, "text/calendar; charset=utf-8");
    return given.body;
  }
  static std::string line_of(const std::string& file, const std::string& name) {
    const std::size_t from = file.find("\r\n" + name + ":");
    return from == std::string::npos ? "" : file.substr(from + 2, file.find("\r\n", from + 2) - from - 2);
  }

  int minute_ = 600;

 private:
  fs::path folder_ = fs::temp_directory_path() / ("tailblock-bench-" + std::to_string(std::random_device{}()));
  bool made_ = fs::create_directory(folder_);
  Program program_;
  Book book_{folder_ / "shop.tailblock", program_.trade()};
  Shop shop_{book_,
             program_.trade(),
             program_.tables(),
             program_.models(),
             program_.envelopes(),
             program_.plates(),
             [] { return Date(2026y / February / 10); },
             [this] { return minute_; }};
  std::vector<Endpoint> endpoints_;
};

TEST_F(BenchShop, with_nothing_to_do_has_no_plan_and_no_trouble) {
  const Json answer = bench();
  EXPECT_FALSE(answer.contains("plan"));
  EXPECT_EQ(answer.at("trouble"), "");
  EXPECT_TRUE(answer.at("work").empty());
  EXPECT_EQ(call("GET", "/api/bench/promises").status, 422);
}

TEST_F(BenchShop, a_tap_begins_and_ends_work_and_the_plan_follows) {
  const auto one = agreed("the old one", "tuner_bushings");
  EXPECT_EQ(bench().at("plan").at("next").at(0).at("operation"), work(bench(), "short_intake").at("operation"));
  const int spell = kept("/api/jobs/{id}/work", {{"operation", "short_intake"}, {"person", "me"}}, one.job);
  EXPECT_EQ(work(bench(), "short_intake").at("running_spell"), spell);
  EXPECT_EQ(refusal("/api/jobs/{id}/work", {{"operation", "slacken_strings"}, {"person", "me"}}, one.job),
            "person: me is still at short_intake; end that first");
  minute_ = 630;
  kept("/api/work/{id}/end", {{"finished", true}, {"minutes", 12}}, spell);
  EXPECT_TRUE(work(bench(), "short_intake").is_null()) << "no wait follows it";
  const Json next = bench().at("plan").at("next").at(0);
  EXPECT_EQ(next.at("operation"), work(bench(), "slacken_strings").at("operation"));
  EXPECT_EQ(next.at("starts").at("minute"), 630);
}

TEST_F(BenchShop, pins_are_kept_by_the_plan_let_go_and_said_where_they_clash) {
  const auto one = agreed("the old one", "tuner_bushings");
  const auto pin = [&](const std::string& operation, int minute) {
    kept("/api/jobs/{id}/pins", {{"operation", operation}, {"day", "2026-02-11"}, {"minute", minute}}, one.job);
  };
  const auto starts = [&](const Json& answer, const std::string& operation) {
    const Json name = work(answer, operation).at("operation");
    for (const Json& planned : answer.at("plan").at("operations")) {
      if (planned.at("operation") == name) return planned.at("starts");
    }
    return Json();
  };
  const Json wanted{{"day", "2026-02-11"}, {"minute", 870}};
  pin("slacken_strings", 870);
  EXPECT_EQ(starts(bench(), "slacken_strings"), wanted);
  EXPECT_EQ(work(bench(), "slacken_strings").at("pinned"), wanted);

  pin("string_up", 545);  // before what comes before it
  const Json clash = bench();
  EXPECT_EQ(clash.at("trouble"), "");
  EXPECT_EQ(starts(clash, "slacken_strings"), wanted) << "the older pin stands";
  ASSERT_EQ(clash.at("pins_let_go").size(), 1U);
  EXPECT_EQ(clash.at("pins_let_go")[0].at("operation"), work(clash, "string_up").at("operation"));
  EXPECT_NE(clash.at("pins_let_go")[0].at("why").get<std::string>().find("cannot have ended by then"),
            std::string::npos);
  EXPECT_EQ(done("GET", "/api/bench/promises").at("instruments").size(), 1U) << "and a day can be promised";
  kept("/api/jobs/{id}/pins", {{"operation", "string_up"}}, one.job);
  EXPECT_TRUE(bench().at("pins_let_go").empty());
  EXPECT_EQ(refusal("/api/jobs/{id}/pins", {{"operation", "slacken_strings"}, {"day", "2026-02-10"}, {"minute", 540}},
                    one.job),
            "day: 2026-02-10 minute 540 is past");
}

TEST_F(BenchShop, one_more_is_tried_without_being_kept) {
  agreed("the old one", "neck_reset");
  const auto other = offered("the new one", "set_up");
  EXPECT_EQ(bench().at("plan").at("instruments").size(), 1U);
  EXPECT_EQ(bench(other.visit).at("plan").at("instruments").size(), 2U);
  EXPECT_EQ(bench().at("left_out").at(0).at("could_be_taken"), true);
  const Json promises = done("GET", "/api/bench/promises", {.query = {{"with_visit", std::to_string(other.visit)}}});
  EXPECT_EQ(promises.at("instruments").size(), 2U);
}

TEST_F(BenchShop, the_longer_search_costs_no_more_than_the_first_answer) {
  for (int i = 0; i < 6; ++i) agreed("number " + std::to_string(i), i % 2 == 0 ? "back_brace" : "neck_reset");
  const Json first = bench();
  const Json improved = done("GET", "/api/bench/improved");
  EXPECT_LE(improved.at("plan").at("cost").at("total").get<double>(),
            first.at("plan").at("cost").at("total").get<double>());
  EXPECT_GT(improved.at("plan").at("plans"), first.at("plan").at("plans"));
  EXPECT_LE(bench().at("plan").at("cost").at("total").get<double>(),
            improved.at("plan").at("cost").at("total").get<double>())
      << "the next answer starts from the better plan";
}

TEST_F(BenchShop, a_promise_that_must_move_is_said) {
  const auto one = agreed("the old one", "neck_reset");
  kept("/api/visits/{id}/promises", {{"ready_on", "2026-02-11"}, {"chance", 0.8}, {"said_on", "2026-02-10"}},
       one.visit);
  const Json moved = bench().at("plan").at("moved_promises");
  ASSERT_EQ(moved.size(), 1U);
  EXPECT_TRUE(moved.at(0).get<std::string>().starts_with("\"the old one\" moves from 2026-02-11 to "));
  EXPECT_EQ(bench().at("instruments").at(0).at("promised"), "2026-02-11");
}

TEST_F(BenchShop, work_that_fits_no_day_is_left_out_and_the_rest_is_planned) {
  agreed("the old one", "back_brace");
  agreed("the other one", "tuner_bushings");
  Json settings = done("GET", "/api/shop/settings");
  Json hours = Json::array();
  for (int weekday = 1; weekday <= 5; ++weekday)
    hours.push_back({{"weekday", weekday}, {"from_minute", 540}, {"to_minute", 575}});
  settings["people"][0]["hours"] = hours;
  done("PUT", "/api/shop/settings", {.body = settings.dump()});
  const Json answer = bench();
  EXPECT_EQ(answer.at("trouble"), "");
  ASSERT_EQ(answer.at("plan").at("instruments").size(), 1U);
  EXPECT_EQ(answer.at("plan").at("instruments").at(0).at("name"), "the other one");
  EXPECT_EQ(answer.at("instruments").size(), 1U);
  ASSERT_EQ(answer.at("left_out").size(), 1U);
  EXPECT_EQ(answer.at("left_out").at(0).at("instrument"), "the old one");
  EXPECT_NE(answer.at("left_out").at(0).at("why").get<std::string>().find("fits no day"), std::string::npos);
  EXPECT_FALSE(answer.at("left_out").at(0).at("could_be_taken"));
  for (const Json& work : answer.at("work")) EXPECT_EQ(work.at("instrument"), "the other one");
  EXPECT_EQ(done("GET", "/api/bench/promises").at("instruments").size(), 1U);
}

TEST_F(BenchShop, the_diary_has_promises_and_cures_that_run_and_changes_only_with_the_facts) {
  setenv("TZ", "UTC", 1);
  tzset();
  const auto one = agreed("the old one", "back_brace");
  EXPECT_EQ(diary().find("VEVENT"), std::string::npos);
  const auto promise = [&](const std::string& ready_on) {
    kept("/api/visits/{id}/promises", {{"ready_on", ready_on}, {"chance", 0.8}, {"said_on", "2026-02-10"}}, one.visit);
  };
  promise("2026-02-20");
  const std::string first = diary();
  EXPECT_EQ(line_of(first, "SUMMARY"), "SUMMARY:Promised: the old one");
  EXPECT_EQ(line_of(first, "SEQUENCE"), "SEQUENCE:0");
  EXPECT_EQ(line_of(first, "DTSTART;VALUE=DATE"), "DTSTART;VALUE=DATE:20260220");
  EXPECT_EQ(first.find("A. Player"), std::string::npos) << "no owner in a file that others can read";
  minute_ = 700;
  EXPECT_EQ(diary(), first) << "no clock is in it";

  promise("2026-02-25");
  const std::string moved = diary();
  EXPECT_EQ(line_of(moved, "UID"), line_of(first, "UID"));
  EXPECT_EQ(line_of(moved, "SEQUENCE"), "SEQUENCE:1");
  EXPECT_EQ(line_of(moved, "DTSTART;VALUE=DATE"), "DTSTART;VALUE=DATE:20260225");

  const int spell = kept("/api/jobs/{id}/work", {{"operation", "reglue_back_brace"}, {"person", "me"}}, one.job);
  minute_ = 730;
  kept("/api/work/{id}/end", {{"finished", true}, {"minutes", 30}}, spell);
  const std::string curing = diary();
  const std::string cure = curing.substr(curing.rfind("BEGIN:VEVENT"));
  EXPECT_EQ(line_of(cure, "UID").find("UID:cure-" + std::to_string(spell) + "@"), 0U);
  EXPECT_EQ(line_of(cure, "DTSTAMP"), "DTSTAMP:20260210T121000Z");
  const Json wait = work(bench(), "reglue_back_brace").at("wait_ends");
  const int hour = wait.at("minute").get<int>() / 60, minute = wait.at("minute").get<int>() % 60;
  char ends[32];
  std::snprintf(ends, sizeof ends, "T%02d%02d00Z", hour, minute);
  EXPECT_TRUE(line_of(cure, "DTSTART").ends_with(ends)) << line_of(cure, "DTSTART");
}

TEST_F(BenchShop, the_air_of_today_and_of_days_to_come_is_told_and_holds_spraying_back) {
  agreed("the old one", "refinish");
  kept("/api/shop-air", {{"day", "2026-02-10"}, {"temperature_c", 20}, {"relative_humidity", 0.5}});
  kept("/api/shop-air",
       {{"day", "2026-02-11"}, {"temperature_c", 20}, {"relative_humidity", 0.72}, {"forecast", true}});
  const Json answer = bench();
  EXPECT_EQ(answer.at("air").size(), 2U);
  ASSERT_EQ(answer.at("held_by_air").size(), 1U);
  EXPECT_EQ(answer.at("held_by_air").at(0).at("day"), "2026-02-11");
}

}  // namespace
}  // namespace tailblock

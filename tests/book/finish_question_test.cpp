#include "book/finish_question.h"

#include <gtest/gtest.h>

#include "book/cleats_question.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;

std::string_view text_of(std::string_view path) {
  static std::vector<std::unique_ptr<std::string>> texts;
  return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
}

const DataTables& tables_of_the_trade() {
  static const DataTables tables = load_data_tables(text_of);
  return tables;
}

/// A guitar whose later finish is taken off and sprayed anew, on a Wednesday.
struct BookWithFinish : testing::TestBook {
  Date today = day(2025, 8, 20);
  RecordId job = book.keep(Job{.visit_id = visit, .procedure = "refinish"});
  ShopSettings settings = shop_settings(book, {});

  void read_air(double celsius_degrees, double humidity, int minute, bool forecast = false, int days = 0) {
    book.add(ShopAir{.day = today + std::chrono::days(days),
                     .minute = minute,
                     .temperature_c = celsius_degrees,
                     .relative_humidity = humidity,
                     .forecast = forecast});
  }
  void work(const std::string& operation, int from, int until, int days = 0) {
    const Date on = today + std::chrono::days(days);
    const RecordId spell = book.begin_work(
        {.job_id = job, .operation = operation, .person = "Ada", .began_on = on, .began_minute = from});
    book.end_work(spell, {.day = on, .minute = until});
  }
  [[nodiscard]] FinishAnswer ask(const FinishWishes& wishes = {}, int minute = 10 * 60, int days = 0) const {
    const Moment now{today + std::chrono::days(days), minute};
    const InstrumentStory story = book.story(instrument);
    const RepairTables& repairs = tables_of_the_trade().repairs;
    return finish_answer(job_plans(book.visit_work(visit), story, repairs, now), story, book.visit_story(visit),
                         book.survey(visit), book.shop_air(now.day), settings, repairs, wishes, now);
  }
};

TEST(FinishQuestion, without_air_read_today_says_nothing_of_a_coat) {
  BookWithFinish test;
  EXPECT_FALSE(test.ask().result);
  test.read_air(21, 0.45, 9 * 60, true);
  test.read_air(21, 0.45, 9 * 60, false, -1);
  test.read_air(21, 0.45, 11 * 60);
  EXPECT_FALSE(test.ask().result) << "a forecast, yesterday's air and air to come are no reading of now";
}

TEST(FinishQuestion, takes_the_latest_air_read_today_and_says_how_old_it_is) {
  BookWithFinish test;
  test.read_air(21, 0.80, 8 * 60);
  test.read_air(21, 0.35, 9 * 60 + 30);
  const FinishAnswer answer = test.ask();
  ASSERT_TRUE(answer.result);
  EXPECT_EQ(answer.result->verdict, CoatVerdict::free);
  EXPECT_EQ(answer.air_age_minutes, 30);
  const FinishAnswer later = test.ask({}, 13 * 60);
  EXPECT_NE(std::ranges::find(later.assumed, "The air is as it was 3 h ago: read it again before a coat"),
            later.assumed.end());
}

TEST(FinishQuestion, damp_air_stops_the_coat_that_dry_air_lets_go) {
  BookWithFinish test;
  test.read_air(21, 0.85, 9 * 60);
  EXPECT_EQ(test.ask().result->verdict, CoatVerdict::stop);
  EXPECT_EQ(test.ask().result->coats_today, 0);
}

TEST(FinishQuestion, coats_and_the_last_of_them_are_those_of_the_work_done) {
  BookWithFinish test;
  test.read_air(21, 0.40, 9 * 60);
  const int planned = test.ask({.finish = "nc_lacquer"}).request.coats_wanted;
  EXPECT_GE(planned, 8);
  EXPECT_EQ(test.ask({.finish = "nc_lacquer"}).request.coats_done, 0);
  EXPECT_FALSE(test.ask({.finish = "nc_lacquer"}).request.hours_since_last_coat);
  test.work("spray_lacquer_coat", 8 * 60, 8 * 60 + 30);
  const FinishAnswer answer = test.ask({.finish = "nc_lacquer"});
  EXPECT_EQ(answer.request.coats_done, 1);
  EXPECT_DOUBLE_EQ(answer.request.hours_since_last_coat.value(), 1.5);
  EXPECT_EQ(answer.request.coats_wanted, planned);
  EXPECT_EQ(test.ask({.finish = "nc_lacquer", .hours_since_last_coat = 30}).request.hours_since_last_coat, 30);
}

TEST(FinishQuestion, the_hours_left_are_the_shops_own) {
  BookWithFinish test;
  EXPECT_DOUBLE_EQ(test.ask().request.hours_left_today, 7.5) << "half past five is the usual end";
  EXPECT_DOUBLE_EQ(test.ask({}, 18 * 60).request.hours_left_today, 0);
  EXPECT_DOUBLE_EQ(test.ask({}, 10 * 60, 3).request.hours_left_today, 0) << "a Saturday";
  test.settings.people.at(0).days_off = {{test.today}};
  EXPECT_DOUBLE_EQ(test.ask().request.hours_left_today, 0);
}

TEST(FinishQuestion, what_may_come_off_counts_what_came_off_already) {
  BookWithFinish test;
  Reading found = test.reading("top_thickness", 2.90, 0, "magnetic_thickness_gauge");
  test.book.add(std::vector{found});
  const double before = in_mm(test.ask().thickness.at(0).may_come_off);
  found.value = 2.86;
  found.state = ReadingState::as_left;
  test.book.add(std::vector{found});
  const FinishAnswer answer = test.ask();
  ASSERT_EQ(answer.thickness.size(), 1U);
  EXPECT_EQ(answer.request.thickness.at(0).before, mm(2.90));
  EXPECT_LT(in_mm(answer.thickness.at(0).may_come_off), before);
  EXPECT_FALSE(answer.result) << "the budget needs no air";
}

TEST(FinishQuestion, a_plate_read_at_a_finding_is_a_place_of_its_own) {
  BookWithFinish test;
  test.book.add(Finding{.visit_id = test.visit,
                        .kind = "finish_chip",
                        .view = DrawingView::front,
                        .shape = FindingShape::area,
                        .points = {{mm(300), mm(40)}, {mm(310), mm(40)}, {mm(305), mm(50)}},
                        .place = "lower bout",
                        .extents = {{.measure = "thickness_here", .value = mm(2.1)}}});
  const FinishAnswer answer = test.ask();
  ASSERT_EQ(answer.thickness.size(), 1U);
  EXPECT_EQ(answer.thickness[0].where, "Finding 1, finish chipped, lower bout");
  EXPECT_EQ(in_mm(answer.thickness[0].may_come_off), 0) << "under 2.2 mm nothing comes off";
}

TEST(FinishQuestion, an_unknown_finish_is_refused_by_name) {
  BookWithFinish test;
  EXPECT_THROW((void)test.ask({.finish = "egg"}), Refused);
}

/// A guitar with one crack drawn on it.
struct BookWithCrack : testing::TestBook {
  Finding crack{.visit_id = visit,
                .kind = "crack",
                .view = DrawingView::front,
                .shape = FindingShape::line,
                .points = {{mm(250), mm(95)}, {mm(430), mm(95)}},
                .place = "lower bout, treble side"};

  [[nodiscard]] std::vector<CrackWithCleats> cracks() const {
    return cleats_answer(book.story(instrument), book.survey(visit), tables_of_the_trade(), day(2025, 8, 20)).cracks;
  }
};

TEST(CleatsQuestion, an_open_crack_of_the_survey_gets_its_cleats) {
  BookWithCrack test;
  test.crack.id = test.book.add(test.crack);
  const auto cracks = test.cracks();
  ASSERT_EQ(cracks.size(), 1U);
  EXPECT_EQ(cracks[0].finding_id, test.crack.id);
  EXPECT_EQ(cracks[0].words, "crack, lower bout, treble side");
  EXPECT_EQ(cracks[0].inside, DrawingView::top_inside);
  ASSERT_TRUE(cracks[0].result) << cracks[0].refused;
  EXPECT_GE(cracks[0].result->cleats.size(), 2U);
  EXPECT_EQ(cracks[0].result->crack_length, mm(180));
}

TEST(CleatsQuestion, the_plate_read_beside_the_crack_decides_the_thickness) {
  BookWithCrack test;
  test.crack.extents = {{.measure = "thickness_at_crack", .value = mm(2.4)}};
  test.book.add(test.crack);
  test.book.add(std::vector{test.reading("top_thickness", 3.5, 0, "magnetic_thickness_gauge")});
  const CrackWithCleats crack = test.cracks().at(0);
  EXPECT_EQ(crack.request.plate_thickness, mm(2.4));
  EXPECT_NEAR(in_mm(crack.result->thickness), 0.7 * (2.4 - 0.08), 1e-9);
}

TEST(CleatsQuestion, a_back_has_its_own_bars_and_its_own_thickness) {
  BookWithCrack test;
  test.crack.view = DrawingView::back_inside;
  test.book.add(test.crack);
  const CrackWithCleats crack = test.cracks().at(0);
  ASSERT_TRUE(crack.result) << crack.refused;
  EXPECT_EQ(crack.request.braces.size(), 6U) << "four bars and two blocks";
  EXPECT_EQ(crack.inside, DrawingView::back_inside);
  EXPECT_EQ(crack.result->held_by, (std::vector<std::string>{"third back bar", "lower back bar"}));
  EXPECT_NEAR(in_mm(crack.result->thickness), 0.7 * (2.5 - 0.08), 1e-9) << "as a back is usually built";
}

TEST(CleatsQuestion, the_block_at_the_tail_holds_a_crack_and_takes_no_cleat) {
  for (const DrawingView inside : {DrawingView::top_inside, DrawingView::back_inside}) {
    BookWithCrack test;
    test.crack.view = inside;
    test.crack.points = {{mm(440), mm(3)}, {mm(488), mm(3)}};
    test.book.add(test.crack);
    const CrackWithCleats crack = test.cracks().at(0);
    ASSERT_TRUE(crack.result) << crack.refused;
    const auto block = std::ranges::find(crack.request.braces, "tail block", &HoldingStrip::name);
    ASSERT_NE(block, crack.request.braces.end());
    EXPECT_EQ(crack.result->held_by, std::vector<std::string>{"tail block"});
    for (const CleatShown& cleat : crack.result->cleats) {
      EXPECT_LE(cleat.x + crack.result->along_crack / 2, block->from_x - block->width / 2);
    }
  }
}

TEST(CleatsQuestion, what_lies_on_a_side_or_wants_no_cleats_is_left_out) {
  BookWithCrack test;
  test.crack.view = DrawingView::bass_side;
  test.book.add(test.crack);
  EXPECT_TRUE(test.cracks().empty());
  test.crack.view = DrawingView::front;
  test.crack.kind = "finish_chip";
  test.book.add(test.crack);
  EXPECT_TRUE(test.cracks().empty());
}

TEST(CleatsQuestion, unknown_bracing_is_said_and_nothing_is_placed) {
  BookWithCrack test;
  Instrument own = test.book.instrument(test.instrument);
  own.design.bracing = Bracing::other;
  test.book.keep(own);
  test.book.add(test.crack);
  EXPECT_FALSE(test.cracks().at(0).result);
  EXPECT_EQ(test.cracks().at(0).refused,
            "Its bracing is recorded as other than X, ladder or fan: where its braces lie is not known.");
}

TEST(CleatsQuestion, a_crack_drawn_off_the_plate_is_refused_in_words) {
  BookWithCrack test;
  test.crack.points = {{mm(250), mm(230)}, {mm(430), mm(230)}};
  test.book.add(test.crack);
  EXPECT_FALSE(test.cracks().at(0).result);
  EXPECT_EQ(test.cracks().at(0).refused, "from_x_mm: the crack leaves the plate");
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include "book/book.h"
#include "book/diagnosis_question.h"
#include "book/follow_question.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;

/// An instrument read in two visits half a year apart.
struct BookOfVisits : testing::TestBook {
  std::vector<std::unique_ptr<std::string>> texts;
  DataTables data = load_data_tables([this](std::string_view path) -> std::string_view {
    return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
  });
  EnvelopeMemo memo;
  RecordId second = book.keep(Visit{.instrument_id = instrument, .date = day(2026, 2, 20)});

  void read(RecordId at, const std::string& measure, double value, ReadingState state = ReadingState::as_found) {
    Reading one = reading(measure, value, at, measure == "body_humidity" ? "hygrometer" : "ruler_64ths");
    one.state = state;
    one.gauge_sd = 0;
    book.add({one});
  }
  [[nodiscard]] FollowAnswer foretold() { return follow_answer(book.story(instrument), second, {}, data); }
  [[nodiscard]] DiagnosisAnswer diagnosed() {
    return diagnosis_answer(book.story(instrument), book.visit_work(second), book.survey(second), {}, data, memo);
  }
};

TEST(Foretold, nothing_without_a_reading_before) {
  BookOfVisits shop;
  shop.read(shop.second, "action12_bass", 2.4);
  const FollowAnswer answer = shop.foretold();
  EXPECT_TRUE(answer.heights.empty());
  EXPECT_EQ(answer.verdict, "Nothing was foretold for this day: no visit before it read the strings at fret 12.");
}

TEST(Foretold, is_what_the_season_says_from_the_visits_before_alone) {
  BookOfVisits shop;
  shop.read(shop.visit, "action12_bass", 2.4);
  const YearResult alone = year({.instrument = response_request(shop.book.story(shop.instrument), {}, day(2026, 2, 20)),
                                 .first = day(2026, 2, 20),
                                 .count = 1,
                                 .limits = {}},
                                shop.data.season());
  for (const double read : {1.0, 2.3, 4.0}) {
    BookOfVisits other;
    other.read(other.visit, "action12_bass", 2.4);
    other.read(other.second, "action12_bass", read);
    const FollowAnswer answer = other.foretold();
    ASSERT_EQ(answer.heights.size(), 1U);
    EXPECT_EQ(answer.heights[0].foretold_mm.median, alone.bass.median_mm.at(0)) << "today's reading may not count";
    EXPECT_EQ(answer.heights[0].fell, read < 2   ? Foretold::lower
                                      : read > 3 ? Foretold::higher
                                                 : Foretold::as_foretold)
        << read << " mm, foretold " << answer.heights[0].foretold_mm.low << " to "
        << answer.heights[0].foretold_mm.high;
  }
}

TEST(Foretold, is_held_against_what_was_found_not_what_was_left) {
  BookOfVisits shop;
  shop.read(shop.visit, "action12_bass", 2.4);
  shop.read(shop.second, "action12_bass", 1.5, ReadingState::as_left);
  EXPECT_EQ(shop.foretold().verdict, "Read the strings at fret 12 as found, to see whether it moved as foretold.");
  shop.read(shop.second, "action12_bass", 4.0);
  EXPECT_EQ(shop.foretold().verdict, "It did not move as foretold: bass higher than the season accounts for.");
}

const GivenReading* given(const DiagnosisAnswer& answer, std::string_view measure) {
  const auto& readings = answer.request.readings;
  const auto found = std::ranges::find(readings, measure, &GivenReading::measure);
  return found == readings.end() ? nullptr : &*found;
}

TEST(DiagnosisQuestion, is_built_from_the_records_and_feeds_the_seasons_answer) {
  BookOfVisits shop;
  shop.read(shop.visit, "action12_bass", 2.4);
  shop.read(shop.visit, "action12_treble", 2.0);
  shop.read(shop.second, "action12_bass", 3.6);
  shop.read(shop.second, "action12_treble", 3.0);
  const DiagnosisAnswer answer = shop.diagnosed();
  ASSERT_NE(given(answer, "action12_bass"), nullptr);
  EXPECT_EQ(given(answer, "action12_bass")->value, 3.6);
  EXPECT_EQ(given(answer, "action12_bass")->earlier, 2.4);
  for (const char* figure :
       {"season_swing", "season_unexplained", "something_else", "worst_reach", "clean_action_room"}) {
    EXPECT_NE(given(answer, figure), nullptr) << figure;
  }
  EXPECT_GT(given(answer, "something_else")->value, 0.5) << "1.2 mm in half a year is not the season alone";
}

TEST(DiagnosisQuestion, takes_the_open_findings_with_what_was_read_at_them) {
  BookOfVisits shop;
  const RecordId crack = shop.book.add(Finding{.visit_id = shop.visit,
                                               .kind = "crack",
                                               .view = DrawingView::front,
                                               .shape = FindingShape::line,
                                               .points = {{mm(300), mm(-60)}, {mm(360), mm(-60)}},
                                               .extents = {{.measure = "crack_width", .value = mm(0.1)}}});
  shop.book.add(FindingChange{.visit_id = shop.second,
                              .finding_id = crack,
                              .state = FindingState::grown,
                              .extents = {{.measure = "crack_width", .value = mm(0.4)}}});
  const DiagnosisAnswer answer = shop.diagnosed();
  ASSERT_EQ(answer.request.findings.size(), 1U);
  EXPECT_EQ(answer.request.findings[0].kind, "crack");
  EXPECT_NEAR(answer.request.findings[0].readings.at(0).value, 0.4, 1e-12);

  const RecordId job = shop.book.keep(Job{.visit_id = shop.second, .finding_id = crack, .procedure = "top_crack"});
  const JobStory story = shop.book.job_story(job);
  ASSERT_EQ(story.at_finding.size(), 1U);
  EXPECT_NEAR(in_mm(story.at_finding[0].value), 0.4, 1e-12) << "what was read last";
}

TEST(DiagnosisQuestion, says_what_it_had_to_leave_out) {
  BookOfVisits shop;
  const DiagnosisAnswer answer = shop.diagnosed();
  EXPECT_EQ(given(answer, "worst_reach"), nullptr);
  EXPECT_NE(std::ranges::find(answer.assumed, "Clearance left out: the action at fret 12, bass, was not read"),
            answer.assumed.end());
}

TEST(DiagnosisQuestion, takes_the_latest_of_what_was_said) {
  BookOfVisits shop;
  const auto say = [&](SaidAbout about, const std::string& name, bool holds) {
    shop.book.add(SaidAtVisit{
        .visit_id = shop.second, .about = about, .name = name, .holds = holds, .day = day(2026, 2, 20), .who = "Ada"});
  };
  say(SaidAbout::symptom, "buzz", true);
  say(SaidAbout::symptom, "twist", true);
  say(SaidAbout::symptom, "twist", false);
  say(SaidAbout::fact, "driven_hard", true);
  say(SaidAbout::fact, "driven_hard", false);
  const DiagnosisAnswer answer = shop.diagnosed();
  EXPECT_EQ(answer.request.symptoms, std::vector<std::string>{"buzz"});
  ASSERT_EQ(answer.request.facts.size(), 1U);
  EXPECT_FALSE(answer.request.facts[0].holds);
}

}  // namespace
}  // namespace tailblock

#include <gtest/gtest.h>

#include <algorithm>

#include "book/questions.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;

const DataTables& tables() {
  static std::map<std::string, std::string, std::less<>> texts;
  static const DataTables loaded = load_data_tables([](std::string_view path) -> std::string_view {
    return texts[std::string(path)] = testing::repository_file(std::string(path));
  });
  return loaded;
}

Reading read(const std::string& measure, double value, double sd = 0.15) {
  return {.visit_id = 1, .measure = measure, .value = value, .gauge = "x", .gauge_sd = sd};
}

/// One visit in February with both sides read.
InstrumentStory story() {
  InstrumentStory of;
  of.instrument.scale_length = mm(645);
  of.home.air.temperature_c = {20, 20, 20, 20, 21, 23, 24, 24, 22, 20, 20, 20};
  of.home.air.relative_humidity = {.24, .25, .29, .35, .45, .54, .57, .56, .50, .41, .32, .26};
  VisitStory visit;
  visit.visit = {.id = 1, .date = day(2026, 2, 10)};
  visit.readings = {read("action12_bass", 3.4, 0.05), read("action12_treble", 2.9, 0.05),
                    read("saddle_exposure_bass", 2.0), read("saddle_exposure_treble", 1.8), read("relief", 0.2)};
  of.visits = {visit};
  return of;
}

const Date today = day(2026, 2, 20);

bool says(const std::vector<std::string>& list, std::string_view words) {
  return std::any_of(list.begin(), list.end(),
                     [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

TEST(IntonationQuestion, puts_crests_where_slot_and_saddle_were_measured) {
  InstrumentStory of = story();
  auto& readings = of.visits[0].readings;
  readings.push_back(read("slot_front_bass", 325.5));
  readings.push_back(read("slot_front_treble", 323.5));
  readings.push_back(read("saddle_thickness", 2.4));
  for (int n = 1; n <= 6; ++n) readings.push_back(read("crest_" + std::to_string(n), 0.5 + 0.2 * n));
  const IntonationAnswer answer = intonation_answer(of, tables(), {}, today);
  ASSERT_TRUE(answer.request.saddle.has_value());
  EXPECT_NEAR(in_mm(answer.request.saddle->front_bass), 3.0, 1e-9);  // half of 645 is 322.5
  EXPECT_NEAR(in_mm(answer.request.saddle->front_treble), 1.0, 1e-9);
  EXPECT_NEAR(in_mm(answer.request.saddle->thickness), 2.4, 1e-9);
  ASSERT_EQ(answer.request.setbacks_mm.size(), 6U);
  EXPECT_NEAR(answer.request.setbacks_mm[0], 1.0 + 0.7, 1e-9);
  EXPECT_NEAR(answer.request.setbacks_mm[5], 3.0 + 1.7, 1e-9);
  EXPECT_NEAR(answer.request.setbacks_mm[2], 1.0 + 2.0 * 2 / 5 + 1.1, 1e-9);
  EXPECT_FALSE(says(answer.assumed, "Crests"));
  EXPECT_TRUE(answer.result.slot.has_value());
}

TEST(IntonationQuestion, says_what_was_not_measured) {
  const IntonationAnswer answer = intonation_answer(story(), tables(), {}, today);
  EXPECT_FALSE(answer.result.slot.has_value());
  EXPECT_TRUE(says(answer.assumed, "the front of the slot was not read"));
  InstrumentStory of = story();
  of.visits[0].readings.push_back(read("slot_front_bass", 325.5));
  of.visits[0].readings.push_back(read("slot_front_treble", 323.5));
  const IntonationAnswer half = intonation_answer(of, tables(), {}, today);
  EXPECT_TRUE(says(half.assumed, "taken to stand in the middle of the saddle's top"));
  EXPECT_TRUE(says(half.assumed, "3.00 mm thick assumed"));
}

TEST(IntonationQuestion, an_octave_error_counts_until_the_next_work) {
  InstrumentStory of = story();
  of.visits[0].readings.push_back(read("octave_error_6", 4, 1));
  EXPECT_EQ(intonation_answer(of, tables(), {}, today).request.octave_errors.size(), 1U);
  of.visits[0].interventions = {{.visit_id = 1, .kind = "new_saddle"}};
  const IntonationAnswer stale = intonation_answer(of, tables(), {}, today);
  EXPECT_TRUE(stale.request.octave_errors.empty());
  EXPECT_TRUE(says(stale.assumed, "string 6 was read before work was done"));
  // Read again after that work, as left, it counts; work at a later visit ends that.
  Reading left = read("octave_error_6", 1, 1);
  left.state = ReadingState::as_left;
  of.visits[0].readings.push_back(left);
  EXPECT_EQ(intonation_answer(of, tables(), {}, today).request.octave_errors.size(), 1U);
  VisitStory later;
  later.visit = {.id = 2, .date = day(2026, 2, 15)};
  later.interventions = {{.visit_id = 2, .kind = "rod_adjusted"}};
  of.visits.push_back(later);
  EXPECT_TRUE(intonation_answer(of, tables(), {}, today).request.octave_errors.empty());
  EXPECT_EQ(intonation_answer(of, tables(), {}, day(2026, 2, 12)).request.octave_errors.size(), 1U);
}

TEST(NeckQuestion, gives_the_heel_that_the_saddle_offers) {
  EnvelopeMemo memo;
  for (const double heel_mm : {95.0, 88.0}) {
    InstrumentStory of = story();
    of.visits[0].readings.push_back(read("heel_depth", heel_mm));
    const NeckAnswer neck = neck_answer(of, {}, tables(), memo, {}, today);
    const SaddleAnswer saddle = saddle_answer(of, {}, tables(), memo, {}, today);
    const SaddleOption& offer = saddle.result.options.at(static_cast<std::size_t>(SaddleChoice::neck_angle));
    ASSERT_EQ(neck.result.verdict, NeckVerdict::called_for) << neck.result.words;
    ASSERT_TRUE(offer.heel_removal.has_value()) << offer.why_not;
    EXPECT_NEAR(in_mm(neck.result.heel.back().remove), in_mm(*offer.heel_removal), 1e-9);
    EXPECT_NEAR(in_degrees(neck.result.turn), in_degrees(*offer.neck_turn), 1e-9);
    EXPECT_EQ(neck.result.heel.back().depth, mm(heel_mm));
  }
}

TEST(NeckQuestion, takes_a_wish_and_says_what_it_assumed) {
  EnvelopeMemo memo;
  const NeckAnswer plain = neck_answer(story(), {}, tables(), memo, {}, today);
  EXPECT_TRUE(says(plain.assumed, "Heel: 95.00 mm deep assumed"));
  NeckWishes wishes;
  wishes.exposure_wanted_bass = plain.request.bass.exposure_wanted + mm(1);
  wishes.exposure_wanted_treble = plain.request.treble.exposure_wanted + mm(1);
  const NeckAnswer taller = neck_answer(story(), {}, tables(), memo, wishes, today);
  EXPECT_NEAR(in_mm(taller.result.rise - plain.result.rise), 1, 1e-9);
  EXPECT_GT(in_mm(plain.request.bass.highest_over_mean), 0);
}

}  // namespace
}  // namespace tailblock

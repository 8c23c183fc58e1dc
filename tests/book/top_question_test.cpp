#include "book/top_question.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "book/questions.h"
#include "top_story.h"
#include "wood/equilibrium.h"

namespace tailblock {
namespace {

using testing::expect_refused;
using testing::found;

const DataTables& tables() { return testing::data_tables(); }

const Date today = testing::top_today;

Reading read(const std::string& measure, double value, double sd = 0.15) {
  return {.visit_id = 1, .measure = measure, .value = value, .gauge = "x", .gauge_sd = sd};
}

InstrumentStory story(std::vector<Reading> readings = {}) { return testing::top_story(std::move(readings)); }

TopAnswer asked(const InstrumentStory& of, const TopWishes& wishes = {}, const TopRecords& records = {}) {
  PlateMemo memo;
  return top_answer(of, records, tables(), memo, wishes, today);
}

bool says(const std::vector<std::string>& list, std::string_view words) {
  return std::ranges::any_of(list, [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

TEST(TopQuestion, takes_what_was_read_and_says_what_it_assumed) {
  const TopAnswer bare = asked(story());
  EXPECT_TRUE(says(bare.assumed, "Top thickness: 2.70 mm, as usual for its size"));
  EXPECT_TRUE(says(bare.assumed, "Strings over the top"));
  const TopAnswer known =
      asked(story({read("top_thickness", 3.1), read("bridge_thickness", 9.4), read("string_over_top", 12.5)}));
  EXPECT_EQ(known.thickness, mm(3.1));
  EXPECT_EQ(known.string_height_over_top, mm(12.5));
  EXPECT_EQ(known.recorded->numbers.design.bridge.body.thickness, mm(9.4));
  EXPECT_FALSE(says(known.assumed, "Top thickness"));
  EXPECT_GT(known.recorded->numbers.strings.stiffness_n_per_mm, bare.recorded->numbers.strings.stiffness_n_per_mm);
}

TEST(TopQuestion, gives_the_numbers_of_the_plate_model) {
  const InstrumentStory of = story({read("top_thickness", 2.9), read("string_over_top", 12.0)});
  const TopAnswer answer = asked(of);
  PlateRequest plain;
  std::vector<std::string> said;
  plain.top = *known_top(of, tables(), today, said);
  EXPECT_EQ(plain.top.drawn->thickness, mm(2.9));
  plain.strings = {.pull = answer.pull, .height_over_top = mm(12)};
  const double change = answer.air.moisture_percent - answer.air.settled_moisture_percent;
  plain.moisture = {change, change, change, change};
  const PlateResult model = plate(plain, tables().plate());
  EXPECT_DOUBLE_EQ(in_degrees(answer.recorded->numbers.strings.bridge_rotation),
                   in_degrees(model.strings.bridge_rotation));
  EXPECT_DOUBLE_EQ(in_mm(answer.recorded->numbers.moisture.saddle_rise), in_mm(model.moisture.saddle_rise));
}

TEST(TopQuestion, looks_at_the_driest_month_unless_asked_for_another_air) {
  const TopAnswer dry = asked(story());
  EXPECT_LT(dry.air.driest_month_humidity, 0.27);
  EXPECT_GT(dry.air.dampest_month_humidity, 0.53);
  EXPECT_DOUBLE_EQ(dry.air.humidity, dry.air.driest_month_humidity);
  EXPECT_LT(in_mm(dry.recorded->numbers.moisture.saddle_rise), -0.5);
  TopWishes wishes;
  wishes.relative_humidity = humidity_fraction(dry.air.settled_humidity);
  const TopAnswer still = asked(story(), wishes);
  EXPECT_NEAR(in_mm(still.recorded->numbers.moisture.saddle_rise), 0, 1e-6);
  wishes.relative_humidity = humidity_percent(60);
  EXPECT_DOUBLE_EQ(asked(story(), wishes).air.moisture_percent,
                   in_percent(equilibrium_moisture(celsius(20), humidity_percent(60))));
}

TEST(TopQuestion, a_loose_brace_is_a_second_state_on_the_same_places) {
  TopWishes wishes;
  wishes.loose_braces = {{.brace = "X leg to treble", .end = BraceEnd::second, .length = mm(80)}};
  const TopAnswer answer = asked(story(), wishes);
  ASSERT_TRUE(answer.changed.has_value());
  EXPECT_EQ(answer.changed->strings_height_mm.size(), answer.shape->x_mm.size());
  EXPECT_EQ(answer.shape->corners.size(), 3 * static_cast<std::size_t>(answer.recorded->numbers.triangles));
  EXPECT_LT(answer.changed->numbers.strings.stiffness_n_per_mm, answer.recorded->numbers.strings.stiffness_n_per_mm);
  EXPECT_EQ(answer.recorded->strings_height_mm, asked(story()).recorded->strings_height_mm);
  EXPECT_FALSE(asked(story()).changed.has_value());
}

TEST(TopQuestion, heavier_strings_turn_the_bridge_in_proportion_to_their_pull) {
  TopWishes wishes;
  wishes.string_set = "medium";
  const TopAnswer answer = asked(story(), wishes);
  EXPECT_GT(answer.pull_changed, answer.pull);
  EXPECT_NEAR(in_degrees(answer.changed->numbers.strings.bridge_rotation) /
                  in_degrees(answer.recorded->numbers.strings.bridge_rotation),
              in_newtons(answer.pull_changed) / in_newtons(answer.pull), 1e-9);
}

TEST(TopQuestion, an_unknown_bracing_calculates_nothing_until_one_is_chosen) {
  InstrumentStory of = story();
  of.instrument.design.bracing = Bracing::other;
  const TopAnswer nothing = asked(of);
  EXPECT_EQ(nothing.pattern, "");
  EXPECT_FALSE(nothing.recorded.has_value());
  EXPECT_EQ(nothing.patterns.size(), 4U);
  TopWishes wishes;
  wishes.bracing = "ladder";
  EXPECT_TRUE(asked(of, wishes).recorded.has_value());
}

TEST(TopQuestion, judges_the_tilt_that_was_read) {
  EXPECT_EQ(asked(story()).tilt_verdict, "");
  EXPECT_NE(asked(story({read("bridge_tilt", 1.5)})).tilt_verdict.find("within the"), std::string::npos);
  EXPECT_NE(asked(story({read("bridge_tilt", 4)})).tilt_verdict.find("more than the"), std::string::npos);
  EXPECT_NE(asked(story({read("bridge_tilt", -0.5)})).tilt_verdict.find("less than the"), std::string::npos);
}

// The mean of the triangles round a node cannot lie beyond them, and what is left out is left out.
TEST(TopQuestion, the_greatest_pull_across_the_grain_lies_off_bridge_and_edges) {
  const TopAnswer answer = asked(story());
  const GreatestAcross& greatest = answer.recorded->greatest_across;
  EXPECT_GT(greatest.mpa, 0);
  EXPECT_LE(greatest.mpa, *std::ranges::max_element(answer.recorded->across_mpa) + 1e-3);
  const CrossPiece& bridge = answer.recorded->numbers.design.bridge.body;
  const bool under_bridge = greatest.x > bridge.front_x && greatest.x < bridge.front_x + bridge.depth &&
                            std::abs(in_mm(greatest.y)) < in_mm(bridge.span) / 2;
  EXPECT_FALSE(under_bridge);
}

const DrawingPoint crack_from{mm(345), mm(25)}, crack_to{mm(470), mm(25)};

TEST(TopQuestion, a_crack_that_was_found_is_in_the_top_as_recorded_and_out_of_the_mended_one) {
  TopWishes wishes;
  wishes.mended = true;
  const TopRecords records =
      testing::top_records_of({found("crack", DrawingView::front, {crack_from, crack_to})});
  const TopAnswer cracked = asked(story(), wishes, records), sound = asked(story());
  const double stiff = sound.recorded->numbers.strings.stiffness_n_per_mm;
  EXPECT_LT(cracked.recorded->numbers.strings.stiffness_n_per_mm, stiff);
  ASSERT_TRUE(cracked.changed.has_value());
  // The crack's line in the mesh moves its nodes.
  EXPECT_NEAR(cracked.changed->numbers.strings.stiffness_n_per_mm / stiff, 1, 0.002);
  EXPECT_EQ(cracked.changed->strings_height_mm.size(), cracked.shape->x_mm.size());
  EXPECT_LT(cracked.changed->numbers.nodes, cracked.recorded->numbers.nodes) << "the crack's edges are parted";
  EXPECT_EQ(cracked.survey.taken.size(), 1U);
  EXPECT_EQ(cracked.survey.seen_on, testing::top_visit_day);
}

TEST(TopQuestion, both_edges_of_a_mended_crack_stand_equally_high) {
  TopWishes wishes;
  wishes.mended = true;
  const TopAnswer answer =
      asked(story(), wishes, testing::top_records_of({found("crack", DrawingView::front, {crack_from, crack_to})}));
  int twins = 0;
  double widest = 0;
  for (std::size_t a = 0; a < answer.shape->x_mm.size(); ++a) {
    for (std::size_t b = a + 1; b < answer.shape->x_mm.size(); ++b) {
      if (answer.shape->x_mm[a] != answer.shape->x_mm[b] || answer.shape->y_mm[a] != answer.shape->y_mm[b]) continue;
      ++twins;
      EXPECT_EQ(answer.changed->strings_height_mm[a], answer.changed->strings_height_mm[b]);
      widest = std::max(widest, std::abs(answer.recorded->strings_height_mm[a] - answer.recorded->strings_height_mm[b]));
    }
  }
  EXPECT_GT(twins, 5);
  EXPECT_GT(widest, 1e-3) << "the edges of the open one do not";
}

TEST(TopQuestion, a_loose_brace_that_was_found_counts_like_one_that_is_asked_for) {
  TopWishes wishes;
  wishes.loose_braces = {{.brace = "X leg to treble", .end = BraceEnd::first, .length = mm(80)}};
  const TopAnswer sound = asked(story(), wishes);
  const TopDesign& design = sound.recorded->numbers.design;
  FindingStory loose = found("brace_loose", DrawingView::top_inside,
                             {testing::on_brace(design, "X leg to treble", 0), testing::on_brace(design, "X leg to treble", 80)});
  loose.finding.part = "X leg to treble";
  wishes.loose_braces.clear();
  wishes.mended = true;
  const TopAnswer damaged = asked(story(), wishes, testing::top_records_of({loose}));
  EXPECT_NEAR(damaged.recorded->numbers.strings.stiffness_n_per_mm, sound.changed->numbers.strings.stiffness_n_per_mm,
              1e-6);
  EXPECT_NEAR(damaged.changed->numbers.strings.stiffness_n_per_mm, sound.recorded->numbers.strings.stiffness_n_per_mm,
              1e-6);
}

TEST(TopQuestion, what_is_asked_for_comes_on_top_of_what_was_found) {
  const TopRecords records = testing::top_records_of(
      {testing::read_at(found("bridge_lifting", DrawingView::front, {{mm(310), mm(-60)}, {mm(310), mm(-40)}}),
                        "bridge_lift_depth", 5)});
  TopWishes wishes;
  wishes.loose_braces = {{.brace = "X leg to treble", .end = BraceEnd::second, .length = mm(80)}};
  const TopAnswer both = asked(story(), wishes, records), loose_alone = asked(story(), wishes);
  EXPECT_LT(both.changed->numbers.strings.stiffness_n_per_mm, both.recorded->numbers.strings.stiffness_n_per_mm);
  EXPECT_LT(both.changed->numbers.strings.stiffness_n_per_mm, loose_alone.changed->numbers.strings.stiffness_n_per_mm);
}

TEST(TopQuestion, another_thickness_thins_a_measured_top_in_proportion) {
  const TopRecords records = testing::top_records_of(
      {testing::read_at(found("plate_thin", DrawingView::front,
                              {{mm(380), mm(40)}, {mm(380), mm(90)}, {mm(430), mm(90)}, {mm(430), mm(40)}}),
                        "thickness_here", 2.0)});
  TopWishes wishes;
  wishes.thickness = mm(2.2);
  const TopAnswer thin = asked(story(), wishes, records);
  EXPECT_LT(thin.recorded->numbers.strings.stiffness_n_per_mm, asked(story()).recorded->numbers.strings.stiffness_n_per_mm);
  EXPECT_LT(thin.changed->numbers.strings.stiffness_n_per_mm, asked(story(), wishes).changed->numbers.strings.stiffness_n_per_mm);
}

TEST(TopQuestion, its_own_lower_bout_scale_and_bridge_plate_make_it_its_own_top) {
  InstrumentStory of = story({read("bridge_plate_thickness", 3.4)});
  of.instrument.design.lower_bout_width = mm(370);
  of.instrument.scale_length = mm(630);
  const TopAnswer answer = asked(of), usual = asked(story());
  const TopDesign& own = answer.recorded->numbers.design;
  EXPECT_EQ(own.bridge_plate.thickness, mm(3.4));
  EXPECT_NEAR(2 * *std::ranges::max_element(answer.shape->y_mm), 370, 1.5);
  EXPECT_NEAR(in_mm(usual.recorded->numbers.design.bridge.saddle_x - own.bridge.saddle_x), 15 * std::pow(2, -14 / 12.0),
              1e-9);
  EXPECT_TRUE(says(answer.assumed, "stretched to its lower bout"));
}

TEST(TopQuestion, refuses_what_is_not_there_in_one_line) {
  TopWishes wishes;
  wishes.string_set = "barbed wire";
  EXPECT_THROW((void)asked(story(), wishes), Refused);
  wishes.string_set.reset();
  wishes.relative_humidity = humidity_percent(90);
  expect_refused(
      [&] { (void)asked(story(), wishes); },
      "relative_humidity: wood settled in 90 % would hold 12.9 percent more than in the mean of its home; the "
      "plate model is for up to 8");
  wishes.relative_humidity.reset();
  wishes.thickness = mm(0.2);
  expect_refused([&] { (void)asked(story(), wishes); }, "thickness_mm: 0.2 mm is outside 1..6 mm");
}

}  // namespace
}  // namespace tailblock

#include "book/surveyed_top.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "body/plate_figures.h"
#include "top_story.h"

namespace tailblock {
namespace {

using testing::data_tables;
using testing::day;
using testing::found;
using testing::read_at;
using testing::said_since;

constexpr DrawingView front = DrawingView::front, inside = DrawingView::top_inside;

TopDesign design() { return data_tables().tops.design(BodySize::mid_size, "x_scalloped"); }

DrawingPoint at(double x, double y) { return {mm(x), mm(y)}; }

SurveyedTop taken(std::vector<FindingStory> stories, std::vector<JobStory> jobs = {}) {
  TopRecords records = testing::top_records_of(std::move(stories));
  records.jobs = std::move(jobs);
  return surveyed_top(records, design(), data_tables());
}

FindingStory lower_bout_crack() { return found("crack", front, {at(350, 40), at(440, 42)}); }

TEST(SurveyedTop, a_top_that_was_never_here_has_nothing) {
  const SurveyedTop top = surveyed_top({}, design(), data_tables());
  EXPECT_FALSE(top.seen_on.has_value());
  EXPECT_TRUE(top.taken.empty());
}

TEST(SurveyedTop, a_crack_is_parted_along_its_drawn_line) {
  for (const DrawingView view : {front, inside}) {
    FindingStory crack = lower_bout_crack();
    crack.finding.view = view;
    crack.finding.opening = Opening::open;
    crack.finding.place = "lower bout, treble side";
    const SurveyedTop top = taken({crack});
    ASSERT_EQ(top.damage.cracks.size(), 1U);
    EXPECT_NEAR(in_mm(top.damage.cracks[0].from_x), 350, 1e-9);
    EXPECT_NEAR(in_mm(top.damage.cracks[0].to_y), 42, 1e-9);
    EXPECT_EQ(top.taken.at(0).words, "crack, lower bout, treble side: taken as parted over 90 mm");
    EXPECT_EQ(top.crack_numbers, std::vector<int>{crack.number});
    EXPECT_TRUE(top.not_used.empty());
  }
}

TEST(SurveyedTop, says_what_it_makes_of_a_tight_or_bent_crack) {
  FindingStory crack = lower_bout_crack();
  crack.finding.opening = Opening::tight;
  crack.finding.points.insert(crack.finding.points.begin() + 1, at(395, 50));
  const SurveyedTop top = taken({crack});
  EXPECT_EQ(top.taken.at(0).words,
            "crack: taken as parted over 90 mm though it was tight, which is the most it can be, straight from end to "
            "end");
}

TEST(SurveyedTop, what_lies_beyond_the_rim_of_a_crack_is_cut_away) {
  const SurveyedTop top = taken({found("crack", front, {at(430, 20), at(560, 20)})});
  ASSERT_EQ(top.damage.cracks.size(), 1U);
  EXPECT_LT(in_mm(top.damage.cracks[0].to_x), in_mm(design().outline.back().x));
}

TEST(SurveyedTop, a_crack_too_short_for_the_mesh_is_said) {
  const FindingStory crack = found("crack", front, {at(350, 40), at(356, 40)});
  const SurveyedTop top = taken({crack});
  EXPECT_TRUE(top.damage.cracks.empty());
  EXPECT_EQ(top.not_used, std::vector<std::string>{"Finding " + std::to_string(crack.number) +
                                                   ", crack: not taken, less than 10 mm of it lies on the top"});
}

TEST(SurveyedTop, what_is_not_of_the_top_or_does_nothing_to_it_is_not_spoken_of) {
  const SurveyedTop top = taken({found("crack", DrawingView::back, {at(350, 40), at(440, 40)}),
                                 found("crack", front, {at(-200, 5), at(-120, 5)}),
                                 found("finish_chip", front, {at(300, 90), at(310, 90), at(310, 100)}),
                                 found("brace_loose", DrawingView::back_inside, {at(300, -80), at(300, 80)})});
  EXPECT_TRUE(top.taken.empty());
  EXPECT_TRUE(top.not_used.empty());
}

FindingStory loose_end(double length) {
  FindingStory story = found("brace_loose", inside, {});
  const double all = testing::length_on_top(design(), "X leg to treble");
  story.finding.shape = FindingShape::line;
  story.finding.part = "X leg to treble";
  story.finding.points = {testing::on_brace(design(), "X leg to treble", all - length),
                          testing::on_brace(design(), "X leg to treble", all)};
  return story;
}

void is_loose(const SurveyedTop& top, double from, double length) {
  ASSERT_EQ(top.damage.loose_braces.size(), 1U);
  const LooseBrace& loose = top.damage.loose_braces[0];
  EXPECT_EQ(loose.brace, "X leg to treble");
  EXPECT_EQ(loose.end, BraceEnd::first);
  EXPECT_NEAR(in_mm(loose.from_end), from, 0.1);
  EXPECT_NEAR(in_mm(loose.length), length, 0.1);
}

TEST(SurveyedTop, a_loose_brace_is_off_the_top_where_it_is_drawn) {
  const double all = testing::length_on_top(design(), "X leg to treble");
  is_loose(taken({loose_end(50)}), all - 50, 50);
  FindingStory unnamed = loose_end(50);
  unnamed.finding.part.clear();
  is_loose(taken({unnamed}), all - 50, 50);
  FindingStory by_its_part = loose_end(50);
  by_its_part.finding.part_from = mm(120);
  by_its_part.finding.part_to = mm(90);
  is_loose(taken({by_its_part}), 90, 30);
}

TEST(SurveyedTop, a_reading_since_says_how_long_it_is_by_now) {
  const double all = testing::length_on_top(design(), "X leg to treble");
  const FindingStory grown =
      said_since(read_at(loose_end(50), "brace_gap_length", 50), day(2026, 2, 15), FindingState::grown,
                 {{.measure = "brace_gap_length", .value = mm(80)}});
  is_loose(taken({grown}), all - 80, 80);
  EXPECT_NE(taken({grown}).taken.at(0).words.find("off the top over 80 mm"), std::string::npos);
  FindingStory between = loose_end(50);
  between.finding.points = {testing::on_brace(design(), "X leg to treble", 150),
                            testing::on_brace(design(), "X leg to treble", 170)};
  is_loose(taken({read_at(between, "brace_gap_length", 40)}), 140, 40);
}

TEST(SurveyedTop, a_missing_brace_carries_nothing_all_along) {
  FindingStory missing = loose_end(50);
  missing.finding.kind = "brace_missing";
  is_loose(taken({missing}), 0, testing::length_on_top(design(), "X leg to treble"));
}

TEST(SurveyedTop, a_brace_that_the_bracing_does_not_have_is_said) {
  FindingStory story = loose_end(50);
  story.finding.part = "lower bar";
  EXPECT_NE(taken({story}).not_used.at(0).find("the bracing taken has no brace of that name"), std::string::npos);
  story.finding.part.clear();
  story.finding.points = {at(430, 0), at(440, 0)};
  story.finding.points = {at(120, -60), at(180, 60)};
  EXPECT_NE(taken({story}).not_used.at(0).find("it lies along no brace"), std::string::npos);
}

TEST(SurveyedTop, a_lifted_bridge_needs_the_depth_that_was_read) {
  const FindingStory wing = found("bridge_lifting", front, {at(310, -69), at(310, -40)});
  EXPECT_NE(taken({wing}).not_used.at(0).find("how deep a feeler goes in was not read"), std::string::npos);
  const SurveyedTop top = taken({read_at(wing, "bridge_lift_depth", 4)});
  EXPECT_EQ(top.damage.bridge_lifted, mm(4));
  EXPECT_NE(top.taken.at(0).words.find("by 4 mm along the whole back edge"), std::string::npos);
  EXPECT_LE(taken({read_at(wing, "bridge_lift_depth", 60)}).damage.bridge_lifted, design().bridge.body.depth);
}

// Six rings of 5 to 7 mm on a strip 16 by 72 mm: 6 pi/4 (49 - 25)/1152.
TEST(SurveyedTop, a_worn_plate_has_lost_the_rings_round_its_holes) {
  const FindingStory worn = found("bridge_plate_worn", inside, {at(300, -30), at(300, 30), at(320, 0)});
  EXPECT_TRUE(taken({worn}).taken.empty());
  EXPECT_NEAR(taken({read_at(worn, "plate_hole_wear", 2)}).damage.bridge_plate_worn, 0.09817, 1e-4);
  EXPECT_EQ(worn_share(data_tables().plate_figures, mm(72), mm(0)), 0);
  testing::expect_refused([] { (void)worn_share(data_tables().plate_figures, mm(72), mm(11)); },
                          "plate_hole_wear_mm: 11 mm is outside 0..10 mm");
}

TEST(SurveyedTop, a_thin_place_is_thin_there_and_the_rest_is_as_it_is) {
  const FindingStory thin =
      read_at(found("plate_thin", front, {at(380, 40), at(380, 80), at(420, 80), at(420, 40)}), "thickness_here", 1.9);
  const SurveyedTop top = taken({thin});
  int thin_readings = 0, others = 0;
  for (const ThicknessReading& read : top.damage.thickness) {
    if (read.thickness == mm(1.9)) ++thin_readings;
    if (read.thickness == design().thickness) ++others;
  }
  EXPECT_EQ(thin_readings, 5);
  EXPECT_GT(others, 40);
  const SurveyedTop beside = taken({read_at(lower_bout_crack(), "thickness_at_crack", 2.1)});
  EXPECT_EQ(beside.damage.thickness.at(0).thickness, mm(2.1));
  EXPECT_NE(beside.taken.at(0).words.find("2.10 mm beside it"), std::string::npos);
}

TEST(SurveyedTop, an_old_repair_holds_the_crack_it_lies_over) {
  const FindingStory crack = lower_bout_crack();
  const FindingStory patch = found("old_repair", inside, {at(380, 30), at(380, 55), at(400, 55), at(400, 30)});
  const SurveyedTop top = taken({crack, patch});
  ASSERT_EQ(top.damage.cracks.at(0).cleats.size(), 1U);
  EXPECT_NEAR(in_mm(top.damage.cracks[0].cleats[0].along), 40, 1);
  EXPECT_NEAR(in_mm(top.damage.cracks[0].cleats[0].length), 20, 2);
  const FindingStory elsewhere = found("old_repair", inside, {at(80, 30), at(80, 55), at(100, 55), at(100, 30)});
  const SurveyedTop beside = taken({crack, elsewhere});
  EXPECT_TRUE(beside.damage.cracks.at(0).cleats.empty());
  EXPECT_NE(beside.not_used.at(0).find("it lies over no crack that was found"), std::string::npos);
}

TEST(SurveyedTop, cleats_glued_since_hold_a_crack_that_is_not_glued_itself) {
  const FindingStory crack = lower_bout_crack();
  const SurveyedTop top = taken({crack}, {testing::job_done(crack, "glue_cleats", day(2026, 2, 12))});
  EXPECT_GE(top.damage.cracks.at(0).cleats.size(), 1U);
  EXPECT_NE(top.taken.at(0).words.find("cleats glued since"), std::string::npos);
}

TEST(SurveyedTop, a_repair_takes_a_finding_away_and_a_later_word_brings_it_back) {
  const FindingStory crack = lower_bout_crack();
  const JobStory glued = testing::job_done(crack, "glue_crack_hide", day(2026, 2, 12));
  const SurveyedTop mended = taken({crack}, {glued});
  EXPECT_TRUE(mended.damage.cracks.empty());
  EXPECT_EQ(mended.last_mended, day(2026, 2, 12));
  EXPECT_EQ(taken({said_since(crack, day(2026, 2, 14), FindingState::grown)}, {glued}).damage.cracks.size(), 1U);
  JobStory withdrawn = glued;
  withdrawn.job.withdrawn = true;
  EXPECT_EQ(taken({crack}, {withdrawn}).damage.cracks.size(), 1U);
  JobStory begun = glued;
  begun.spells[0].finished = false;
  EXPECT_EQ(taken({crack}, {begun}).damage.cracks.size(), 1U);
  EXPECT_EQ(taken({crack}, {testing::job_done(crack, "clean_crack", day(2026, 2, 12))}).damage.cracks.size(), 1U);
  const SurveyedTop said = taken({said_since(crack, day(2026, 2, 14), FindingState::repaired)});
  EXPECT_TRUE(said.damage.cracks.empty());
  EXPECT_EQ(said.last_mended, day(2026, 2, 14));
  EXPECT_FALSE(taken({said_since(crack, day(2026, 2, 14), FindingState::gone)}).last_mended.has_value());
}

TEST(SurveyedTop, a_repair_of_a_corrected_finding_counts_for_its_correction) {
  FindingStory first = lower_bout_crack(), correction = lower_bout_crack();
  correction.finding.supersedes = first.finding.id;
  TopRecords records = testing::top_records_of({correction});
  records.survey->superseded = {first.finding};
  records.jobs = {testing::job_done(first, "splint_crack", day(2026, 2, 12))};
  EXPECT_TRUE(surveyed_top(records, design(), data_tables()).damage.cracks.empty());
}

TEST(SurveyedTop, what_the_model_does_not_know_is_said_in_a_line_of_its_own) {
  const SurveyedTop top = taken({found("brace_broken", inside, {at(300, 60)}), found("cleat_loose", inside, {at(350, 60)}),
                                 found("bridge_cracked", front, {at(305, -18), at(305, 24)})});
  EXPECT_EQ(top.not_used.size(), 3U);
  EXPECT_TRUE(top.taken.empty());
}

TEST(SurveyedTop, eleven_cracks_are_ten_and_a_line) {
  std::vector<FindingStory> stories;
  for (int k = 0; k < 11; ++k) stories.push_back(found("crack", front, {at(350, 10 * k - 50), at(400, 10 * k - 50)}));
  const SurveyedTop top = taken(stories);
  EXPECT_EQ(top.damage.cracks.size(), 10U);
  EXPECT_NE(top.not_used.at(0).find("no more than ten cracks"), std::string::npos);
}

TEST(SurveyedTop, is_read_from_the_book_as_it_stood_on_a_day) {
  testing::TestBook shop;
  Finding crack = lower_bout_crack().finding;
  crack.id = 0;
  crack.visit_id = shop.visit;
  const RecordId id = shop.book.add(crack);
  const RecordId later = shop.book.keep(Visit{.instrument_id = shop.instrument, .date = day(2025, 11, 3)});
  (void)shop.book.add(FindingChange{.visit_id = later, .finding_id = id, .state = FindingState::repaired});
  const InstrumentStory story = shop.book.story(shop.instrument);
  const auto on = [&](Date date) { return surveyed_top(top_records(shop.book, story, date), design(), data_tables()); };
  EXPECT_FALSE(on(day(2025, 8, 1)).seen_on.has_value());
  EXPECT_EQ(on(day(2025, 9, 1)).damage.cracks.size(), 1U);
  const SurveyedTop after = on(day(2026, 2, 1));
  EXPECT_TRUE(after.damage.cracks.empty());
  EXPECT_EQ(after.last_mended, day(2025, 11, 3));
}

TEST(TopFindings, name_kinds_and_operations_that_there_are) {
  const DataTables& tables = data_tables();
  EXPECT_GT(tables.top_findings.size(), 15U);
  for (const TopFindingKind& kind : tables.top_findings) {
    EXPECT_NE(finding_kind(tables.repairs.findings, kind.kind), nullptr) << kind.kind;
    for (const auto* list : {&kind.mended_by, &kind.cleated_by}) {
      for (const std::string& id : *list) {
        EXPECT_TRUE(std::ranges::any_of(tables.repairs.operations, [&](const auto& one) { return one.id == id; })) << id;
      }
    }
  }
}

TEST(TopFindings, a_wrong_row_is_refused_by_name) {
  const std::string head = "kind,taken_as,mended_by,cleated_by,because,source,note\n";
  testing::expect_refused([&] { (void)top_findings(head + "crack,wound,,,,common practice,\n"); },
                          "top_findings.csv line 2, taken_as: \"wound\" is nothing that the plate model takes");
  testing::expect_refused([&] { (void)top_findings(head + "hole,not_modelled,,,,common practice,\n"); },
                          "top_findings.csv line 2, because: it says why nothing is made of the finding");
  testing::expect_refused(
      [&] { (void)top_findings(head + "crack,crack,,,,common practice,\ncrack,crack,,,,common practice,\n"); },
      "top_findings.csv line 3, kind: it comes twice");
}

}  // namespace
}  // namespace tailblock

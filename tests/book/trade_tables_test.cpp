#include "book/trade_tables.h"

#include <gtest/gtest.h>

#include <set>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::expect_refused;
using testing::repository_tables;

TEST(TradeTables, every_row_of_the_repository_is_read_and_has_its_source) {
  const TradeTables tables = repository_tables();
  EXPECT_GT(tables.measures.size(), 20U);
  EXPECT_GT(tables.gauges.size(), 10U);
  EXPECT_GT(tables.interventions.size(), 10U);
  for (const Measure& it : tables.measures) EXPECT_FALSE(it.source.empty()) << it.id;
  for (const Gauge& it : tables.gauges) EXPECT_FALSE(it.source.empty()) << it.id;
  for (const InterventionKind& it : tables.interventions) EXPECT_FALSE(it.source.empty()) << it.id;
}

TEST(TradeTables, what_the_season_and_the_saddle_need_can_be_read_in_millimetres) {
  const TradeTables tables = repository_tables();
  for (const char* id : {"action12_bass", "action12_treble", "action1_bass", "action1_treble", "relief",
                         "saddle_exposure_bass", "saddle_exposure_treble", "saddle_exposure_centre",
                         "straightedge_over_bridge", "bridge_thickness", "top_thickness", "slot_depth", "slot_width"}) {
    ASSERT_NE(tables.measure(id), nullptr) << id;
    EXPECT_EQ(tables.measure(id)->unit, "mm") << id;
  }
  EXPECT_EQ(tables.measure("body_humidity")->unit, "percent");
  EXPECT_EQ(tables.measure("temperature")->unit, "C");
  EXPECT_EQ(tables.measure("break_angle")->unit, "deg");
  for (const char* id : {"saddle_lowered", "new_saddle", "rod_adjusted", "neck_reset"}) {
    EXPECT_NE(tables.intervention(id), nullptr) << id;
  }
}

TEST(TradeTables, every_measure_can_be_read_with_some_gauge_of_its_unit) {
  const TradeTables tables = repository_tables();
  for (const Measure& measure : tables.measures) {
    ASSERT_NE(tables.gauge(measure.gauge), nullptr) << measure.id;
    EXPECT_EQ(tables.gauge(measure.gauge)->unit, measure.unit) << measure.id;
  }
}

TEST(TradeTables, a_usual_range_lies_within_the_hard_one) {
  for (const Measure& it : repository_tables().measures) {
    EXPECT_LT(it.hard_low, it.hard_high) << it.id;
    EXPECT_GE(it.usual_low.value_or(it.hard_low), it.hard_low) << it.id;
    EXPECT_LE(it.usual_high.value_or(it.hard_high), it.hard_high) << it.id;
  }
}

TEST(TradeTables, an_id_is_small_letters_digits_and_underscores) {
  const TradeTables tables = repository_tables();
  const auto check = [](const auto& rows) {
    for (const auto& row : rows) {
      EXPECT_EQ(row.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_"), std::string::npos) << row.id;
      EXPECT_LE(row.id.size(), 64U);
    }
  };
  check(tables.measures), check(tables.gauges), check(tables.interventions);
}

TEST(TradeTables, what_is_unknown_is_null) {
  const TradeTables tables = repository_tables();
  EXPECT_EQ(tables.measure("colour"), nullptr);
  EXPECT_EQ(tables.gauge(""), nullptr);
  EXPECT_EQ(tables.intervention("ACTION"), nullptr);
}

const std::string measure_header = "id,name,unit,where,how,usual_low,usual_high,hard_low,hard_high,gauge,source,note\n";
const std::string gauge_header = "id,name,unit,sd,source,note\n";
const std::string work_header = "id,name,moves_strings,moves_relief,moves_bridge,size_known_by,change_sd_mm,source,note\n";

TEST(TradeTables, a_bad_cell_is_refused_with_its_row_and_column) {
  expect_refused([] { (void)measures_from_csv(measure_header + "a,A,mm,here,so,1,2,0,x,g,s,\n"); },
                 "measures.csv line 2, hard_high: \"x\" is not a number");
  expect_refused([] { (void)measures_from_csv(measure_header + "a,A,mm,here,so,1,2,3,0,g,s,\n"); },
                 "measures.csv line 2: 3 is not below 0");
  expect_refused([] { (void)measures_from_csv(measure_header + "a,A,mm,here,so,1,9,0,4,g,s,\n"); },
                 "measures.csv line 2: 9 mm is outside 0..4 mm");
  expect_refused([] { (void)measures_from_csv(measure_header + "a,A,mm,here,so,1,2,0,4,g,,\n"); },
                 "measures.csv line 2, source: is empty");
  expect_refused([] { (void)gauges_from_csv(gauge_header + "g,G,mm,0,s,\n"); },
                 "gauges.csv line 2, sd: 0 is outside 1e-06..1000");
  expect_refused([] { (void)gauges_from_csv(gauge_header + "g,G,mm,1,s,\ng,H,mm,1,s,\n"); },
                 "gauges.csv line 3, id: comes twice");
  expect_refused([] { (void)interventions_from_csv(work_header + "w,W,often,no,no,by eye,0.1,s,\n"); },
                 "interventions.csv line 2, moves_strings: \"often\" is neither yes nor perhaps");
  expect_refused([] { (void)interventions_from_csv(work_header + "w,W,yes,perhaps,no,by eye,0.1,s,\n"); },
                 "interventions.csv line 2, moves_relief: \"perhaps\" is neither yes nor no");
  expect_refused([] { (void)interventions_from_csv(work_header + "w,W,yes,no,maybe,by eye,0.1,s,\n"); },
                 "interventions.csv line 2, moves_bridge: \"maybe\" is neither yes nor no");
}

TEST(TradeTables, a_measure_without_a_gauge_that_reads_it_is_refused) {
  const std::string measures = measure_header + "a,A,mm,here,so,1,2,0,4,g,s,\n";
  const std::string works = work_header + "w,W,yes,no,no,by eye,0.1,s,\n";
  const auto with_gauge = [&](const std::string& row) {
    const std::string gauges = gauge_header + row;
    (void)trade_tables({.measures = measures, .gauges = gauges, .interventions = works});
  };
  expect_refused([&] { with_gauge("h,H,mm,1,s,\n"); }, "measures.csv, a: no gauge g");
  expect_refused([&] { with_gauge("g,G,deg,1,s,\n"); }, "measures.csv, a: is in mm, its gauge g reads deg");
  EXPECT_NO_THROW(with_gauge("g,G,mm,1,s,\n"));
}

}  // namespace
}  // namespace tailblock

#include "setup/bridge_fit.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "hand_made_year.h"

namespace tailblock {
namespace {

const SaddleLimits limits = testing::usual_limits();

BridgeMeasures drop_in() { return testing::drop_in().bridge; }

BridgeMeasures through() {
  BridgeMeasures bridge;
  bridge.slot = SaddleSlot::open_ended;
  bridge.exposure_bass = mm(2.4);
  bridge.exposure_treble = mm(2.2);
  return bridge;
}

const LimitCheck& check_named(const std::vector<LimitCheck>& checks, const std::string& name) {
  for (const LimitCheck& check : checks) {
    if (check.limit == name) return check;
  }
  throw Refused("no check named " + name);
}

TEST(ExposureBounds, of_a_closed_slot_are_the_tables) {
  BridgeMeasures bridge = drop_in();
  bridge.break_angle.reset();
  bridge.slot_depth.reset();
  const ExposureBounds bass = exposure_bounds(bridge, limits, true);
  EXPECT_EQ(bass.least_mm, 1.6);
  EXPECT_EQ(bass.most_mm, 5.0);
  EXPECT_EQ(exposure_bounds(bridge, limits, false).most_mm, 4.5);
}

TEST(ExposureBounds, of_an_open_ended_slot_stop_at_an_eighth_of_an_inch_until_its_depth_is_known) {
  BridgeMeasures bridge = through();
  EXPECT_DOUBLE_EQ(exposure_bounds(bridge, limits, true).most_mm, 25.4 / 8);
  bridge.slot_depth = mm(3.5);
  EXPECT_DOUBLE_EQ(exposure_bounds(bridge, limits, true).most_mm, 3.5);
  bridge.slot_depth = mm(6);
  EXPECT_DOUBLE_EQ(exposure_bounds(bridge, limits, true).most_mm, 25.4 * 5 / 32);
  EXPECT_DOUBLE_EQ(exposure_bounds(bridge, limits, true).usual_most_mm, 25.4 / 8);
}

TEST(ExposureBounds, never_let_more_bone_out_of_the_slot_than_is_in_it) {
  BridgeMeasures bridge = drop_in();
  bridge.slot_depth = mm(3.3);
  EXPECT_DOUBLE_EQ(exposure_bounds(bridge, limits, true).most_mm, 3.3);
  EXPECT_EQ(exposure_bounds(bridge, limits, true).most_because, "the depth of the slot");
}

TEST(ExposureBounds, leave_the_least_break_angle) {
  BridgeMeasures bridge = drop_in();
  bridge.break_angle.reset();
  bridge.pin_to_saddle = mm(9);
  const ExposureBounds bounds = exposure_bounds(bridge, limits, true);
  EXPECT_NEAR(bounds.least_mm, 9 * std::tan(in_radians(degrees(15))), 1e-12);
  EXPECT_EQ(bounds.least_because, "the break angle");
  EXPECT_NEAR(in_degrees(*break_angle_at(bridge, bounds.least_mm)), 15, 1e-9);
}

TEST(BreakAngle, is_what_was_measured_where_it_was_measured) {
  BridgeMeasures bridge = drop_in();
  bridge.break_angle = degrees(31);
  bridge.exposure_centre = mm(3.9);
  EXPECT_NEAR(in_degrees(*break_angle_at(bridge, 3.9)), 31, 1e-9);
  bridge.pin_to_saddle = mm(8);
  EXPECT_NEAR(in_degrees(*break_angle_at(bridge, 3.9)), 31, 1e-9);
}

TEST(BreakAngle, is_not_known_when_nothing_was_measured) {
  BridgeMeasures bridge = drop_in();
  bridge.break_angle.reset();
  EXPECT_FALSE(break_angle_at(bridge, 3).has_value());
  for (const LimitCheck& check : limit_checks(bridge, limits, 0, 0)) EXPECT_NE(check.limit, "break angle");
}

RC_GTEST_PROP(BreakAngle, grows_with_the_exposure, (bool angle_known, bool pin_known)) {
  BridgeMeasures bridge = drop_in();
  if (!angle_known) bridge.break_angle.reset();
  if (pin_known) bridge.pin_to_saddle = mm(*rc::gen::inRange(40, 200) / 10.0);
  RC_PRE(angle_known || pin_known);
  const double exposure = *rc::gen::inRange(10, 50) / 10.0;
  RC_ASSERT(break_angle_at(bridge, exposure + 0.1)->in_base() > break_angle_at(bridge, exposure)->in_base());
}

TEST(LimitChecks, tell_what_is_kept_usual_and_broken) {
  BridgeMeasures bridge = through();
  bridge.slot_depth = mm(4);
  const auto tall = limit_checks(bridge, limits, 1.2, 0);
  EXPECT_TRUE(check_named(tall, "exposure, bass").kept);
  EXPECT_FALSE(check_named(tall, "exposure, bass").usual);
  EXPECT_EQ(check_named(tall, "exposure, bass").figure, "3.60 mm against 1.59..3.97 mm");
  EXPECT_TRUE(check_named(tall, "exposure, treble").usual);
  const auto broken = limit_checks(bridge, limits, 2, 0);
  EXPECT_FALSE(check_named(broken, "exposure, bass").kept);
  EXPECT_FALSE(check_named(broken, "height over the bridge against depth in the slot").kept);
}

TEST(LimitChecks, see_a_slot_that_is_not_parallel_and_a_saddle_that_rattles_or_wedges) {
  BridgeMeasures bridge = drop_in();
  bridge.slot_width = mm(2.8);
  bridge.slot_width_other_end = mm(2.95);
  bridge.saddle_thickness = mm(2.65);
  const auto checks = limit_checks(bridge, limits, 0, 0);
  EXPECT_FALSE(check_named(checks, "slot width at its two ends").usual);
  EXPECT_FALSE(check_named(checks, "fit of the present saddle in its slot").usual);
  bridge.slot_width_other_end = mm(2.85);
  bridge.saddle_thickness = mm(2.77);
  for (const LimitCheck& check : limit_checks(bridge, limits, 0, 0)) EXPECT_TRUE(check.usual) << check.limit;
  bridge.saddle_thickness = mm(2.80);
  EXPECT_FALSE(check_named(limit_checks(bridge, limits, 0, 0), "fit of the present saddle in its slot").usual);
}

TEST(SaddleToMake, has_a_blank_with_something_to_file_off) {
  BridgeMeasures bridge = drop_in();
  bridge.exposure_centre = mm(3.6);
  bridge.slot_width = mm(2.8);
  bridge.slot_length = mm(76);
  const SaddleToMake made = saddle_to_make(bridge, limits, 0.6, 0.4);
  EXPECT_NEAR(in_mm(made.exposure_bass), 3.8, 1e-12);
  EXPECT_NEAR(in_mm(made.exposure_treble), 3.2, 1e-12);
  EXPECT_NEAR(in_mm(made.blank_height), 5 + (3.6 + 0.5) + 0.5, 1e-12);
  EXPECT_NEAR(in_mm(made.blank_thickness), 3.0, 1e-12);
  EXPECT_NEAR(in_mm(made.blank_length), 77, 1e-12);
  EXPECT_NEAR(in_mm(made.fit_thickness_least), 2.75, 1e-12);
  EXPECT_NEAR(in_mm(made.fit_thickness_most), 2.78, 1e-12);
  EXPECT_TRUE(made.new_bone);
}

TEST(SaddleToMake, has_no_blank_where_the_slot_is_not_known_or_nothing_changes) {
  BridgeMeasures bridge = drop_in();
  EXPECT_EQ(in_mm(saddle_to_make(bridge, limits, 0, 0).blank_height), 0);
  bridge.slot_depth.reset();
  const SaddleToMake made = saddle_to_make(bridge, limits, 0.5, 0.5);
  EXPECT_EQ(in_mm(made.blank_height), 0);
  EXPECT_EQ(in_mm(made.blank_thickness), 0);
  EXPECT_EQ(in_mm(made.blank_length), 0);
}

struct Way {
  SaddleSlot slot;
  double bass, treble;
  const char* how;
};

TEST(SaddleToMake, says_which_way_the_cut_goes) {
  const std::vector<Way> ways{
      {SaddleSlot::closed, 0, 0, "Keep the present saddle as it is."},
      {SaddleSlot::closed, -0.3, -0.2,
       "Lower: file 0.30 mm at the bass and 0.20 mm at the treble off its bottom, or make a lower saddle and keep the "
       "present one, which is the way back."},
      {SaddleSlot::open_ended, -0.3, -0.3,
       "Lower: if the saddle lifts out without force, file 0.30 mm off its bottom; if it is glued, do not pry it from "
       "the "
       "ends."},
      {SaddleSlot::closed, 0.5, 0.5,
       "Raise: a new saddle, 0.50 mm taller. A hard full-length shim under the present one serves only until then, and "
       "is "
       "marked. Keep the old one."},
      {SaddleSlot::closed, -0.3, 0,
       "Lower: file 0.30 mm off its bottom at the bass end, running out to nothing, or make a lower saddle and keep "
       "the "
       "present one, which is the way back."},
      {SaddleSlot::open_ended, 0.5, -0.1,
       "Raise: a new saddle, 0.50 mm taller at the bass and 0.10 mm lower at the treble; an open-ended one cannot be "
       "shimmed from below. Keep the old one."}};
  for (const Way& way : ways) {
    BridgeMeasures bridge = drop_in();
    bridge.slot = way.slot;
    EXPECT_EQ(saddle_to_make(bridge, limits, way.bass, way.treble).how, way.how);
  }
}

}  // namespace
}  // namespace tailblock

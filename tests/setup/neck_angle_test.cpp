#include "setup/neck_angle.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "published.h"

namespace tailblock {
namespace {

NeckLimits shop_limits() { return neck_limits(testing::repository_file("data/neck_limits.csv")); }
std::vector<NeckStep> shop_steps() { return neck_steps(testing::repository_file("data/neck_steps.csv")); }

NeckAngleResult asked(const NeckAngleRequest& request) {
  return neck_angle(request, shop_limits(), mm(0.1), shop_steps());
}

// ---- points in the plane, turned by hand ----

struct Point {
  double x, y;
};

/// `point` turned about `hinge`; positive lifts what lies beyond the hinge, seen from the nut.
Point turned(Point point, Point hinge, double angle) {
  const double x = point.x - hinge.x, y = point.y - hinge.y;
  return {hinge.x + x * std::cos(angle) - y * std::sin(angle), hinge.y + x * std::sin(angle) + y * std::cos(angle)};
}

/// How high `point` lies over the line from `a` to `b`, and how far along it.
Point in_frame_of(Point a, Point b, Point point) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const double ex = (b.x - a.x) / length, ey = (b.y - a.y) / length;
  const double x = point.x - a.x, y = point.y - a.y;
  return {x * ex + y * ey, -x * ey + y * ex};
}

struct ByHand {
  double action12, saddle_over_frets, longer, nut_back;
};

/// Everything that belongs to the neck is turned as points of the drawing; the saddle stays. Then the string is drawn
/// from the turned nut to the saddle and read where it passes over the turned crown of fret 12.
ByHand turned_by_hand(const NeckLever& lever, double hinge_under, double angle, double nut, double saddle) {
  const double L = in_mm(lever.scale_length);
  const double xj = L * (1 - std::exp2(-lever.body_joint_fret / 12.0));
  const Point hinge{xj, -hinge_under};
  const Point plane0 = turned({0, 0}, hinge, angle), plane1 = turned({xj, 0}, hinge, angle);
  const Point nut_slot = turned({0, nut}, hinge, angle), crown12 = turned({L / 2, 0}, hinge, angle);
  const Point crest{L + in_mm(lever.saddle_setback), saddle};
  const Point saddle_seen = in_frame_of(plane0, plane1, crest), nut_seen = in_frame_of(plane0, plane1, nut_slot);
  const Point crown_seen = in_frame_of(plane0, plane1, crown12);
  const double share = (crown_seen.x - nut_seen.x) / (saddle_seen.x - nut_seen.x);
  return {.action12 = nut_seen.y + share * (saddle_seen.y - nut_seen.y) - crown_seen.y,
          .saddle_over_frets = saddle_seen.y,
          .longer = saddle_seen.x - crest.x,
          .nut_back = -nut_slot.x};
}

TEST(NeckAngle, agrees_with_points_turned_in_the_plane) {
  double largest = 0;
  for (const int joint : {12, 13, 14}) {
    for (const double rise : {-3.0, -1.0, 0.5, 2.0, 4.0, 6.0}) {
      for (const double hinge : {0.0, 6.5, 9.0}) {
        const NeckLever lever{.scale_length = mm(632), .saddle_setback = mm(2.5), .body_joint_fret = joint};
        const Angle turn = neck_turn(lever, mm(rise)).turn;
        const ByHand hand = turned_by_hand(lever, hinge, in_radians(turn), 0.3, 5.1);
        const StringAfterTurn after =
            after_turn(lever, mm(hinge), turn, {.nut_over_frets = mm(0.3), .saddle_over_frets = mm(5.1)}, mm(0));
        EXPECT_NEAR(in_mm(after.action12), hand.action12, 1e-9);
        EXPECT_NEAR(in_mm(after.saddle_over_frets), hand.saddle_over_frets, 1e-9);
        EXPECT_NEAR(in_mm(after.saddle_from_nut_change), hand.longer, 1e-9);
        // The lever rule itself: the action falls by rise x12/(L + c) to first order.
        const double before = 0.3 + (5.1 - 0.3) * 316 / 634.5;
        largest = std::max(largest, std::abs(before - rise * 316 / 634.5 - hand.action12));
      }
    }
  }
  std::printf("  the lever rule is off by %.4f mm at most\n", largest);
  EXPECT_LT(largest, 0.002);  // the tolerance of the study's own first-order row
}

double computed(const CsvRow& row) {
  const double rise = row.number("rise_mm", {0, 10, "mm"});
  const NeckLever lever{.body_joint_fret = row.whole_number("joint_fret", {10, 18, ""}),
                        .heel_depth = mm(row.number("heel_mm", {40, 160, "mm"}))};
  const NeckTurn turn = neck_turn(lever, mm(rise));
  // The study's string: straight from 0.45 over fret 1 through 2.00 over fret 12.
  const double x1 = in_mm(fret_from_nut(mm(645), 1));
  const double slope = (2 - 0.45) / (322.5 - x1);
  const StringBeforeTurn string{.nut_over_frets = mm(0.45 - slope * x1),
                                .saddle_over_frets = mm(0.45 + slope * (645 - x1))};
  const StringAfterTurn after = after_turn(lever, mm(0), turn.turn, string, mm(0));
  const std::string_view quantity = row.name("quantity");
  if (quantity == "turn_deg") return in_degrees(turn.turn);
  if (quantity == "removal_mm") return in_mm(turn.heel_removal);
  if (quantity == "removal_half_mm") return in_mm(turn.heel_removal) / 2;
  if (quantity == "removal_per_saddle") return 1 / turn.saddle_per_heel;
  if (quantity == "joint_to_saddle_mm") return in_mm(turn.joint_to_saddle);
  if (quantity == "action_fall_mm") return 2 - in_mm(after.action12);
  if (quantity == "action_after_mm") return in_mm(after.action12);
  if (quantity == "longer_mm") return in_mm(after.saddle_from_nut_change);
  NeckAngleRequest request;
  request.body_joint_fret = lever.body_joint_fret;
  request.heel_depth = lever.heel_depth;
  if (quantity == "removal_for_action_mm") {  // one mm lower at fret 12, the saddle left as it is
    request.bass =
        request.treble = {.action12 = mm(3), .action12_wanted = mm(2), .exposure = mm(3), .exposure_wanted = mm(3)};
    return in_mm(asked(request).heel.back().remove);
  }
  if (quantity == "saddle_for_action_mm") {  // raised by 1 mm, the action gets back so much of what it lost
    const Length gained = after_turn(lever, mm(0), turn.turn, string, mm(1)).action12 - after.action12;
    return (mm(2) - after.action12) / gained;
  }
  if (quantity == "nut_back_mm") {
    request.nut_over_frets = mm(0.5);
    request.hinge_under_frets = mm(row.number("nut_over_hinge_mm", {0, 20, "mm"})) - request.nut_over_frets;
    request.rise = mm(rise);
    return in_mm(asked(request).nut_back);
  }
  throw Refused(row.where("quantity") + ": is not known to this test");
}

TEST(NeckAngle, agrees_with_both_design_studies) {
  testing::Published table("neck_angle.csv");
  for (const CsvRow& row : table.rows()) table.check(row, computed(row));
}

TEST(NeckAngle, the_nut_moves_back_as_its_point_does) {
  NeckAngleRequest request;
  request.rise = mm(4);
  request.nut_over_frets = mm(0.4);
  const NeckAngleResult result = asked(request);
  const ByHand hand = turned_by_hand({}, 7, in_radians(result.turn), 0.4, 5);
  EXPECT_NEAR(in_mm(result.nut_back), hand.nut_back, 1e-9);
}

// ---- what is wanted is what comes out ----

RC_GTEST_PROP(NeckAngle, the_new_saddle_gives_the_action_and_exposure_that_were_wanted, ()) {
  const auto between = [](double low, double high) { return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0; };
  NeckAngleRequest request;
  request.body_joint_fret = *rc::gen::element(12, 13, 14);
  request.heel_depth = mm(between(75, 115));
  request.bass = {.action12 = mm(between(2, 5)),
                  .action12_wanted = mm(between(1.8, 3)),
                  .exposure = mm(between(1, 4)),
                  .exposure_wanted = mm(between(2, 4))};
  request.treble = request.bass;
  const NeckAngleResult result = asked(request);
  // The rise is in steps of 0.05 mm, so the exposure is met to half a step; the action to second order of the turn.
  RC_ASSERT(std::abs(in_mm(result.bass.exposure - request.bass.exposure_wanted)) < 0.0251);
  RC_ASSERT(std::abs(in_mm(result.bass.action12 - request.bass.action12_wanted)) < 0.03);
  // More rise, more off the heel; and the heel is straight from nothing to the cap.
  for (const HeelDepth& line : result.heel) {
    RC_ASSERT(std::abs(line.remove / result.heel.back().remove - line.depth / request.heel_depth) < 1e-9 ||
              result.rise == mm(0));
  }
  NeckAngleRequest taller = request;
  taller.bass.exposure_wanted = taller.treble.exposure_wanted = request.bass.exposure_wanted + mm(0.5);
  RC_ASSERT(asked(taller).heel.back().remove > result.heel.back().remove);
}

TEST(NeckAngle, the_tongue_s_shim_is_a_wedge_from_nothing_at_the_joint) {
  NeckAngleRequest request;
  request.rise = mm(3.2);
  request.tongue_length = mm(100);
  const NeckAngleResult result = asked(request);
  ASSERT_EQ(result.tongue.size(), 7U);  // frets 15 to 20 and the end of the board
  for (const TonguePlace& place : result.tongue) {
    EXPECT_NEAR(place.shim / place.from_joint, 3.2 / 287.3148, 1e-6);
  }
  EXPECT_EQ(result.tongue.front().fret, 15);
  EXPECT_NEAR(in_mm(result.tongue.back().shim), 1.1138, 1e-3);
}

TEST(NeckAngle, says_what_a_tenth_at_the_heel_does) {
  NeckAngleRequest request;
  request.heel_depth = mm(90);
  const NeckAngleResult result = asked(request);
  EXPECT_NEAR(result.saddle_per_heel, 287.3148 / 90, 1e-6);
  EXPECT_NEAR(result.action12_per_heel, 287.3148 / 90 / 2, 1e-6);
  const std::string first = "Each 0.10 mm of error at the heel cap is 0.32 mm at the saddle and 0.16 mm at fret 12.";
  EXPECT_NE(std::find(result.cautions.begin(), result.cautions.end(), first), result.cautions.end());
}

// ---- the verdict ----

NeckAngleRequest standing_out(double exposure_mm, double sd_mm = 0.1) {
  NeckAngleRequest request;
  request.bass = {.action12 = mm(2.4), .action12_wanted = mm(2.4), .action12_sd = mm(0), .exposure = mm(exposure_mm)};
  request.treble = request.bass;
  request.exposure_sd = mm(sd_mm);
  return request;
}

TEST(NeckAngle, is_called_for_only_beyond_twice_its_uncertainty) {
  EXPECT_EQ(asked(standing_out(1.39)).verdict, NeckVerdict::called_for);
  EXPECT_EQ(asked(standing_out(1.41)).verdict, NeckVerdict::withheld);
  EXPECT_EQ(asked(standing_out(1.79)).verdict, NeckVerdict::withheld);
  EXPECT_EQ(asked(standing_out(1.81)).verdict, NeckVerdict::not_needed);
  EXPECT_EQ(asked(standing_out(1.39, 0.2)).verdict, NeckVerdict::withheld);
  EXPECT_EQ(asked(standing_out(4.6)).verdict, NeckVerdict::too_tall);
  EXPECT_EQ(asked(standing_out(1.4 - 1e-6)).words,
            "The neck angle is called for: set right for the year, the saddle would stand out by 1.40 mm, under the "
            "least of 1.60 mm by more than twice the uncertainty of 0.10 mm.");
  EXPECT_EQ(asked(standing_out(1.5)).words,
            "No verdict: set right for the year, the saddle would stand out by 1.50 mm, too near the least of 1.60 mm "
            "for an uncertainty of 0.10 mm; read action and exposure again in another season.");
}

TEST(NeckAngle, counts_the_years_a_saddle_still_covers) {
  NeckAngleRequest request = standing_out(3.6);
  // 2 mm of room at the saddle is 1 mm at fret 12 (no setback): 0.05 mm a year uses it in 20 years, 0.1 in 10.
  request.drift_mm_per_year = Estimate{.median = 0.05, .low = -0.01, .high = 0.1};
  const NeckAngleResult result = asked(request);
  EXPECT_NEAR(result.years_left.value(), 20, 1e-6);
  EXPECT_NEAR(result.years_left_least.value(), 10, 1e-6);
  EXPECT_NE(result.words.find("lasts about 20 years"), std::string::npos) << result.words;
  request.drift_mm_per_year->median = -0.01;
  EXPECT_FALSE(asked(request).years_left.has_value());
}

TEST(NeckAngle, the_season_may_use_up_what_is_left) {
  NeckAngleRequest request = standing_out(2.2);
  request.bass.highest_over_mean = request.treble.highest_over_mean = mm(0.4);
  const NeckAngleResult result = asked(request);
  EXPECT_NEAR(in_mm(result.bass.exposure_asked_highest), 1.4, 1e-9);
  const auto said = [&](const char* words) {
    return std::any_of(result.cautions.begin(), result.cautions.end(),
                       [&](const std::string& caution) { return caution.find(words) != std::string::npos; });
  };
  EXPECT_TRUE(said("the season uses up what is left"));
}

// The frets are laid out as points with a bow, the straightedge laid on frets 1 and the joint.
TEST(NeckAngle, the_straightedge_is_corrected_for_relief_as_a_bent_neck_shows) {
  NeckAngleRequest request;
  request.straightedge_over_bridge = mm(-2.0);
  request.relief = mm(0.35);
  request.relief_wanted = mm(0.1);
  const double x1 = in_mm(fret_from_nut(mm(645), 1)), xj = in_mm(fret_from_nut(mm(645), 14));
  const auto line_at_bridge = [&](double relief) {
    const double curvature = 8 * relief / ((xj - x1) * (xj - x1));
    const double fret1 = curvature * (xj - x1) * (xj - x1) / 2;  // tangent at the joint held
    return -fret1 * (645 - xj) / (xj - x1);
  };
  EXPECT_NEAR(in_mm(asked(request).straightedge_by_relief), line_at_bridge(0.1) - line_at_bridge(0.35), 1e-9);
  request.bass.today_over_mean = request.treble.today_over_mean = mm(0.2);
  EXPECT_NEAR(in_mm(asked(request).straightedge_by_season), 0.4, 1e-9);
  EXPECT_NEAR(in_mm(*asked(request).straightedge_of_year), -2 + 0.4 + line_at_bridge(0.1) - line_at_bridge(0.35), 1e-9);
}

// ---- tables and refusals ----

TEST(NeckAngle, what_cannot_be_undone_asks_the_owner_and_carries_its_caution) {
  const std::vector<NeckStep> steps = asked({}).steps;
  ASSERT_GE(steps.size(), 8U);
  int asks = 0;
  for (const NeckStep& step : steps) {
    if (!step.asks_owner) continue;
    ++asks;
    EXPECT_FALSE(step.caution.empty()) << step.words;
  }
  EXPECT_GE(asks, 3);
  const auto steam = std::find_if(steps.begin(), steps.end(),
                                  [](const NeckStep& step) { return step.words.find("steam") != std::string::npos; });
  ASSERT_NE(steam, steps.end());
  EXPECT_TRUE(steam->asks_owner);
  EXPECT_NE(steam->caution.find("scalds"), std::string::npos);
  EXPECT_NE(steam->caution.find("licensed"), std::string::npos);
}

std::string refusal(const std::function<void()>& ask) {
  try {
    ask();
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "was not refused";
}

TEST(NeckAngle, refuses_in_one_line) {
  const auto of = [](const NeckAngleRequest& request) { return refusal([&] { (void)asked(request); }); };
  NeckAngleRequest request;
  request.heel_depth = mm(20);
  EXPECT_EQ(of(request), "heel_depth_mm: 20 mm is outside 40..160 mm");
  request = {};
  request.body_joint_fret = 15;
  request.fret_count = 14;
  EXPECT_EQ(of(request), "body_joint_fret: 15 is outside 10..14");
  request = {};
  request.bass.exposure_least = mm(4.6);
  EXPECT_EQ(of(request), "bass.exposure_most_mm: 4.5 mm is not over the least, 4.6 mm");
  EXPECT_EQ(refusal([] { (void)neck_limits("name,value,unit,source,note\nheel_step,10,mm,x,\n"); }),
            "neck_limits.csv: straightedge_low is missing");
  EXPECT_EQ(refusal([] { (void)neck_steps("step,asks_owner,caution,source,note\nsaw,yes,,x,\n"); }),
            "neck_steps.csv line 2, caution: a step that asks the owner says why");
  EXPECT_EQ(refusal([] { (void)neck_steps("step,asks_owner,caution,source,note\nsaw,perhaps,,x,\n"); }),
            "neck_steps.csv line 2, asks_owner: \"perhaps\" is neither yes nor no");
}

}  // namespace
}  // namespace tailblock

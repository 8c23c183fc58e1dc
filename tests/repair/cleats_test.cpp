#include "repair/cleats.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "body/plate_figures.h"
#include "body/top_designs.h"
#include "repair/plane_strips.h"
#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::refusal;
using testing::repository_repairs;
using testing::repository_text;

const TopDesignTable& designs() {
  static const TopDesignTable table = top_design_table({.outlines = repository_text("data/top_outlines.csv"),
                                                        .builds = repository_text("data/top_builds.csv"),
                                                        .braces = repository_text("data/top_braces.csv")},
                                                       plate_figures(repository_text("data/plate_figures.csv")));
  return table;
}
const RepairFigures& figures() { return repository_repairs().figures; }
CleatsResult asked(const CleatsRequest& request) { return cleats(request, designs(), figures()); }

/// Along the grain in the lower bout, where no brace of a ladder lies.
CleatsRequest crack(double x, double y, double length) {
  CleatsRequest request;
  request.top = {.body_size = BodySize::mid_size, .bracing = "x_scalloped"};
  request.from_x = mm(x);
  request.to_x = mm(x + length);
  request.from_y = request.to_y = mm(y);
  request.plate_thickness = mm(2.8);
  return request;
}
/// A back without braces but those given.
CleatsRequest back_crack(double length) {
  CleatsRequest request = crack(150, 60, length);
  request.plate = CrackedPlate::back;
  return request;
}

TEST(Cleats, on_a_bare_plate_stand_at_the_ends_and_evenly_between) {
  const CleatsResult result = asked(back_crack(200));
  ASSERT_EQ(result.cleats.size(), 5U);  // 184 mm between the two at the ends: three between at 46
  EXPECT_NEAR(in_mm(result.cleats.front().along), 8, 0.5);
  EXPECT_NEAR(in_mm(result.cleats.back().along), 192, 0.5);
  for (std::size_t i = 1; i < 5; ++i) {
    EXPECT_NEAR(in_mm(result.cleats[i].along - result.cleats[i - 1].along), 46, 0.5);
  }
  EXPECT_EQ(result.words, "5 cleats of spruce, 1.9 mm thick, grain across the crack.");
  EXPECT_NEAR(in_degrees(result.grain), 90, 1e-9);
  EXPECT_NEAR(in_mm(result.strip_length), 5 * (18 + 1.5), 1e-9);
}

TEST(Cleats, a_brace_across_the_crack_takes_the_place_of_one) {
  CleatsRequest request = back_crack(120);
  EXPECT_EQ(asked(request).cleats.size(), 3U);  // 104 between the ends: one between
  request.braces = {{.name = "back brace", .from_x = mm(210), .from_y = mm(-100), .to_x = mm(210), .to_y = mm(100)}};
  const CleatsResult held = asked(request);
  EXPECT_EQ(held.held_by, (std::vector<std::string>{"back brace"}));
  EXPECT_EQ(held.cleats.size(), 2U);
}

TEST(Cleats, are_never_thicker_than_the_plate) {
  for (double plate = 1.0; plate < 5; plate += 0.1) {
    CleatsRequest request = back_crack(200);
    request.plate_thickness = mm(plate);
    const CleatsResult result = asked(request);
    EXPECT_LT(result.thickness, mm(plate));
    EXPECT_LE(in_mm(result.thickness), 2.0);
    if (!result.cleats.empty()) {
      EXPECT_GE(in_mm(result.thickness), 1.0);
    }
  }
  CleatsRequest thin = back_crack(200);
  thin.plate_thickness = mm(1.2);
  EXPECT_EQ(asked(thin).words, "The plate is too thin for wooden cleats: a strip of linen.");
}

TEST(Cleats, a_short_crack_gets_none_unless_it_was_glued_before) {
  CleatsRequest request = back_crack(50);
  EXPECT_FALSE(asked(request).called_for);
  EXPECT_TRUE(asked(request).cleats.empty());
  request.glued_before = true;
  EXPECT_EQ(asked(request).cleats.size(), 2U);
}

TEST(Cleats, say_which_are_beyond_an_arm) {
  CleatsRequest request = crack(380, 30, 95);
  request.plate = CrackedPlate::back;
  const CleatsResult result = asked(request);
  ASSERT_FALSE(result.cleats.empty());
  const TopDesign design = designs().design(BodySize::mid_size, "x_scalloped");
  for (const CleatShown& one : result.cleats) {
    const double reach =
        std::hypot(in_mm(one.x - design.soundhole.centre_x), in_mm(one.y)) - in_mm(design.soundhole.radius);
    EXPECT_NEAR(in_mm(one.reach), reach, 1e-9);
    EXPECT_EQ(one.within_reach, reach <= 320);
  }
}

/// From a point to a strip with square ends, in the strip's own axes.
double distance_to_box(const PlanePoint& p, const PlaneStrip& strip) {
  const PlanePoint& a = strip.middle.from;
  const PlanePoint& b = strip.middle.to;
  const double length = std::hypot(b.x - a.x, b.y - a.y), tx = (b.x - a.x) / length, ty = (b.y - a.y) / length;
  const double along = (p.x - a.x) * tx + (p.y - a.y) * ty, aside = std::abs((p.x - a.x) * ty - (p.y - a.y) * tx);
  return std::hypot(std::max({0.0, -along, along - length}), std::max(0.0, aside - strip.width / 2));
}

TEST(Cleats, lie_clear_of_everything_and_leave_nothing_long_unheld) {
  std::mt19937 dice(20260301);
  const auto between = [&](double low, double high) { return std::uniform_real_distribution<double>(low, high)(dice); };
  const char* bracings[] = {"x_braced", "x_scalloped", "ladder", "fan"};
  int tried = 0, placed = 0, crowded = 0;
  for (int i = 0; i < 400; ++i) {
    CleatsRequest request = crack(between(60, 330), between(-120, 120), between(70, 150));
    request.to_y = request.from_y + mm(between(-8, 8));
    request.top.bracing = bracings[i % 4];
    CleatsResult result;
    try {
      result = asked(request);
    } catch (const Refused&) {
      continue;  // it left the plate or crossed the soundhole's edge
    }
    ++tried;
    const TopDesign design = designs().design(BodySize::mid_size, request.top.bracing);
    const double angle = std::atan2(in_mm(request.to_y - request.from_y), in_mm(request.to_x - request.from_x));
    for (const CleatShown& one : result.cleats) {
      ++placed;
      const double ux = std::cos(angle) * 7, uy = std::sin(angle) * 7, x = in_mm(one.x), y = in_mm(one.y);
      const PlaneStrip cleat{{{x - ux, y - uy}, {x + ux, y + uy}}, 18};
      for (const Brace& brace : design.braces) {
        const PlaneStrip strip{{{in_mm(brace.from_x), in_mm(brace.from_y)}, {in_mm(brace.to_x), in_mm(brace.to_y)}},
                               in_mm(brace.width)};
        // a point for point look at the cleat's own rim, apart from the distance of strips
        double least = 1e9;
        const std::vector<PlanePoint> corner = corners(cleat);
        for (int k = 0; k < 400; ++k) {
          const std::size_t side = static_cast<std::size_t>(k / 100);
          const PlanePoint& a = corner[side];
          const PlanePoint& b = corner[(side + 1) % 4];
          const double t = (k % 100) / 100.0;
          const PlanePoint p{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
          least = std::min(least, distance_to_box(p, strip));
        }
        EXPECT_GE(least, 3 - 0.3) << brace.name << " " << request.top.bracing;  // a hundred points a side
      }
    }
    for (std::size_t k = 1; k < result.cleats.size(); ++k) {
      EXPECT_GE(in_mm(result.cleats[k].along - result.cleats[k - 1].along), 14);
    }
    const bool warned = std::any_of(result.cautions.begin(), result.cautions.end(), [](const std::string& one) {
      return one.find("has no room for a cleat") != std::string::npos;
    });
    EXPECT_EQ(warned, in_mm(result.longest_without_hold) > 60);
    crowded += warned ? 1 : 0;
  }
  EXPECT_GT(tried, 150);
  EXPECT_GT(placed, 200);
  EXPECT_LT(crowded, tried / 4) << tried;
  std::printf("  %d cracks, %d cleats, %d with a stretch too crowded for one\n", tried, placed, crowded);
}

TEST(Cleats, go_into_the_plate_model_as_they_are) {
  const CleatsResult result = asked(back_crack(150));
  ASSERT_EQ(result.as_damage.cleats.size(), result.cleats.size());
  for (std::size_t i = 0; i < result.cleats.size(); ++i) {
    EXPECT_EQ(result.as_damage.cleats[i].along, result.cleats[i].along);
  }
}

TEST(Cleats, warn_of_a_crack_that_crosses_the_grain) {
  CleatsRequest request = back_crack(100);
  request.to_y = request.from_y + mm(40);
  EXPECT_NE(asked(request).cautions.front().find("22 degrees off the grain"), std::string::npos)
      << asked(request).cautions.front();
}

TEST(Cleats, refuse_in_one_line) {
  const auto of = [](const CleatsRequest& request) { return refusal([&] { (void)asked(request); }); };
  EXPECT_EQ(of(crack(300, 60, 450)), "from_x_mm: the crack leaves the plate");
  CleatsRequest request = back_crack(100);
  request.plate_thickness = mm(0.5);
  EXPECT_EQ(of(request), "plate_thickness_mm: 0.5 mm is outside 0.8..8 mm");
  EXPECT_EQ(of(back_crack(2)), "crack_length_mm: 2 mm is outside 5..600 mm");
}

TEST(PlaneStrips, distance_is_that_of_the_nearest_points) {
  std::mt19937 dice(7);
  const auto at = [&] { return std::uniform_real_distribution<double>(-50, 50)(dice); };
  for (int i = 0; i < 200; ++i) {
    const PlaneSegment a{{at(), at()}, {at(), at()}}, b{{at(), at()}, {at(), at()}};
    double least = 1e9;
    for (int k = 0; k <= 200; ++k) {
      const double t = k / 200.0;
      const PlanePoint p{a.from.x + t * (a.to.x - a.from.x), a.from.y + t * (a.to.y - a.from.y)};
      least = std::min(least, distance_between(p, b));
    }
    EXPECT_LE(distance_between(a, b), least + 1e-9);
    EXPECT_GE(distance_between(a, b), least - 0.5) << "200 points on up to 140 mm";
  }
}

TEST(Cleats, a_back_that_was_not_measured_is_taken_as_backs_are_built_and_says_so) {
  CleatsRequest request = back_crack(180);
  request.plate_thickness.reset();
  const CleatsResult result = asked(request);
  EXPECT_NEAR(in_mm(result.thickness), 0.7 * (2.5 - 0.08), 1e-9);
  EXPECT_EQ(result.cautions.at(0),
            "The plate was not measured beside the crack: 2.5 mm, as it is usually built, is taken.");
}

}  // namespace
}  // namespace tailblock

#include "body/instrument_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "body/plate_figures.h"
#include "published.h"

namespace tailblock {
namespace {

DrawingTables repository_drawing() {
  const std::string braces = testing::repository_file("data/back_braces.csv");
  const std::string figures = testing::repository_file("data/drawing_figures.csv");
  const std::string places = testing::repository_file("data/drawing_places.csv");
  return drawing_tables({.back_braces = braces, .figures = figures, .places = places});
}

TopDesignTable repository_tops() {
  const std::string figures = testing::repository_file("data/plate_figures.csv");
  const std::string outlines = testing::repository_file("data/top_outlines.csv");
  const std::string builds = testing::repository_file("data/top_builds.csv");
  const std::string braces = testing::repository_file("data/top_braces.csv");
  return top_design_table({.outlines = outlines, .builds = builds, .braces = braces}, plate_figures(figures));
}

InstrumentDrawing drawn(const DrawingRequest& request) {
  return instrument_drawing(request, repository_tops(), repository_drawing());
}

const ViewDrawing& view_of(const InstrumentDrawing& drawing, DrawingView view) {
  return drawing.views.at(static_cast<std::size_t>(view));
}

const DrawnLine& line_named(const ViewDrawing& view, const std::string& name) {
  const auto found = std::ranges::find(view.lines, name, &DrawnLine::name);
  if (found == view.lines.end()) throw std::out_of_range(name);
  return *found;
}

/// Every body size with every bracing.
template <class Check>
void each_instrument(Check check) {
  for (std::size_t size = 0; size < body_size_names.size(); ++size) {
    for (std::size_t bracing = 0; bracing < bracing_names.size(); ++bracing) {
      SCOPED_TRACE(std::string(body_size_names[size]) + ", " + std::string(bracing_names[bracing]));
      check(DrawingRequest{
          .body_size = static_cast<BodySize>(size), .bracing = static_cast<Bracing>(bracing), .lower_bout_width = {}});
    }
  }
}

bool lies_within(const ViewDrawing& view, const DrawingPoint& p) {
  constexpr double rounding = 1e-9;
  return in_mm(view.x_from) - rounding <= in_mm(p.x) && in_mm(p.x) <= in_mm(view.x_to) + rounding &&
         in_mm(view.y_from) - rounding <= in_mm(p.y) && in_mm(p.y) <= in_mm(view.y_to) + rounding;
}

TEST(InstrumentDrawing, every_line_and_every_named_place_is_on_its_view) {
  each_instrument([](const DrawingRequest& request) {
    const InstrumentDrawing drawing = drawn(request);
    ASSERT_EQ(drawing.views.size(), drawing_view_names.size());
    for (const ViewDrawing& view : drawing.views) {
      SCOPED_TRACE(drawing_view_names[static_cast<std::size_t>(view.view)]);
      for (const DrawnLine& line : view.lines) {
        for (const DrawingPoint& p : line.points) EXPECT_TRUE(lies_within(view, p)) << line.name;
      }
      EXPECT_GE(view.places.size(), 4U);
      for (const DrawnPlace& place : view.places) EXPECT_TRUE(lies_within(view, place.at)) << place.name;
    }
  });
}

TEST(InstrumentDrawing, braces_end_at_the_rim_and_are_not_points) {
  each_instrument([](const DrawingRequest& request) {
    const InstrumentDrawing drawing = drawn(request);
    for (const DrawingView which : {DrawingView::top_inside, DrawingView::back_inside}) {
      const ViewDrawing& view = view_of(drawing, which);
      int braces = 0;
      for (const DrawnLine& line : view.lines) {
        if (line.part != DrawnPart::brace) continue;
        ++braces;
        ASSERT_EQ(line.points.size(), 2U);
        EXPECT_GT(std::hypot(in_mm(line.points[1].x) - in_mm(line.points[0].x),
                             in_mm(line.points[1].y) - in_mm(line.points[0].y)),
                  40)
            << line.name;
      }
      const bool known = which == DrawingView::back_inside || request.bracing != Bracing::other;
      EXPECT_EQ(braces > 0, known);
    }
  });
}

TEST(InstrumentDrawing, the_rim_is_as_wide_as_the_lower_bout_that_was_measured) {
  for (const double width : {330.0, 352.0, 390.0}) {
    const InstrumentDrawing drawing = drawn({.body_size = BodySize::small, .lower_bout_width = mm(width)});
    double widest = 0;
    for (const DrawingPoint& p : line_named(view_of(drawing, DrawingView::front), "rim").points) {
      widest = std::max(widest, in_mm(p.y));
    }
    // Within 0.5 mm: the spline may swell a little between the points that the table gives, and every second one is
    // drawn.
    EXPECT_NEAR(2 * widest, width, 1);
  }
}

TEST(InstrumentDrawing, the_twelfth_fret_is_half_way_from_nut_to_nominal_saddle_and_the_joint_fret_at_the_edge) {
  const InstrumentDrawing drawing =
      drawn({.lower_bout_width = {}, .scale_length = mm(632), .body_joint_fret = 12, .fret_count = 19});
  const ViewDrawing& front = view_of(drawing, DrawingView::front);
  const auto x_of = [&](const std::string& name) { return in_mm(line_named(front, name).points.front().x); };
  EXPECT_NEAR(x_of("fret 12") - x_of("nut"), 316, 1e-9);
  EXPECT_NEAR(x_of("fret 12"), 0, 1e-9);
  EXPECT_NEAR(x_of("saddle"), 316 + 3, 2);  // a little beyond the nominal scale
}

TEST(InstrumentDrawing, a_spot_seen_from_outside_has_the_same_coordinates_inside) {
  const InstrumentDrawing drawing =
      drawn({.body_size = BodySize::parlour, .bracing = Bracing::ladder, .lower_bout_width = {}});
  const auto place = [&](DrawingView view) {
    const auto& places = view_of(drawing, view).places;
    return std::ranges::find(places, "lower bout, bass side", &DrawnPlace::name)->at;
  };
  const DrawingPoint outside = place(DrawingView::front);
  EXPECT_LT(in_mm(outside.y), 0) << "bass is negative";
  for (const DrawingView view : {DrawingView::back, DrawingView::top_inside, DrawingView::back_inside}) {
    EXPECT_NEAR(in_mm(place(view).x), in_mm(outside.x), 1e-9);
    EXPECT_NEAR(in_mm(place(view).y), in_mm(outside.y), 1e-9);
  }
}

TEST(InstrumentDrawing, a_side_is_as_long_as_the_rim_it_was_bent_to) {
  const InstrumentDrawing drawing = drawn({.body_size = BodySize::square_large, .lower_bout_width = {}});
  const auto& rim = line_named(view_of(drawing, DrawingView::front), "rim").points;
  double round = 0;
  for (std::size_t k = 0; k < rim.size(); ++k) {
    const DrawingPoint &a = rim[k], &b = rim[(k + 1) % rim.size()];
    round += std::hypot(in_mm(b.x) - in_mm(a.x), in_mm(b.y) - in_mm(a.y));
  }
  const double side = in_mm(line_named(view_of(drawing, DrawingView::bass_side), "side").points[1].x);
  EXPECT_NEAR(2 * side, round, 0.005 * round);  // the drawn rim has half as many corners
}

TEST(InstrumentDrawing, what_is_not_known_is_said) {
  EXPECT_EQ(drawn({.lower_bout_width = mm(385)}).assumed.size(), 1U);
  EXPECT_EQ(drawn({.bracing = Bracing::other, .lower_bout_width = {}}).assumed.size(), 3U);
}

TEST(DrawingTables, a_wrong_cell_is_named) {
  const std::string braces = testing::repository_file("data/back_braces.csv");
  const std::string figures = testing::repository_file("data/drawing_figures.csv");
  const auto refusal = [&](const std::string& places) -> std::string {
    try {
      (void)drawing_tables({.back_braces = braces, .figures = figures, .places = places});
    } catch (const Refused& refused) {
      return refused.what();
    }
    return "not refused";
  };
  const std::string header = "views,name,at,beyond_mm,across,source,note\n";
  EXPECT_EQ(refusal(header + "front;under,here,waist,0,0,assumed,"),
            "drawing_places.csv line 2, views: \"under\" is not a view");
  EXPECT_EQ(refusal(header + "front,here,knee,0,0,assumed,"), "drawing_places.csv line 2, at: \"knee\" is not a mark");
}

}  // namespace
}  // namespace tailblock

#include "paper/findings_picture.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>

#include "models/data_tables.h"
#include "published.h"

namespace tailblock {
namespace {

/// From the tables as the repository has them.
InstrumentDrawing drawing() {
  static std::vector<std::unique_ptr<std::string>> texts;
  static const DataTables tables = load_data_tables([](std::string_view path) -> std::string_view {
    return *texts.emplace_back(std::make_unique<std::string>(testing::repository_file(std::string(path))));
  });
  return instrument_drawing({}, tables.tops, tables.drawing);
}

MarkedFinding crack(int number, DrawingView view, double x = 350, double y = -60) {
  return {.number = number, .view = view, .shape = FindingShape::line, .points = {{mm(x), mm(y)}, {mm(x + 60), mm(y)}}};
}

std::vector<const Shape*> words_of(const Picture& picture, const std::string& words) {
  std::vector<const Shape*> found;
  for (const Shape& shape : picture.shapes) {
    if (shape.kind == ShapeKind::words && shape.words == words) found.push_back(&shape);
  }
  return found;
}

TEST(FindingsPicture, draws_only_the_views_on_which_something_was_found) {
  EXPECT_TRUE(findings_picture(drawing(), {}, 170).shapes.empty());
  const Picture picture = findings_picture(drawing(), {crack(1, DrawingView::front)}, 170);
  EXPECT_EQ(words_of(picture, "Front").size(), 1U);
  EXPECT_TRUE(words_of(picture, "Back").empty());
  EXPECT_EQ(picture.says, "The instrument with what was found marked on it. Front: 1.");
}

TEST(FindingsPicture, stays_on_its_sheet_with_every_view_drawn) {
  std::vector<MarkedFinding> findings;
  int number = 0;
  for (const DrawingView view : {DrawingView::front, DrawingView::back, DrawingView::top_inside, DrawingView::back_inside}) {
    findings.push_back(crack(++number, view));
  }
  for (const DrawingView view : {DrawingView::bass_side, DrawingView::treble_side}) {
    findings.push_back({.number = ++number, .view = view, .points = {{mm(400), mm(40)}}});
  }
  findings.push_back({.number = ++number, .view = DrawingView::headstock, .points = {{mm(60), mm(0)}}});
  const Picture picture = findings_picture(drawing(), findings, 170);
  for (int i = 1; i <= number; ++i) EXPECT_EQ(words_of(picture, std::to_string(i)).size(), 1U) << i;
  for (const Shape& shape : picture.shapes) {
    for (std::size_t i = 0; i + 1 < shape.points_mm.size(); i += 2) {
      ASSERT_GE(shape.points_mm[i], -1.5);
      ASSERT_LE(shape.points_mm[i], picture.width_mm + 1.5);
      ASSERT_GE(shape.points_mm[i + 1], -1.5);
      ASSERT_LE(shape.points_mm[i + 1], picture.height_mm + 1.5);
    }
  }
  require_drawable(picture);
  EXPECT_LT(picture.height_mm, 230);
}

TEST(FindingsPicture, marks_a_crack_on_the_bass_side_left_of_the_middle_from_outside_and_right_from_inside) {
  const auto off_middle = [](DrawingView view) {
    const Picture picture = findings_picture(drawing(), {crack(1, view), crack(2, view, 350, 0)}, 170);
    return words_of(picture, "1").at(0)->points_mm[0] - words_of(picture, "2").at(0)->points_mm[0];
  };
  EXPECT_LT(off_middle(DrawingView::front), 0);
  EXPECT_GT(off_middle(DrawingView::top_inside), 0);
}

TEST(FindingsPicture, keeps_numbers_at_one_place_apart) {
  const Picture picture =
      findings_picture(drawing(), {crack(1, DrawingView::front), crack(2, DrawingView::front)}, 170);
  const Shape &one = *words_of(picture, "1").at(0), &two = *words_of(picture, "2").at(0);
  EXPECT_GE(std::hypot(one.points_mm[0] - two.points_mm[0], one.points_mm[1] - two.points_mm[1]), 5);
}

}  // namespace
}  // namespace tailblock

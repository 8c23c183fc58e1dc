#include "paper/year_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "season/words.h"

namespace tailblock {
namespace {

constexpr double left = 13, right_of = 27, side_high = 50, plot_top = 6, plot_high = 36, words_mm = 2.8;

/// Where a side's day and height lie on the picture.
struct Axes {
  double left_mm, right_mm, top_mm, bottom_mm, low, high;
  int days;

  [[nodiscard]] double x(double day) const { return left_mm + (right_mm - left_mm) * day / std::max(1, days - 1); }
  [[nodiscard]] double y(double height) const {
    return bottom_mm - (bottom_mm - top_mm) * (height - low) / (high - low);
  }
};

void require_whole(const YearBand& band, const std::string& where) {
  const std::size_t days = band.median_mm.size();
  for (const auto& [name, list] : {std::pair{"low_mm", &band.low_mm}, std::pair{"lower_mm", &band.lower_mm},
                                   std::pair{"upper_mm", &band.upper_mm}, std::pair{"high_mm", &band.high_mm}}) {
    if (list->size() == days) continue;
    throw Refused(where + name + ": " + std::to_string(list->size()) + " days where median_mm has " +
                  std::to_string(days));
  }
}

Axes axes_of(const YearBand& band, double top_mm, double wide_mm) {
  double low = *std::min_element(band.low_mm.begin(), band.low_mm.end());
  double high = *std::max_element(band.high_mm.begin(), band.high_mm.end());
  for (const double also : {band.lowest_clean_mm, band.highest_comfortable_mm, band.today_mm.value_or(0)}) {
    if (also > 0) low = std::min(low, also), high = std::max(high, also);
  }
  const double spare = std::max(0.05, 0.06 * (high - low));
  return {.left_mm = left,
          .right_mm = wide_mm - right_of,
          .top_mm = top_mm + plot_top,
          .bottom_mm = top_mm + plot_top + plot_high,
          .low = low - spare,
          .high = high + spare,
          .days = static_cast<int>(band.median_mm.size())};
}

Shape line(std::vector<double> points, Ink ink, double thick, bool dashed = false) {
  return {.kind = ShapeKind::line, .points_mm = std::move(points), .ink = ink, .thick_mm = thick, .dashed = dashed};
}

Shape words(double x, double y, const std::string& text, Hold hold, Ink ink = Ink::soft) {
  return {.kind = ShapeKind::words, .points_mm = {x, y}, .ink = ink, .size_mm = words_mm, .words = text, .hold = hold};
}

Shape band_between(const Axes& axes, const std::vector<double>& under, const std::vector<double>& over, Ink ink) {
  Shape area{.kind = ShapeKind::area, .points_mm = {}, .ink = ink};
  const auto add = [&](std::size_t day, double height) {
    area.points_mm.push_back(axes.x(static_cast<double>(day)));
    area.points_mm.push_back(axes.y(height));
  };
  for (std::size_t day = 0; day < over.size(); ++day) add(day, over[day]);
  for (std::size_t day = under.size(); day-- > 0;) add(day, under[day]);
  return area;
}

/// Heights at round tenths of a millimetre, four to eight of them.
void draw_heights(Picture& picture, const Axes& axes) {
  double step = 0.1;
  for (const double next : {0.2, 0.5, 1.0, 2.0, 5.0}) {
    if ((axes.high - axes.low) / step > 7) step = next;
  }
  for (double at = std::ceil(axes.low / step) * step; at <= axes.high; at += step) {
    picture.shapes.push_back(line({axes.left_mm, axes.y(at), axes.right_mm, axes.y(at)}, Ink::rule, 0.12));
    picture.shapes.push_back(words(axes.left_mm - 1.5, axes.y(at) + 0.9, decimals(at, 1), Hold::end));
  }
}

void draw_months(Picture& picture, const Axes& axes, Date first) {
  constexpr std::array<const char*, 12> names{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                              "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  for (int day = 0; day < axes.days; ++day) {
    const std::chrono::year_month_day date(first + std::chrono::days(day));
    if (unsigned(date.day()) != 1) continue;
    const double x = axes.x(day);
    picture.shapes.push_back(line({x, axes.bottom_mm, x, axes.bottom_mm + 1.2}, Ink::soft, 0.15));
    if (axes.x(day + 14) > axes.right_mm) continue;
    const std::string name = names[unsigned(date.month()) - 1];
    picture.shapes.push_back(words(axes.x(day + 15), axes.bottom_mm + 3.6, name, Hold::middle));
  }
}

void draw_limit(Picture& picture, const Axes& axes, double height, const std::string& name) {
  if (height <= 0) return;
  picture.shapes.push_back(line({axes.left_mm, axes.y(height), axes.right_mm, axes.y(height)}, Ink::accent, 0.3, true));
  picture.shapes.push_back(words(axes.right_mm + 1.5, axes.y(height) - 0.6, name, Hold::start, Ink::accent));
  picture.shapes.push_back(
      words(axes.right_mm + 1.5, axes.y(height) + 2.7, decimals(height, 2) + " mm", Hold::start, Ink::accent));
}

void draw_today(Picture& picture, const Axes& axes, const YearOnPaper& year, const YearBand& band) {
  const int day = days_between(year.first, year.today);
  if (day < 0 || day >= axes.days) return;
  const double x = axes.x(day);
  picture.shapes.push_back(line({x, axes.top_mm, x, axes.bottom_mm}, Ink::ink, 0.2));
  picture.shapes.push_back(words(std::max(x, axes.left_mm), axes.top_mm - 1, "today", Hold::start, Ink::ink));
  if (!band.today_mm) return;
  const double y = axes.y(*band.today_mm);
  picture.shapes.push_back({.kind = ShapeKind::dot, .points_mm = {x, y}, .ink = Ink::white, .size_mm = 2.4});
  picture.shapes.push_back({.kind = ShapeKind::ring, .points_mm = {x, y}, .thick_mm = 0.4, .size_mm = 1.9});
}

void draw_side(Picture& picture, const YearOnPaper& year, const YearBand& band, double top_mm) {
  const Axes axes = axes_of(band, top_mm, picture.width_mm);
  draw_heights(picture, axes);
  picture.shapes.push_back(band_between(axes, band.low_mm, band.high_mm, Ink::band_wide));
  picture.shapes.push_back(band_between(axes, band.lower_mm, band.upper_mm, Ink::band_half));
  Shape middle = line({}, Ink::ink, 0.5);
  for (std::size_t day = 0; day < band.median_mm.size(); ++day) {
    middle.points_mm.push_back(axes.x(static_cast<double>(day)));
    middle.points_mm.push_back(axes.y(band.median_mm[day]));
  }
  picture.shapes.push_back(std::move(middle));
  picture.shapes.push_back(line({axes.left_mm, axes.bottom_mm, axes.right_mm, axes.bottom_mm}, Ink::soft, 0.2));
  draw_months(picture, axes, year.first);
  draw_limit(picture, axes, band.lowest_clean_mm, "lowest clean");
  draw_limit(picture, axes, band.highest_comfortable_mm, "highest easy");
  draw_today(picture, axes, year, band);
  picture.shapes.push_back(
      words(axes.right_mm, axes.top_mm - 1, band.side + " string over fret 12, mm", Hold::end, Ink::ink));
}

std::string in_words(const YearOnPaper& year) {
  std::string says = "String height over fret 12 in the year from " + day_in_words(year.first) + ".";
  for (const YearBand& band : year.sides) {
    const auto [low, high] = std::minmax_element(band.median_mm.begin(), band.median_mm.end());
    says +=
        " The " + band.side + " string's middle goes from " + decimals(*low, 2) + " to " + decimals(*high, 2) + " mm.";
  }
  return says;
}

}  // namespace

void describe(FieldVisitor& visit, YearBand& band) {
  constexpr Range height{-5, 30, "mm"};
  constexpr Count days{2, 800};
  visit.text({"side", "which string", Need::has_default}, band.side, 40);
  visit.numbers({"low_mm", "5 % each day"}, band.low_mm, height, days);
  visit.numbers({"lower_mm", "25 % each day"}, band.lower_mm, height, days);
  visit.numbers({"median_mm", "the middle of each day"}, band.median_mm, height, days);
  visit.numbers({"upper_mm", "75 % each day"}, band.upper_mm, height, days);
  visit.numbers({"high_mm", "95 % each day"}, band.high_mm, height, days);
  visit.number({"lowest_clean_mm", "under it notes buzz; 0 leaves it out", Need::has_default}, band.lowest_clean_mm,
               {0, 30, "mm"});
  visit.number({"highest_comfortable_mm", "over it the hand works; 0 leaves it out", Need::has_default},
               band.highest_comfortable_mm, {0, 30, "mm"});
  maybe(visit, {"today_mm", "read today, as left"}, band.today_mm,
        [&](const Field& field, double& value) { visit.number(field, value, height); });
}

void describe(FieldVisitor& visit, YearOnPaper& year) {
  visit.date({"first", "day of the first value"}, year.first);
  visit.date({"today", "day the paper is about"}, year.today);
  list(visit, {"sides", "bass and treble"}, year.sides, {1, 2});
}

Picture year_picture(const YearOnPaper& year, double wide_mm) {
  for (std::size_t i = 0; i < year.sides.size(); ++i) {
    require_whole(year.sides[i], "year.sides[" + std::to_string(i) + "].");
  }
  Picture picture{.width_mm = wide_mm,
                  .height_mm = side_high * static_cast<double>(year.sides.size()),
                  .shapes = {},
                  .says = in_words(year)};
  for (std::size_t i = 0; i < year.sides.size(); ++i) {
    draw_side(picture, year, year.sides[i], side_high * static_cast<double>(i));
  }
  return picture;
}

}  // namespace tailblock

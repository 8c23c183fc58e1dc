#include "body/top_damage.h"

#include <array>

#include "body/point_grid.h"

namespace tailblock {
namespace {

constexpr Need free_to_leave_out = Need::has_default;
constexpr std::array<std::string_view, 2> end_names{"first", "second"};
constexpr Range along{0, 700, "mm"};
constexpr Range across{-300, 300, "mm"};
constexpr double near_mm = 5;

}  // namespace

void describe(FieldVisitor& visit, LooseBrace& loose) {
  visit.text({"brace", "its name in the design"}, loose.brace, 60);
  choice(visit, {"end", "from which end it is measured"}, loose.end, end_names);
  visit.length({"from_end_mm", "where the looseness begins, from that end", free_to_leave_out}, loose.from_end, along);
  visit.length({"length_mm", "how much is loose"}, loose.length, along);
}

void describe(FieldVisitor& visit, Cleat& cleat) {
  visit.length({"along_mm", "its middle, from the crack's first end"}, cleat.along, along);
  visit.length({"length_mm", "of the cleat, along the crack"}, cleat.length, {1, 200, "mm"});
}

void describe(FieldVisitor& visit, Crack& crack) {
  visit.length({"from_x_mm", "first end, from the neck edge"}, crack.from_x, along);
  visit.length({"from_y_mm", "first end, from the centre line; treble positive"}, crack.from_y, across);
  visit.length({"to_x_mm", "second end"}, crack.to_x, along);
  visit.length({"to_y_mm", "second end"}, crack.to_y, across);
  list(visit, {"cleats", "that hold it", free_to_leave_out}, crack.cleats, {0, 30});
}

void describe(FieldVisitor& visit, ThicknessReading& reading) {
  visit.length({"x_mm", "from the neck edge"}, reading.x, along);
  visit.length({"y_mm", "from the centre line; treble positive"}, reading.y, across);
  visit.length({"thickness_mm", "of the top there"}, reading.thickness, {0.8, 6, "mm"});
}

void describe(FieldVisitor& visit, TopDamage& damage) {
  list(visit, {"loose_braces", "stretches off the top", free_to_leave_out}, damage.loose_braces, {0, 20});
  list(visit, {"cracks", "right through the top", free_to_leave_out}, damage.cracks, {0, 10});
  list(visit, {"thickness", "measured; none: the design's everywhere", free_to_leave_out}, damage.thickness, {0, 200});
  visit.number({"bridge_plate_worn", "share of its thickness gone along the pin holes", free_to_leave_out},
               damage.bridge_plate_worn, {0, 1, ""});
  visit.length({"bridge_lifted_mm", "from the back edge of the bridge, off the top", free_to_leave_out},
               damage.bridge_lifted, {0, 60, "mm"});
}

double thickness_at(PlanePoint p, const std::vector<ThicknessReading>& readings, double otherwise) {
  if (readings.empty()) return otherwise;
  double sum = 0, weights = 0;
  for (const ThicknessReading& reading : readings) {
    const double away = distance(p, {in_mm(reading.x), in_mm(reading.y)});
    const double weight = 1 / (away * away + near_mm * near_mm);
    sum += weight * in_mm(reading.thickness);
    weights += weight;
  }
  return sum / weights;
}

}  // namespace tailblock

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <optional>
#include <type_traits>

#include "quantity/fields.h"

namespace tailblock {

static_assert(!std::is_convertible_v<double, Length>, "a bare number is not a length");
static_assert(!std::is_convertible_v<Length, double>, "a length is not a bare number");
static_assert(!std::is_convertible_v<Temperature, RelativeHumidity>, "quantities do not pass for one another");

enum class Cut { quarter, flat };

struct Brace {
  Length width = mm(8);
};
void describe(FieldVisitor& visit, Brace& brace) {
  visit.length({"width_mm", "across the foot"}, brace.width, {2, 20, "mm"});
}

struct Top {
  Length thickness = mm(2.8);
  double density = 400;
  int faces = 1;
  bool bare = true;
  std::string name = "spruce";
  Date cut_on = date_from_iso("cut_on", "2024-03-01");
  Cut cut = Cut::quarter;
  std::vector<double> months = std::vector<double>(12, 0.5);
  Temperature room = celsius(20);
  RelativeHumidity humidity = humidity_fraction(0.5);
  Moisture moisture = moisture_percent(8);
  Force pull = newtons(700);
  Angle ring_angle = degrees(0);
  Days lag = days(3);
  Brace cross;
  std::vector<Brace> braces = std::vector<Brace>(2);
  std::optional<double> mass;
};
void describe(FieldVisitor& visit, Top& top) {
  static constexpr std::array<std::string_view, 2> cuts{"quarter", "flat"};
  visit.length({"thickness_mm", ""}, top.thickness, {1, 5, "mm"});
  visit.number({"density_kg_m3", ""}, top.density, {200, 1200, "kg/m3"});
  visit.integer({"faces", ""}, top.faces, {1, 2, ""});
  visit.flag({"bare", ""}, top.bare);
  visit.text({"name", ""}, top.name, 10);
  visit.date({"cut_on", ""}, top.cut_on);
  choice(visit, {"cut", ""}, top.cut, cuts);
  visit.numbers({"months", ""}, top.months, {0, 1, ""}, {12, 12});
  temperature(visit, {"room_c", ""}, top.room, {-40, 60, "C"});
  relative_humidity(visit, {"relative_humidity", ""}, top.humidity);
  moisture(visit, {"moisture_percent", ""}, top.moisture, {0, 30, "%"});
  force(visit, {"pull_n", ""}, top.pull, {0, 2000, "N"});
  angle(visit, {"ring_angle_deg", ""}, top.ring_angle, {0, 90, "deg"});
  span_of_days(visit, {"lag_days", ""}, top.lag, {0, 100, "days"});
  object(visit, {"cross", ""}, top.cross);
  list(visit, {"braces", ""}, top.braces, {1, 3});
  maybe(visit, {"mass_g", ""}, top.mass, [&](const Field& field, double& value) {
    visit.number(field, value, {1, 5000, "g"});
  });
}

namespace {

template <class Spoil>
void refuses(Spoil spoil, const std::string& line) {
  Top top;
  spoil(top);
  try {
    require_valid(top);
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

TEST(RangeCheck, accepts_a_sound_request) { EXPECT_NO_THROW(require_valid(Top{})); }

TEST(RangeCheck, names_field_value_and_range) {
  refuses([](Top& top) { top.thickness = mm(5.5); }, "thickness_mm: 5.5 mm is outside 1..5 mm");
  refuses([](Top& top) { top.density = 1e4; }, "density_kg_m3: 10000 kg/m3 is outside 200..1200 kg/m3");
  refuses([](Top& top) { top.density = std::nan(""); }, "density_kg_m3: nan kg/m3 is outside 200..1200 kg/m3");
  refuses([](Top& top) { top.faces = 3; }, "faces: 3 is outside 1..2");
  refuses([](Top& top) { top.name = "eleven char"; }, "name: 11 bytes is more than 10");
  refuses([](Top& top) { top.cut = static_cast<Cut>(2); }, "cut: choice 2 does not exist");
  refuses([](Top& top) { top.cut = static_cast<Cut>(-1); }, "cut: choice -1 does not exist");
  refuses([](Top& top) { top.mass = 0; }, "mass_g: 0 g is outside 1..5000 g");
}

TEST(RangeCheck, names_every_kind_of_quantity_in_its_own_unit) {
  refuses([](Top& top) { top.room = celsius(61); }, "room_c: 61 C is outside -40..60 C");
  refuses([](Top& top) { top.humidity = humidity_percent(150); }, "relative_humidity: 1.5 is outside 0..1");
  refuses([](Top& top) { top.moisture = moisture_percent(-1); }, "moisture_percent: -1 % is outside 0..30 %");
  refuses([](Top& top) { top.pull = newtons(-1); }, "pull_n: -1 N is outside 0..2000 N");
  refuses([](Top& top) { top.ring_angle = degrees(180); }, "ring_angle_deg: 180 deg is outside 0..90 deg");
  refuses([](Top& top) { top.lag = days(-2); }, "lag_days: -2 days is outside 0..100 days");
}

TEST(RangeCheck, names_the_path_into_objects_and_lists) {
  refuses([](Top& top) { top.cross.width = mm(1); }, "cross.width_mm: 1 mm is outside 2..20 mm");
  refuses([](Top& top) { top.braces[1].width = mm(30); }, "braces[1].width_mm: 30 mm is outside 2..20 mm");
  refuses([](Top& top) { top.braces.clear(); }, "braces: 0 items is outside 1..3");
  refuses([](Top& top) { top.months[7] = 2; }, "months[7]: 2 is outside 0..1");
  refuses([](Top& top) { top.months.pop_back(); }, "months: 11 items is outside 12..12");
}

TEST(RangeCheck, a_day_outside_the_calendar_of_the_shop_is_refused) {
  refuses([](Top& top) { top.cut_on -= std::chrono::days(365 * 200); },
          R"(cut_on: "1824-04-19" is not a day written 2026-02-14, years 1900..2199)");
}

TEST(RangeCheck, the_path_is_clean_again_after_an_object_and_a_list) {
  refuses([](Top& top) { top.mass = 6000; }, "mass_g: 6000 g is outside 1..5000 g");
}

}  // namespace
}  // namespace tailblock

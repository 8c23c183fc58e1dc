#include "models/json.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace tailblock {
namespace {

struct Pin {
  double taper = 0;
  std::optional<Length> collar;
};
void describe(FieldVisitor& visit, Pin& pin) {
  visit.number({"taper", "narrowing per length"}, pin.taper, {0, 1, ""});
  maybe(visit, {"collar_mm", "width of the head"}, pin.collar, [&](const Field& field, Length& value) {
    visit.length(field, value, {1, 20, "mm"});
  });
}

enum class Wood { ebony, rosewood };
constexpr std::array<std::string_view, 2> wood_names{"ebony", "rosewood"};

struct Bridge {
  Length height;
  int pins = 6;
  bool original = true;
  std::string note;
  Date fitted;
  Wood wood = Wood::ebony;
  std::vector<double> heights_mm{1, 2};
  std::vector<Pin> holes;
  Pin spare;
};
void describe(FieldVisitor& visit, Bridge& bridge) {
  visit.length({"height_mm", "over the top"}, bridge.height, {5, 15, "mm"});
  visit.integer({"pins", "how many", Need::has_default}, bridge.pins, {0, 12, ""});
  visit.flag({"original", "as made", Need::has_default}, bridge.original);
  visit.text({"note", "in words", Need::has_default}, bridge.note, 10);
  visit.date({"fitted", "the day it was glued", Need::has_default}, bridge.fitted);
  choice(visit, {"wood", "of the bridge", Need::has_default}, bridge.wood, wood_names);
  visit.numbers({"heights_mm", "along it", Need::has_default}, bridge.heights_mm, {0, 20, "mm"}, {0, 3});
  list(visit, {"holes", "one a string", Need::has_default}, bridge.holes, {0, 6});
  object(visit, {"spare", "kept in the case", Need::has_default}, bridge.spare);
}

void is_refused(const std::string& json, const std::string& line) {
  try {
    (void)from_json<Bridge>(json);
    FAIL() << json << " was taken";
  } catch (const Refused& refusal) {
    EXPECT_EQ(refusal.what(), line) << json;
  }
}

TEST(Json, a_request_with_only_what_is_required_keeps_the_defaults) {
  const auto bridge = from_json<Bridge>(R"({"height_mm": 9})");
  EXPECT_DOUBLE_EQ(in_mm(bridge.height), 9);
  EXPECT_EQ(bridge.pins, 6);
  EXPECT_EQ(bridge.heights_mm.size(), 2u);
}

TEST(Json, a_length_may_be_written_in_the_trades_notation) {
  EXPECT_DOUBLE_EQ(in_mm(from_json<Bridge>(R"({"height_mm": "3/8"})").height), 9.525);
}

TEST(Json, refusals_name_the_field_the_value_and_the_range) {
  is_refused(R"({"height_mm": 20})", "height_mm: 20 mm is outside 5..15 mm");
  is_refused(R"({"height_mm": "1 1/2"})", "height_mm: 38.1 mm is outside 5..15 mm");
  is_refused(R"({"height_mm": true})", "height_mm: true is not a number of mm");
  is_refused(R"({})", "height_mm: missing");
  is_refused(R"({"height_mm": 9, "pins": 13})", "pins: 13 is outside 0..12");
  is_refused(R"({"height_mm": 9, "pins": 1.5})", "pins: 1.5 is not a whole number");
  is_refused(R"({"height_mm": 9, "original": 1})", "original: 1 is not true or false");
  is_refused(R"({"height_mm": 9, "note": "longer than ten"})", "note: 15 bytes is more than 10");
  is_refused(R"({"height_mm": 9, "fitted": "2026-02-30"})",
             "fitted: \"2026-02-30\" is not a day written 2026-02-14, years 1900..2199");
  is_refused(R"({"height_mm": 9, "wood": "oak"})", "wood: \"oak\" is not one of ebony, rosewood");
  is_refused(R"({"height_mm": 9, "heights_mm": [1, 2, 21]})", "heights_mm[2]: 21 mm is outside 0..20 mm");
  is_refused(R"({"height_mm": 9, "heights_mm": [1, 2, 3, 4]})", "heights_mm: 4 items is outside 0..3");
  is_refused(R"({"height_mm": 9, "holes": [{"taper": 0.1}, {"taper": 2}]})", "holes[1].taper: 2 is outside 0..1");
  is_refused(R"({"height_mm": 9, "holes": [{}]})", "holes[0].taper: missing");
  is_refused(R"({"height_mm": 9, "holes": [{"taper": 0, "depth": 3}]})",
             "holes[0].depth: unknown field; known here: collar_mm, taper");
  is_refused(R"({"height_mm": 9, "spare": {"taper": 0, "collar_mm": 30}})",
             "spare.collar_mm: 30 mm is outside 1..20 mm");
  is_refused(R"([1])", "JSON: an object is wanted, like {\"name\": value}");
}

TEST(Json, text_that_is_no_json_is_refused_in_one_line) {
  for (const std::string text : {"", "{", "{\"height_mm\": 1e999}", "\xff\xfe", "{\"a\":1}{"}) {
    try {
      (void)from_json<Bridge>(text);
      FAIL() << text;
    } catch (const Refused& refusal) {
      EXPECT_EQ(std::string(refusal.what()).find('\n'), std::string::npos);
    }
  }
  EXPECT_THROW((void)from_json<Bridge>(std::string(100000, '[')), Refused);
}

RC_GTEST_PROP(Json, what_is_written_is_read_back_the_same, ()) {
  Bridge bridge;
  bridge.height = mm(*rc::gen::inRange(5000, 15000) / 1000.0);
  bridge.pins = *rc::gen::inRange(0, 13);
  bridge.original = *rc::gen::arbitrary<bool>();
  bridge.fitted = Date(std::chrono::days(*rc::gen::inRange(0, 50000)));
  bridge.wood = *rc::gen::element(Wood::ebony, Wood::rosewood);
  bridge.holes.resize(static_cast<std::size_t>(*rc::gen::inRange(0, 7)));
  for (Pin& pin : bridge.holes) {
    if (*rc::gen::arbitrary<bool>()) pin.collar = mm(*rc::gen::inRange(1, 21));
  }
  const std::string once = to_json(bridge);
  RC_ASSERT(to_json(from_json<Bridge>(once)) == once);
}

RC_GTEST_PROP(Json, no_bytes_crash_the_reader, (const std::string& bytes)) {
  try {
    (void)from_json<Bridge>(bytes);
  } catch (const Refused&) {
    RC_SUCCEED("refused");
  }
}

TEST(JsonSchema, says_type_range_unit_and_default) {
  const std::string schema = json_schema<Bridge>(SchemaWriter::Of::request);
  for (const char* part :
       {R"("required":["height_mm"])", R"("additionalProperties":false)", R"("maximum":15.0)",
        R"("description":"over the top [mm]")", R"("default":6)", R"("enum":["ebony","rosewood"])",
        R"("$schema":"https://json-schema.org/draft/2020-12/schema")", R"("items":{"$ref":"#/$defs/PinAsk"})"}) {
    EXPECT_NE(schema.find(part), std::string::npos) << part << "\n" << schema;
  }
}

}  // namespace
}  // namespace tailblock

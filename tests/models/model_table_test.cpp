#include "models/model_table.h"

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "models/data_tables.h"
#include "models/envelope_memo.h"
#include "models/plate_memo.h"
#include "published.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

using Json = nlohmann::json;

struct AllModels : ::testing::Test {
  static const ModelTable& table() {
    static const DataTables tables = load_data_tables(testing::repository_text);
    static EnvelopeMemo memo;
    static PlateMemo plates;
    static const ModelTable models(tables, memo, plates);
    return models;
  }
};

std::string refusal_of(const Model& model, const std::string& request) {
  try {
    (void)model.compute(request);
    return "";
  } catch (const Refused& refusal) {
    return refusal.what();
  }
}

TEST_F(AllModels, have_a_name_a_line_and_an_example_that_computes) {
  ASSERT_FALSE(table().models().empty());
  for (const Model& model : table().models()) {
    EXPECT_FALSE(model.summary.empty()) << model.name;
    const Json result = Json::parse(model.compute(model.example));
    EXPECT_TRUE(result.is_object() && !result.empty()) << model.name;
    EXPECT_EQ(table().find(model.name), &model);
  }
}

TEST_F(AllModels, give_the_same_answer_twice) {
  for (const Model& model : table().models())
    EXPECT_EQ(model.compute(model.example), model.compute(model.example)) << model.name;
}

TEST_F(AllModels, refuse_a_field_nobody_knows_by_its_name) {
  for (const Model& model : table().models()) {
    Json request = Json::parse(model.example);
    request["colour"] = "brown";
    EXPECT_EQ(refusal_of(model, request.dump()).rfind("colour: unknown field; known here: ", 0), 0u) << model.name;
  }
}

/// Visits every number of a request, changing it to `value`, and restores it.
void with_each_number(Json& node, double value, const std::function<void()>& act) {
  if (node.is_number()) {
    const Json kept = node;
    node =
        kept.is_number_integer() && value == std::floor(value) ? Json(static_cast<std::int64_t>(value)) : Json(value);
    act();
    node = kept;
  } else if (node.is_structured()) {
    for (auto& child : node) with_each_number(child, value, act);
  }
}

TEST_F(AllModels, refuse_every_number_far_out_of_range_in_one_line_that_names_it) {
  for (const Model& model : table().models()) {
    Json request = Json::parse(model.example);
    with_each_number(request, 1e9, [&] {
      const std::string line = refusal_of(model, request.dump());
      EXPECT_NE(line.find("1000000000"), std::string::npos) << model.name << ": " << line;
      EXPECT_NE(line.find(".."), std::string::npos) << model.name << ": " << line;
      EXPECT_EQ(line.find('\n'), std::string::npos) << model.name;
    });
  }
}

TEST_F(AllModels, survive_any_number_anywhere_in_their_example) {
  for (const Model& model : table().models()) {
    for (const double value : {0.0, -1.0, 1e-300, 12.0}) {
      Json request = Json::parse(model.example);
      int tried = 0;
      with_each_number(request, value, [&] {
        if (++tried > 40) return;  // a year's worth of equal fields says no more than the first of them
        const std::string line = refusal_of(model, request.dump());
        EXPECT_EQ(line.find('\n'), std::string::npos) << model.name << ": " << line;
      });
    }
  }
}

TEST_F(AllModels, say_what_they_take_and_give_in_schemas) {
  for (const Model& model : table().models()) {
    for (const std::string& text : {model.request_schema(), model.result_schema()}) {
      const Json schema = Json::parse(text);
      EXPECT_EQ(schema.at("$schema"), "https://json-schema.org/draft/2020-12/schema");
      EXPECT_FALSE(schema.at("properties").empty()) << model.name;
    }
  }
}

}  // namespace
}  // namespace tailblock

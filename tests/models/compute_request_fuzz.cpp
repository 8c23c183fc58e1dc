// Fuzz target: the example of any computation, changed where its own schema has room (bounds, beyond them, fields left
// out, lists emptied and repeated), is answered with numbers or refused in one line.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "models/data_tables.h"
#include "models/envelope_memo.h"
#include "models/model_table.h"
#include "models/plate_memo.h"
#include "published.h"
#include "quantity/refused.h"

using namespace tailblock;

namespace {

using Json = nlohmann::json;

const ModelTable& table() {
  static const DataTables tables = load_data_tables(tailblock::testing::repository_text);
  static EnvelopeMemo memo;
  static PlateMemo plates;
  static const ModelTable models(tables, memo, plates);
  return models;
}

const Json& schema_of(const Model& model) {
  static std::map<std::string, Json> schemas;
  Json& schema = schemas[model.name];
  if (schema.is_null()) schema = Json::parse(model.request_schema());
  return schema;
}

/// Choices, one byte each; nothing but the first when the bytes are used up.
class Choices {
 public:
  Choices(const std::uint8_t* bytes, std::size_t count) : bytes_(bytes), left_(count) {}
  std::size_t below(std::size_t count) {
    if (left_ == 0 || count == 0) return 0;
    --left_;
    return *bytes_++ % count;
  }

 private:
  const std::uint8_t* bytes_;
  std::size_t left_;
};

class Changed {
 public:
  Changed(const Json& schema, const Json& example, Choices choices)
      : schema_(schema), request_(example), choices_(choices) {
    const std::size_t changes = 1 + choices_.below(6);
    for (std::size_t i = 0; i < changes; ++i) change(request_, schema_, 0);
  }
  [[nodiscard]] std::string text() const { return request_.dump(-1, ' ', false, Json::error_handler_t::replace); }

 private:
  const Json& resolved(const Json& schema) {
    if (schema.contains("$ref")) {
      const std::string name = schema.at("$ref").get<std::string>();
      return schema_.at("$defs").at(name.substr(name.rfind('/') + 1));
    }
    if (schema.contains("oneOf")) return schema.at("oneOf").at(choices_.below(schema.at("oneOf").size()));
    return schema;
  }

  void change(Json& node, const Json& given, int depth) {
    const Json& schema = resolved(given);
    const bool here = choices_.below(6) == 0;
    if (!here && node.is_object() && schema.contains("properties") && !schema.at("properties").empty()) {
      const Json& properties = schema.at("properties");
      const auto property =
          std::next(properties.begin(), static_cast<std::ptrdiff_t>(choices_.below(properties.size())));
      if (node.contains(property.key())) return change(node[property.key()], property.value(), depth);
      node[property.key()] = invented(property.value(), depth);
    } else if (!here && node.is_array() && !node.empty() && schema.contains("items")) {
      change(node[choices_.below(node.size())], schema.at("items"), depth);
    } else if (node.is_array()) {
      change_list(node, schema, depth);
    } else if (node.is_object() && !node.empty()) {
      node.erase(std::next(node.begin(), static_cast<std::ptrdiff_t>(choices_.below(node.size()))));
    } else {
      node = invented(schema, depth);
    }
  }

  void change_list(Json& list, const Json& schema, int depth) {
    constexpr std::size_t many = 40;
    switch (choices_.below(4)) {
      case 0:
        list.clear();
        break;
      case 1:
        if (!list.empty()) list.erase(choices_.below(list.size()));
        break;
      case 2:
        list.push_back(list.empty() ? invented(schema.at("items"), depth) : list[choices_.below(list.size())]);
        break;
      default:
        while (!list.empty() && list.size() < many) list.push_back(list[choices_.below(list.size())]);
    }
  }

  /// Something that the schema allows, or just does not.
  Json invented(const Json& given, int depth) {
    constexpr int deepest = 6;
    const Json& schema = resolved(given);
    if (depth > deepest || choices_.below(30) == 0) return Json::array({nullptr, "x"})[choices_.below(2)];
    if (schema.contains("enum")) return schema.at("enum")[choices_.below(schema.at("enum").size())];
    const std::string type = schema.value("type", "");
    if (type == "object") return invented_object(schema, depth);
    if (type == "array") {
      Json list = Json::array();
      const std::size_t count = std::max<std::size_t>(schema.value("minItems", 0U), choices_.below(3));
      for (std::size_t i = 0; i < count; ++i) list.push_back(invented(schema.at("items"), depth + 1));
      return list;
    }
    if (type == "boolean") return choices_.below(2) == 0;
    if (type == "integer") return static_cast<std::int64_t>(number(schema, true));
    if (type == "number") return number(schema, false);
    return invented_text(schema);
  }

  Json invented_object(const Json& schema, int depth) {
    Json object = Json::object();
    const Json required = schema.value("required", Json::array());
    for (const auto& [name, property] : schema.at("properties").items()) {
      const bool needed = std::ranges::find(required, Json(name)) != required.end();
      if (needed || choices_.below(3) == 0) object[name] = invented(property, depth + 1);
    }
    return object;
  }

  double number(const Json& schema, bool whole) {
    constexpr double many = 1e5, fewer = 300;  // a search or a simulation is as long as one asks for
    const double low = schema.value("minimum", -1e6);
    const double highest = schema.value("maximum", 1e6);
    const double high = whole && highest >= many ? fewer : highest;
    switch (choices_.below(8)) {
      case 0:
        return low;
      case 1:
        return high;
      case 2:
        return low - (whole ? 1 : 1e-9 * (1 + std::abs(low)));
      case 3:
        return high + (whole ? 1 : 1e-9 * (1 + std::abs(high)));
      case 4:
        return std::clamp(0.0, low, high);
      default:
        return low + (high - low) * static_cast<double>(choices_.below(256)) / 255;
    }
  }

  Json invented_text(const Json& schema) {
    static const std::vector<std::string> days{"2026-02-20", "2026-03-29", "2024-02-29",
                                               "1999-12-31", "2026-13-01", "9999-12-31"};
    static const std::vector<std::string> texts{
        "", "x", "5/64", ".078", "2 mm", "-1 mm", "1e400", "spruce", "\xc3\xa9\xe2\x82\xac", std::string(5000, 'n')};
    if (schema.value("format", "") == "date") return days[choices_.below(days.size())];
    if (choices_.below(2) == 0) return texts[choices_.below(texts.size())];
    std::vector<std::string> said;
    gather_texts(request_, said);
    return said.empty() ? "x" : said[choices_.below(said.size())];
  }

  static void gather_texts(const Json& node, std::vector<std::string>& texts) {
    if (node.is_string()) texts.push_back(node.get<std::string>());
    if (node.is_structured()) {
      for (const Json& child : node) gather_texts(child, texts);
    }
  }

  const Json& schema_;
  Json request_;
  Choices choices_;
};

/// A number that is none is written as null, and nothing else is.
bool has_null(const Json& node) {
  if (node.is_structured()) return std::ranges::any_of(node, has_null);
  return node.is_null();
}

[[noreturn]] void fail(const Model& model, const std::string& request, const char* what) {
  std::fprintf(stderr, "%s: %s\n%s\n", model.name.c_str(), what, request.c_str());
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  Choices choices(bytes, count);
  const Model& model = table().models()[choices.below(table().models().size())];
  const std::string request = Changed(schema_of(model), Json::parse(model.example), choices).text();
  try {
    if (has_null(Json::parse(model.compute(request)))) fail(model, request, "a number of the answer is none");
  } catch (const Refused& refused) {
    if (std::string_view(refused.what()).find('\n') != std::string_view::npos) fail(model, request, refused.what());
  } catch (const std::exception& other) {
    fail(model, request, other.what());
  }
  return 0;
}

#include <cxxabi.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <map>
#include <nlohmann/json.hpp>

#include "models/json.h"

namespace tailblock {
namespace {

using Json = nlohmann::ordered_json;

/// How a length may be written as text; the reader is the judge, this tells a form what to expect.
constexpr auto trade_notation_doc = "a number of mm, or text in the trade's notation: 5/64, .078, 78 thou, 2 mm";

/// `tailblock::(anonymous namespace)::Kept` is called `Kept`.
std::string plain_name(const std::type_info& type) {
  const std::unique_ptr<char, decltype(&std::free)> full(abi::__cxa_demangle(type.name(), nullptr, nullptr, nullptr),
                                                         &std::free);
  const std::string name = full ? full.get() : type.name();
  const auto last = name.rfind(':');
  return last == std::string::npos ? name : name.substr(last + 1);
}

class Writer final : public SchemaWriter {
 public:
  Writer(const std::type_info& type, Of of) : of_(of), root_(std::make_unique<Json>(Json::object())) {
    (*root_)["$schema"] = "https://json-schema.org/draft/2020-12/schema";
    (*root_)["title"] = named(type);
    open_.push_back(&begin_object(*root_));
  }

  [[nodiscard]] std::string text() const override {
    Json whole = *root_;
    for (const auto& [name, definition] : definitions_) whole["$defs"][name] = *definition;
    return whole.dump();
  }

  void number(const Field& field, double& value, const Range& range) override {
    Json& property = put(field, range.unit);
    property["type"] = "number";
    bound(property, range);
    show_default(property, field, value);
  }

  void length(const Field& field, Length& value, const Range& range) override {
    Json& property = put(field, "mm");
    if (of_ == Of::result) {
      property["type"] = "number";
      bound(property, range);
      return;
    }
    Json as_number = {{"type", "number"}};
    bound(as_number, range);
    property["oneOf"] = Json::array({as_number, {{"type", "string"}, {"description", trade_notation_doc}}});
    show_default(property, field, in_mm(value));
  }

  void integer(const Field& field, int& value, const Range& range) override {
    Json& property = put(field, range.unit);
    property["type"] = "integer";
    bound(property, range);
    show_default(property, field, value);
  }

  void flag(const Field& field, bool& value) override {
    Json& property = put(field, "");
    property["type"] = "boolean";
    show_default(property, field, value);
  }

  void text(const Field& field, std::string& value, std::size_t most_bytes) override {
    Json& property = put(field, "");
    property["type"] = "string";
    property["maxLength"] = most_bytes;
    show_default(property, field, value);
  }

  void date(const Field& field, Date&) override {
    Json& property = put(field, "");
    property["type"] = "string";
    property["format"] = "date";
  }

  void choice(const Field& field, int& index, std::span<const std::string_view> names) override {
    Json& property = put(field, "");
    property["type"] = "string";
    property["enum"] = names;
    show_default(property, field, names[static_cast<std::size_t>(index)]);
  }

  void numbers(const Field& field, std::vector<double>& values, const Range& range, const Count& count) override {
    Json& property = put(field, range.unit);
    property["type"] = "array";
    property["items"] = {{"type", "number"}};
    bound(property["items"], range);
    bound(property, count);
    if (values.size() <= 12) show_default(property, field, values);
  }

  void texts(const Field& field, std::vector<std::string>&, std::size_t most_bytes, const Count& count) override {
    Json& property = put(field, "");
    property["type"] = "array";
    property["items"] = {{"type", "string"}, {"maxLength", most_bytes}};
    bound(property, count);
  }

  void of_type(const std::type_info& type) override { type_ = named(type); }

  bool enter(const Field& field) override {
    Json& property = put(field, "");
    property["$ref"] = "#/$defs/" + type_;
    open_.push_back(&begin_definition(type_));
    return true;
  }
  void leave() override { open_.pop_back(); }

  std::size_t enter_list(const Field& field, std::size_t, const Count& count) override {
    Json& property = put(field, "");
    property["type"] = "array";
    property["items"] = {{"$ref", "#/$defs/" + type_}};
    bound(property, count);
    return 1;
  }
  void enter_item(std::size_t) override { open_.push_back(&begin_definition(type_)); }
  void leave_item() override { open_.pop_back(); }
  void leave_list() override {}

  bool visit_optional(const Field&, bool) override {
    optional_ = true;
    return true;
  }

 private:
  [[nodiscard]] std::string named(const std::type_info& type) const {
    return plain_name(type) + (of_ == Of::request ? "Ask" : "");
  }

  /// A struct met again is written again in the same place, and comes out the same.
  Json& begin_definition(const std::string& name) {
    std::unique_ptr<Json>& definition = definitions_[name];
    definition = std::make_unique<Json>(Json::object());
    return begin_object(*definition);
  }

  static Json& begin_object(Json& schema) {
    schema["type"] = "object";
    schema["properties"] = Json::object();
    schema["required"] = Json::array();
    schema["additionalProperties"] = false;
    return schema;
  }

  Json& put(const Field& field, std::string_view unit) {
    Json& schema = *open_.back();
    const bool may_be_absent = optional_ || (of_ == Of::request && field.need == Need::has_default);
    if (!may_be_absent) schema["required"].push_back(field.name);
    no_default_ = optional_;
    optional_ = false;
    Json& property = schema["properties"][std::string(field.name)];
    property["description"] = std::string(field.doc) + (unit.empty() ? "" : " [" + std::string(unit) + "]");
    return property;
  }

  static void bound(Json& property, const Range& range) {
    if (std::abs(range.low) < std::numeric_limits<double>::max()) property["minimum"] = range.low;
    if (std::abs(range.high) < std::numeric_limits<double>::max()) property["maximum"] = range.high;
  }

  static void bound(Json& property, const Count& count) {
    property["minItems"] = count.least;
    property["maxItems"] = count.most;
  }

  template <class T>
  void show_default(Json& property, const Field& field, const T& value) {
    if (of_ == Of::request && field.need == Need::has_default && !no_default_) property["default"] = value;
  }

  Of of_;
  std::unique_ptr<Json> root_;
  std::map<std::string, std::unique_ptr<Json>> definitions_;
  std::vector<Json*> open_;
  std::string type_;
  bool optional_ = false;
  bool no_default_ = false;
};

}  // namespace

std::unique_ptr<SchemaWriter> SchemaWriter::open(const std::type_info& type, Of of) {
  return std::make_unique<Writer>(type, of);
}

}  // namespace tailblock

#include <nlohmann/json.hpp>
#include <set>

#include "models/json.h"
#include "quantity/trade_notation.h"

namespace tailblock {
namespace {

using Json = nlohmann::json;

constexpr int deepest_nesting = 32;

/// One object or list being read, and which of its fields have been asked for.
struct Level {
  const Json* value;
  std::string path;
  std::set<std::string, std::less<>> known;
};

std::string shown(const Json& value) {
  const std::string text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  return text.size() <= 60 ? text : text.substr(0, 57) + "...";
}

Json parsed(std::string_view text) {
  const auto bounded = [](int level, Json::parse_event_t, Json&) {
    if (level > deepest_nesting) throw Refused("JSON: nested deeper than 32");
    return true;
  };
  try {
    Json value = Json::parse(text, bounded);
    if (!value.is_object()) throw Refused("JSON: an object is wanted, like {\"name\": value}");
    return value;
  } catch (const Json::exception& fault) {
    const std::string reason = fault.what();
    const auto start = reason.find("parse error");
    throw Refused("JSON: " + (start == std::string::npos ? reason : reason.substr(start)));
  }
}

class Reader final : public JsonReader {
 public:
  explicit Reader(std::string_view text) : root_(parsed(text)) { levels_.push_back({&root_, "", {}}); }

  void finish() override { refuse_unknown(levels_.back()); }

  void number(const Field& field, double& value, const Range& range) override {
    const Json* found = find(field);
    if (!found) return;
    value = number_in(*found, path(field), range);
  }

  void length(const Field& field, Length& value, const Range& in_mm) override {
    const Json* found = find(field);
    if (!found) return;
    if (found->is_string()) {
      value = length_from_text(path(field), found->get_ref<const std::string&>());
      require_within(path(field), tailblock::in_mm(value), in_mm);
    } else {
      value = mm(number_in(*found, path(field), in_mm));
    }
  }

  void integer(const Field& field, int& value, const Range& range) override {
    const Json* found = find(field);
    if (!found) return;
    if (!found->is_number_integer()) wrong(*found, path(field), "a whole number");
    value = static_cast<int>(number_in(*found, path(field), range));
  }

  void flag(const Field& field, bool& value) override {
    const Json* found = find(field);
    if (!found) return;
    if (!found->is_boolean()) wrong(*found, path(field), "true or false");
    value = found->get<bool>();
  }

  void text(const Field& field, std::string& value, std::size_t most_bytes) override {
    const Json* found = find(field);
    if (!found) return;
    value = text_in(*found, path(field), most_bytes);
  }

  void date(const Field& field, Date& value) override {
    const Json* found = find(field);
    if (!found) return;
    if (!found->is_string()) wrong(*found, path(field), "a day written 2026-02-14");
    value = date_from_iso(path(field), found->get_ref<const std::string&>());
  }

  void choice(const Field& field, int& index, std::span<const std::string_view> names) override {
    const Json* found = find(field);
    if (!found) return;
    for (std::size_t i = 0; found->is_string() && i < names.size(); ++i) {
      if (found->get_ref<const std::string&>() == names[i]) {
        index = static_cast<int>(i);
        return;
      }
    }
    std::string allowed;
    for (const auto& name : names) allowed += (allowed.empty() ? "" : ", ") + std::string(name);
    throw Refused(path(field) + ": " + shown(*found) + " is not one of " + allowed);
  }

  void numbers(const Field& field, std::vector<double>& values, const Range& range, const Count& count) override {
    const Json* found = find(field);
    if (!found) return;
    check_count(*found, path(field), count);
    values.clear();
    for (std::size_t i = 0; i < found->size(); ++i) {
      values.push_back(number_in((*found)[i], path(field) + "[" + std::to_string(i) + "]", range));
    }
  }

  void texts(const Field& field, std::vector<std::string>& values, std::size_t most_bytes,
             const Count& count) override {
    const Json* found = find(field);
    if (!found) return;
    check_count(*found, path(field), count);
    values.clear();
    for (std::size_t i = 0; i < found->size(); ++i) {
      values.push_back(text_in((*found)[i], path(field) + "[" + std::to_string(i) + "]", most_bytes));
    }
  }

  bool enter(const Field& field) override {
    const Json* found = find(field);
    if (!found) return false;
    if (!found->is_object()) wrong(*found, path(field), "an object");
    levels_.push_back({found, path(field) + ".", {}});
    return true;
  }

  void leave() override {
    refuse_unknown(levels_.back());
    levels_.pop_back();
  }

  std::size_t enter_list(const Field& field, std::size_t have, const Count& count) override {
    const Json* found = find(field);
    if (found) check_count(*found, path(field), count);
    levels_.push_back({found, path(field), {}});
    return found ? found->size() : have;
  }

  void enter_item(std::size_t index) override {
    const Level& list = levels_.back();
    const std::string where = list.path + "[" + std::to_string(index) + "]";
    // A list left out keeps the items it was made with: they are read from an empty object, which changes nothing.
    static const Json nothing = Json::object();
    const Json* item = list.value ? &(*list.value)[index] : &nothing;
    if (!item->is_object()) wrong(*item, where, "an object");
    keep_defaults_ = keep_defaults_ || !list.value;
    levels_.push_back({item, where + ".", {}});
  }

  void leave_item() override {
    refuse_unknown(levels_.back());
    levels_.pop_back();
    keep_defaults_ = false;
  }

  void leave_list() override { levels_.pop_back(); }

  bool visit_optional(const Field& field, bool) override {
    Level& level = levels_.back();
    level.known.emplace(field.name);
    const auto found = level.value->find(field.name);
    return found != level.value->end() && !found->is_null();
  }

 private:
  [[nodiscard]] std::string path(const Field& field) const { return levels_.back().path + std::string(field.name); }

  [[noreturn]] static void wrong(const Json& found, const std::string& where, const std::string& wanted) {
    throw Refused(where + ": " + shown(found) + " is not " + wanted);
  }

  static double number_in(const Json& found, const std::string& where, const Range& range) {
    if (!found.is_number())
      wrong(found, where, range.unit.empty() ? "a number" : "a number of " + std::string(range.unit));
    return require_within(where, found.get<double>(), range);
  }

  static std::string text_in(const Json& found, const std::string& where, std::size_t most_bytes) {
    if (!found.is_string()) wrong(found, where, "text");
    auto text = found.get<std::string>();
    if (text.size() <= most_bytes) return text;
    throw Refused(where + ": " + std::to_string(text.size()) + " bytes is more than " + std::to_string(most_bytes));
  }

  static void check_count(const Json& found, const std::string& where, const Count& count) {
    if (!found.is_array()) wrong(found, where, "a list");
    if (found.size() < count.least || found.size() > count.most) {
      throw Refused(where + ": " + std::to_string(found.size()) + " items is outside " + std::to_string(count.least) +
                    ".." + std::to_string(count.most));
    }
  }

  const Json* find(const Field& field) {
    Level& level = levels_.back();
    level.known.emplace(field.name);
    const auto found = level.value->find(field.name);
    if (found != level.value->end()) return &*found;
    if (field.need == Need::required && !keep_defaults_) throw Refused(path(field) + ": missing");
    return nullptr;
  }

  static void refuse_unknown(const Level& level) {
    for (const auto& [name, value] : level.value->items()) {
      if (level.known.contains(name)) continue;
      std::string allowed;
      for (const auto& known : level.known) allowed += (allowed.empty() ? "" : ", ") + known;
      throw Refused(level.path + name + ": unknown field; known here: " + allowed);
    }
  }

  Json root_;
  std::vector<Level> levels_;
  bool keep_defaults_ = false;
};

}  // namespace

std::unique_ptr<JsonReader> JsonReader::open(std::string_view text) { return std::make_unique<Reader>(text); }

}  // namespace tailblock

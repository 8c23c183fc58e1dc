#include <array>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>

#include "models/json.h"

namespace tailblock {
namespace {

using Json = nlohmann::ordered_json;

class Writer final : public JsonWriter {
 public:
  Writer() { open_.push_back(&root_); }

  [[nodiscard]] std::string text() const override { return root_.dump(-1, ' ', false, Json::error_handler_t::replace); }

  void number(const Field& field, double& value, const Range&) override { put(field, number_value(value)); }
  void length(const Field& field, Length& value, const Range&) override { put(field, number_value(in_mm(value))); }
  void integer(const Field& field, int& value, const Range&) override { put(field, value); }
  void flag(const Field& field, bool& value) override { put(field, value); }
  void text(const Field& field, std::string& value, std::size_t) override { put(field, value); }
  void date(const Field& field, Date& value) override { put(field, iso_date(value)); }
  void choice(const Field& field, int& index, std::span<const std::string_view> names) override {
    put(field, names[static_cast<std::size_t>(index)]);
  }
  void numbers(const Field& field, std::vector<double>& values, const Range&, const Count&) override {
    Json& list = put(field, Json::array());
    for (const double value : values) list.push_back(number_value(value));
  }
  void texts(const Field& field, std::vector<std::string>& values, std::size_t, const Count&) override {
    put(field, values);
  }

  bool enter(const Field& field) override {
    open_.push_back(&put(field, Json::object()));
    return true;
  }
  void leave() override { open_.pop_back(); }
  std::size_t enter_list(const Field& field, std::size_t have, const Count&) override {
    Json& list = put(field, Json::array());
    list.get_ref<Json::array_t&>().reserve(have);
    open_.push_back(&list);
    return have;
  }
  void enter_item(std::size_t) override {
    open_.back()->push_back(Json::object());
    open_.push_back(&open_.back()->back());
  }
  void leave_item() override { open_.pop_back(); }
  void leave_list() override { open_.pop_back(); }
  bool visit_optional(const Field&, bool have) override { return have; }

 private:
  /// Twelve significant digits: beyond any gauge, and free of the noise of converting units.
  static Json number_value(double value) {
    if (!std::isfinite(value)) return nullptr;
    std::array<char, 32> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, 12).ptr;
    double rounded = 0;
    std::from_chars(text.data(), end, rounded);
    return rounded + 0.0;  // never -0
  }

  Json& put(const Field& field, Json value) { return (*open_.back())[std::string(field.name)] = std::move(value); }

  Json root_ = Json::object();
  std::vector<Json*> open_;
};

}  // namespace

std::unique_ptr<JsonWriter> JsonWriter::open() { return std::make_unique<Writer>(); }

}  // namespace tailblock

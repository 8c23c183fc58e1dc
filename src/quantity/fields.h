#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <typeinfo>
#include <vector>

#include "quantity/date.h"
#include "quantity/length.h"
#include "quantity/physical.h"
#include "quantity/refused.h"

namespace tailblock {

/// Whether a request may leave a field out. A field left out keeps the value its struct was made with.
enum class Need { required, has_default };

/// A field's name as written in JSON (with its unit: `action12_bass_mm`) and one line saying what it is.
struct Field {
  std::string_view name;
  std::string_view doc;
  Need need = Need::required;
};

/// How few and how many items a list may hold.
struct Count {
  std::size_t least;
  std::size_t most;
};

/// Walks over the fields of a request or a result. Every struct at a room's surface has one function
/// `void describe(FieldVisitor&, TheStruct&)` beside it, which names its fields, units, ranges and meaning once.
/// Reading JSON, writing JSON, checking ranges and printing the JSON Schema are four visitors over that one function.
/// A visitor that only looks (writing, checking, schema) leaves every value as it was.
class FieldVisitor {
 public:
  FieldVisitor() = default;
  FieldVisitor(const FieldVisitor&) = delete;
  FieldVisitor& operator=(const FieldVisitor&) = delete;
  virtual ~FieldVisitor() = default;

  virtual void number(const Field&, double& value, const Range&) = 0;
  /// `in_mm` is the allowed range in millimetres. JSON takes a number of millimetres or text in the trade's notation.
  virtual void length(const Field&, Length& value, const Range& in_mm) = 0;
  virtual void integer(const Field&, int& value, const Range&) = 0;
  virtual void flag(const Field&, bool& value) = 0;
  virtual void text(const Field&, std::string& value, std::size_t most_bytes) = 0;
  virtual void date(const Field&, Date& value) = 0;
  /// `index` into `names`; written in JSON as the name.
  virtual void choice(const Field&, int& index, std::span<const std::string_view> names) = 0;
  /// A plain list of numbers, all in one range (a year of daily values).
  virtual void numbers(const Field&, std::vector<double>& values, const Range&, const Count&) = 0;

  /// A plain list of sentences.
  virtual void texts(const Field&, std::vector<std::string>& values, std::size_t most_bytes, const Count&) = 0;

  /// Tells which struct the next enter() or enter_list() is about.
  virtual void of_type(const std::type_info&) {}
  /// Steps into a nested struct; false when it is absent and has a default. Pair with leave().
  virtual bool enter(const Field&) = 0;
  virtual void leave() = 0;
  /// Steps into a list of structs and says how many items to visit. Pair with leave_list().
  virtual std::size_t enter_list(const Field&, std::size_t have, const Count&) = 0;
  virtual void enter_item(std::size_t index) = 0;
  virtual void leave_item() = 0;
  virtual void leave_list() = 0;
  /// For an optional value: whether to visit it, given whether the struct has one now.
  virtual bool visit_optional(const Field&, bool have) = 0;
};

/// A nested struct that has its own describe().
template <class T>
void object(FieldVisitor& visit, const Field& field, T& value) {
  visit.of_type(typeid(T));
  if (!visit.enter(field)) return;
  describe(visit, value);
  visit.leave();
}

/// A list of structs that have their own describe().
template <class T>
void list(FieldVisitor& visit, const Field& field, std::vector<T>& items, const Count& count) {
  visit.of_type(typeid(T));
  items.resize(visit.enter_list(field, items.size(), count));
  for (std::size_t i = 0; i < items.size(); ++i) {
    visit.enter_item(i);
    describe(visit, items[i]);
    visit.leave_item();
  }
  visit.leave_list();
}

/// A value that may be absent. `leaf(field, value)` visits the value itself; its field is always `has_default`.
template <class T, class Leaf>
void maybe(FieldVisitor& visit, Field field, std::optional<T>& value, Leaf leaf) {
  field.need = Need::has_default;
  if (!visit.visit_optional(field, value.has_value())) {
    value.reset();
    return;
  }
  if (!value) value.emplace();
  leaf(field, *value);
}

/// The same for the values that are most often absent.
inline void maybe_number(FieldVisitor& visit, const Field& field, std::optional<double>& value, const Range& range) {
  maybe(visit, field, value, [&](const Field& given, double& number) { visit.number(given, number, range); });
}
inline void maybe_length(FieldVisitor& visit, const Field& field, std::optional<Length>& value, const Range& in_mm) {
  maybe(visit, field, value, [&](const Field& given, Length& length) { visit.length(given, length, in_mm); });
}
inline void maybe_date(FieldVisitor& visit, const Field& field, std::optional<Date>& value) {
  maybe(visit, field, value, [&](const Field& given, Date& date) { visit.date(given, date); });
}

/// An enum whose enumerators count 0, 1, 2 ... in the order of `names`.
template <class Enum>
void choice(FieldVisitor& visit, const Field& field, Enum& value, std::span<const std::string_view> names) {
  int index = static_cast<int>(value);
  visit.choice(field, index, names);
  value = static_cast<Enum>(index);
}

/// `temperature_c`, in degrees Celsius.
void temperature(FieldVisitor& visit, const Field& field, Temperature& value, const Range& in_c);
/// `relative_humidity`, 0..1.
void relative_humidity(FieldVisitor& visit, const Field& field, RelativeHumidity& value);
/// `moisture_percent`.
void moisture(FieldVisitor& visit, const Field& field, Moisture& value, const Range& in_percent);
/// `pull_n`, in newtons.
void force(FieldVisitor& visit, const Field& field, Force& value, const Range& in_n);
/// `break_deg`, in degrees.
void angle(FieldVisitor& visit, const Field& field, Angle& value, const Range& in_deg);
/// `lag_days`.
void span_of_days(FieldVisitor& visit, const Field& field, Days& value, const Range& in_days);

/// A visitor that checks every value against its range and names the path of the one it refuses.
class RangeCheck final : public FieldVisitor {
 public:
  void number(const Field&, double& value, const Range&) override;
  void length(const Field&, Length& value, const Range& in_mm) override;
  void integer(const Field&, int& value, const Range&) override;
  void flag(const Field&, bool&) override {}
  void text(const Field&, std::string& value, std::size_t most_bytes) override;
  void date(const Field&, Date& value) override;
  void choice(const Field&, int& index, std::span<const std::string_view> names) override;
  void numbers(const Field&, std::vector<double>& values, const Range&, const Count&) override;
  void texts(const Field&, std::vector<std::string>& values, std::size_t most_bytes, const Count&) override;
  bool enter(const Field&) override;
  void leave() override;
  std::size_t enter_list(const Field&, std::size_t have, const Count&) override;
  void enter_item(std::size_t index) override;
  void leave_item() override;
  void leave_list() override;
  bool visit_optional(const Field&, bool have) override { return have; }

 private:
  [[nodiscard]] std::string path(std::string_view leaf) const;
  std::vector<std::string> trail_;
};

/// Checks a request made in C++ exactly as one read from JSON would be. Every model calls this first. It walks a copy,
/// since a visitor may write.
/// @throws Refused naming the field, its value and the allowed range.
template <class Request>
void require_valid(Request request) {
  RangeCheck check;
  describe(check, request);
}

}  // namespace tailblock

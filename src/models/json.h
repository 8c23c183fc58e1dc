#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <typeinfo>

#include "quantity/fields.h"

namespace tailblock {

/// Reads one JSON object field by field into a struct, through the struct's own describe(). A wrong type, a value out
/// of range, a missing field or one nobody knows is refused in one line with its path: `strings[3].pitch_hz: ...`.
class JsonReader : public FieldVisitor {
 public:
  /// @throws Refused when the text is not one JSON object, or is nested deeper than 32.
  static std::unique_ptr<JsonReader> open(std::string_view text);
  /// Call after describe(): refuses fields that describe() did not name.
  virtual void finish() = 0;
};

/// Writes a struct as JSON, fields in the order of describe(), numbers to their shortest exact form.
class JsonWriter : public FieldVisitor {
 public:
  static std::unique_ptr<JsonWriter> open();
  [[nodiscard]] virtual std::string text() const = 0;
};

/// Prints the JSON Schema (2020-12) of a struct. A field that may be left out shows the value it then has. Each nested
/// struct is defined once, under `$defs`, by its own name; a request's are named `...Ask`, since they may leave out
/// more.
class SchemaWriter : public FieldVisitor {
 public:
  /// What the schema is of: a request may leave out what has a default; a result always has every field but the
  /// optional.
  enum class Of { request, result };
  static std::unique_ptr<SchemaWriter> open(const std::type_info& type, Of of);
  [[nodiscard]] virtual std::string text() const = 0;
};

/// @throws Refused as JsonReader does.
template <class T>
[[nodiscard]] T from_json(std::string_view text) {
  T value;
  const auto reader = JsonReader::open(text);
  describe(*reader, value);
  reader->finish();
  return value;
}

template <class T>
[[nodiscard]] std::string to_json(T value) {
  const auto writer = JsonWriter::open();
  describe(*writer, value);
  return writer->text();
}

template <class T>
[[nodiscard]] std::string json_schema(SchemaWriter::Of of) {
  T value;
  const auto writer = SchemaWriter::open(typeid(T), of);
  describe(*writer, value);
  return writer->text();
}

}  // namespace tailblock

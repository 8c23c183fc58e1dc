#include "book/archive_line.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "book/book.h"

namespace tailblock {
namespace {

using nlohmann::ordered_json;

ordered_json as_json(const ArchiveValue& value) {
  return std::visit(
      [](const auto& it) -> ordered_json {
        if constexpr (std::is_same_v<std::decay_t<decltype(it)>, std::monostate>) {
          return nullptr;
        } else {
          return it;
        }
      },
      value);
}

/// The object's members. A column that stands twice is refused, which the parser alone would not.
ordered_json object_in(std::string_view line) {
  std::size_t keys = 0;
  const auto count_keys = [&](int, ordered_json::parse_event_t event, ordered_json&) {
    keys += event == ordered_json::parse_event_t::key ? 1 : 0;
    return true;
  };
  ordered_json object = ordered_json::parse(line, count_keys, false);
  if (!object.is_object()) throw Refused("a JSON object was expected");
  for (const ordered_json& value : object) {
    if (value.is_structured()) throw Refused("a value is a list or an object; text, a number or null was expected");
  }
  if (keys != object.size()) throw Refused("a column stands twice");
  return object;
}

[[noreturn]] void refuse_type(const ArchiveColumn& column, const char* expected) {
  throw Refused(column.name + ": " + expected + " was expected");
}

ArchiveValue value_in(const ordered_json& json, const ArchiveColumn& column) {
  if (json.is_null()) return {};
  switch (column.kind) {
    case ArchiveKind::whole:
      if (!json.is_number_integer() || (json.is_number_unsigned() && json.get<std::uint64_t>() > INT64_MAX)) {
        refuse_type(column, "a whole number");
      }
      return json.get<std::int64_t>();
    case ArchiveKind::number:
      if (!json.is_number()) refuse_type(column, "a number");
      return json.get<double>();
    default:
      if (!json.is_string()) refuse_type(column, column.kind == ArchiveKind::picture ? "a photo's file" : "text");
      return json.get<std::string>();
  }
}

}  // namespace

std::string json_line(const ArchiveTable& table, const ArchiveRow& row) {
  ordered_json object = ordered_json::object();
  for (std::size_t i = 0; i < row.size(); ++i) {
    const double* number = std::get_if<double>(&row[i]);
    if (number != nullptr && !std::isfinite(*number)) {
      throw StorageFault("no archive was made: " + table.columns[i].name + " in a row of " + table.name +
                         " is infinite");
    }
    object[table.columns[i].name] = as_json(row[i]);
  }
  try {
    return object.dump();
  } catch (const nlohmann::json::type_error&) {
    throw StorageFault("no archive was made: a text in a row of " + table.name + " is not UTF-8");
  }
}

ArchiveRow row_of_json_line(const ArchiveTable& table, std::string_view line) {
  const ordered_json object = object_in(line);
  ArchiveRow row;
  for (const ArchiveColumn& column : table.columns) {
    const auto found = object.find(column.name);
    if (found == object.end()) throw Refused(column.name + ": the column is missing");
    row.push_back(value_in(*found, column));
  }
  for (const auto& [name, value] : object.items()) {
    if (std::ranges::find(table.columns, name, &ArchiveColumn::name) == table.columns.end()) {
      throw Refused("the table has no column " + ordered_json(name).dump());
    }
  }
  return row;
}

}  // namespace tailblock

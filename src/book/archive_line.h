#pragma once

#include <string>
#include <string_view>

#include "book/archive_rows.h"

namespace tailblock {

/// A row as a JSON object whose keys are the table's columns, in their order, without a line's end.
/// @throws StorageFault for a number or a text that JSON cannot say: infinite, or not UTF-8.
[[nodiscard]] std::string json_line(const ArchiveTable& table, const ArchiveRow& row);

/// The row that a line says.
/// @throws Refused naming the column, without the file and the line's number.
[[nodiscard]] ArchiveRow row_of_json_line(const ArchiveTable& table, std::string_view line);

}  // namespace tailblock

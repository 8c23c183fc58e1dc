#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "book/session.h"

namespace tailblock::testing {

/// Every value of every table as SQLite itself says it, a row a line, beside the statements that make the book: by the
/// table's name. When a migration after number `migrated_from` was applied is left out.
inline std::map<std::string, std::vector<std::string>> rows_of_book(const std::filesystem::path& file,
                                                                    int migrated_from = 1'000'000) {
  Session session(file, Session::May::read);
  std::map<std::string, std::vector<std::string>> rows;
  for (const auto& [name, sql] : session.rows<std::string, std::string>(
           "SELECT type || ' ' || name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY 1")) {
    rows[name] = {sql};
    if (!name.starts_with("table ")) continue;
    const std::string table = name.substr(6);
    std::string row;
    for (const auto& [column] : session.rows<std::string>("SELECT name FROM pragma_table_info(:name)", {cell(table)})) {
      std::string value = "quote(\"" + column + "\")";
      if (column == "applied_at") {
        value = "CASE WHEN number > " + std::to_string(migrated_from) + " THEN '' ELSE " + value + " END";
      }
      row += (row.empty() ? "" : " || ' ' || ") + value;
    }
    for (const auto& [text] : session.rows<std::string>("SELECT " + row + " FROM \"" + table + "\" ORDER BY 1")) {
      rows[name].push_back(text);
    }
  }
  return rows;
}

}  // namespace tailblock::testing

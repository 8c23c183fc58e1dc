#pragma once

#include <functional>
#include <string>

#include "published.h"
#include "repair/repair_tables.h"

namespace tailblock::testing {

inline const RepairTables& repository_repairs() {
  static const RepairTables tables = repair_tables(repository_text);
  return tables;
}

/// What the tables are refused for when one of them reads as `changed`.
inline std::string refusal_with(const std::string& path, const std::function<std::string(std::string)>& changed) {
  const std::string text = changed(repository_file(path));
  try {
    (void)repair_tables(
        [&](std::string_view wanted) { return wanted == path ? std::string_view(text) : repository_text(wanted); });
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "was not refused";
}

inline std::string refusal(const std::function<void()>& ask) {
  try {
    ask();
  } catch (const Refused& refused) {
    return refused.what();
  }
  return "was not refused";
}

/// Replaces the first `from`, which must be there.
inline std::function<std::string(std::string)> with(const std::string& from, const std::string& to) {
  return [from, to](std::string text) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return at == std::string::npos ? text : text.replace(at, from.size(), to);
  };
}

}  // namespace tailblock::testing

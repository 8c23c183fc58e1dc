#pragma once

#include <span>
#include <string_view>

namespace tailblock {

/// One step of the book's schema: `src/book/migrations/0007-what-it-does.sql` is {7, "what-it-does", its text}.
struct MigrationFile {
  int number;
  std::string_view name;
  std::string_view sql;
};

/// Every migration in order; the first is number 1 and there are no gaps (the build refuses one).
[[nodiscard]] std::span<const MigrationFile> migration_files();

}  // namespace tailblock

#pragma once

#include <span>

#include "book/migration_files.h"
#include "book/session.h"

namespace tailblock {

/// The number of the newest migration applied to the book; 0 for an empty file.
[[nodiscard]] int applied_number(Session& session);

/// Applies the migrations that the book has not had, all in one transaction, then calls `afterwards` in the same one.
/// Nothing is done, and nothing is locked, when there are none.
/// @throws Refused for a book newer than the last of `migrations`, and for an SQLite file that is no book.
void migrate(Session& session, std::span<const MigrationFile> migrations,
             const std::function<void(Session&)>& afterwards);

}  // namespace tailblock

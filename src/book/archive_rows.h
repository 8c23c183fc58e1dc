#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "book/session.h"

namespace tailblock {

/// What a column of the book holds. A picture lies in a file of the archive, which its row names.
enum class ArchiveKind { whole, number, text, picture };

struct ArchiveColumn {
  std::string name;
  ArchiveKind kind = ArchiveKind::text;
};

struct ArchiveTable {
  std::string name;
  std::vector<ArchiveColumn> columns;
  std::vector<std::string> key;  ///< the columns of its primary key, in order
  std::string made_by;           ///< the statement that makes it
};

/// One value of a row; nothing is SQL's NULL. A picture is the name of its file.
using ArchiveValue = std::variant<std::monostate, std::int64_t, double, std::string>;
using ArchiveRow = std::vector<ArchiveValue>;

/// Every table of the book, by name.
[[nodiscard]] std::vector<ArchiveTable> archive_tables(Session& session);
[[nodiscard]] std::string archive_file_of(const ArchiveTable& table);  ///< `tables/owners.jsonl`

/// A name in double quotes, for a statement.
[[nodiscard]] std::string quoted(const std::string& name);

/// Hands over every row of a table in order of its primary key.
void each_archive_row(Session& session, const ArchiveTable& table, const std::function<void(const ArchiveRow&)>& take);

/// A picture of the book and the file it is in the archive: `photos/<sha256>.jpg`, its thumbnail `.thumbnail.jpg`.
struct ArchivePicture {
  int photo_id = 0;
  std::string column;
  std::string file;
};
/// All of them, by the name of the file.
[[nodiscard]] std::vector<ArchivePicture> archive_pictures(Session& session, const std::vector<ArchiveTable>& tables);

}  // namespace tailblock

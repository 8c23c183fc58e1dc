#pragma once

#include <string>
#include <vector>

#include "book/archive_rows.h"

namespace tailblock {

/// What an archive tells whoever opens it without this program, its tables as the book itself describes them.
[[nodiscard]] std::string archive_readme(int schema_number, const std::vector<ArchiveTable>& tables);

}  // namespace tailblock

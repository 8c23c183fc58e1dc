#pragma once

#include <filesystem>

namespace tailblock {

/// Makes a new book of an archive: with the schema the archive's number says, then brought up to date and checked as
/// Book::troubles() checks it. The book takes its name only when all of it is on the disk.
/// @throws Refused when `book` is there already, and for whatever in the archive is not as docs/archive.md says, naming
/// the file and the line; StorageFault when the disk refuses. Nothing is left behind then.
void import_archive(const std::filesystem::path& archive, const std::filesystem::path& book);

}  // namespace tailblock

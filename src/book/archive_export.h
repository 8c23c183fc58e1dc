#pragma once

#include <filesystem>

namespace tailblock {

/// Writes the whole book, as it stands at one moment and with the schema number it has, into one archive that any
/// machine can open (docs/archive.md). The same book gives the same bytes. Others may use the book meanwhile.
/// @throws Refused when `archive` is there already or `book` is no book, StorageFault when the disk refuses or the book
/// holds what an archive cannot say. Nothing is left behind then.
void export_archive(const std::filesystem::path& book, const std::filesystem::path& archive);

/// Writes each table as CSV (RFC 4180) into a new folder, for a spreadsheet. Nothing reads them back.
/// @throws as export_archive.
void export_csv(const std::filesystem::path& book, const std::filesystem::path& folder);

}  // namespace tailblock

#include "book/archive_export.h"

#include <fstream>

#include "book/archive_line.h"
#include "book/archive_manifest.h"
#include "book/archive_readme.h"
#include "book/archive_rows.h"
#include "book/archive_tar.h"
#include "book/book.h"
#include "book/file_safety.h"
#include "book/migrations.h"

namespace tailblock {
namespace {

void write_archive(Session& session, std::ostream& out) {
  const auto tables = archive_tables(session);
  ArchiveManifest manifest{.schema_number = applied_number(session), .files = {}};
  if (manifest.schema_number == 0) throw Refused("book: the file is not a book of this program");
  TarWriter tar(out);
  const auto add = [&](const std::string& name, const auto& fill) -> ArchiveFile& {
    const TarWriter::Written written = tar.add(name, fill);
    manifest.files.push_back({.name = name, .bytes = written.bytes, .sha256 = written.sha256});
    return manifest.files.back();
  };
  add(archive_readme_name,
      [&](const TarWriter::Write& write) { write(archive_readme(manifest.schema_number, tables)); });
  for (const ArchivePicture& picture : archive_pictures(session, tables)) {
    add(picture.file, [&](const TarWriter::Write& write) {
      write(session.read_bytes("photos", picture.column.c_str(), picture.photo_id));
    });
  }
  for (const ArchiveTable& table : tables) {
    std::int64_t rows = 0;
    const auto fill = [&](const TarWriter::Write& write) {
      each_archive_row(session, table, [&](const ArchiveRow& row) {
        write(json_line(table, row) + '\n');
        ++rows;
      });
    };
    ArchiveFile& file = add(archive_file_of(table), fill);
    file.rows = rows;
  }
  tar.add(manifest_name, [&](const TarWriter::Write& write) { write(manifest_text(manifest)); });
  tar.finish();
}

}  // namespace

void export_archive(const std::filesystem::path& book, const std::filesystem::path& archive) {
  if (std::filesystem::exists(archive)) {
    throw Refused("ARCHIVE: " + archive.string() + " is there already; it is not overwritten");
  }
  UnfinishedFile unfinished(archive);
  {
    std::ofstream out(unfinished.path(), std::ios::binary);
    if (!out) throw StorageFault(archive.string() + ": cannot be made there");
    Session session(book, Session::May::read);
    Transaction one_state(session, Transaction::To::look);
    write_archive(session, out);
    one_state.commit();
  }
  unfinished.finish();
}

}  // namespace tailblock

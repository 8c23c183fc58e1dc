#include <CLI/CLI.hpp>
#include <iostream>

#include "book/archive_export.h"
#include "book/archive_import.h"
#include "cli/commands.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

struct Files {
  std::string book, archive, csv;
};

/// A book with troubles is not written out as if it were whole.
void require_whole(const fs::path& book) {
  if (!fs::exists(book)) throw Refused("BOOK: " + book.string() + " does not exist");
  const auto troubles = Book(book).troubles();
  if (!troubles.empty()) {
    throw StorageFault("nothing was written out, the book itself has troubles: " + troubles.front() +
                       "; restore the last good copy");
  }
}

void write_out(const Files& files) {
  if (files.archive.empty() == files.csv.empty()) {
    throw CLI::RequiredError("one of ARCHIVE and --csv FOLDER");
  }
  require_whole(files.book);
  if (files.csv.empty()) {
    export_archive(files.book, files.archive);
  } else {
    export_csv(files.book, files.csv);
  }
  std::cout << "written to " << (files.csv.empty() ? files.archive : files.csv) << '\n';
}

void bring_in(const Files& files) {
  import_archive(files.archive, files.book);
  std::cout << "made the book " << files.book << '\n';
}

}  // namespace

void add_archive_commands(CLI::App& app) {
  const auto files = std::make_shared<Files>();
  CLI::App* exporting = app.add_subcommand(
      "export", "Write the whole book into one archive that any machine can open, or its tables as CSV");
  exporting->add_option("BOOK", files->book, "the book's file")->required();
  exporting->add_option("ARCHIVE", files->archive, "the archive to make: a tar of JSON lines, photos and checksums");
  exporting->add_option("--csv", files->csv, "a folder to make, with each table as CSV for a spreadsheet instead")
      ->option_text("FOLDER");
  exporting->callback([files] { write_out(*files); });

  CLI::App* importing = app.add_subcommand("import", "Make a new book of an archive");
  importing->add_option("ARCHIVE", files->archive, "the archive")->required();
  importing->add_option("BOOK", files->book, "the book's file to make")->required();
  importing->callback([files] { bring_in(*files); });
}

}  // namespace tailblock

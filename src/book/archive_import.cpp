#include "book/archive_import.h"

#include <algorithm>
#include <climits>
#include <fstream>
#include <map>
#include <set>

#include "book/archive_contents.h"
#include "book/archive_line.h"
#include "book/archive_rows.h"
#include "book/book.h"
#include "book/file_safety.h"
#include "book/migrations.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& why) { throw Refused("archive: " + why); }

std::span<const MigrationFile> migrations_to(int schema_number) {
  const auto all = migration_files();
  if (schema_number < 1 || schema_number > all.back().number) {
    refuse("its schema number " + std::to_string(schema_number) + " is outside 1.." +
           std::to_string(all.back().number) + ", which this program knows");
  }
  return all.first(static_cast<std::size_t>(schema_number));
}

/// Puts the rows of an archive into a book that has the archive's schema and holds nothing.
class Filling {
 public:
  Filling(Session& session, const ArchiveContents& archive)
      : session_(session), archive_(archive), tables_(archive_tables(session)) {}

  void run() {
    require_files();
    const auto rules = take_triggers_down();
    for (const ArchiveTable& table : tables_) fill(table);
    for (const std::string& rule : rules) session_.script(rule);
    require_every_photo_used();
    require_whole_references();
  }

 private:
  /// A file a table, photos, and nothing else.
  void require_files() {
    std::set<std::string> expected{archive_readme_name};
    for (const ArchiveTable& table : tables_) expected.insert(archive_file_of(table));
    for (const ArchiveFile& file : archive_.manifest().files) {
      if (file.name.starts_with("photos/")) {
        photos_.insert(file.name);
      } else if (expected.erase(file.name) == 0) {
        refuse(name_in_words(file.name) + " is no file of a book of schema number " + schema_number());
      } else if (file.rows.has_value() != file.name.starts_with("tables/")) {
        refuse("manifest.json: " + file.name + ": rows belong to tables, and every table has them");
      } else if (file.rows) {
        rows_[file.name] = *file.rows;
      }
    }
    if (!expected.empty()) refuse(*expected.begin() + " is missing; schema number " + schema_number() + " has it");
  }

  [[nodiscard]] std::string schema_number() const { return std::to_string(archive_.manifest().schema_number); }

  /// The rules that keep rows as they are, and those that number changes, are for changes; these rows are not new. They
  /// are put up again as they were.
  std::vector<std::string> take_triggers_down() {
    std::vector<std::string> rules;
    for (const auto& [name, rule] : session_.rows<std::string, std::string>(
             "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' ORDER BY name")) {
      session_.script("DROP TRIGGER " + quoted(name));
      rules.push_back(rule);
    }
    return rules;
  }

  void fill(const ArchiveTable& table) {
    session_.script("DELETE FROM " + quoted(table.name));
    const std::string file = archive_file_of(table), insertion = insertion_into(table);
    std::int64_t rows = 0;
    archive_.each_line(file, [&](std::string_view line) {
      const ArchiveRow row = row_of_json_line(table, line);
      session_.run(insertion, cells_of(table, row));
      write_pictures(table, row);
      ++rows;
    });
    if (rows != rows_.at(file)) {
      refuse(file + " has " + std::to_string(rows) + " rows; the manifest says " + std::to_string(rows_.at(file)));
    }
  }

  static std::string insertion_into(const ArchiveTable& table) {
    std::string columns, values;
    for (const ArchiveColumn& column : table.columns) {
      const std::string comma = columns.empty() ? "" : ", ", given = ":" + column.name;
      columns += comma + quoted(column.name);
      values += comma;
      values += column.kind == ArchiveKind::picture ? "zeroblob(" + given + ")"
                : column.kind == ArchiveKind::whole ? "CAST(" + given + " AS INTEGER)"
                                                    : given;
    }
    return "INSERT INTO " + quoted(table.name) + " (" + columns + ") VALUES (" + values + ")";
  }

  std::vector<Cell> cells_of(const ArchiveTable& table, const ArchiveRow& row) {
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const ArchiveColumn& column = table.columns[i];
      const bool needed = column.kind == ArchiveKind::picture || std::ranges::count(table.key, column.name) > 0;
      if (needed && std::holds_alternative<std::monostate>(row[i]))
        throw Refused(column.name + ": null is not allowed");
      cells.push_back(cell_of(column, row[i]));
    }
    return cells;
  }

  Cell cell_of(const ArchiveColumn& column, const ArchiveValue& value) {
    if (column.kind == ArchiveKind::picture) return cell(size_of_picture(column, std::get<std::string>(value)));
    if (const auto* whole = std::get_if<std::int64_t>(&value)) return cell(std::to_string(*whole));
    if (const auto* number = std::get_if<double>(&value)) return cell(*number);
    if (const auto* text = std::get_if<std::string>(&value)) return cell(*text);
    return absent_cell(column.kind == ArchiveKind::number ? CellKind::number : CellKind::text);
  }

  int size_of_picture(const ArchiveColumn& column, const std::string& file) {
    if (!photos_.contains(file)) throw Refused(column.name + ": the archive has no photo " + name_in_words(file));
    const std::uint64_t bytes = archive_.bytes_of(file);
    if (bytes > INT_MAX) throw Refused(column.name + ": " + file + " is larger than a book can hold");
    return static_cast<int>(bytes);
  }

  void write_pictures(const ArchiveTable& table, const ArchiveRow& row) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (table.columns[i].kind != ArchiveKind::picture) continue;
      const auto& file = std::get<std::string>(row[i]);
      const int id = session_.first<int>("SELECT last_insert_rowid()").value();
      session_.write_bytes(table.name.c_str(), table.columns[i].name.c_str(), id, archive_.whole(file));
      used_.insert(file);
    }
  }

  void require_every_photo_used() {
    for (const std::string& file : photos_) {
      if (!used_.contains(file)) refuse(name_in_words(file) + " is named by no row of tables/photos.jsonl");
    }
  }

  void require_whole_references() {
    session_.ask("SELECT \"table\", rowid, parent FROM pragma_foreign_key_check", {},
                 {CellKind::text, CellKind::whole, CellKind::text}, [](const std::vector<Cell>& row) {
                   const std::string which = row[1].absent ? "a row" : "row " + std::to_string(row[1].whole);
                   refuse("tables/" + row[0].text + ".jsonl: " + which + " refers to one of " + row[2].text +
                          " that is not there");
                 });
  }

  Session& session_;
  const ArchiveContents& archive_;
  std::vector<ArchiveTable> tables_;
  std::set<std::string> photos_, used_;
  std::map<std::string, std::int64_t> rows_;
};

/// The migrations that the archive says its book has had are those that made the new one.
void require_migrations(Session& session, std::span<const MigrationFile> migrations) {
  std::vector<std::tuple<int, std::string>> expected;
  for (const MigrationFile& migration : migrations) expected.emplace_back(migration.number, migration.name);
  if (session.rows<int, std::string>("SELECT number, name FROM migrations ORDER BY number") != expected) {
    refuse("tables/migrations.jsonl does not list this program's migrations 1.." + std::to_string(expected.size()));
  }
}

void fill_book(const fs::path& book, const ArchiveContents& archive) {
  const auto migrations = migrations_to(archive.manifest().schema_number);
  Session session(book, Session::May::write);
  migrate(session, migrations, [](Session&) {});
  Transaction all_or_nothing(session, Transaction::To::change);
  session.script("PRAGMA defer_foreign_keys = ON");
  Filling(session, archive).run();
  require_migrations(session, migrations);
  all_or_nothing.commit();
}

void require_no_troubles(const fs::path& book) {
  const auto troubles = Book(book).troubles();
  if (troubles.empty()) return;
  refuse("the book in it is not whole: " + troubles.front() + " (the first of " + std::to_string(troubles.size()) +
         " troubles)");
}

/// What an import that was killed left beside the file it was making.
void remove_leftovers(const fs::path& unfinished) {
  for (const char* beside : {"-wal", "-shm"}) {
    std::error_code ignored;
    fs::remove(unfinished.string() + beside, ignored);
  }
}

}  // namespace

void import_archive(const fs::path& archive, const fs::path& book) {
  if (fs::exists(book)) throw Refused("BOOK: " + book.string() + " is there already; move it away first");
  std::ifstream in(archive, std::ios::binary);
  if (!in) throw Refused("ARCHIVE: " + archive.string() + " cannot be read");
  const ArchiveContents contents(in);
  UnfinishedFile unfinished(book);
  remove_leftovers(unfinished.path());
  fill_book(unfinished.path(), contents);
  require_no_troubles(unfinished.path());
  unfinished.finish();
}

}  // namespace tailblock

#include "book/migrations.h"

#include "book/book.h"

namespace tailblock {
namespace {

/// Written into every book's first page, so that another program's SQLite file is not taken for one: "TBbk".
constexpr int book_mark = 0x5442626b;

bool has_table(Session& session, const std::string& name) {
  return session.first<int>("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = :name", {cell(name)})
      .has_value();
}

void require_book(Session& session) {
  const int mark = session.first<int>("PRAGMA application_id").value_or(0);
  const int things = session.first<int>("SELECT count(*) FROM sqlite_master").value_or(0);
  if (mark != book_mark && things > 0) {
    throw Refused("book: the file is a database of something else, not a book of this program");
  }
}

void require_not_newer(int applied, std::span<const MigrationFile> migrations) {
  const int newest = migrations.empty() ? 0 : migrations.back().number;
  if (applied > newest) {
    throw Refused("book: its schema number " + std::to_string(applied) + " is newer than this program's " +
                  std::to_string(newest) + "; open it with the newer program");
  }
}

void apply(Session& session, const MigrationFile& migration) {
  session.script(std::string(migration.sql));
  session.run("INSERT INTO migrations (number, name, applied_at) VALUES (:number, :name, CURRENT_TIMESTAMP)",
              {cell(migration.number), cell(std::string(migration.name))});
}

void require_whole_references(Session& session) {
  session.ask("PRAGMA foreign_key_check", {}, {CellKind::text}, [](const std::vector<Cell>& row) {
    throw StorageFault("bringing the book up to date would leave a row of " + row.front().text +
                       " that refers to nothing; the book is as it was");
  });
}

/// A migration that makes a table anew drops the old one, which other rows refer to: references are checked at the end
/// instead of at every statement.
class WithoutForeignKeys {
 public:
  explicit WithoutForeignKeys(Session& session) : session_(session) { session_.script("PRAGMA foreign_keys = OFF"); }
  ~WithoutForeignKeys() {
    try {
      session_.script("PRAGMA foreign_keys = ON");
    } catch (const std::exception&) {
      // The opening fails for the reason already on its way, and the session goes with it.
    }
  }
  WithoutForeignKeys(const WithoutForeignKeys&) = delete;
  WithoutForeignKeys& operator=(const WithoutForeignKeys&) = delete;

 private:
  Session& session_;
};

}  // namespace

int applied_number(Session& session) {
  if (!has_table(session, "migrations")) return 0;
  return session.first<int>("SELECT coalesce(max(number), 0) FROM migrations").value_or(0);
}

void migrate(Session& session, std::span<const MigrationFile> migrations,
             const std::function<void(Session&)>& afterwards) {
  require_book(session);
  const int before = applied_number(session);
  require_not_newer(before, migrations);
  if (!migrations.empty() && before == migrations.back().number) return;

  const WithoutForeignKeys checked_at_the_end(session);
  Transaction all_or_nothing(session, Transaction::To::change);
  const int applied = applied_number(session);  // another program may have been at it meanwhile
  require_not_newer(applied, migrations);
  if (applied == 0) {
    session.script(
        "PRAGMA application_id = " + std::to_string(book_mark) +
        "; CREATE TABLE migrations (number INTEGER PRIMARY KEY, name TEXT NOT NULL, applied_at TEXT NOT NULL)");
  }
  for (const MigrationFile& migration : migrations) {
    if (migration.number > applied) apply(session, migration);
  }
  afterwards(session);
  require_whole_references(session);
  all_or_nothing.commit();
}

}  // namespace tailblock

#include "book/session.h"

// SOCI was packaged with support for Boost's sequences, whose headers its package does not bring; it only adds
// templates.
#include <soci/soci-config.h>
#undef SOCI_HAVE_BOOST
#include <soci/soci.h>
#include <soci/sqlite3/soci-sqlite3.h>

#include <algorithm>
#include <cassert>
#include <chrono>
#include <thread>
#include <utility>

#include "book/book.h"
#include "book/storage_fault.h"

namespace tailblock {
namespace {

/// SOCI reads its connection text as key="value" and knows no escape for the quote.
std::string connection_text(const std::filesystem::path& file) {
  const std::string name = file.string();
  if (name.empty() || name.find('"') != std::string::npos) {
    throw Refused("book: \"" + name + "\" is not a usable file name: it is empty or holds a double quote");
  }
  return "dbname=\"" + name + "\"";
}

[[noreturn]] void fail(int code, sqlite_api::sqlite3* handle) {
  throw_storage_fault(code, handle != nullptr ? sqlite_api::sqlite3_errmsg(handle) : sqlite_api::sqlite3_errstr(code));
}

/// Hands `exchange` the part of the cell that its kind says is meant.
template <class AnyCell, class Exchange>
void with_value(AnyCell& bound, Exchange exchange) {
  switch (bound.kind) {
    case CellKind::whole:
      return exchange(bound.whole);
    case CellKind::number:
      return exchange(bound.number);
    case CellKind::text:
      return exchange(bound.text);
  }
}

}  // namespace

Cell cell(int whole) { return {.kind = CellKind::whole, .absent = false, .whole = whole, .number = 0, .text = {}}; }
Cell cell(double number) {
  return {.kind = CellKind::number, .absent = false, .whole = 0, .number = number, .text = {}};
}
Cell cell(std::string text) {
  return {.kind = CellKind::text, .absent = false, .whole = 0, .number = 0, .text = std::move(text)};
}
Cell cell(Date date) { return cell(iso_date(date)); }
Cell absent_cell(CellKind kind) { return {.kind = kind, .absent = true, .whole = 0, .number = 0, .text = {}}; }

struct Session::Connection {
  explicit Connection(const std::filesystem::path& file) : sql(soci::sqlite3, connection_text(file)) {}
  /// SOCI keeps the type information of this class to itself, so the sanitizer cannot look at the object's kind.
  [[nodiscard, gnu::no_sanitize("vptr")]] sqlite_api::sqlite3* handle() {
    return static_cast<soci::sqlite3_session_backend*>(sql.get_backend())->conn_;
  }
  soci::session sql;
};

/// The statement and the cells it is bound to, which stay where they are.
struct Session::Statement {
  Statement(soci::session& sql, const std::string& text, const std::vector<Cell>& like,
            const std::vector<CellKind>& columns)
      : given(like), given_marks(like.size(), soci::i_null), got_marks(columns.size(), soci::i_null), statement(sql) {
    for (const CellKind kind : columns) got.push_back(absent_cell(kind));
    for (std::size_t i = 0; i < given.size(); ++i) {
      with_value(std::as_const(given[i]),
                 [&](const auto& value) { statement.exchange(soci::use(value, given_marks[i])); });
    }
    for (std::size_t i = 0; i < got.size(); ++i) {
      with_value(got[i], [&](auto& value) { statement.exchange(soci::into(value, got_marks[i])); });
    }
    statement.alloc();
    statement.prepare(text);
    statement.define_and_bind();
  }

  void give(const std::vector<Cell>& values) {
    assert(values.size() == given.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
      assert(values[i].kind == given[i].kind);
      given[i] = values[i];
      given_marks[i] = values[i].absent ? soci::i_null : soci::i_ok;
    }
  }

  const std::vector<Cell>& row_got() {
    for (std::size_t i = 0; i < got.size(); ++i) got[i].absent = got_marks[i] == soci::i_null;
    return got;
  }

  std::vector<Cell> given, got;
  std::vector<soci::indicator> given_marks, got_marks;
  soci::statement statement;
};

Session::Session(const std::filesystem::path& file, May may) {
  try {
    connection_ = std::make_unique<Connection>(file);
  } catch (const soci::sqlite3_soci_error& error) {
    throw_storage_fault(error.result(), file.string() + ": " + sqlite_api::sqlite3_errstr(error.result()));
  }
  sqlite_api::sqlite3_extended_result_codes(connection_->handle(), 1);
  script(
      "PRAGMA busy_timeout = 5000; PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON");
  if (may == May::write) {
    keep_a_write_ahead_log();
    script("PRAGMA synchronous = FULL");
  } else {
    script("PRAGMA query_only = ON; PRAGMA cache_size = -8000");
  }
}

Session::~Session() = default;

Session::Statement& Session::prepared(const std::string& sql, const std::vector<Cell>& given,
                                      const std::vector<CellKind>& columns) {
  auto& statement = statements_[sql];
  if (!statement) statement = std::make_unique<Statement>(connection_->sql, sql, given, columns);
  assert(std::ranges::equal(statement->got, columns, {}, &Cell::kind));
  return *statement;
}

void Session::ask(const std::string& sql, const std::vector<Cell>& given, const std::vector<CellKind>& columns,
                  const EachRow& each) {
  try {
    Statement& statement = prepared(sql, given, columns);
    statement.give(given);
    // Read to the end: a statement left standing on a row would hold its view of the book open.
    for (bool more = statement.statement.execute(true); more; more = statement.statement.fetch()) {
      each(statement.row_got());
    }
  } catch (const soci::sqlite3_soci_error& error) {
    const std::string message = sqlite_api::sqlite3_errmsg(connection_->handle());
    statements_.erase(sql);  // SOCI has finalized it
    throw_storage_fault(error.result(), message);
  } catch (...) {
    statements_.erase(sql);
    throw;
  }
}

int Session::run(const std::string& sql, const std::vector<Cell>& given) {
  ask(sql, given, {}, [](const std::vector<Cell>&) {});
  return sqlite_api::sqlite3_changes(connection_->handle());
}

void Session::script(const std::string& sql) {
  const int code = sqlite_api::sqlite3_exec(connection_->handle(), sql.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) fail(sqlite_api::sqlite3_extended_errcode(connection_->handle()), connection_->handle());
}

/// A new book takes up its log with nobody else in it, and SQLite's own waiting does not cover that moment.
void Session::keep_a_write_ahead_log() {
  using namespace std::chrono_literals;
  const auto patience = std::chrono::steady_clock::now() + 5s;
  for (;;) {
    const int code =
        sqlite_api::sqlite3_exec(connection_->handle(), "PRAGMA journal_mode = WAL", nullptr, nullptr, nullptr);
    if (code == SQLITE_OK) return;
    const int extended = sqlite_api::sqlite3_extended_errcode(connection_->handle());
    if ((extended & 0xff) != SQLITE_BUSY || std::chrono::steady_clock::now() > patience) {
      fail(extended, connection_->handle());
    }
    std::this_thread::sleep_for(5ms);
  }
}

namespace {

/// One BLOB of one row, open for reading or writing.
class OpenBytes {
 public:
  OpenBytes(sqlite_api::sqlite3* handle, const char* table, const char* column, int row, bool to_write)
      : handle_(handle) {
    const int code = sqlite_api::sqlite3_blob_open(handle, "main", table, column, row, to_write ? 1 : 0, &blob_);
    if (code != SQLITE_OK) {
      sqlite_api::sqlite3_blob_close(blob_);
      fail(code, handle);
    }
  }
  ~OpenBytes() { sqlite_api::sqlite3_blob_close(blob_); }
  OpenBytes(const OpenBytes&) = delete;
  OpenBytes& operator=(const OpenBytes&) = delete;

  [[nodiscard]] std::string read() {
    std::string bytes(static_cast<std::size_t>(sqlite_api::sqlite3_blob_bytes(blob_)), '\0');
    require(sqlite_api::sqlite3_blob_read(blob_, bytes.data(), static_cast<int>(bytes.size()), 0));
    return bytes;
  }
  void write(std::string_view bytes) {
    require(sqlite_api::sqlite3_blob_write(blob_, bytes.data(), static_cast<int>(bytes.size()), 0));
  }

 private:
  void require(int code) {
    if (code != SQLITE_OK) fail(code, handle_);
  }
  sqlite_api::sqlite3* handle_;
  sqlite_api::sqlite3_blob* blob_ = nullptr;
};

}  // namespace

void Session::write_bytes(const char* table, const char* column, int row, std::string_view bytes) {
  OpenBytes(connection_->handle(), table, column, row, true).write(bytes);
}

std::string Session::read_bytes(const char* table, const char* column, int row) {
  return OpenBytes(connection_->handle(), table, column, row, false).read();
}

void Session::copy_to(const std::filesystem::path& file) {
  Connection copy(file);
  sqlite_api::sqlite3_backup* backup =
      sqlite_api::sqlite3_backup_init(copy.handle(), "main", connection_->handle(), "main");
  if (backup == nullptr) fail(sqlite_api::sqlite3_extended_errcode(copy.handle()), copy.handle());
  const int step = sqlite_api::sqlite3_backup_step(backup, -1);
  const int finish = sqlite_api::sqlite3_backup_finish(backup);
  if (step != SQLITE_DONE) fail(step, nullptr);
  if (finish != SQLITE_OK) fail(finish, nullptr);
}

Transaction::Transaction(Session& session, To to) : session_(session) {
  session_.run(to == To::change ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
  if (!open_) return;
  try {
    session_.run("ROLLBACK");
  } catch (const std::exception&) {
    // After a full disk or a read error SQLite has undone the change itself and there is nothing left to undo.
  }
}

void Transaction::commit() {
  session_.run("COMMIT");
  open_ = false;
}

}  // namespace tailblock

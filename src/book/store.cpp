#include "book/store.h"

#include "book/migrations.h"

namespace tailblock {
namespace {

constexpr int reading_sessions = 4;

}  // namespace

Book::Store::Store(std::filesystem::path path, TradeTables trade_tables)
    : file(std::move(path)), tables(std::move(trade_tables)), writer_(file, Session::May::write) {
  migrate(writer_, migration_files(), [](Session&) {});
  for (int i = 0; i < reading_sessions; ++i) readers_.push_back(std::make_unique<Session>(file, Session::May::read));
}

Book::Store::Lease::Lease(Store& store) : store_(store) {
  std::unique_lock lock(store_.lending_);
  store_.returned_.wait(lock, [&] { return !store_.readers_.empty(); });
  session_ = std::move(store_.readers_.back());
  store_.readers_.pop_back();
}

Book::Store::Lease::~Lease() {
  {
    const std::lock_guard lock(store_.lending_);
    store_.readers_.push_back(std::move(session_));
  }
  store_.returned_.notify_one();
}

void throw_missing(std::string_view field, RecordId id) {
  throw NotInBook(std::string(field) + ": " + std::to_string(id) + " is not in the book");
}

void require_kept(Session& session, std::string_view table, std::string_view field, RecordId id) {
  if (!session.first<int>("SELECT 1 FROM " + std::string(table) + " WHERE id = :id", {cell(id)})) {
    throw_missing(field, id);
  }
}

}  // namespace tailblock

#pragma once

#include <condition_variable>
#include <filesystem>
#include <memory>
#include <mutex>
#include <vector>

#include "book/book.h"
#include "book/instrument_list.h"
#include "book/name_list.h"
#include "book/session.h"

namespace tailblock {

/// The sessions on one book: one that writes, and some that read beside it, each seeing the book as it stood when its
/// look began.
struct Book::Store {
  Store(std::filesystem::path path, TradeTables trade_tables);

  /// Runs `make(session)` as one change: all of it is on the disk when this returns, or none of it is.
  template <class Make>
  auto change(Make make) {
    const std::lock_guard one_writer(writing_);
    Transaction all_or_nothing(writer_, Transaction::To::change);
    auto result = make(writer_);
    all_or_nothing.commit();
    return result;
  }

  /// Runs `ask(session)` on one unchanging state of the book.
  template <class Ask>
  auto look(Ask ask) {
    const Lease lease(*this);
    Transaction one_state(lease.session(), Transaction::To::look);
    auto result = ask(lease.session());
    one_state.commit();
    return result;
  }

  std::filesystem::path file;
  TradeTables tables;
  InstrumentList instruments;
  NameList owners{"owners"}, homes{"homes"};

 private:
  /// A reading session, taken for one look.
  class Lease {
   public:
    explicit Lease(Store& store);
    ~Lease();
    Lease(const Lease&) = delete;
    Lease& operator=(const Lease&) = delete;
    [[nodiscard]] Session& session() const { return *session_; }

   private:
    Store& store_;
    std::unique_ptr<Session> session_;
  };

  std::mutex writing_;
  Session writer_;
  std::mutex lending_;
  std::condition_variable returned_;
  std::vector<std::unique_ptr<Session>> readers_;
};

/// @throws NotInBook as `instrument_id: 17 is not in the book`.
[[noreturn]] void throw_missing(std::string_view field, RecordId id);
/// @throws NotInBook when `table` has no row with this id; `field` is what the asker calls it.
void require_kept(Session& session, std::string_view table, std::string_view field, RecordId id);

}  // namespace tailblock

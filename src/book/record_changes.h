#pragma once

#include <string>
#include <string_view>

#include "book/record_rows.h"
#include "book/store.h"

namespace tailblock {

/// What adding, changing and looking up one record share, whichever kind it is.

inline void require_text(std::string_view field, const std::string& text) {
  if (text.empty()) throw Refused(std::string(field) + ": is empty");
}

/// The record with this id, out of its own table or a view of it.
/// @throws NotInBook, where `field` is what the asker calls the id.
template <class Record>
[[nodiscard]] Record record_of(Session& session, std::string_view field, RecordId id,
                               std::string_view from = table_of<Record>) {
  auto found = select_records<Record>(session, std::string(from) + " AS record WHERE record.id = :id", {cell(id)});
  if (found.empty()) throw_missing(field, id);
  return std::move(found.front());
}

/// A record with a number changes that record; one without is added.
template <class Record>
RecordId insert_or_update(Session& session, std::string_view field, const Record& record) {
  if (record.id == 0) return insert_record(session, record);
  if (!update_record(session, record)) throw_missing(field, record.id);
  return record.id;
}

}  // namespace tailblock

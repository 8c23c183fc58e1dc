#pragma once

#include <functional>
#include <string>

#include "book/book.h"
#include "http/endpoint.h"

namespace tailblock {

/// A call that adds one record to something whose number the path gives; it is never changed afterwards.
/// @param owner where that number goes in the record.
/// @param allow refuses what the book itself cannot tell to be wrong.
template <class Record>
[[nodiscard]] Endpoint adding(
    Book& book, const std::string& summary, const std::string& path, RecordId Record::*owner,
    std::function<void(const Record&)> allow = [](const Record&) {}) {
  return {"POST",
          path,
          summary,
          {},
          schema_of_request<Record>(),
          schema_of_result<Kept>(),
          [&book, owner, allow](const Ask& ask) {
            auto record = from_json<Record>(ask.body);
            record.*owner = ask.id;
            allow(record);
            return json_answer(Kept{book.add(record)});
          }};
}

}  // namespace tailblock

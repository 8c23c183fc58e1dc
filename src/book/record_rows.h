#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "book/session.h"
#include "quantity/fields.h"

namespace tailblock {

/// How a record lies in a table: one column a field, named as its describe() names it, lengths in millimetres, dates as
/// ISO text, choices by name, flags as 0 and 1. A nested struct's fields lie beside the others; a list is rows of
/// another table and is passed over. `supersedes` 0 is NULL; `superseded_by` is found, never kept.
struct RecordColumns {
  std::vector<std::string> names;
  std::vector<CellKind> kinds;
};

using Describe = std::function<void(FieldVisitor&)>;

[[nodiscard]] RecordColumns record_columns(const Describe& record);
[[nodiscard]] std::vector<Cell> record_cells(const Describe& record);
/// Sets the record from a row read with its record_columns.
void set_record(const Describe& record, const std::vector<Cell>& row);

int insert_row(Session& session, std::string_view table, const RecordColumns& columns, const std::vector<Cell>& cells);
bool update_row(Session& session, std::string_view table, const RecordColumns& columns, const std::vector<Cell>& cells,
                int id);
[[nodiscard]] std::string select_text(const RecordColumns& columns, std::string_view from);

template <class Record>
[[nodiscard]] const RecordColumns& columns_of() {
  static const RecordColumns columns = [] {
    Record record;
    return record_columns([&](FieldVisitor& visit) { describe(visit, record); });
  }();
  return columns;
}

/// Adds a record and returns its new id, whatever id it came with.
template <class Record>
int insert_record(Session& session, std::string_view table, Record record) {
  return insert_row(session, table, columns_of<Record>(),
                    record_cells([&](FieldVisitor& visit) { describe(visit, record); }));
}

/// Changes the record with this id; false when there is none.
template <class Record>
bool update_record(Session& session, std::string_view table, Record record) {
  return update_row(session, table, columns_of<Record>(),
                    record_cells([&](FieldVisitor& visit) { describe(visit, record); }), record.id);
}

/// The records of `from`, which names the table or view `record`: `"visits AS record WHERE record.id = :id"`.
template <class Record>
[[nodiscard]] std::vector<Record> select_records(Session& session, std::string_view from,
                                                 const std::vector<Cell>& given = {}) {
  std::vector<Record> records;
  session.ask(select_text(columns_of<Record>(), from), given, columns_of<Record>().kinds,
              [&](const std::vector<Cell>& row) {
                Record& record = records.emplace_back();
                set_record([&](FieldVisitor& visit) { describe(visit, record); }, row);
              });
  return records;
}

}  // namespace tailblock

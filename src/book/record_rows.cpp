#include "book/record_rows.h"

#include <algorithm>
#include <cassert>

namespace tailblock {
namespace {

/// What the three walks share: lists and nested structs.
class ColumnVisitor : public FieldVisitor {
 public:
  void numbers(const Field&, std::vector<double>&, const Range&, const Count&) override {}
  void texts(const Field&, std::vector<std::string>&, std::size_t, const Count&) override {}
  bool enter(const Field&) override { return true; }
  void leave() override {}
  std::size_t enter_list(const Field&, std::size_t, const Count&) override { return 0; }
  void enter_item(std::size_t) override {}
  void leave_item() override {}
  void leave_list() override {}
};

class NameColumns final : public ColumnVisitor {
 public:
  RecordColumns columns;
  void number(const Field& field, double&, const Range&) override { add(field, CellKind::number); }
  void length(const Field& field, Length&, const Range&) override { add(field, CellKind::number); }
  void integer(const Field& field, int&, const Range&) override { add(field, CellKind::whole); }
  void flag(const Field& field, bool&) override { add(field, CellKind::whole); }
  void text(const Field& field, std::string&, std::size_t) override { add(field, CellKind::text); }
  void date(const Field& field, Date&) override { add(field, CellKind::text); }
  void choice(const Field& field, int&, std::span<const std::string_view>) override { add(field, CellKind::text); }
  bool visit_optional(const Field&, bool) override { return true; }

 private:
  void add(const Field& field, CellKind kind) {
    columns.names.emplace_back(field.name);
    columns.kinds.push_back(kind);
  }
};

class TakeCells final : public ColumnVisitor {
 public:
  std::vector<Cell> cells;
  void number(const Field&, double& value, const Range&) override { cells.push_back(cell(value)); }
  void length(const Field&, Length& value, const Range&) override { cells.push_back(cell(in_mm(value))); }
  void integer(const Field& field, int& value, const Range&) override {
    const bool none = value == 0 && field.name == "supersedes";
    cells.push_back(none ? absent_cell(CellKind::whole) : cell(value));
  }
  void flag(const Field&, bool& value) override { cells.push_back(cell(value ? 1 : 0)); }
  void text(const Field&, std::string& value, std::size_t) override { cells.push_back(cell(value)); }
  void date(const Field&, Date& value) override { cells.push_back(cell(value)); }
  void choice(const Field&, int& index, std::span<const std::string_view> names) override {
    cells.push_back(cell(std::string(names[static_cast<std::size_t>(index)])));
  }
  bool visit_optional(const Field&, bool have) override {
    if (!have) cells.push_back(absent_cell(CellKind::number));  // its kind is put right from the columns
    return have;
  }
};

class SetFields final : public ColumnVisitor {
 public:
  explicit SetFields(const std::vector<Cell>& row) : row_(row) {}
  void number(const Field&, double& value, const Range&) override { value = next().number; }
  void length(const Field&, Length& value, const Range&) override { value = mm(next().number); }
  void integer(const Field&, int& value, const Range&) override {
    const Cell& cell = next();
    value = cell.absent ? 0 : cell.whole;
  }
  void flag(const Field&, bool& value) override { value = next().whole != 0; }
  void text(const Field&, std::string& value, std::size_t) override { value = next().text; }
  void date(const Field& field, Date& value) override { value = date_from_iso(field.name, next().text); }
  void choice(const Field& field, int& index, std::span<const std::string_view> names) override {
    const std::string& name = next().text;
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end()) throw Refused(std::string(field.name) + ": \"" + name + "\" is not known");
    index = static_cast<int>(found - names.begin());
  }
  bool visit_optional(const Field&, bool) override {
    if (!row_[at_].absent) return true;
    ++at_;
    return false;
  }

 private:
  const Cell& next() { return row_[at_++]; }
  const std::vector<Cell>& row_;
  std::size_t at_ = 0;
};

bool is_kept(const std::string& name) { return name != "id" && name != "superseded_by"; }

/// The cells of the kept columns, an absent one of its column's kind.
std::vector<Cell> kept_cells(const RecordColumns& columns, const std::vector<Cell>& cells) {
  assert(columns.names.size() == cells.size());
  std::vector<Cell> kept;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (!is_kept(columns.names[i])) continue;
    kept.push_back(cells[i]);
    kept.back().kind = columns.kinds[i];
  }
  return kept;
}

/// `a, b, c` of every kept column, each as `write` writes it.
template <class Write>
std::string kept_names(const RecordColumns& columns, Write write) {
  std::string text;
  for (const std::string& name : columns.names) {
    if (!is_kept(name)) continue;
    if (!text.empty()) text += ", ";
    text += write(name);
  }
  return text;
}

}  // namespace

RecordColumns record_columns(const Describe& record) {
  NameColumns walk;
  record(walk);
  return walk.columns;
}

std::vector<Cell> record_cells(const Describe& record) {
  TakeCells walk;
  record(walk);
  return walk.cells;
}

void set_record(const Describe& record, const std::vector<Cell>& row) {
  SetFields walk(row);
  record(walk);
}

int insert_row(Session& session, std::string_view table, const RecordColumns& columns, const std::vector<Cell>& cells) {
  const std::string sql = "INSERT INTO " + std::string(table) + " (" +
                          kept_names(columns, [](const std::string& name) { return name; }) + ") VALUES (" +
                          kept_names(columns, [](const std::string& name) { return ":" + name; }) + ") RETURNING id";
  return session.first<int>(sql, kept_cells(columns, cells)).value();
}

bool update_row(Session& session, std::string_view table, const RecordColumns& columns, const std::vector<Cell>& cells,
                int id) {
  const std::string sql = "UPDATE " + std::string(table) + " SET " +
                          kept_names(columns, [](const std::string& name) { return name + " = :" + name; }) +
                          " WHERE id = :id";
  std::vector<Cell> given = kept_cells(columns, cells);
  given.push_back(cell(id));
  return session.run(sql, given) == 1;
}

std::string select_text(const RecordColumns& columns, std::string_view from) {
  std::string text = "SELECT ";
  for (const std::string& name : columns.names) text += (text.size() > 7 ? ", record." : "record.") + name;
  return text + " FROM " + std::string(from);
}

}  // namespace tailblock

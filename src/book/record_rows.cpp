#include "book/record_rows.h"

#include <algorithm>
#include <cassert>

#include "book/book.h"

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
  explicit NameColumns(RecordLayout& layout) : layout_(layout) {}
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
    if (field.name != "id" && field.name != "superseded_by") layout_.kept.push_back(layout_.names.size());
    layout_.names.emplace_back(field.name);
    layout_.kinds.push_back(kind);
  }
  RecordLayout& layout_;
};

class TakeCells final : public ColumnVisitor {
 public:
  std::vector<Cell> cells;
  void number(const Field&, double& value, const Range&) override { cells.push_back(cell(value)); }
  void length(const Field&, Length& value, const Range&) override { cells.push_back(cell(in_mm(value))); }
  void integer(const Field& field, int& value, const Range&) override {
    const bool none = value == 0 && (field.name == "supersedes" || field.name.ends_with("_id"));
    cells.push_back(none ? absent_cell(CellKind::whole) : cell(value));
  }
  void flag(const Field&, bool& value) override { cells.push_back(cell(value ? 1 : 0)); }
  void text(const Field&, std::string& value, std::size_t) override { cells.push_back(cell(value)); }
  void date(const Field&, Date& value) override { cells.push_back(cell(value)); }
  void choice(const Field&, int& index, std::span<const std::string_view> names) override {
    cells.push_back(cell(std::string(names[static_cast<std::size_t>(index)])));
  }
  bool visit_optional(const Field&, bool have) override {
    if (!have) cells.push_back(absent_cell(CellKind::number));  // its kind is put right from the layout
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

/// `a, b, c` of every kept column, each as `write` writes it.
template <class Write>
std::string kept_names(const RecordLayout& layout, Write write) {
  std::string text;
  for (const std::size_t at : layout.kept) text += (text.empty() ? "" : ", ") + write(layout.names[at]);
  return text;
}

}  // namespace

RecordLayout record_layout(std::string_view table, const Describe& record) {
  RecordLayout layout;
  NameColumns walk(layout);
  record(walk);
  const auto name = [](const std::string& column) { return column; };
  const auto given = [](const std::string& column) { return ":" + column; };
  const auto set = [](const std::string& column) { return column + " = :" + column; };
  layout.insert = "INSERT INTO " + std::string(table) + " (" + kept_names(layout, name) + ") VALUES (" +
                  kept_names(layout, given) + ") RETURNING id";
  layout.update = "UPDATE " + std::string(table) + " SET " + kept_names(layout, set) + " WHERE id = :id";
  return layout;
}

std::vector<Cell> kept_cells(const RecordLayout& layout, const Describe& record) {
  TakeCells walk;
  record(walk);
  assert(walk.cells.size() == layout.names.size());
  std::vector<Cell> kept;
  kept.reserve(layout.kept.size() + 1);
  for (const std::size_t at : layout.kept) {
    kept.push_back(std::move(walk.cells[at]));
    kept.back().kind = layout.kinds[at];
  }
  return kept;
}

void set_record(const Describe& record, const std::vector<Cell>& row) {
  SetFields walk(row);
  try {
    record(walk);
  } catch (const Refused& refused) {
    throw StorageFault("a row of the book cannot be read: " + std::string(refused.what()));
  }
}

std::string select_text(const RecordLayout& layout, std::string_view from) {
  std::string text;
  for (const std::string& name : layout.names) text += (text.empty() ? "SELECT record." : ", record.") + name;
  return text + " FROM " + std::string(from);
}

}  // namespace tailblock

#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <vector>

#include "quantity/date.h"

namespace tailblock {

enum class CellKind { whole, number, text };

/// One value going into a statement, or one column of a row coming out of it. Absent is SQL's NULL.
struct Cell {
  CellKind kind = CellKind::text;
  bool absent = true;
  int whole = 0;
  double number = 0;
  std::string text;
};

Cell cell(int whole);
Cell cell(double number);
Cell cell(std::string text);
Cell cell(Date date);
Cell absent_cell(CellKind kind);

/// What a column of a question's answer is read as: int, double, std::string, Date, or an optional of one of these.
template <class T>
struct Column;

/// One connection to the book's file. Each statement is prepared once and run again and again. Used by one thread at a
/// time. Every fault of the database leaves here as Refused or StorageFault, in one clear line.
class Session {
 public:
  enum class May { read, write };
  Session(const std::filesystem::path& file, May may);
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  using EachRow = std::function<void(const std::vector<Cell>&)>;
  /// Asks `sql` with `given` for its parameters (`:name`, in order of appearance, each once) and hands over every row.
  void ask(const std::string& sql, const std::vector<Cell>& given, const std::vector<CellKind>& columns,
           const EachRow& each);
  /// Runs a statement that answers no rows; returns how many rows it changed.
  int run(const std::string& sql, const std::vector<Cell>& given = {});
  /// Runs several statements, one after the other, without parameters.
  void script(const std::string& sql);

  /// Hands over every row as values of these types.
  template <class... Columns, class Take>
  void each(const std::string& sql, const std::vector<Cell>& given, Take take);
  /// Every row as a tuple: `rows<int, std::string>("SELECT id, name FROM owners WHERE id > :id", {cell(3)})`.
  template <class... Columns>
  std::vector<std::tuple<Columns...>> rows(const std::string& sql, const std::vector<Cell>& given = {});
  /// The first column of the first row; absent without a row.
  template <class T>
  std::optional<T> first(const std::string& sql, const std::vector<Cell>& given = {});

  /// The bytes of one BLOB. Written over a `zeroblob` of their size, inside the change that added the row.
  void write_bytes(const char* table, const char* column, int row, std::string_view bytes);
  [[nodiscard]] std::string read_bytes(const char* table, const char* column, int row);

  /// Copies the whole book, as it stands, into another file.
  void copy_to(const std::filesystem::path& file);

 private:
  struct Connection;
  struct Statement;
  void keep_a_write_ahead_log();
  Statement& prepared(const std::string& sql, const std::vector<Cell>& given, const std::vector<CellKind>& columns);
  std::unique_ptr<Connection> connection_;
  std::unordered_map<std::string, std::unique_ptr<Statement>> statements_;
};

/// One change, or one look that sees a single state of the book. Undone unless committed.
class Transaction {
 public:
  enum class To { look, change };
  Transaction(Session& session, To to);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Session& session_;
  bool open_ = true;
};

template <>
struct Column<int> {
  static constexpr CellKind kind = CellKind::whole;
  static int value(const Cell& cell) { return cell.whole; }
};
template <>
struct Column<double> {
  static constexpr CellKind kind = CellKind::number;
  static double value(const Cell& cell) { return cell.number; }
};
template <>
struct Column<std::string> {
  static constexpr CellKind kind = CellKind::text;
  static const std::string& value(const Cell& cell) { return cell.text; }
};
template <>
struct Column<Date> {
  static constexpr CellKind kind = CellKind::text;
  static Date value(const Cell& cell) { return date_from_iso("date", cell.text); }
};
template <class T>
struct Column<std::optional<T>> {
  static constexpr CellKind kind = Column<T>::kind;
  static std::optional<T> value(const Cell& cell) {
    return cell.absent ? std::nullopt : std::optional<T>(Column<T>::value(cell));
  }
};

template <class... Columns, class Take>
void Session::each(const std::string& sql, const std::vector<Cell>& given, Take take) {
  const auto hand_over = [&]<std::size_t... at>(const std::vector<Cell>& row, std::index_sequence<at...>) {
    take(Column<Columns>::value(row[at])...);
  };
  ask(sql, given, {Column<Columns>::kind...},
      [&](const std::vector<Cell>& row) { hand_over(row, std::index_sequence_for<Columns...>{}); });
}

template <class... Columns>
std::vector<std::tuple<Columns...>> Session::rows(const std::string& sql, const std::vector<Cell>& given) {
  std::vector<std::tuple<Columns...>> all;
  each<Columns...>(sql, given, [&](const auto&... values) { all.emplace_back(values...); });
  return all;
}

template <class T>
std::optional<T> Session::first(const std::string& sql, const std::vector<Cell>& given) {
  std::optional<T> value;
  ask(sql, given, {Column<T>::kind}, [&](const std::vector<Cell>& row) {
    if (!value) value = Column<T>::value(row.front());
  });
  return value;
}

}  // namespace tailblock

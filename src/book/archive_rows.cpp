#include "book/archive_rows.h"

#include <algorithm>
#include <charconv>
#include <map>

#include "book/book.h"

namespace tailblock {
namespace {

ArchiveKind kind_of(const std::string& table, const std::string& column, const std::string& type) {
  static const std::map<std::string, ArchiveKind> kinds{{"INTEGER", ArchiveKind::whole},
                                                        {"REAL", ArchiveKind::number},
                                                        {"TEXT", ArchiveKind::text},
                                                        {"BLOB", ArchiveKind::picture}};
  const auto kind = kinds.find(type);
  if (kind == kinds.end() || (kind->second == ArchiveKind::picture && table != "photos")) {
    throw StorageFault("no archive was made: column " + column + " of " + table + " is of a type it does not know");
  }
  return kind->second;
}

ArchiveTable described(Session& session, const std::string& name, const std::string& made_by) {
  ArchiveTable table{.name = name, .columns = {}, .key = {}, .made_by = made_by};
  std::map<int, std::string> key;
  session.each<std::string, std::string, int>(
      "SELECT name, type, pk FROM pragma_table_info(:name) ORDER BY cid", {cell(name)},
      [&](const std::string& column, const std::string& type, int place_in_key) {
        table.columns.push_back({column, kind_of(name, column, type)});
        if (place_in_key > 0) key[place_in_key] = column;
      });
  for (const auto& [place, column] : key) table.key.push_back(column);
  return table;
}

/// What is asked of the book for a column, so that nothing of it is lost on the way: whole numbers come as their
/// digits, since a cell holds 32 bits of them.
std::string asked(const ArchiveColumn& column) {
  switch (column.kind) {
    case ArchiveKind::whole:
      return "CAST(" + quoted(column.name) + " AS TEXT)";
    case ArchiveKind::picture:
      return "'photos/' || sha256 || '" + std::string(column.name == "whole" ? "" : "." + column.name) + ".jpg'";
    default:
      return quoted(column.name);
  }
}

ArchiveValue value_of(const Cell& cell, ArchiveKind kind) {
  if (cell.absent) return {};
  if (kind == ArchiveKind::number) return cell.number;
  if (kind != ArchiveKind::whole) return cell.text;
  std::int64_t value = 0;
  std::from_chars(cell.text.data(), cell.text.data() + cell.text.size(), value);
  return value;
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return text;
}

}  // namespace

std::string quoted(const std::string& name) { return '"' + name + '"'; }

std::string archive_file_of(const ArchiveTable& table) { return "tables/" + table.name + ".jsonl"; }

std::vector<ArchiveTable> archive_tables(Session& session) {
  std::vector<ArchiveTable> tables;
  for (const auto& [name, made_by] : session.rows<std::string, std::string>(
           "SELECT name, sql FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name")) {
    tables.push_back(described(session, name, made_by));
  }
  return tables;
}

void each_archive_row(Session& session, const ArchiveTable& table, const std::function<void(const ArchiveRow&)>& take) {
  std::vector<std::string> columns, key;
  std::vector<CellKind> kinds;
  for (const ArchiveColumn& column : table.columns) {
    columns.push_back(asked(column));
    kinds.push_back(column.kind == ArchiveKind::number ? CellKind::number : CellKind::text);
  }
  for (const std::string& column : table.key) key.push_back(quoted(column));
  ArchiveRow row(table.columns.size());
  session.ask("SELECT " + joined(columns) + " FROM " + quoted(table.name) + " ORDER BY " + joined(key), {}, kinds,
              [&](const std::vector<Cell>& cells) {
                for (std::size_t i = 0; i < row.size(); ++i) row[i] = value_of(cells[i], table.columns[i].kind);
                take(row);
              });
}

std::vector<ArchivePicture> archive_pictures(Session& session, const std::vector<ArchiveTable>& tables) {
  std::vector<ArchivePicture> pictures;
  for (const ArchiveTable& table : tables) {
    for (const ArchiveColumn& column : table.columns) {
      if (column.kind != ArchiveKind::picture) continue;
      session.each<int, std::string>("SELECT id, " + asked(column) + " FROM " + quoted(table.name), {},
                                     [&](int id, const std::string& file) {
                                       pictures.push_back({id, column.name, file});
                                     });
    }
  }
  std::ranges::sort(pictures, {}, &ArchivePicture::file);
  return pictures;
}

}  // namespace tailblock

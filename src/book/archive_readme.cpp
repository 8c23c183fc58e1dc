#include "book/archive_readme.h"

namespace tailblock {
namespace {

constexpr const char* introduction =
    R"(The whole bench book of a guitar repair shop: its owners, instruments, visits, readings, findings, repairs, papers and
photos. It holds names and ways to reach people: keep it as you keep the book.

tables/NAME.jsonl   one table of the book, UTF-8. Each line is one row, a JSON object (RFC 8259) whose keys are the table's
                    columns; rows are in order of the table's primary key. null: nothing was said.
photos/             the pictures as JPEG, named by the SHA-256 of the whole picture, each with its thumbnail. The columns
                    whole and thumbnail of tables/photos.jsonl name them.
manifest.json       every other file here with its size in bytes and its SHA-256, and of each table its number of rows.

Units stand in a column's name: _mm millimetres, _c degrees Celsius, _deg degrees, _px pixels. relative_humidity is 0 to 1.
Days are ISO 8601 texts, year-month-day; minutes of a day count from midnight. Money is an exact decimal in a text.
Yes and no are 1 and 0. A row whose supersedes names another corrects it; the corrected one stays.

This file is made by the program; `tailblock import ARCHIVE BOOK` makes a book of the archive again.
)";

}  // namespace

std::string archive_readme(int schema_number, const std::vector<ArchiveTable>& tables) {
  std::string text = introduction;
  text += "\nThe tables, of schema number " + std::to_string(schema_number) + ", as SQL makes them:\n";
  for (const ArchiveTable& table : tables) text += '\n' + table.made_by + ";\n";
  return text;
}

}  // namespace tailblock

#include "book/storage_fault.h"

#include <sqlite3.h>

#include "book/book.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr int primary_code(int extended_code) { return extended_code & 0xff; }

std::string what_failed(int extended_code) {
  switch (primary_code(extended_code)) {
    case SQLITE_FULL:
      return "the disk is full; nothing of this change was kept, everything kept before is safe";
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return "another program holds the book; nothing of this change was kept, try again";
    case SQLITE_CORRUPT:
      return "the book's file is damaged; run the check, and restore the last backup";
    case SQLITE_NOTADB:
      return "the file is not a book, or its first page is damaged; restore the last backup";
    case SQLITE_READONLY:
      return "the book's file or its folder may not be written to; nothing of this change was kept";
    case SQLITE_CANTOPEN:
      return "the book's file cannot be opened";
    case SQLITE_IOERR:
      return "the disk could not be read or written (is it full?); nothing of this change was kept, everything kept "
             "before is safe";
    case SQLITE_NOMEM:
      return "out of memory; nothing of this change was kept";
    default:
      return "the book could not be read or written";
  }
}

}  // namespace

void throw_storage_fault(int extended_code, const std::string& message) {
  if (primary_code(extended_code) == SQLITE_CONSTRAINT) {
    if (extended_code == SQLITE_CONSTRAINT_FOREIGNKEY) throw Refused("a record this one refers to is not in the book");
    throw Refused(message);
  }
  throw StorageFault(what_failed(extended_code) + " (" + message + ")");
}

}  // namespace tailblock

#pragma once

#include <string>

#include "book/book.h"
#include "paper/calendar.h"
#include "repair/repair_tables.h"

namespace tailblock {

/// What the bench has to say to a diary, from the facts in the book alone: the day promised for each instrument in the
/// shop, and the moment at which each cure that runs has ended. The plan is not in it, which changes with every tap. No
/// owner is named.
/// @param name of the calendar, as a diary shows it.
/// @param identity tells this book's events from those of other books: it ends every UID.
[[nodiscard]] Calendar bench_calendar(const Book& book, const RepairTables& repair, const Moment& now, std::string name,
                                      const std::string& identity);

}  // namespace tailblock

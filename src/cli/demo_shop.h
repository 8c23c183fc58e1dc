#pragma once

#include "book/book.h"
#include "cli/demo_tables.h"

namespace tailblock {

/// Fills an empty book with the invented shop, as it would stand on `today`: people, homes with their logs, instruments
/// with the visits of up to four years. The same day and tables give the same book. The first instrument is the one to
/// open on. The book is marked: its setting `invented` is `true`, its setting `shop_name` the shop's name.
/// docs/decisions/0013-demo-shop.md.
/// @throws Refused naming what the tables ask of the book that it does not take.
void fill_demo_shop(Book& book, const DemoTables& tables, Date today);

}  // namespace tailblock

#pragma once

#include "cli/demo_bench_tables.h"
#include "cli/demo_tables.h"
#include "models/data_tables.h"

namespace tailblock {

/// Puts work on the bench of the invented shop, as it would stand at `now`: people and hours, jobs offered and agreed,
/// operations done, under way and waiting, promises, the shop's air, glue and finish. The same moment and tables give
/// the same book. Hands work in shop hours only, and at one thing at a time.
/// @param book as fill_demo_shop left it with `shop`.
/// @throws Refused naming what the tables ask of the book that it does not take.
void fill_demo_bench(Book& book, const DemoTables& shop, const DemoBenchTables& bench, const DataTables& tables,
                     const Moment& now);

}  // namespace tailblock

#pragma once

#include "book/book.h"
#include "quantity/refused.h"

namespace CLI {
class App;
}

namespace tailblock {

/// Adds every subcommand; each runs when the command line is parsed.
/// @throws Refused, StorageFault from the command itself.
void add_commands(CLI::App& app);

void add_compute_command(CLI::App& app);
void add_serve_commands(CLI::App& app);    ///< serve and demo
void add_book_commands(CLI::App& app);     ///< backup, restore, check
void add_archive_commands(CLI::App& app);  ///< export, import

}  // namespace tailblock

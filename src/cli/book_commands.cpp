#include <CLI/CLI.hpp>
#include <iostream>

#include "cli/commands.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

void back_up(const fs::path& book, const fs::path& copy) {
  if (!fs::exists(book)) throw Refused("BOOK: " + book.string() + " does not exist");
  if (fs::exists(copy)) throw Refused("COPY: " + copy.string() + " is there already; it is not overwritten");
  Book(book).back_up_to(copy);
  std::cout << "copied to " << copy.string() << '\n';
}

void restore(const fs::path& copy, const fs::path& book) {
  if (!fs::exists(copy)) throw Refused("COPY: " + copy.string() + " does not exist");
  if (fs::exists(book)) throw Refused("BOOK: " + book.string() + " is there already; move it away first");
  Book(copy).back_up_to(book);
  std::cout << "restored to " << book.string() << '\n';
}

void check(const fs::path& book) {
  if (!fs::exists(book)) throw Refused("BOOK: " + book.string() + " does not exist");
  const auto troubles = Book(book).troubles();
  for (const auto& trouble : troubles) std::cout << trouble << '\n';
  if (!troubles.empty()) throw StorageFault("the book has " + std::to_string(troubles.size()) + " troubles, listed above");
  std::cout << "the book is whole\n";
}

struct Files {
  std::string book;
  std::string copy;
};

}  // namespace

void add_book_commands(CLI::App& app) {
  const auto files = std::make_shared<Files>();
  CLI::App* backup = app.add_subcommand("backup", "Copy the book to another file, while it is in use if need be");
  backup->add_option("BOOK", files->book, "the book's file")->required();
  backup->add_option("COPY", files->copy, "the file to make")->required();
  backup->callback([files] { back_up(files->book, files->copy); });

  CLI::App* restoring = app.add_subcommand("restore", "Make a book from a backup");
  restoring->add_option("COPY", files->copy, "the backup")->required();
  restoring->add_option("BOOK", files->book, "the book's file to make")->required();
  restoring->callback([files] { restore(files->copy, files->book); });

  CLI::App* checking = app.add_subcommand("check", "Check the book's integrity and every reference in it");
  checking->add_option("BOOK", files->book, "the book's file")->required();
  checking->callback([files] { check(files->book); });
}

void add_commands(CLI::App& app) {
  add_serve_commands(app);
  add_compute_command(app);
  add_book_commands(app);
  add_archive_commands(app);
}

}  // namespace tailblock

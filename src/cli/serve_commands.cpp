#include <CLI/CLI.hpp>
#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <iostream>
#include <random>

#include "cli/commands.h"
#include "cli/demo_bench.h"
#include "cli/demo_shop.h"
#include "http/program.h"
#include "http/server.h"
#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

namespace fs = std::filesystem;

std::atomic<bool> stop_wanted{false};  // set by a signal handler, which can reach nothing but a global

void ask_to_stop(int) { stop_wanted = true; }

struct ServeWish {
  std::string book;
  std::string today;
  std::string at;
  int port = 8484;
  bool open = false;
};

Date day_on_the_wall() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return Date(std::chrono::year(local.tm_year + 1900) / (local.tm_mon + 1) / local.tm_mday);
}

/// `--today` holds the calendar still, for a demonstration or a test; otherwise the machine's own calendar is asked.
std::function<Date()> calendar(const std::string& today) {
  if (today.empty()) return day_on_the_wall;
  return [date = date_from_iso("--today", today)] { return date; };
}

/// `--at` holds the clock still, as `--today` the calendar.
std::function<int()> clock(const std::string& at) {
  if (at.empty()) return minute_on_the_wall;
  const auto number = [&](std::size_t from) { return (at[from] - '0') * 10 + at[from + 1] - '0'; };
  const bool shaped = at.size() == 5 && at[2] == ':' && at.find_first_not_of("0123456789:") == std::string::npos &&
                      std::ranges::count(at, ':') == 1 && number(0) < 24 && number(3) < 60;
  if (!shaped) throw Refused("--at: " + quoted_text(at) + " is not a time of day such as 10:20");
  return [minute = number(0) * 60 + number(3)] { return minute; };
}

void open_in_browser(const std::string& address) {
  const std::string command = "command -v xdg-open >/dev/null && xdg-open '" + address + "' >/dev/null 2>&1 &";
  if (std::system(command.c_str()) != 0) std::cout << "open the address above in a browser\n";
}

void serve_book(const ServeWish& wish, Book& book, Program& program, const std::string& page) {
  std::signal(SIGINT, ask_to_stop);
  std::signal(SIGTERM, ask_to_stop);
  const Shop shop{book,
                  program.trade(),
                  program.tables(),
                  program.models(),
                  program.envelopes(),
                  program.plates(),
                  calendar(wish.today),
                  clock(wish.at)};
  const auto announce = [&](const std::string& address) {
    std::cout << "Tailblock is at " << address << page << "\nCtrl-C stops it.\n" << std::flush;
    if (wish.open) open_in_browser(address + page);
  };
  serve(shop, {.port = wish.port, .when_ready = announce}, stop_wanted);
}

/// A folder that is removed with everything in it when the demonstration ends.
class ScratchFolder {
 public:
  ScratchFolder() : path_(fs::temp_directory_path() / ("tailblock-demo-" + std::to_string(std::random_device{}()))) {
    fs::create_directory(path_);
  }
  ~ScratchFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

void serve_demo(const ServeWish& wish) {
  Program program;
  const ScratchFolder folder;
  Book book(folder.path() / "demo.tailblock", program.trade());
  const DemoTables tables = demo_tables(built_in_text);
  const Date today = calendar(wish.today)();
  fill_demo_shop(book, tables, today);
  fill_demo_bench(book, tables, demo_bench_tables(built_in_text), program.tables(), {today, clock(wish.at)()});
  std::cout << "This shop, its people and its instruments are invented. Nothing kept here outlives the program.\n";
  serve_book(wish, book, program, "instruments/1");
}

void add_common_options(CLI::App* command, const std::shared_ptr<ServeWish>& wish) {
  command->add_option("--port", wish->port, "port on the loopback address, 0 for any free one")
      ->check(CLI::Range(0, 65535));
  command->add_option("--today", wish->today, "hold the calendar at this day, 2026-02-14");
  command->add_option("--at", wish->at, "hold the clock at this time of day, 10:20");
  command->add_flag("--open,!--no-open", wish->open, "open the page in this machine's browser");
}

}  // namespace

void add_serve_commands(CLI::App& app) {
  const auto demo = std::make_shared<ServeWish>();
  CLI::App* demonstration = app.add_subcommand("demo", "Serve an invented shop, ready to click");
  add_common_options(demonstration, demo);
  demonstration->callback([demo] { serve_demo(*demo); });

  const auto wish = std::make_shared<ServeWish>();
  CLI::App* serving = app.add_subcommand("serve", "Serve the shop's book to browsers on this machine");
  serving->add_option("BOOK", wish->book, "the book's file; made when absent")->required();
  add_common_options(serving, wish);
  serving->callback([wish] {
    Program program;
    Book book(wish->book, program.trade());
    serve_book(*wish, book, program, "instruments");
  });
}

}  // namespace tailblock

#include <CLI/CLI.hpp>
#include <iostream>

#include "cli/commands.h"

namespace {

/// Exit codes: 0 done, 1 refused input, 2 usage, 3 storage.
int run(int argc, char** argv) {
  CLI::App app("The bench book of an acoustic guitar repair shop, with the arithmetic built in.", "tailblock");
  app.require_subcommand(1);
  app.footer("Exit codes: 0 done, 1 refused input, 2 usage, 3 storage.");
  tailblock::add_commands(app);
  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForHelp& help) {
    return app.exit(help);
  } catch (const CLI::CallForAllHelp& help) {
    return app.exit(help);
  } catch (const CLI::ParseError& fault) {
    std::cerr << fault.what() << " (tailblock --help tells the commands)\n";
    return 2;
  }
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const tailblock::Refused& refusal) {
    std::cerr << refusal.what() << '\n';
    return 1;
  } catch (const tailblock::StorageFault& fault) {
    std::cerr << fault.what() << '\n';
    return 3;
  }
}

#include "http/program.h"

#include <algorithm>
#include <cassert>

#include "http/embedded_files.h"

namespace tailblock {

std::string_view built_in_text(std::string_view path) {
  const auto files = embedded_files();
  const auto found = std::ranges::find(files, path, &EmbeddedFile::path);
  assert(found != files.end() && "every table is built in");
  return found->content;
}

Program::Program()
    : tables_(load_data_tables(built_in_text)),
      trade_(trade_tables({.measures = built_in_text("data/measures.csv"),
                           .gauges = built_in_text("data/gauges.csv"),
                           .interventions = built_in_text("data/interventions.csv"),
                           .finding_measures = built_in_text("data/finding_measures.csv")},
                          tables_.repairs.findings)),
      models_(tables_, envelopes_, plates_) {}

}  // namespace tailblock

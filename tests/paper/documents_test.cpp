// Every paper of the shop, written by both writers and read back by other people's programs.

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "examples.h"
#include "paper/document_html.h"
#include "paper/document_pdf.h"
#include "printed.h"

namespace tailblock {
namespace {

using testing::said_of;

struct Example {
  std::string name;
  Document document;
};

std::vector<Example> examples() {
  return {{"report", owners_report(testing::example_report())},
          {"estimate", estimate_paper(testing::example_estimate())},
          {"invoice", invoice(testing::example_invoice())},
          {"long-invoice", invoice(testing::example_invoice(90))},
          {"work-sheet", work_sheet(testing::example_work_sheet())},
          {"ticket", claim_ticket(testing::example_ticket())}};
}

TEST(Documents, are_written_where_the_environment_asks_for_them) {
  const char* folder = std::getenv("TAILBLOCK_SHOW_PAPER");
  if (folder == nullptr) GTEST_SKIP() << "set TAILBLOCK_SHOW_PAPER to a folder to look at the papers";
  std::filesystem::create_directories(folder);
  for (const Example& example : examples()) {
    const std::string stem = std::string(folder) + "/" + example.name;
    std::ofstream(stem + "-a4.pdf", std::ios::binary) << document_pdf(example.document, PaperSize::a4);
    std::ofstream(stem + "-letter.pdf", std::ios::binary) << document_pdf(example.document, PaperSize::letter);
    std::ofstream(stem + ".html", std::ios::binary) << document_html(example.document);
  }
}

}  // namespace
}  // namespace tailblock

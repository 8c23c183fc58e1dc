#include "paper/scan_code.h"

#include <gtest/gtest.h>

#include <fstream>

#include "examples.h"
#include "paper/document_pdf.h"
#include "printed.h"

namespace tailblock {
namespace {

/// What someone else's reader sees in the printed ticket, one line a code.
std::string scanned(const std::string& code, PaperSize size, int dots_per_inch) {
  ClaimTicket ticket = testing::example_ticket();
  ticket.code = code;
  const testing::Folder folder;
  std::ofstream(folder / "ticket.pdf", std::ios::binary) << document_pdf(claim_ticket(ticket), size);
  const std::string place = (folder / "page").string();
  testing::run("pdftoppm -gray -singlefile -r " + std::to_string(dots_per_inch) + " '" +
               (folder / "ticket.pdf").string() + "' '" + place + "'");
  const std::string answer = (folder / "answer").string();
  const std::string command =
      "zbarimg --quiet --raw -Sdisable -Sqrcode.enable '" + place + ".pgm' > '" + answer + "' 2> /dev/null";
  if (std::system(command.c_str()) != 0) return "nothing was read";
  return testing::text_of(answer);
}

void reads_back(const std::string& code) {
  for (const PaperSize size : {PaperSize::a4, PaperSize::letter}) {
    EXPECT_EQ(scanned(code, size, 150), code + "\n" + code + "\n");  // both halves of the ticket
  }
}

TEST(ScanCode, gives_an_address_back) { reads_back("https://shop.example/ticket/014?key=7Q2M-XK"); }
TEST(ScanCode, gives_plain_text_back) { reads_back("Ticket 014; collect Tue to Sat, 10 to 17 h"); }
TEST(ScanCode, gives_other_scripts_back) { reads_back("Łęcka-Désirée 014"); }
TEST(ScanCode, gives_the_longest_text_back) {
  std::string longest;
  for (int i = 0; i < 600; ++i) longest += static_cast<char>('a' + (i * i) % 26);
  EXPECT_EQ(scanned(longest, PaperSize::a4, 300), longest + "\n" + longest + "\n");
}

TEST(ScanCode, has_a_quiet_border_of_four_modules) {
  const Picture code = scan_code("014", 29);  // version 1: 21 modules and the border make 29 of 1 mm
  ASSERT_EQ(code.shapes.size(), 1U);
  double least = 29, most = 0;
  for (const double at : code.shapes[0].points_mm) least = std::min(least, at), most = std::max(most, at);
  EXPECT_NEAR(least, 4, 1e-9);
  EXPECT_NEAR(most, 25, 1e-9);
}

TEST(ScanCode, refuses_nothing_to_say) {
  try {
    (void)scan_code("", 40);
    FAIL();
  } catch (const Refused& refused) {
    EXPECT_STREQ(refused.what(), "code: is empty");
  }
}

}  // namespace
}  // namespace tailblock

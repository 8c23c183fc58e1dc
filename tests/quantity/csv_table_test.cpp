#include "quantity/csv_table.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace tailblock {
namespace {

template <class Act>
void refuses(Act act, const std::string& line) {
  try {
    act();
    FAIL() << "accepted what should read: " << line;
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), line);
  }
}

void refuses_table(const std::string& csv, const std::string& line) {
  refuses([&] { const CsvTable table("woods.csv", csv); }, line);
}

TEST(CsvTable, reads_quoted_cells_notes_and_either_line_end) {
  const CsvTable table("woods.csv",
                       "\xEF\xBB\xBF# a note\r\nname,E,note\r\nspruce,11.9,\"light, \"\"stiff\"\"\"\n\nmaple,,\n");
  ASSERT_EQ(table.rows().size(), 2U);
  EXPECT_EQ(table.rows()[0].name("name"), "spruce");
  EXPECT_EQ(table.rows()[0].number("E", {0, 20, "GPa"}), 11.9);
  EXPECT_EQ(table.rows()[0].text("note"), "light, \"stiff\"");
  EXPECT_FALSE(table.rows()[1].number_if_given("E", {0, 20, "GPa"}));
  EXPECT_EQ(table.rows()[1].where("E"), "woods.csv line 5, E");
}

TEST(CsvTable, names_the_line_it_refuses) {
  refuses_table("", "woods.csv: has no rows");
  refuses_table("name,E\n", "woods.csv: has no rows");
  refuses_table("name,E\nspruce\n", "woods.csv line 2: 1 cells, the header has 2");
  refuses_table("name,E\nspruce,1,2\n", "woods.csv line 2: 3 cells, the header has 2");
  refuses_table("name,name\nspruce,1\n", "woods.csv: column name comes twice");
  refuses_table("name\n\"spruce\n", "woods.csv line 2: a quote is not closed, or something follows it");
  refuses_table("name\n\"spruce\"x\n", "woods.csv line 2: a quote is not closed, or something follows it");
}

TEST(CsvTable, names_the_cell_it_refuses) {
  const CsvTable table("woods.csv", "name,E,faces\n,1;2,1.5\n");
  const CsvRow& row = table.rows()[0];
  refuses([&] { (void)row.name("name"); }, "woods.csv line 2, name: is empty");
  refuses([&] { (void)row.number("E", {0, 1, ""}); }, "woods.csv line 2, E: \"1;2\" is not a number");
  refuses([&] { (void)row.number("faces", {0, 1, "GPa"}); }, "woods.csv line 2, faces: 1.5 GPa is outside 0..1 GPa");
  refuses([&] { (void)row.whole_number("faces", {0, 2, ""}); }, "woods.csv line 2, faces: 1.5 is not a whole number");
  refuses([&] { (void)row.text("nu"); }, "woods.csv: has no column nu");
}

TEST(CsvTable, a_number_is_the_whole_cell_and_finite) {
  EXPECT_EQ(number_from_text("-1.5e2"), -150);
  for (const char* text : {"", " 1", "1 ", "1,5", "inf", "nan", "0x10", "1e999", "+1"}) {
    EXPECT_FALSE(number_from_text(text)) << text;
  }
}

RC_GTEST_PROP(CsvTable, any_bytes_are_read_or_refused, (const std::string& bytes)) {
  try {
    const CsvTable table("woods.csv", bytes);
    for (const CsvRow& row : table.rows()) RC_ASSERT(!row.where().empty());
  } catch (const Refused&) {
  }
}

}  // namespace
}  // namespace tailblock

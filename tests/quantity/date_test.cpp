#include "quantity/date.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "quantity/refused.h"

namespace tailblock {
namespace {

void refuses(const std::string& text) {
  try {
    FAIL() << text << " was read as " << iso_date(date_from_iso("visited_on", text));
  } catch (const Refused& refused) {
    EXPECT_EQ(refused.what(), "visited_on: \"" + text + "\" is not a day written 2026-02-14, years 1900..2199");
  }
}

TEST(Date, reads_what_it_writes_on_the_edges_of_its_range) {
  for (const char* text : {"1900-01-01", "2000-02-29", "2024-02-29", "2026-02-14", "2199-12-31"}) {
    EXPECT_EQ(iso_date(date_from_iso("visited_on", text)), text);
  }
}

TEST(Date, a_day_that_does_not_exist_is_refused) {
  for (const char* text : {"2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "2026-01-00"}) {
    refuses(text);
  }
}

TEST(Date, anything_but_the_plain_form_is_refused) {
  for (const char* text : {"", "2026-2-14", "14-02-2026", "2026/02/14", "2026-02-14 ", "+026-02-14", "-026-02-14",
                           "2026-02--4", "20260214", "1899-12-31", "2200-01-01", "2026-02-1x"}) {
    refuses(text);
  }
}

TEST(Date, counts_days_and_the_day_of_the_year) {
  const Date new_year = date_from_iso("d", "2024-01-01");
  EXPECT_EQ(days_between(new_year, date_from_iso("d", "2025-01-01")), 366);
  EXPECT_EQ(days_between(date_from_iso("d", "2024-03-01"), date_from_iso("d", "2024-02-28")), -2);
  EXPECT_EQ(day_of_year(new_year), 0);
  EXPECT_EQ(day_of_year(date_from_iso("d", "2024-12-31")), 365);
  EXPECT_EQ(day_of_year(date_from_iso("d", "2023-12-31")), 364);
}

RC_GTEST_PROP(Date, every_day_of_three_centuries_reads_back, ()) {
  const Date day = Date(std::chrono::days(*rc::gen::inRange(-25567, 84006)));
  RC_ASSERT(date_from_iso("d", iso_date(day)) == day);
}

RC_GTEST_PROP(Date, any_bytes_are_read_or_refused, (const std::string& bytes)) {
  try {
    RC_ASSERT(iso_date(date_from_iso("d", bytes)) == bytes);
  } catch (const Refused&) {
  }
}

}  // namespace
}  // namespace tailblock

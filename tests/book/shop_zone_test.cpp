#include "book/shop_zone.h"

#include <gtest/gtest.h>

#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::InZone;
using namespace std::chrono;

// Directive 2000/84/EC, articles 2 and 3 (read): summer time begins at 1.00 a.m. Greenwich Mean Time on the last Sunday
// in March and ends at 1.00 a.m. on the last Sunday in October: 29 March and 25 October 2026.

TEST(ShopZone, finds_the_days_on_which_clocks_change_in_the_european_union) {
  const InZone zone("Europe/Berlin");
  const std::vector<ClockChange> changes = clock_changes(day(2026, 2, 20), 300);
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[0].at, (Moment{day(2026, 3, 29), 120}));
  EXPECT_EQ(changes[0].forward_minutes, 60);
  EXPECT_EQ(changes[1].at, (Moment{day(2026, 10, 25), 180}));
  EXPECT_EQ(changes[1].forward_minutes, -60);
  EXPECT_EQ(instant_of(changes[0].at), sys_days(2026y / 3 / 29) + 1h);
}

TEST(ShopZone, finds_a_change_on_the_first_day_and_none_after_the_last) {
  const InZone zone("Europe/Berlin");
  EXPECT_EQ(clock_changes(day(2026, 3, 29), 1).size(), 1U);
  EXPECT_TRUE(clock_changes(day(2026, 3, 28), 1).empty());
  EXPECT_TRUE(clock_changes(day(2026, 3, 30), 200).empty());
}

TEST(ShopZone, has_no_change_where_there_is_none) {
  const InZone zone("UTC");
  EXPECT_TRUE(clock_changes(day(2026, 1, 1), 600).empty());
  EXPECT_EQ(instant_of({day(2026, 7, 1), 600}), sys_days(2026y / 7 / 1) + 10h);
}

TEST(ShopZone, lets_a_wait_run_by_true_time) {
  const InZone zone("Europe/Berlin");
  const int sixteen_hours = 960;
  EXPECT_EQ(after_wait({day(2026, 3, 27), 1020}, sixteen_hours), (Moment{day(2026, 3, 28), 540}));
  EXPECT_EQ(after_wait({day(2026, 3, 28), 1020}, sixteen_hours), (Moment{day(2026, 3, 29), 600}));
  EXPECT_EQ(after_wait({day(2026, 10, 24), 1020}, sixteen_hours), (Moment{day(2026, 10, 25), 480}));
  EXPECT_EQ(instant_of({day(2026, 7, 1), 600}), sys_days(2026y / 7 / 1) + 8h);
}

}  // namespace
}  // namespace tailblock

#include "models/do_each.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <vector>

#include "quantity/refused.h"

namespace tailblock {
namespace {

TEST(DoEach, does_every_piece_once) {
  for (const std::size_t count : {0U, 1U, 2U, 1000U}) {
    std::vector<std::atomic<int>> done(count);
    do_each_on_threads(count, [&](std::size_t i) { ++done[i]; });
    EXPECT_TRUE(std::all_of(done.begin(), done.end(), [](const auto& times) { return times == 1; })) << count;
  }
}

TEST(DoEach, gives_back_what_a_piece_throws_and_begins_no_more) {
  std::atomic<int> begun = 0;
  const auto work = [&](std::size_t i) {
    ++begun;
    if (i == 3) throw Refused("the fourth");
  };
  EXPECT_THROW(do_each_on_threads(1000000, work), Refused);
  EXPECT_LT(begun, 1000000);
}

}  // namespace
}  // namespace tailblock

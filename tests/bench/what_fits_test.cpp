#include "bench/what_fits.h"

#include <gtest/gtest.h>

#include "bench/bench.h"
#include "made_up_bench.h"
#include "published.h"

namespace tailblock {
namespace {

using testing::work;

const BenchWeights weights = bench_weights(testing::repository_file("data/bench_weights.csv"));

BenchInstrument instrument(const BenchRequest& request, const std::string& name, std::vector<Operation> operations) {
  BenchInstrument made;
  made.name = name;
  made.arrives = request.now;
  made.operations = std::move(operations);
  return made;
}

Operation pinned(Operation operation, const BenchRequest& request, int minute) {
  operation.pinned = Moment{.day = request.now.day, .minute = minute};
  return operation;
}

/// Two pins on one hour, a third elsewhere.
BenchRequest clashing() {
  BenchRequest request = testing::empty_shop();
  request.instruments = {instrument(request, "parlour", {pinned(work("set up", 60), request, 600)}),
                         instrument(request, "jumbo", {pinned(work("set up", 30), request, 630)}),
                         instrument(request, "grand", {pinned(work("string", 30), request, 900)})};
  return request;
}

TEST(WhatFits, of_pins_that_clash_the_older_stand) {
  const BenchRequest request = clashing();
  for (const auto& [older, newer] : {std::pair("parlour", "jumbo"), std::pair("jumbo", "parlour")}) {
    std::vector<NamedWork> by_age;
    for (const char* name : {"grand", older, newer}) {
      for (const BenchInstrument& one : request.instruments) {
        if (one.name == name) by_age.push_back({.instrument = name, .operation = one.operations[0].name});
      }
    }
    const WhatFits fits = what_fits(request, by_age, weights);
    ASSERT_EQ(fits.pins_let_go.size(), 1U);
    EXPECT_EQ(fits.pins_let_go[0].instrument, newer);
    EXPECT_NE(fits.pins_let_go[0].why.find("has the hands then"), std::string::npos) << fits.pins_let_go[0].why;
    const BenchResult result = bench(fits.request, weights);
    for (const PlannedOperation& operation : result.operations) {
      const auto asked = std::ranges::find(request.instruments, operation.instrument, &BenchInstrument::name);
      EXPECT_EQ(operation.starts == *asked->operations[0].pinned, operation.instrument != newer)
          << operation.instrument;
    }
  }
}

TEST(WhatFits, a_pin_whose_age_is_not_told_counts_as_the_youngest) {
  const WhatFits fits = what_fits(clashing(), {{.instrument = "jumbo", .operation = "set up"}}, weights);
  ASSERT_EQ(fits.pins_let_go.size(), 1U);
  EXPECT_EQ(fits.pins_let_go[0].instrument, "parlour");
}

TEST(WhatFits, leaves_out_what_fits_no_day_and_its_order_and_keeps_the_pins_of_the_others) {
  BenchRequest request = testing::empty_shop();
  request.instruments = {instrument(request, "parlour", {pinned(work("set up", 60), request, 600)}),
                         instrument(request, "jumbo", {work("spray", 600)})};
  request.kept_order = {{.instrument = "jumbo"}, {.instrument = "parlour"}};
  const WhatFits fits = what_fits(request, {}, weights);
  ASSERT_EQ(fits.left_out.size(), 1U);
  EXPECT_EQ(fits.left_out[0].instrument, "jumbo");
  EXPECT_NE(fits.left_out[0].why.find("600 minutes unbroken do not fit a day"), std::string::npos);
  EXPECT_TRUE(fits.pins_let_go.empty());
  ASSERT_EQ(fits.request.kept_order.size(), 1U);
  EXPECT_EQ(bench(fits.request, weights).operations[0].starts, *request.instruments[0].operations[0].pinned);
}

TEST(WhatFits, a_pin_out_of_hours_does_not_leave_its_instrument_out) {
  BenchRequest request = testing::empty_shop();
  request.instruments = {instrument(request, "parlour", {pinned(work("set up", 60), request, 1200)})};
  const WhatFits fits = what_fits(request, {}, weights);
  EXPECT_TRUE(fits.left_out.empty());
  ASSERT_EQ(fits.pins_let_go.size(), 1U);
  EXPECT_EQ(bench(fits.request, weights).operations.size(), 1U);
}

}  // namespace
}  // namespace tailblock

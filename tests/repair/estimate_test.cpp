#include "repair/estimate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::refusal;
using testing::repository_repairs;

EstimateResult asked(const EstimateRequest& request) { return estimate(request, repository_repairs()); }

// ---- money ----

std::string rounded(const char* text, const char* by, MoneyRounding rounding) {
  return as_text(times(exact_decimal("a", text, 2), exact_decimal("b", by, 3), rounding));
}

TEST(Money, halves_go_where_the_shop_says) {
  EXPECT_EQ(rounded("0.25", "0.1", MoneyRounding::half_up), "0.03");
  EXPECT_EQ(rounded("0.25", "0.1", MoneyRounding::half_even), "0.02");
  EXPECT_EQ(rounded("0.35", "0.1", MoneyRounding::half_even), "0.04");
  EXPECT_EQ(rounded("-0.25", "0.1", MoneyRounding::half_up), "-0.03");
  EXPECT_EQ(rounded("1.00", "0.333", MoneyRounding::half_up), "0.33");
}

TEST(Money, text_comes_back_as_it_was) {
  for (const char* text : {"0.00", "12.50", "999999999999.99", "0.01", "-3.07"}) {
    EXPECT_EQ(as_text(exact_decimal("a", text, 2)), text);
  }
  EXPECT_EQ(as_text(exact_decimal("a", "7", 0)), "7");
  EXPECT_EQ(as_text(exact_decimal("a", "7.5", 3)), "7.500");
}

TEST(Money, a_tenth_ten_times_is_one) {
  std::int64_t sum = 0;
  for (int i = 0; i < 10; ++i) sum += exact_decimal("a", "0.1", 2).units;
  EXPECT_EQ(as_text({sum, 2}), "1.00");
}

TEST(Money, refuses_what_is_not_plain) {
  const auto of = [](const char* text, int digits) {
    return refusal([&] { (void)exact_decimal("hourly_rate", text, digits); });
  };
  for (const char* text : {"", ".5", "1.", "1,50", "1e3", "12 ", "+1", "--1", "0x1", "nan"}) {
    EXPECT_EQ(of(text, 2), "hourly_rate: \"" + std::string(text) + "\" is not a plain decimal number like 12.50");
  }
  EXPECT_EQ(of("1.005", 2), "hourly_rate: \"1.005\" has more than 2 decimals");
  EXPECT_EQ(of("1.5", 0), "hourly_rate: \"1.5\" has more than 0 decimals");
  EXPECT_EQ(of("1000000000000", 2), "hourly_rate: \"1000000000000\" is beyond 999999999999");
}

TEST(Money, division_agrees_with_wide_arithmetic) {
  std::mt19937_64 dice(11);
  for (int i = 0; i < 20000; ++i) {
    const auto n = static_cast<std::int64_t>(dice() % 2'000'000) - 1'000'000;
    const auto d = static_cast<std::int64_t>(dice() % 5000) + 1;
    const std::int64_t up = rounded_division(n, d, MoneyRounding::half_up);
    EXPECT_EQ(up, std::llround(static_cast<long double>(n) / static_cast<long double>(d))) << n << "/" << d;
    const std::int64_t even = rounded_division(n, d, MoneyRounding::half_even);
    EXPECT_EQ(even, std::llrintl(static_cast<long double>(n) / static_cast<long double>(d))) << n << "/" << d;
  }
}

TEST(Money, currencies_have_their_minor_digits) {
  const auto digits = [](const char* code) { return row_of_id(repository_repairs().currencies, code)->minor_digits; };
  EXPECT_EQ(digits("EUR"), 2);
  EXPECT_EQ(digits("JPY"), 0);
  EXPECT_EQ(digits("KWD"), 3);
  EXPECT_GT(repository_repairs().currencies.size(), 150U);
}

// ---- hours ----

TEST(Hours, one_piece_comes_back_as_it_is) {
  const Spread one = summed_minutes({{.hands_on = {15, 30, 60}}}, 0.1, 0.3);
  EXPECT_NEAR(one.typical, 30, 1e-9);
  EXPECT_NEAR(one.low, 15, 1e-6);
  EXPECT_NEAR(one.high, 60, 1e-6);
}

TEST(Hours, a_sum_agrees_with_a_simulation) {
  const std::vector<WorkMinutes> work{{.hands_on = {10, 20, 45}},
                                      {.hands_on = {30, 45, 75}},
                                      {.hands_on = {5, 10, 30}},
                                      {.hands_on = {20, 40, 90}},
                                      {.hands_on = {15, 25, 40}}};
  const double z = normal_exceeded_with(0.1), rho = 0.3;
  std::mt19937 dice(5);
  std::normal_distribution<double> normal;
  std::vector<double> sums;
  for (int run = 0; run < 200000; ++run) {
    const double shared = normal(dice);
    double sum = 0;
    for (const WorkMinutes& one : work) {
      const double s = std::log(one.hands_on.high / one.hands_on.low) / (2 * z);
      sum += one.hands_on.typical * std::exp(s * (std::sqrt(rho) * shared + std::sqrt(1 - rho) * normal(dice)));
    }
    sums.push_back(sum);
  }
  std::sort(sums.begin(), sums.end());
  const auto at = [&](double share) {
    return sums[static_cast<std::size_t>(share * static_cast<double>(sums.size()))];
  };
  const Spread found = summed_minutes(work, 0.1, rho);
  // a correlation of the normals is a little more than that of the log-normals, and the match is of two moments
  EXPECT_NEAR(found.low / at(0.1), 1, 0.03);
  EXPECT_NEAR(found.typical / at(0.5), 1, 0.02);
  EXPECT_NEAR(found.high / at(0.9), 1, 0.03);
}

TEST(Hours, the_normal_is_that_of_the_table) { EXPECT_NEAR(normal_exceeded_with(0.1), 1.2815516, 1e-6); }

// ---- estimates ----

EstimateRequest shop() {
  EstimateRequest request;
  request.currency = "EUR";
  request.hourly_rate = "60.00";
  return request;
}
EstimateLine line(const std::string& name, double minutes, const std::string& tax = "0") {
  EstimateLine made;
  made.name = name;
  made.work = {{.operation = "work", .low_minutes = minutes, .typical_minutes = minutes, .high_minutes = minutes}};
  made.tax_percent = tax;
  return made;
}

TEST(Estimate, adds_up_by_hand) {
  EstimateRequest request = shop();
  request.lines = {line("clean", 30, "19"), line("set up", 47, "19")};
  request.lines[0].materials = {{.name = "strings", .quantity = "2", .unit_price = "11.90", .tax_percent = "7"}};
  const EstimateResult result = asked(request);
  EXPECT_EQ(result.lines[0].labour, "30.00");
  EXPECT_EQ(result.lines[0].materials, "23.80");
  EXPECT_EQ(result.lines[0].tax, "7.37");  // 5.70 and 1.666 to 1.67
  EXPECT_EQ(result.lines[0].gross, "61.17");
  EXPECT_EQ(result.lines[1].billed_minutes, 50);  // 47 up to the next five
  EXPECT_EQ(result.lines[1].labour, "50.00");
  EXPECT_EQ(result.options[0].net, "103.80");
  EXPECT_EQ(result.options[0].tax, "16.87");
  EXPECT_EQ(result.options[0].gross, "120.67");
  ASSERT_EQ(result.options[0].taxes.size(), 2U);
  EXPECT_EQ(result.options[0].taxes[1].percent, "19.000");
  EXPECT_EQ(result.options[0].taxes[1].tax, "15.20");
}

TEST(Estimate, tax_rounded_once_a_rate_may_differ_from_tax_rounded_on_every_line) {
  EstimateRequest request = shop();
  request.hourly_rate = "12.60";  // 5 minutes: 1.05; 10 % of it: 0.105
  request.lines = {line("a", 5, "10"), line("b", 5, "10"), line("c", 5, "10")};
  EXPECT_EQ(asked(request).options[0].tax, "0.33");
  request.tax_rounded = TaxRounding::per_rate;
  EXPECT_EQ(asked(request).options[0].tax, "0.32");  // 0.315 to 0.32
  request.rounding = MoneyRounding::half_even;
  EXPECT_EQ(asked(request).options[0].tax, "0.32");
}

TEST(Estimate, the_gross_of_the_lines_is_the_gross_of_the_option_when_tax_is_rounded_on_lines) {
  std::mt19937 dice(3);
  for (int i = 0; i < 200; ++i) {
    EstimateRequest request = shop();
    request.currency = i % 3 == 0 ? "JPY" : i % 3 == 1 ? "EUR" : "KWD";
    request.hourly_rate = i % 3 == 0 ? "9000" : "57.35";
    for (int k = 0; k < 5; ++k) {
      request.lines.push_back(line("x", 5 + static_cast<double>(dice() % 300), k % 2 == 0 ? "19" : "7.5"));
      if (i % 3 != 0) {
        request.lines.back().materials = {{.name = "m", .quantity = "1.333", .unit_price = "3.07", .tax_percent = ""}};
      }
    }
    const EstimateResult result = asked(request);
    std::int64_t gross = 0;
    for (const PricedLine& one : result.lines) gross += exact_decimal("g", one.gross, result.minor_digits).units;
    EXPECT_EQ(as_text({gross, result.minor_digits}), result.options[0].gross);
  }
}

TEST(Estimate, shows_options_side_by_side) {
  EstimateRequest request = shop();
  request.lines = {line("glue brace", 60), line("level frets", 120), line("refinish", 600)};
  request.lines[1].when = LineWhen::can_wait;
  request.lines[2].when = LineWhen::leave_alone;
  const EstimateResult result = asked(request);
  EXPECT_EQ(result.options[0].net, "60.00");
  EXPECT_EQ(result.options[1].net, "180.00");
  EXPECT_EQ(result.lines[2].net, "600.00");
}

TEST(Estimate, a_drop_in_saddle_on_a_known_guitar_is_an_hour_to_an_hour_and_a_half) {
  EstimateRequest request = shop();
  EstimateLine saddle;
  saddle.name = "new saddle";
  saddle.repair = ProcedureRequest{};
  saddle.repair->procedure = "drop_in_saddle";
  request.lines = {saddle};
  const EstimateResult result = asked(request);
  EXPECT_GE(result.options[0].hours.typical, 1.0);
  EXPECT_LE(result.options[0].hours.typical, 1.5);
  EXPECT_LE(result.options[0].hours.high, 2.5);
  EXPECT_TRUE(result.lines[0].cannot_be_undone);
}

TEST(Estimate, two_repairs_of_one_visit_share_arriving_and_finishing) {
  EstimateRequest request = shop();
  EstimateLine saddle, nut;
  saddle.repair = nut.repair = ProcedureRequest{};
  saddle.repair->procedure = "drop_in_saddle";
  nut.repair->procedure = "nut";
  request.lines = {saddle, nut};
  const double together = asked(request).options[0].hours.typical;
  request.lines = {nut};
  const double alone = asked(request).options[0].hours.typical;
  request.lines = {saddle};
  const double other = asked(request).options[0].hours.typical;
  EXPECT_LT(together, alone + other - 0.4);  // a short intake, stringing and handing over
}

EstimateLine repair(const std::string& procedure, LineWhen when = LineWhen::do_now) {
  EstimateLine made;
  made.name = procedure;
  made.when = when;
  made.repair = ProcedureRequest{};
  made.repair->procedure = procedure;
  made.tax_percent = "19";
  return made;
}

std::int64_t cents(const std::string& text) { return exact_decimal("money", text, 2).units; }

TEST(Estimate, a_refused_line_makes_no_other_dearer) {
  EstimateRequest request = shop();
  request.lines = {repair("x_brace"), repair("top_crack"), repair("nut"), repair("set_up")};
  const EstimateResult all = asked(request);
  for (std::size_t refused = 0; refused < request.lines.size(); ++refused) {
    EstimateRequest less = request;
    less.lines[refused].when = LineWhen::leave_alone;
    const EstimateResult left = asked(less);
    for (std::size_t i = 0; i < request.lines.size(); ++i) {
      EXPECT_EQ(left.lines[i].net, all.lines[i].net) << request.lines[i].name;
      EXPECT_EQ(left.lines[i].visit.net, all.lines[i].visit.net) << request.lines[i].name;
    }
    EXPECT_LE(cents(left.options[0].visit.net), cents(all.options[0].visit.net));
    EXPECT_LE(cents(left.options[0].net), cents(all.options[0].net) - cents(all.lines[refused].net));
  }
}

TEST(Estimate, arriving_and_finishing_is_paid_once_as_the_line_needs_that_needs_most) {
  EstimateRequest request = shop();
  request.lines = {repair("drop_in_saddle"), repair("x_brace", LineWhen::can_wait)};
  const EstimateResult result = asked(request);
  const PricedLine &saddle = result.lines[0], &brace = result.lines[1];
  EXPECT_LT(cents(saddle.visit.net), cents(brace.visit.net));
  EXPECT_EQ(result.options[0].visit.net, saddle.visit.net);
  EXPECT_EQ(result.options[1].visit.net, brace.visit.net);
  EXPECT_EQ(cents(result.options[0].net), cents(saddle.net) + cents(saddle.visit.net));
  EXPECT_EQ(cents(result.options[1].net), cents(saddle.net) + cents(brace.net) + cents(brace.visit.net));
  EXPECT_EQ(cents(result.options[1].tax), cents(saddle.tax) + cents(brace.tax) + cents(brace.visit.tax));
  EXPECT_EQ(cents(brace.visit.net), 100 * brace.visit.billed_minutes);
  EXPECT_GT(cents(result.options[1].net_high), cents(result.options[1].net) + 5000);
}

TEST(Estimate, a_set_up_is_its_own_work_and_not_only_finishing) {
  EstimateRequest request = shop();
  request.lines = {repair("set_up")};
  EXPECT_GE(asked(request).lines[0].hours.typical, 0.4);
}

TEST(Estimate, a_fixed_price_covers_arriving_and_finishing) {
  EstimateRequest request = shop();
  request.lines = {repair("drop_in_saddle")};
  request.lines[0].fixed_price = "95.00";
  const EstimateResult result = asked(request);
  EXPECT_EQ(result.options[0].net, "95.00");
  EXPECT_EQ(result.options[0].visit.net, "0.00");
  EXPECT_GE(result.options[0].hours.typical, 1.0);
}

TEST(Estimate, the_shops_own_log_moves_the_hours) {
  EstimateRequest request = shop();
  request.lines = {line("glue", 60)};
  request.learnt = {{.operation = "work", .factor = 1.5, .scatter = 0.2}};
  const PricedLine shown = asked(request).lines.front();
  EXPECT_NEAR(shown.hours.typical, 1.5, 1e-9);
  EXPECT_NEAR(shown.hours.high, 1.5 * std::exp(0.2 * 1.2815516), 1e-6);
}

TEST(Estimate, a_fixed_price_stands_for_the_labour) {
  EstimateRequest request = shop();
  request.lines = {line("set-up", 95)};
  request.lines[0].fixed_price = "80.00";
  EXPECT_EQ(asked(request).lines[0].net, "80.00");
  EXPECT_EQ(asked(request).options[0].net_high, "80.00");
}

TEST(Estimate, refuses_in_one_line) {
  const auto of = [](const EstimateRequest& request) { return refusal([&] { (void)asked(request); }); };
  EstimateRequest request = shop();
  request.currency = "GUI";
  EXPECT_EQ(of(request), "currency: \"GUI\" is not a code of ISO 4217 in data/currencies.csv");
  request = shop();
  request.hourly_rate = "60.005";
  EXPECT_EQ(of(request), "hourly_rate: \"60.005\" has more than 2 decimals");
  request = shop();
  request.hourly_rate = "-1";
  EXPECT_EQ(of(request), "hourly_rate: \"-1\" is below 0");
  request = shop();
  request.lines = {line("x", 30, "150")};
  EXPECT_EQ(of(request), "lines[0].tax_percent: 150 percent is outside 0..100 percent");
  request.lines = {line("x", 30)};
  request.lines[0].work[0].high_minutes = 10;
  EXPECT_EQ(of(request), "lines[0].work: typical_minutes is not between low_minutes and high_minutes");
  request.lines = {line("x", 30)};
  request.lines[0].materials = {{.name = "m", .quantity = "1.0001", .unit_price = "1", .tax_percent = ""}};
  EXPECT_EQ(of(request), "lines[0].materials[0].quantity: \"1.0001\" has more than 3 decimals");
  request.lines[0].materials[0] = {.name = "m", .quantity = "10000", .unit_price = "999999999.99", .tax_percent = "99"};
  EXPECT_EQ(of(request), "lines[0].net: 9.9999999999e+14 minor units is outside 0..100000000000 minor units");
  request.currency = "GUI\nTAR";
  EXPECT_EQ(of(request), "currency: 7 bytes is more than 3");
}

}  // namespace
}  // namespace tailblock

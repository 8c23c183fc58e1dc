#include "season/normal.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <numbers>

namespace tailblock {
namespace {

TEST(Normal, the_table_is_the_complementary_error_function) {
  double worst_area = 0;
  double worst_density = 0;
  for (double z = -9; z <= 9; z += 0.000713) {
    const NormalValue value = standard_normal(z);
    worst_area = std::max(worst_area, std::abs(value.below - std::erfc(-z / std::numbers::sqrt2) / 2));
    worst_density =
        std::max(worst_density, std::abs(value.density - std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi)));
  }
  std::printf("  largest deviation: area %.1e, density %.1e\n", worst_area, worst_density);
  EXPECT_LT(worst_area, 5e-9);
  EXPECT_LT(worst_density, 5e-6);
}

TEST(Normal, quantiles_go_back_to_their_share) {
  for (const double p : {1e-6, 0.01, 0.05, 0.3, 0.5, 0.75, 0.95, 0.999}) {
    EXPECT_NEAR(std::erfc(-standard_normal_quantile(p) / std::numbers::sqrt2) / 2, p, 1e-13);
  }
  EXPECT_NEAR(standard_normal_quantile(0.95), 1.6448536269514722, 1e-12);  // any table of the normal distribution
}

TEST(Normal, a_mixture_of_one_is_that_one) {
  NormalMixture one;
  one.add(3, 2, 0.5);
  EXPECT_NEAR(one.quantile(0.95), 2 + 0.5 * 1.6448536269514722, 1e-6);
}

TEST(Normal, a_mixture_is_solved_however_its_parts_lie) {
  NormalMixture far;
  far.add(0.5, 0, 0.001);
  far.add(0.5, 100, 20);
  for (const double p : {0.001, 0.1, 0.25, 0.49, 0.51, 0.75, 0.999}) {
    const double x = far.quantile(p, 1e-9);
    EXPECT_NEAR((standard_normal(x / 0.001).below + standard_normal((x - 100) / 20).below) / 2, p, 1e-6) << p;
  }
}

}  // namespace
}  // namespace tailblock

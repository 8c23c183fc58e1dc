#include "body/dense_front.h"

#include <gtest/gtest.h>

#include <Eigen/Cholesky>
#include <random>

namespace tailblock {
namespace {

/// A front of random numbers, symmetric and positive, with what is left of it once `own` unknowns are eliminated.
struct RandomFront {
  int own, all;
  Eigen::MatrixXd K;

  RandomFront(int own_unknowns, int all_unknowns, unsigned seed) : own(own_unknowns), all(all_unknowns) {
    std::mt19937 random(seed);
    std::normal_distribution<double> normal;
    const Eigen::MatrixXd A = Eigen::MatrixXd::NullaryExpr(all, all, [&] { return normal(random); });
    K = A * A.transpose() + all * Eigen::MatrixXd::Identity(all, all);
  }
  [[nodiscard]] std::vector<double> columns() const {
    const Eigen::MatrixXd left = K.leftCols(own);
    return {left.data(), left.data() + left.size()};
  }
  [[nodiscard]] std::vector<double> corner() const {
    const Eigen::MatrixXd later = K.bottomRightCorner(all - own, all - own);
    return {later.data(), later.data() + later.size()};
  }
};

struct Eliminated {
  bool positive = false;
  std::vector<double> columns, corner;
};

Eliminated eliminated(const FrontKernels& kernels, const RandomFront& front) {
  Eliminated done{.columns = front.columns(), .corner = front.corner()};
  std::vector<double> scratch;
  done.positive = kernels.eliminate(
      {.own = front.own, .all = front.all, .columns = done.columns, .corner = done.corner}, scratch);
  return done;
}

/// Sizes about and between the blocks of 4, 12 and 32 that the kernels work in.
const std::vector<std::pair<int, int>> sizes{{1, 1},   {1, 9},   {3, 3},   {4, 17},  {5, 12},   {12, 60},
                                             {31, 40}, {32, 32}, {33, 95}, {64, 70}, {100, 173}};

void is_the_factor(const FrontKernels& kernels) {
  for (const auto& [own, all] : sizes) {
    const RandomFront front(own, all, 7);
    const Eliminated done = eliminated(kernels, front);
    ASSERT_TRUE(done.positive);
    const Eigen::MatrixXd L = front.K.topLeftCorner(own, own).llt().matrixL();
    const Eigen::MatrixXd below = L.triangularView<Eigen::Lower>().solve(front.K.bottomLeftCorner(all - own, own).transpose()).transpose();
    const Eigen::MatrixXd rest = front.K.bottomRightCorner(all - own, all - own) - below * below.transpose();
    const Eigen::Map<const Eigen::MatrixXd> columns(done.columns.data(), all, own);
    const Eigen::Map<const Eigen::MatrixXd> corner(done.corner.data(), all - own, all - own);
    double off = 0;
    for (int j = 0; j < own; ++j) {
      for (int i = j; i < all; ++i) off = std::max(off, std::abs(columns(i, j) - (i < own ? L(i, j) : below(i - own, j))));
    }
    for (int j = 0; j < all - own; ++j) {
      for (int i = j; i < all - own; ++i) off = std::max(off, std::abs(corner(i, j) - rest(i, j)));
    }
    EXPECT_LT(off, 1e-11 * all) << own << " of " << all;
  }
}
TEST(DenseFront, leaves_the_factor_and_what_is_left_over_with_any_registers) {
  is_the_factor(plain_kernels());
  if (const auto wide = wide_kernels()) is_the_factor(*wide);
}

void solves(const FrontKernels& kernels) {
  for (const auto& [own, all] : sizes) {
    const RandomFront front(own, all, 11);
    const Eliminated done = eliminated(kernels, front);
    const EliminatedColumns columns{.own = own, .all = all, .columns = done.columns};
    std::mt19937 random(3);
    std::normal_distribution<double> normal;
    using Rows = Eigen::Matrix<double, Eigen::Dynamic, right_sides, Eigen::RowMajor>;
    Rows loads = Rows::Zero(all, right_sides);
    loads.topRows(own) = Rows::NullaryExpr(own, right_sides, [&] { return normal(random); });
    Rows z = loads;
    kernels.solve_forward(columns, z.data());
    const Rows passed_on = -front.K.bottomLeftCorner(all - own, own) * front.K.topLeftCorner(own, own).llt().solve(loads.topRows(own));
    EXPECT_LT((z.bottomRows(all - own) - passed_on).cwiseAbs().sum(), 1e-10) << own << " of " << all;
    const Rows later = Rows::NullaryExpr(all - own, right_sides, [&] { return normal(random); });
    z.bottomRows(all - own) = later;
    kernels.solve_backward(columns, z.data());
    const Rows direct = front.K.topLeftCorner(own, own).llt().solve(
        loads.topRows(own) - front.K.bottomLeftCorner(all - own, own).transpose() * later);
    EXPECT_LT((z.topRows(own) - direct).cwiseAbs().sum(), 1e-10) << own << " of " << all;
  }
}
TEST(DenseFront, solves_forward_and_backward_with_any_registers) {
  solves(plain_kernels());
  if (const auto wide = wide_kernels()) solves(*wide);
}

TEST(DenseFront, plain_and_wide_registers_agree_to_rounding) {
  const auto wide = wide_kernels();
  if (!wide) GTEST_SKIP() << "this processor has no 256-bit fused multiply-add";
  for (const auto& [own, all] : sizes) {
    const RandomFront front(own, all, 5);
    const Eliminated a = eliminated(plain_kernels(), front), b = eliminated(*wide, front);
    for (std::size_t k = 0; k < a.columns.size(); ++k) ASSERT_NEAR(a.columns[k], b.columns[k], 1e-11 * all);
    for (std::size_t k = 0; k < a.corner.size(); ++k) ASSERT_NEAR(a.corner[k], b.corner[k], 1e-11 * all);
  }
}

TEST(DenseFront, says_when_a_pivot_is_not_positive) {
  RandomFront front(20, 30, 1);
  front.K(13, 13) = -1;
  EXPECT_FALSE(eliminated(plain_kernels(), front).positive);
  EXPECT_FALSE(eliminated(wide_kernels().value_or(plain_kernels()), front).positive);
}

}  // namespace
}  // namespace tailblock

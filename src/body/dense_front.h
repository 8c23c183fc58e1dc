#pragma once

#include <optional>
#include <span>
#include <vector>

/// The dense work on one front of a factorisation: most of the time of a plate goes here.
namespace tailblock {

/// A symmetric block whose first unknowns are eliminated. Column by column, lower half only: the columns that are
/// eliminated at full height, then the corner that is left over for another front.
struct DenseFront {
  int own = 0, all = 0;
  std::span<double> columns;  ///< own columns of `all` rows
  std::span<double> corner;   ///< all - own columns of all - own rows

  /// Column j; its entries count from row j on (from row `own` in the corner).
  [[nodiscard]] double* column(int j) const {
    const auto rows = static_cast<std::ptrdiff_t>(all), later = static_cast<std::ptrdiff_t>(all - own);
    return j < own ? columns.data() + j * rows : corner.data() + (j - own) * later - own;
  }
};

/// Puts L into the columns and K22 - L21 L21' into the corner, in blocks of columns, the rest updated at once by tiles
/// of 12 by 4 that stay in registers.
/// @return whether every pivot was positive.
[[nodiscard]] bool eliminate(const DenseFront& front, std::vector<double>& scratch);

/// The eliminated columns, when they are done.
struct EliminatedColumns {
  int own = 0, all = 0;
  std::span<const double> columns;

  [[nodiscard]] const double* column(int j) const { return columns.data() + j * static_cast<std::ptrdiff_t>(all); }
};

/// How many right sides are solved at once; rows of `z` are this long.
inline constexpr int right_sides = 8;

/// z holds own rows, then the later ones as zeros: leaves L11^-1 z in the own rows and -L21 (that) in the later ones.
void solve_forward(const EliminatedColumns& front, std::span<double> z);
/// z holds own rows, then what was found for the later ones: leaves the displacements in the own rows.
void solve_backward(const EliminatedColumns& front, std::span<double> z);

/// The same work compiled for one kind of register. The functions above take the widest that this processor has.
struct FrontKernels {
  bool (*eliminate)(const DenseFront& front, std::vector<double>& scratch);
  void (*solve_forward)(const EliminatedColumns& front, double* z);
  void (*solve_backward)(const EliminatedColumns& front, double* z);
};
[[nodiscard]] FrontKernels plain_kernels();
/// 256-bit with fused multiply-add; absent when this processor has none.
[[nodiscard]] std::optional<FrontKernels> wide_kernels();

}  // namespace tailblock

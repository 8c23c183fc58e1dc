#include "body/dense_front.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>

// Kernels are written once and compiled twice: for every processor of the kind, and for one with 256-bit fused
// multiply-add, which is asked for when the program runs. They must be inlined into both to be compiled for both.
#if defined(__x86_64__)
#define TAILBLOCK_WIDE [[gnu::target("avx2,fma")]]
#else
#define TAILBLOCK_WIDE
#endif
#define TAILBLOCK_KERNEL [[gnu::always_inline]] inline

namespace tailblock {
namespace {

using Four = double __attribute__((vector_size(32)));
using Unaligned = double __attribute__((vector_size(32), aligned(8), may_alias));
constexpr int four = 4;
constexpr int tile_panels = 3;     // of four rows: a tile is 12 by 4
constexpr int block_columns = 32;  // eliminated before the rest is updated

TAILBLOCK_KERNEL void load(Four& value, const double* from) { value = *reinterpret_cast<const Unaligned*>(from); }
TAILBLOCK_KERNEL void store(double* to, const Four& value) { *reinterpret_cast<Unaligned*>(to) = value; }

/// to[i] -= sum of the columns times their factors, rows first..last.
template <int columns>
TAILBLOCK_KERNEL void subtract(double* to, const std::array<const double*, columns>& from,
                               const std::array<double, columns>& factors, int first, int last) {
  int i = first;
  for (; i + four <= last; i += four) {
    Four sum;
    load(sum, to + i);
    for (int c = 0; c < columns; ++c) {
      Four value;
      load(value, from[static_cast<std::size_t>(c)] + i);
      sum -= value * factors[static_cast<std::size_t>(c)];
    }
    store(to + i, sum);
  }
  for (; i < last; ++i) {
    for (int c = 0; c < columns; ++c)
      to[i] -= from[static_cast<std::size_t>(c)][i] * factors[static_cast<std::size_t>(c)];
  }
}

/// Columns first..last of L, whose earlier columns are already subtracted from them.
TAILBLOCK_KERNEL bool eliminate_block(const DenseFront& front, int first, int last) {
  for (int j = first; j < last; ++j) {
    double* column = front.column(j);
    int p = first;
    for (; p + four <= j; p += four) {
      const std::array<const double*, four> from{front.column(p), front.column(p + 1), front.column(p + 2),
                                                 front.column(p + 3)};
      subtract<four>(column, from, {from[0][j], from[1][j], from[2][j], from[3][j]}, j, front.all);
    }
    for (; p < j; ++p) {
      const double* from = front.column(p);
      subtract<1>(column, {from}, {from[j]}, j, front.all);
    }
    if (!(column[j] > 0)) return false;
    const double pivot = std::sqrt(column[j]), over = 1 / pivot;
    column[j] = pivot;
    for (int i = j + 1; i < front.all; ++i) column[i] *= over;
  }
  return true;
}

/// Rows `from` on of columns first..last, in panels of four rows, a panel column by column; zeros beyond the last row.
TAILBLOCK_KERNEL void pack(const DenseFront& front, int first, int last, int from, std::vector<double>& packed) {
  const int depth = last - first, panels = (front.all - from + four - 1) / four;
  packed.resize(static_cast<std::size_t>(panels + tile_panels) * static_cast<std::size_t>(four * depth));
  std::fill(packed.end() - (tile_panels + 1) * four * depth, packed.end(), 0.0);
  for (int p = 0; p < depth; ++p) {
    const double* column = front.column(first + p) + from;
    double* to = packed.data() + p * four;
    int i = 0;
    for (; i + four <= front.all - from; i += four, to += four * depth) std::memcpy(to, column + i, sizeof(Four));
    for (int rest = 0; i + rest < front.all - from; ++rest) to[rest] = column[i + rest];
  }
}

/// Twelve rows times four columns. Every sum has a name of its own, or it would not stay in a register.
TAILBLOCK_KERNEL void tile(const double* down, const double* across, int depth, double* sums) {
  const double *first = down, *second = down + four * depth, *third = second + four * depth;
  Four a0{}, a1{}, a2{}, b0{}, b1{}, b2{}, c0{}, c1{}, c2{}, d0{}, d1{}, d2{};
  for (int p = 0; p < depth; ++p, first += four, second += four, third += four, across += four) {
    Four x, y, z;
    load(x, first), load(y, second), load(z, third);
    a0 += x * across[0], a1 += y * across[0], a2 += z * across[0];
    b0 += x * across[1], b1 += y * across[1], b2 += z * across[1];
    c0 += x * across[2], c1 += y * across[2], c2 += z * across[2];
    d0 += x * across[3], d1 += y * across[3], d2 += z * across[3];
  }
  store(sums, a0), store(sums + 4, a1), store(sums + 8, a2);
  store(sums + 12, b0), store(sums + 16, b1), store(sums + 20, b2);
  store(sums + 24, c0), store(sums + 28, c1), store(sums + 32, c2);
  store(sums + 36, d0), store(sums + 40, d1), store(sums + 44, d2);
}

/// Columns from..all, each less the packed rows times each other.
TAILBLOCK_KERNEL void update_rest(const DenseFront& front, int from, int depth, const std::vector<double>& packed) {
  const int panel = four * depth;
  for (int j = from; j < front.all; j += four) {
    const double* across = packed.data() + (j - from) / four * panel;
    const int wide = std::min(four, front.all - j);
    std::array<double*, four> columns{};
    for (int c = 0; c < wide; ++c) columns[static_cast<std::size_t>(c)] = front.column(j + c);
    for (int i = j; i < front.all; i += tile_panels * four) {
      const double* down = packed.data() + (i - from) / four * panel;
      std::array<double, four * tile_panels * four> sums;
      tile(down, across, depth, sums.data());
      const int high = front.all - i;
      for (int c = 0; c < wide; ++c) {
        double* to = columns[static_cast<std::size_t>(c)] + i;
        const double* sum = sums.data() + c * tile_panels * four;
        const int upper = std::max(0, j + c - i);  // not kept: the other half
        if (high >= tile_panels * four && upper == 0) {
          for (int r = 0; r < tile_panels * four; r += four) {
            Four value, less;
            load(value, to + r), load(less, sum + r);
            store(to + r, value - less);
          }
        } else {
          for (int k = upper; k < std::min(high, tile_panels * four); ++k) to[k] -= sum[k];
        }
      }
    }
  }
}

TAILBLOCK_KERNEL bool eliminate_all(const DenseFront& front, std::vector<double>& scratch) {
  for (int first = 0; first < front.own; first += block_columns) {
    const int last = std::min(front.own, first + block_columns);
    if (!eliminate_block(front, first, last)) return false;
    if (last == front.all) break;
    pack(front, first, last, last, scratch);
    update_rest(front, last, last - first, scratch);
  }
  return true;
}

static_assert(right_sides == 2 * four, "a row of right sides is two registers");

/// Four columns of L at a time; the missing ones of the last four are the first, times nothing.
template <class Front>
TAILBLOCK_KERNEL std::array<const double*, four> four_columns(const Front& front, int first, int last) {
  std::array<const double*, four> columns{};
  for (int c = 0; c < four; ++c)
    columns[static_cast<std::size_t>(c)] = front.column(first + c < last ? first + c : first);
  return columns;
}

TAILBLOCK_KERNEL void forward_all(const EliminatedColumns& front, double* z) {
  for (int first = 0; first < front.own; first += four) {
    const int last = std::min(front.own, first + four);
    std::array<double, four * right_sides> known{};
    for (int j = first; j < last; ++j) {
      double* row = z + j * right_sides;
      for (int p = first; p < j; ++p) {
        const double factor = front.column(p)[j];
        for (int c = 0; c < right_sides; ++c) row[c] -= factor * z[p * right_sides + c];
      }
      const double over = 1 / front.column(j)[j];
      for (int c = 0; c < right_sides; ++c) row[c] *= over;
      std::copy_n(row, right_sides, known.data() + (j - first) * right_sides);
    }
    const auto [w, x, y, v] = four_columns(front, first, last);
    Four w0, w1, x0, x1, y0, y1, v0, v1;
    load(w0, known.data()), load(w1, known.data() + 4), load(x0, known.data() + 8), load(x1, known.data() + 12);
    load(y0, known.data() + 16), load(y1, known.data() + 20), load(v0, known.data() + 24), load(v1, known.data() + 28);
    for (int i = last; i < front.all; ++i) {
      double* row = z + i * right_sides;
      Four left, right;
      load(left, row), load(right, row + four);
      left -= w[i] * w0, right -= w[i] * w1;
      left -= x[i] * x0, right -= x[i] * x1;
      left -= y[i] * y0, right -= y[i] * y1;
      left -= v[i] * v0, right -= v[i] * v1;
      store(row, left), store(row + four, right);
    }
  }
}

TAILBLOCK_KERNEL void backward_all(const EliminatedColumns& front, double* z) {
  for (int first = (front.own - 1) / four * four; first >= 0; first -= four) {
    const int last = std::min(front.own, first + four);
    const auto [w, x, y, v] = four_columns(front, first, last);
    Four w0{}, w1{}, x0{}, x1{}, y0{}, y1{}, v0{}, v1{};
    for (int i = last; i < front.all; ++i) {
      const double* row = z + i * right_sides;
      Four left, right;
      load(left, row), load(right, row + four);
      w0 += w[i] * left, w1 += w[i] * right;
      x0 += x[i] * left, x1 += x[i] * right;
      y0 += y[i] * left, y1 += y[i] * right;
      v0 += v[i] * left, v1 += v[i] * right;
    }
    std::array<double, four * right_sides> sums;
    store(sums.data(), w0), store(sums.data() + 4, w1), store(sums.data() + 8, x0), store(sums.data() + 12, x1);
    store(sums.data() + 16, y0), store(sums.data() + 20, y1), store(sums.data() + 24, v0), store(sums.data() + 28, v1);
    for (int j = last; j-- > first;) {
      const double* L = front.column(j);
      double* row = z + j * right_sides;
      for (int c = 0; c < right_sides; ++c) row[c] -= sums[static_cast<std::size_t>((j - first) * right_sides + c)];
      for (int p = j + 1; p < last; ++p) {
        for (int c = 0; c < right_sides; ++c) row[c] -= L[p] * z[p * right_sides + c];
      }
      const double over = 1 / L[j];
      for (int c = 0; c < right_sides; ++c) row[c] *= over;
    }
  }
}

TAILBLOCK_WIDE bool eliminate_wide(const DenseFront& front, std::vector<double>& scratch) {
  return eliminate_all(front, scratch);
}
TAILBLOCK_WIDE void forward_wide(const EliminatedColumns& front, double* z) { forward_all(front, z); }
TAILBLOCK_WIDE void backward_wide(const EliminatedColumns& front, double* z) { backward_all(front, z); }

bool wide() {
#if defined(__x86_64__)
  static const bool has = __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma");
  return has;
#else
  return false;
#endif
}

}  // namespace

bool eliminate(const DenseFront& front, std::vector<double>& scratch) {
  return wide() ? eliminate_wide(front, scratch) : eliminate_all(front, scratch);
}

void solve_forward(const EliminatedColumns& front, std::span<double> z) {
  return wide() ? forward_wide(front, z.data()) : forward_all(front, z.data());
}

void solve_backward(const EliminatedColumns& front, std::span<double> z) {
  return wide() ? backward_wide(front, z.data()) : backward_all(front, z.data());
}

}  // namespace tailblock

#include "body/dense_front.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>

namespace tailblock {
namespace {

namespace plain {
#include "body/front_kernels.inc"
}

#if defined(__x86_64__)
#pragma GCC push_options
#pragma GCC target("avx2,fma")
namespace wide {
#include "body/front_kernels.inc"
}
#pragma GCC pop_options
#endif

/// The widest registers this processor has.
const FrontKernels& best() {
  static const FrontKernels kernels = wide_kernels().value_or(plain_kernels());
  return kernels;
}

}  // namespace

FrontKernels plain_kernels() { return {plain::eliminate, plain::solve_forward, plain::solve_backward}; }

std::optional<FrontKernels> wide_kernels() {
#if defined(__x86_64__)
  if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma")) {
    return FrontKernels{wide::eliminate, wide::solve_forward, wide::solve_backward};
  }
#endif
  return std::nullopt;
}

bool eliminate(const DenseFront& front, std::vector<double>& scratch) { return best().eliminate(front, scratch); }

void solve_forward(const EliminatedColumns& front, std::span<double> z) { best().solve_forward(front, z.data()); }

void solve_backward(const EliminatedColumns& front, std::span<double> z) { best().solve_backward(front, z.data()); }

}  // namespace tailblock

#pragma once

#include <cstdint>

namespace tailblock {

/// The mixing step of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014; constants from memory): a number that looks drawn,
/// for every number put in.
[[nodiscard]] constexpr std::uint64_t mixed(std::uint64_t z) {
  z += 0x9e3779b97f4a7c15U;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
  return z ^ (z >> 31);
}

/// 0 < unit < 1 from 53 bits.
[[nodiscard]] constexpr double unit_of(std::uint64_t bits) { return (static_cast<double>(bits >> 11) + 0.5) * 0x1p-53; }

/// Numbers drawn from a seed, the same on every machine.
class Seeded {
 public:
  explicit Seeded(std::uint64_t seed) : state_(mixed(seed)) {}
  [[nodiscard]] std::uint64_t bits() {
    state_ += 0x9e3779b97f4a7c15U;
    return mixed(state_);
  }
  [[nodiscard]] double unit() { return unit_of(bits()); }
  /// 0 .. count - 1.
  [[nodiscard]] int below(int count) {
    return static_cast<int>(((bits() >> 32) * static_cast<std::uint64_t>(count)) >> 32);
  }

 private:
  std::uint64_t state_;
};

}  // namespace tailblock

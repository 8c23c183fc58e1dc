#include "strings/fretted_steps.h"

namespace tailblock {
namespace {

using Vector = Four::Vector;

// The bodies are inlined into two functions each, one compiled for wide registers, one for any processor.

/// Each height is read once and carried along the string in registers: reading is what would take the time.
[[gnu::always_inline]] inline void sweep(StepState& state) {
  const StringGrid& g = state.grid;
  const Four* __restrict now = state.now.from_stop();
  const Four* __restrict before = state.before.from_stop();
  Four* __restrict next = state.next.from_stop();
  Vector second_left = now[-1].of, left = now[0].of, here = now[1].of, right = now[2].of;
  const std::ptrdiff_t last = g.intervals - 1;
  for (std::ptrdiff_t block = 1; block <= last; block += StringRow::points_at_once) {
#pragma GCC unroll 4
    for (std::ptrdiff_t j = block; j < block + static_cast<std::ptrdiff_t>(StringRow::points_at_once); ++j) {
      const Vector second_right = now[j + 2].of;
      next[j].of = g.a0 * here - before[j].of + g.a1 * (left + right) + g.a2 * (second_left + second_right);
      second_left = left, left = here, here = right, right = second_right;
    }
  }
}

[[gnu::always_inline]] inline bool any_below_a_fret(const StepState& state) {
  const Four* next = state.next.from_stop();
  Vector deepest = {-1, -1, -1, -1};
  for (const FretCell& fret : state.frets) {
    const Vector below = -fret.gap.of - fret.left * next[fret.at].of - fret.right * next[fret.at + 1].of;
    deepest = below > deepest ? below : deepest;
  }
  const auto touching = deepest > 0;
  return (touching[0] | touching[1] | touching[2] | touching[3]) != 0;
}

[[gnu::always_inline]] inline bool free_step(StepState& state) {
  sweep(state);
  return any_below_a_fret(state);
}

/// A pinned string goes on upside down beyond its ends.
[[gnu::always_inline]] inline void pin_ends(Four* row, std::ptrdiff_t n) {
  row[-1].of = -row[1].of;
  row[0].of = row[n].of = Vector{};
  row[n + 1].of = -row[n - 1].of;
  for (std::ptrdiff_t beyond = 2; beyond <= 4; ++beyond) row[n + beyond].of = Vector{};
}

[[gnu::always_inline]] inline void finish_step(StepState& state) {
  Four* next = state.next.from_stop();
  const std::ptrdiff_t n = state.grid.intervals;
  pin_ends(next, n);
  const Vector force = state.bridge.near * next[n - 1].of + state.bridge.far * next[n - 2].of;
  Vector high = force;
  for (std::size_t i = 0; i < state.filter.size(); ++i) {
    const FilterStage& stage = state.filter[i];
    auto& [first, second] = state.filter_memory[i];
    const Vector in = high;
    high = stage.b0 * in + first.of;
    first.of = stage.b1 * in - stage.a1 * high + second.of;
    second.of = stage.b2 * in - stage.a2 * high;
  }
  state.bridge_force.of = force;
  if (!state.settled) return;
  state.bridge_energy.of += force * force;
  state.bridge_energy_high.of += high * high;
}

[[gnu::always_inline]] inline void smooth(Four* row, const StringGrid& g) {
  Vector left = row[0].of, here = row[1].of;
  for (std::ptrdiff_t j = 1; j < g.intervals; ++j) {
    const Vector right = row[j + 1].of;
    row[j].of = g.keep * here + g.spread * (left + right);
    left = here, here = right;
  }
  pin_ends(row, g.intervals);
}

[[gnu::always_inline]] inline void take_losses(StepState& state) {
  smooth(state.before.from_stop(), state.grid);
  smooth(state.now.from_stop(), state.grid);
}

bool free_step_plain(StepState& state) { return free_step(state); }
void finish_step_plain(StepState& state) { finish_step(state); }
void take_losses_plain(StepState& state) { take_losses(state); }

#if defined(__x86_64__)
[[gnu::target("avx2,fma")]] bool free_step_wide(StepState& state) { return free_step(state); }
[[gnu::target("avx2,fma")]] void finish_step_wide(StepState& state) { finish_step(state); }
[[gnu::target("avx2,fma")]] void take_losses_wide(StepState& state) { take_losses(state); }
#endif

}  // namespace

StepWork plain_step_work() { return {free_step_plain, finish_step_plain, take_losses_plain}; }

StepWork fastest_step_work() {
#if defined(__x86_64__)
  if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma"))
    return {free_step_wide, finish_step_wide, take_losses_wide};
#endif
  return plain_step_work();
}

}  // namespace tailblock

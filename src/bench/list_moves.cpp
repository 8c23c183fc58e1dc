#include "bench/list_moves.h"

#include <algorithm>

namespace tailblock {
namespace {

constexpr int most_passed = 3;
constexpr int block = 8;

using Jobs = std::vector<std::int16_t>;

auto at(Jobs& jobs, int i) { return jobs.begin() + i; }

void shift_one(Jobs& jobs, Seeded& dice) {
  const int size = static_cast<int>(jobs.size());
  const int from = dice.below(size), to = dice.below(size);
  if (from < to) {
    std::rotate(at(jobs, from), at(jobs, from + 1), at(jobs, to + 1));
  } else {
    std::rotate(at(jobs, to), at(jobs, from), at(jobs, from + 1));
  }
}

void exchange_two(Jobs& jobs, Seeded& dice) {
  const int size = static_cast<int>(jobs.size());
  const int from = dice.below(size), to = dice.below(size);
  std::iter_swap(at(jobs, from), at(jobs, to));
}

void spread_elsewhere(Jobs& jobs, Seeded& dice) {
  const std::int16_t job = *at(jobs, dice.below(static_cast<int>(jobs.size())));
  const auto mentions = static_cast<int>(std::erase(jobs, job));
  const int size = static_cast<int>(jobs.size());
  const int low = dice.below(size + 1);
  const int reach = 1 + dice.below(size - low + 1);
  for (int i = 0; i < mentions; ++i) jobs.insert(at(jobs, std::min(low + dice.below(reach), size)), job);
}

void shuffle_block(Jobs& jobs, Seeded& dice) {
  const int size = static_cast<int>(jobs.size());
  const int low = dice.below(size);
  const int high = std::min(size, low + block);
  for (int i = high - 1; i > low; --i) std::iter_swap(at(jobs, i), at(jobs, low + dice.below(i - low + 1)));
}

/// Gives each of two jobs the other's entries, in order, as far as they go.
void exchange_jobs(Jobs& jobs, Seeded& dice) {
  const int size = static_cast<int>(jobs.size());
  const std::int16_t one = *at(jobs, dice.below(size)), other = *at(jobs, dice.below(size));
  if (one == other) return;
  auto ones = std::ranges::count(jobs, one);
  auto others = std::ranges::count(jobs, other);
  for (std::int16_t& job : jobs) {
    if (job != one && job != other) continue;
    const bool want_other = job == one;
    const bool give_other = want_other ? others > 0 : ones == 0;
    job = give_other ? other : one;
    --(give_other ? others : ones);
  }
}

void pass_over(WorkList& list, Seeded& dice) {
  std::uint8_t& passed = list.passed[static_cast<std::size_t>(dice.below(static_cast<int>(list.passed.size())))];
  if (passed > 0 && dice.below(4) != 0) {
    passed = 0;
    return;
  }
  passed = 1;
  while (passed < most_passed && dice.below(2) == 0) ++passed;
}

}  // namespace

void change_list(WorkList& list, Seeded& dice) {
  switch (dice.below(13)) {
    case 0:
    case 1:
    case 2:
    case 3:
      return shift_one(list.jobs, dice);
    case 4:
    case 5:
      return exchange_two(list.jobs, dice);
    case 6:
    case 7:
      return spread_elsewhere(list.jobs, dice);
    case 8:
      return shuffle_block(list.jobs, dice);
    case 9:
    case 10:
      return exchange_jobs(list.jobs, dice);
    case 11:
      return pass_over(list, dice);
    default:
      pass_over(list, dice);
      return dice.below(2) == 0 ? shift_one(list.jobs, dice) : pass_over(list, dice);
  }
}

}  // namespace tailblock

#include "bench/work_calendar.h"

namespace tailblock {
namespace {

std::uint64_t ones(int count) { return count >= 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1; }

}  // namespace

int WorkCalendar::run_end(int bit, const BitWords* fit) const {
  auto i = static_cast<std::size_t>(bit >> 6);
  std::uint64_t off = ~(fit == nullptr ? free_[i] : free_[i] & (*fit)[i]) & (~std::uint64_t{0} << (bit & 63));
  while (off == 0) {
    ++i;
    off = ~(fit == nullptr ? free_[i] : free_[i] & (*fit)[i]);
  }
  return static_cast<int>(i << 6) + std::countr_zero(off);
}

void WorkCalendar::flip(int bit, int length) {
  auto i = static_cast<std::size_t>(bit >> 6);
  int place = bit & 63;
  while (length > 0) {
    const int here = std::min(length, 64 - place);
    const std::uint64_t mask = ones(here) << place;
    free_[i] ^= mask;
    taken_[i] ^= mask;
    length -= here;
    place = 0;
    ++i;
  }
}

int WorkCalendar::neighbours(const DayFrame& frame, int bit, int length, int instrument) const {
  const int day = frame.first_bit_of_day(bit);
  const int day_end = day + 64 * frame.words_a_day();
  int before = none, after = none;
  if (bit > day) {
    for (int i = (bit - 1) >> 6; i >= day >> 6; --i) {
      std::uint64_t word = taken_[static_cast<std::size_t>(i)];
      if (i == bit >> 6) word &= ones(bit & 63);
      if (word == 0) continue;
      before = owner_[static_cast<std::size_t>(i * 64 + 63 - std::countl_zero(word))];
      break;
    }
  }
  const int next = bit + length;
  for (int i = next >> 6; i < day_end >> 6; ++i) {
    std::uint64_t word = taken_[static_cast<std::size_t>(i)];
    if (i == next >> 6) word &= ~std::uint64_t{0} << (next & 63);
    if (word == 0) continue;
    after = owner_[static_cast<std::size_t>(i * 64 + std::countr_zero(word))];
    break;
  }
  int changes = 0;
  if (before != none && before != instrument) ++changes;
  if (after != none && after != instrument) ++changes;
  if (before != none && after != none && before != after) --changes;
  return changes;
}

int WorkCalendar::take(const DayFrame& frame, int bit, int length, int instrument) {
  const int changes = neighbours(frame, bit, length, instrument);
  flip(bit, length);
  owner_[static_cast<std::size_t>(bit)] = static_cast<std::int16_t>(instrument);
  owner_[static_cast<std::size_t>(bit + length - 1)] = static_cast<std::int16_t>(instrument);
  return changes;
}

void WorkCalendar::add_free_words(const BitWords& words) {
  free_.insert(free_.end(), words.begin(), words.end());
  taken_.resize(free_.size());
  owner_.resize(free_.size() * 64);
}

}  // namespace tailblock

#include "bench/work_calendar.h"

namespace tailblock {
namespace {

std::uint64_t ones(int count) { return count >= 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1; }

}  // namespace

/// First run from `from` to the end of its day; `longest` becomes the longest seen before it.
template <class WordAt>
int WorkCalendar::run(int from, int length, WordAt word_at, int& longest) const {
  auto i = static_cast<std::size_t>(from >> 6);
  const std::size_t end = static_cast<std::size_t>(day_of_bit(from) + 1) << log_words_;
  std::uint64_t word = word_at(i) & (~std::uint64_t{0} << (from & 63));
  while (true) {
    while (word == 0) {
      if (++i >= end) return none;
      word = word_at(i);
    }
    const int start = static_cast<int>(i << 6) + std::countr_zero(word);
    std::uint64_t off = ~word & (~std::uint64_t{0} << (start & 63));
    while (off == 0) {  // the last bit of a day is off
      word = word_at(++i);
      off = ~word;
    }
    const int stop = static_cast<int>(i << 6) + std::countr_zero(off);
    if (stop - start >= length) return start;
    longest = std::max(longest, stop - start);
    word &= ~std::uint64_t{0} << (stop & 63);
  }
}

int WorkCalendar::first_run(int from, int length, const BitWords* fit) const {
  const int days = static_cast<int>(longest_.size());
  int bit = from;
  for (int day = day_of_bit(from); day < days; bit = ++day << (6 + log_words_)) {
    const auto d = static_cast<std::size_t>(day);
    if (longest_[d] < length) continue;
    int longest = 0;
    const int found = fit == nullptr
                          ? run(
                                bit, length, [this](std::size_t i) { return free_[i]; }, longest)
                          : run(
                                bit, length, [this, fit](std::size_t i) { return free_[i] & (*fit)[i]; }, longest);
    if (found != none) return found;
    if (fit == nullptr && bit != from) longest_[d] = static_cast<std::uint16_t>(longest);
  }
  return none;
}

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

void WorkCalendar::give_back(const DayFrame& frame, int bit, int length) {
  flip(bit, length);
  longest_[static_cast<std::size_t>(frame.first_bit_of_day(bit) >> (6 + log_words_))] = not_known;
}

void WorkCalendar::add_free_words(const DayFrame& frame, const BitWords& words) {
  log_words_ = frame.log_words_a_day();
  free_.insert(free_.end(), words.begin(), words.end());
  taken_.resize(free_.size());
  owner_.resize(free_.size() * 64);
  longest_.resize(free_.size() >> log_words_, not_known);
}

}  // namespace tailblock

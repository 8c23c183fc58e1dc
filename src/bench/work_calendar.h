#pragma once

#include <bit>
#include <cstdint>
#include <vector>

#include "bench/shop_clock.h"

namespace tailblock {

/// How slots of the wall clock are laid into bits: each day's opening window fills the first bits of a whole number of
/// words, a power of two, and the rest stay off for ever, so that no run of bits crosses a night.
class DayFrame {
 public:
  DayFrame() = default;
  DayFrame(Slot opens, Slot closes) : opens_(opens), width_(closes - opens) {
    while ((64 << log_words_) <= width_) ++log_words_;
  }
  [[nodiscard]] int words_a_day() const { return 1 << log_words_; }
  /// The first bit at or after the slot.
  [[nodiscard]] int bit(Slot slot) const {
    const int day = slot / slots_a_day;
    const int within = slot - day * slots_a_day - opens_;
    if (within <= 0) return day << (6 + log_words_);
    return within < width_ ? (day << (6 + log_words_)) + within : (day + 1) << (6 + log_words_);
  }
  [[nodiscard]] Slot slot(int bit) const {
    const int day = bit >> (6 + log_words_);
    return day * slots_a_day + opens_ + bit - (day << (6 + log_words_));
  }
  [[nodiscard]] int log_words_a_day() const { return log_words_; }
  [[nodiscard]] int first_bit_of_day(int bit) const { return bit & ~((64 << log_words_) - 1); }

 private:
  Slot opens_ = 0;
  int width_ = 1;
  int log_words_ = 0;
};

/// Bits over shop time, one a slot.
using BitWords = std::vector<std::uint64_t>;

/// One person's time: which slots are free, which are taken and by which instrument. Or, with nothing taken, when the
/// air is fit for one sort of work.
class WorkCalendar {
 public:
  static constexpr int none = -1;

  /// First of `length` free bits at or after `from`, all of them set in `fit` too when given; none when the calendar is
  /// too short.
  [[nodiscard]] int first_run(int from, int length, const BitWords* fit) const;
  /// The first bit after `bit` that is not free for this work.
  [[nodiscard]] int run_end(int bit, const BitWords* fit) const;

  /// Takes a run and returns by how much the changes of instrument within the day rise.
  int take(const DayFrame& frame, int bit, int length, int instrument);
  void give_back(const DayFrame& frame, int bit, int length);

  void add_free_words(const DayFrame& frame, const BitWords& words);

 private:
  template <class WordAt>
  [[nodiscard]] int run(int from, int length, WordAt word_at, int& longest) const;
  [[nodiscard]] int day_of_bit(int bit) const { return bit >> (6 + log_words_); }
  [[nodiscard]] int neighbours(const DayFrame& frame, int bit, int length, int instrument) const;
  void flip(int bit, int length);

  static constexpr std::uint16_t not_known = 0xffff;

  BitWords free_, taken_;
  int log_words_ = 0;                           ///< of a day's words
  mutable std::vector<std::uint16_t> longest_;  ///< no free run of the day is longer: spares looking through full days
  std::vector<std::int16_t> owner_;             ///< right at the first and last slot of each piece of work
};

}  // namespace tailblock

#include "setup/words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "season/words.h"

namespace tailblock {

std::string mm_in_words(double millimetres) { return decimals(millimetres, 2) + " mm"; }

std::string moved_in_words(const RodFigure& rod, double relief_mm) {
  constexpr double ninety_percent = 1.645;
  const double size = std::abs(relief_mm);
  return mm_in_words(size * rod.action12_per_relief) + " (" +
         decimals(size * std::max(0.0, rod.action12_per_relief - ninety_percent * rod.sd), 2) + " to " +
         decimals(size * (rod.action12_per_relief + ninety_percent * rod.sd), 2) + ")";
}

std::string day_of_year_in_words(Date date) {
  constexpr std::array<std::string_view, 12> months{"January",   "February", "March",    "April",
                                                    "May",       "June",     "July",     "August",
                                                    "September", "October",  "November", "December"};
  const std::chrono::year_month_day day(date);
  return std::to_string(static_cast<unsigned>(day.day())) + " " +
         std::string(months[static_cast<unsigned>(day.month()) - 1]);
}

std::string percent_in_words(double fraction) { return decimals(fraction * 100, 0) + " %"; }

namespace {

std::string change_of_end(double raise_mm) {
  if (raise_mm == 0) return "as it is";
  return mm_in_words(std::abs(raise_mm)) + (raise_mm > 0 ? " taller" : " lower");
}

}  // namespace

std::string both_ends_in_words(double bass_mm, double treble_mm) {
  if (mm_in_words(bass_mm) == mm_in_words(treble_mm)) return mm_in_words(bass_mm);
  return mm_in_words(bass_mm) + " at the bass and " + mm_in_words(treble_mm) + " at the treble";
}

std::string change_in_words(const SaddleToMake& saddle) {
  const std::string bass = change_of_end(in_mm(saddle.raise_bass));
  const std::string treble = change_of_end(in_mm(saddle.raise_treble));
  return bass == treble ? bass : bass + " at the bass and " + treble + " at the treble";
}

std::string days_in_words(const Estimate& days) {
  const std::string median = decimals(days.median, 0);
  return median + (median == "1" ? " day (" : " days (") + decimals(days.low, 0) + " to " + decimals(days.high, 0) +
         ")";
}

}  // namespace tailblock

#pragma once

#include <string>

#include "setup/saddle.h"

namespace tailblock {

/// `0.65 mm`.
[[nodiscard]] std::string mm_in_words(double millimetres);
/// `0.24 mm (0.15 to 0.34)`: how far fret 12 moves with this much relief, and the range that holds it with 90 %.
[[nodiscard]] std::string moved_in_words(const RodFigure& rod, double relief_mm);
/// `24 October`.
[[nodiscard]] std::string day_of_year_in_words(Date date);
/// `45 %`, of a fraction.
[[nodiscard]] std::string percent_in_words(double fraction);
/// `0.65 mm at the bass and 0.50 mm at the treble`, or `0.65 mm` when both are the same.
[[nodiscard]] std::string both_ends_in_words(double bass_mm, double treble_mm);
/// `0.65 mm taller at the bass and 0.10 mm lower at the treble`, `0.30 mm lower`, `as it is`.
[[nodiscard]] std::string change_in_words(const SaddleToMake& saddle);
/// `12 days (3 to 40)`: the median and the range that holds it with 90 % probability.
[[nodiscard]] std::string days_in_words(const Estimate& days);

}  // namespace tailblock

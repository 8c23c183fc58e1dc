#pragma once

#include "quantity/quantity.h"

namespace tailblock {

/// A length, held in metres.
using Length = Quantity<struct LengthKind>;

/// 1 in = 25.4 mm exactly, by definition of the inch; everything below follows from it without rounding.
inline constexpr double mm_per_inch = 25.4;

constexpr Length mm(double value) { return Length::from_base(value / 1000); }
constexpr Length inches(double value) { return mm(value * mm_per_inch); }
constexpr Length sixty_fourths(double value) { return inches(value / 64); }
constexpr Length thousandths(double value) { return inches(value / 1000); }

constexpr double in_mm(Length length) { return length.in_base() * 1000; }
constexpr double in_inches(Length length) { return in_mm(length) / mm_per_inch; }
constexpr double in_sixty_fourths(Length length) { return in_inches(length) * 64; }
constexpr double in_thousandths(Length length) { return in_inches(length) * 1000; }

}  // namespace tailblock

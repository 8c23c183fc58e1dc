#pragma once

#include <string>
#include <string_view>

#include "quantity/length.h"

namespace tailblock {

/// The unit that a field on a page shows, which a bare number typed into it takes.
enum class DefaultUnit { millimetres, sixty_fourths, thousandths, inches };

/// Reads a length as the trade writes it, whatever the locale.
///
///     5/64   5/64"   5/64 in   1 3/32   1-3/32   1½"   .078   .078"   0.078 in   78 thou   5 64ths   2 mm   2,0 mm 41
///     cm 5/64 + .003   5/64 - 2 thou   -0.5 mm
///
/// - A fraction without a unit is of an inch, its denominator 2, 4 .. 128.
/// - A number that starts with its point (`.078`) and has no unit is in inches: that is how thousandths are written.
/// - Zero needs no unit. Any other number without a unit (`2`, `0.5`, `,078`) is refused, with what it could mean.
/// - Point and comma are both decimal marks; a comma never groups thousands.
/// - Between spaces `+` adds and `-` takes away; every part says its own unit. A hyphen without spaces joins a whole
///   number to its fraction.
/// - Phones' characters are taken for what they stand for: ″ ” '' for ", ⁄ for /, ½ ⅛ ⁵⁄₆₄, ㎜, − and – for -, and the
///   spaces that do not break. `mil` is refused, since it is a thousandth to some and a millimetre to others.
/// @throws Refused naming `field` and the reason, in one line.
[[nodiscard]] Length length_from_text(std::string_view field, std::string_view text);

/// The same for a field that shows its unit: a bare number takes that unit, save that `.078` stays inches unless the
/// field is in millimetres. A half, quarter or eighth without a unit (`1/2`, `5 1/4`) is refused unless the field is in
/// inches, since it could be one of the field's units.
[[nodiscard]] Length length_from_text(std::string_view field, std::string_view text, DefaultUnit bare);

/// One length in the trade's notations, each rounded once from the length itself, each readable by `length_from_text`.
struct TradeLength {
  std::string sixty_fourths;   ///< nearest 64th and the thousandths left over: `5/64 + .003`, `1 9/64 - .002`
  std::string fraction;        ///< nearest 64th in lowest terms: `3/32`, `1 1/8`, `1 in`
  std::string thirty_seconds;  ///< nearest 32nd: `2/32`
  std::string thousandths;     ///< `.081`, `1.081 in`
  std::string inches;          ///< to a tenth of a thousandth: `0.0811 in`
  std::string millimetres;     ///< to a hundredth: `2.06 mm`
};

/// @throws Refused when the length is not a number between -100 and 100 m.
[[nodiscard]] TradeLength as_trade(Length length);

}  // namespace tailblock

#pragma once

#include <string>

#include "paper/picture.h"

namespace tailblock {

/// A square code that a telephone's camera reads (QR code, ISO/IEC 18004, error correction level M: up to 15 % of it
/// may be hidden), with its quiet border of four modules. The text is coded as its UTF-8 bytes.
/// @throws Refused when the text is empty or longer than 600 bytes: longer codes are too fine for a worn ticket.
[[nodiscard]] Picture scan_code(const std::string& text, double wide_mm);

}  // namespace tailblock

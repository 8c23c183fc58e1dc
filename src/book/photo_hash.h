#pragma once

#include <string>
#include <string_view>

namespace tailblock {

/// SHA-256 of the bytes, as 64 lower-case hexadecimal digits (FIPS 180-4).
[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace tailblock

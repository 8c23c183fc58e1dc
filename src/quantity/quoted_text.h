#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace tailblock {

/// What someone typed, in double quotes and fit for a one-line message: valid UTF-8, no control characters (each bad
/// byte becomes `?`), cut at a character with `...` after about `most_bytes`.
[[nodiscard]] std::string quoted_text(std::string_view text, std::size_t most_bytes = 40);

}  // namespace tailblock

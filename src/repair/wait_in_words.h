#pragma once

#include <string>

namespace tailblock {

/// Minutes as a person says a wait: `45 min`, `12 h`, `7 days`; whole hours from two hours on, whole days from two days
/// on.
[[nodiscard]] std::string wait_in_words(double minutes);

}  // namespace tailblock

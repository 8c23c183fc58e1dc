#pragma once

#include <string>
#include <vector>

namespace tailblock {

/// Says in a PDF what the drawing library cannot: its language, that its title stands in the window's head, and the
/// words of each picture, in their order. Adds no date and no random number: the same PDF becomes the same bytes.
/// @throws std::runtime_error when `pdf` is not one.
[[nodiscard]] std::string finish_pdf(const std::string& pdf, const std::string& language,
                                     const std::vector<std::string>& pictures);

}  // namespace tailblock

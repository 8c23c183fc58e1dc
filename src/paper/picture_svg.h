#pragma once

#include <string>

#include "paper/picture.h"

namespace tailblock {

/// A picture as an element of a page, with the words of what it shows.
/// @throws Refused as require_drawable does.
[[nodiscard]] std::string svg(const Picture& picture);

}  // namespace tailblock

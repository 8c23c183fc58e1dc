#pragma once

#include <functional>
#include <string_view>

#include "paper/document.h"

namespace tailblock {

/// Calls `use` with every text of the document and the name of what it is in.
void each_text(const Document& document, const std::function<void(std::string_view place, const std::string&)>& use);

/// @throws Refused naming `place` and the byte when the text is not UTF-8, or has a control character other than a tab
/// or the end of a line.
void require_text(std::string_view place, const std::string& text);

/// @throws Refused when a text is not UTF-8, or has a control character other than a tab or the end of a line; when a
/// table's row has more or fewer cells than its columns; when a picture cannot be drawn.
void require_writable(const Document& document);

}  // namespace tailblock

#pragma once

#include <string>

#include "paper/document.h"

namespace tailblock {

/// The same document as one page for a browser, complete in itself: no script, nothing fetched. It prints as the sheets
/// of document_pdf.h do, in the browser's own way of breaking pages.
/// @throws Refused as document_pdf does.
[[nodiscard]] std::string document_html(const Document& document);

/// `&` `<` `>` `"` and `'` written so that they stay text.
[[nodiscard]] std::string html_text(const std::string& text);

}  // namespace tailblock

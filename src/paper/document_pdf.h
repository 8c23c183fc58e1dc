#pragma once

#include <string>

#include "paper/document.h"

namespace tailblock {

enum class PaperSize { a4, letter };

/// The document on sheets of paper: the letterhead on the first, its short form on the others, and on each its number
/// and how many there are. Tables say their head again on every page; headings stay with what they head; no paragraph
/// leaves one line alone. The PDF names its title, shop, language and day, is tagged for reading aloud, embeds the
/// parts of the fonts that it uses, and is the same bytes for the same document and fonts.
/// @throws Refused when a picture cannot be drawn or a text is not text. std::runtime_error when a library fails.
[[nodiscard]] std::string document_pdf(const Document& document, PaperSize size);

/// The characters for which no font of this computer has a shape: each is printed as a box with its number in. Empty
/// when everything can be printed. A browser page brings its own fonts and does not need this.
[[nodiscard]] std::string characters_without_font(const Document& document);

}  // namespace tailblock

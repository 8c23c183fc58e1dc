#pragma once

#include <string>
#include <vector>

#include "paper/document.h"

namespace tailblock {

/// What every paper of the shop says at its head and foot.
struct PaperHead {
  Letterhead shop;
  Date day;               ///< of the paper; no clock is asked
  std::string reference;  ///< the shop's own number: `2026-014`
  std::string language = "en-GB";
};
void describe(FieldVisitor&, PaperHead&);

/// An empty document with this head.
[[nodiscard]] Document document_of(const PaperHead& head, const std::string& title, const std::string& subtitle,
                                   const std::string& reference);

/// A fact, when there is one.
void add_fact(Facts& facts, const std::string& name, const std::string& value);

/// @throws Refused when a text that must say something is empty: `owner: is empty`.
void require_said(std::string_view field, const std::string& text);

/// A cell of one run of words.
[[nodiscard]] TableCell cell_of(const std::string& text, Voice voice = Voice::plain);

}  // namespace tailblock

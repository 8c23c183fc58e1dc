#include "quantity/quoted_text.h"

namespace tailblock {
namespace {

unsigned byte_at(std::string_view text, std::size_t i) {
  return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
}

bool continues(std::string_view text, std::size_t from, std::size_t count) {
  for (std::size_t i = from; i < from + count; ++i) {
    if ((byte_at(text, i) & 0xC0U) != 0x80U) return false;
  }
  return true;
}

/// Bytes of the well-formed printable character at `at` (Unicode table 3-7); 0 when there is none.
std::size_t printable_bytes(std::string_view text, std::size_t at) {
  const unsigned lead = byte_at(text, at);
  const unsigned second = byte_at(text, at + 1);
  if (lead < 0x80) return lead >= 0x20 && lead != 0x7F ? 1 : 0;
  if (lead < 0xC2 || lead > 0xF4) return 0;
  if (lead == 0xC2 && second < 0xA0) return 0;  // C1 control characters
  if (lead < 0xE0) return continues(text, at + 1, 1) ? 2 : 0;
  if (lead < 0xF0) {
    if (lead == 0xE0 && second < 0xA0) return 0;
    if (lead == 0xED && second > 0x9F) return 0;
    return continues(text, at + 1, 2) ? 3 : 0;
  }
  if (lead == 0xF0 && second < 0x90) return 0;
  if (lead == 0xF4 && second > 0x8F) return 0;
  return continues(text, at + 1, 3) ? 4 : 0;
}

}  // namespace

std::string quoted_text(std::string_view text, std::size_t most_bytes) {
  std::string quoted = "\"";
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t bytes = printable_bytes(text, at);
    if (quoted.size() + bytes > most_bytes + 1) {
      quoted += "...";
      break;
    }
    quoted += bytes > 0 ? text.substr(at, bytes) : std::string_view("?");
    at += bytes > 0 ? bytes : 1;
  }
  return quoted + "\"";
}

}  // namespace tailblock

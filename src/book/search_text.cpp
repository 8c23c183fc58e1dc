#include "book/search_text.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include "quantity/refused.h"

namespace tailblock {
namespace {

constexpr char32_t not_utf8 = 0xFFFD;
constexpr std::size_t longest_search_bytes = 200;

/// Takes one character off the front of UTF-8 text; a byte that begins none is `not_utf8`.
char32_t take_character(std::string_view& text) {
  const auto byte = [&](std::size_t at) { return static_cast<std::uint8_t>(text[at]); };
  const std::uint8_t lead = byte(0);
  const std::size_t length = lead < 0x80 ? 1 : lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : lead >= 0xC0 ? 2 : 1;
  if (length == 1 || length > text.size()) {
    text.remove_prefix(1);
    return lead < 0x80 ? lead : not_utf8;
  }
  char32_t character = lead & (0xFFU >> (length + 1));
  for (std::size_t at = 1; at < length; ++at) character = (character << 6) | (byte(at) & 0x3FU);
  text.remove_prefix(length);
  return character;
}

void append_utf8(std::string& text, char32_t character) {
  const auto tail = [&](int shift) { text += static_cast<char>(0x80U | ((character >> shift) & 0x3FU)); };
  if (character < 0x80) {
    text += static_cast<char>(character);
  } else if (character < 0x800) {
    text += static_cast<char>(0xC0U | (character >> 6));
    tail(0);
  } else if (character < 0x10000) {
    text += static_cast<char>(0xE0U | (character >> 12));
    tail(6), tail(0);
  } else {
    text += static_cast<char>(0xF0U | ((character >> 18) & 0x07U));
    tail(12), tail(6), tail(0);
  }
}

/// What the Latin letters U+00C0..U+017F are without their accents, in the order of Unicode's two blocks; a blank
/// stands for what is no letter.
constexpr std::array<std::string_view, 192> latin_without_accents{
    // U+00C0 Latin-1 Supplement
    "a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i", "i",   //
    "d", "n", "o", "o", "o", "o", "o", " ", "o", "u", "u", "u", "u", "y", "th", "ss",  //
    "a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i", "i",   //
    "d", "n", "o", "o", "o", "o", "o", " ", "o", "u", "u", "u", "u", "y", "th", "y",   //
    // U+0100 Latin Extended-A
    "a", "a", "a", "a", "a", "a", "c", "c", "c", "c", "c", "c", "c", "c", "d", "d",    //
    "d", "d", "e", "e", "e", "e", "e", "e", "e", "e", "e", "e", "g", "g", "g", "g",    //
    "g", "g", "g", "g", "h", "h", "h", "h", "i", "i", "i", "i", "i", "i", "i", "i",    //
    "i", "i", "ij", "ij", "j", "j", "k", "k", "k", "l", "l", "l", "l", "l", "l", "l",  //
    "l", "l", "l", "n", "n", "n", "n", "n", "n", "n", "n", "n", "o", "o", "o", "o",    //
    "o", "o", "oe", "oe", "r", "r", "r", "r", "r", "r", "s", "s", "s", "s", "s", "s",  //
    "s", "s", "t", "t", "t", "t", "t", "t", "u", "u", "u", "u", "u", "u", "u", "u",    //
    "u", "u", "u", "u", "w", "w", "y", "y", "y", "z", "z", "z", "z", "z", "z", "s"};

constexpr bool is_accent(char32_t character) { return 0x300 <= character && character <= 0x36F; }

/// Capital Greek and Cyrillic letters lie a fixed way before their small ones.
char32_t small_letter(char32_t character) {
  const bool greek = 0x391 <= character && character <= 0x3A9;
  const bool cyrillic = 0x410 <= character && character <= 0x42F;
  if (greek || cyrillic) return character + 0x20;
  return 0x400 <= character && character <= 0x40F ? character + 0x50 : character;
}

/// The character as it is searched; a blank parts words.
void append_searched(std::string& text, char32_t character) {
  if (character < 0x80) {
    const char ascii = static_cast<char>(character);
    const bool capital = 'A' <= ascii && ascii <= 'Z';
    const bool kept = ('a' <= ascii && ascii <= 'z') || ('0' <= ascii && ascii <= '9');
    text += capital ? static_cast<char>(ascii + ('a' - 'A')) : kept ? ascii : ' ';
  } else if (character < 0xC0 || character == not_utf8 || (0x2000 <= character && character <= 0x206F)) {
    text += ' ';
  } else if (character < 0x180) {
    text += latin_without_accents[character - 0xC0];
  } else if (!is_accent(character)) {
    append_utf8(text, small_letter(character));
  }
}

/// None for a word of one letter, which any beginning with it may answer.
std::uint64_t beginning(std::string_view word) {
  if (word.size() < 2 || word[1] == ' ' || word[1] == '\n') return 0;
  const auto letter = [&](std::size_t at) { return static_cast<std::uint8_t>(word[at]); };
  return std::uint64_t{1} << ((letter(0) * 29U + letter(1)) % 64U);
}

}  // namespace

std::vector<std::string> search_words(std::string_view text) {
  std::string searched;
  while (!text.empty()) append_searched(searched, take_character(text));
  std::vector<std::string> words;
  for (std::size_t at = 0; at < searched.size();) {
    const std::size_t end = std::min(searched.find(' ', at), searched.size());
    if (end > at) words.push_back(searched.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

std::string search_text(std::initializer_list<std::string_view> fields) {
  std::string text;
  for (std::string_view field : fields) {
    text += ' ';
    while (!field.empty()) {
      const std::size_t before = text.size();
      append_searched(text, take_character(field));
      const bool second_blank = text.size() > before && text[before] == ' ' && text[before - 1] == ' ';
      if (second_blank) text.pop_back();
    }
    if (text.back() == ' ') text.pop_back();
    text += '\n';
  }
  return text;
}

std::uint64_t beginnings(std::string_view text) {
  std::uint64_t marks = 0;
  for (std::size_t at = 0; at + 2 < text.size(); ++at) {
    if (text[at] == ' ') marks |= beginning(text.substr(at + 1));
  }
  return marks;
}

std::uint64_t beginnings(const std::vector<std::string>& words) {
  std::uint64_t marks = 0;
  for (const std::string& word : words) marks |= beginning(word);
  return marks;
}

bool has_words(std::string_view text, const std::vector<std::string>& words) {
  return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
      if (at > 0 && text[at - 1] == ' ') return true;
    }
    return false;
  });
}

Wanted::Wanted(std::string_view search) : words_(search_words(search)), marks_(beginnings(words_)) {
  if (search.size() > longest_search_bytes) {
    throw Refused("search: " + std::to_string(search.size()) + " bytes is more than " +
                  std::to_string(longest_search_bytes));
  }
}

}  // namespace tailblock

#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

/// The words of a text as they are searched: small letters without accents (`Müller-Straße` is `muller` and `strasse`),
/// split at everything that is neither letter nor digit. Latin letters lose their accents; Greek and Cyrillic ones only
/// their case; others stay as they are.
[[nodiscard]] std::vector<std::string> search_words(std::string_view text);

/// Some fields as they are searched: a blank before each word, a line's end after each field. Ordered as text they are
/// ordered by the first field, and among equals by the next.
[[nodiscard]] std::string search_text(std::initializer_list<std::string_view> fields);

/// A mark for each way a word of `text`, a search_text, begins: its first two letters, told apart as far as 64 marks
/// go.
[[nodiscard]] std::uint64_t beginnings(std::string_view text);
[[nodiscard]] std::uint64_t beginnings(const std::vector<std::string>& words);

/// Whether each of `words` begins some word of `text`, a search_text.
[[nodiscard]] bool has_words(std::string_view text, const std::vector<std::string>& words);

/// What a record is searched by.
struct Searched {
  explicit Searched(std::initializer_list<std::string_view> fields)
      : text(search_text(fields)), marks(beginnings(text)) {}
  std::string text;
  std::uint64_t marks;
};

/// Words looked for; each must begin a word of what is searched. A text that lacks a beginning is ruled out by its
/// marks alone, and most are.
class Wanted {
 public:
  /// @throws Refused for more than 200 bytes.
  explicit Wanted(std::string_view search);
  [[nodiscard]] bool is_in(const Searched& searched) const {
    return (searched.marks & marks_) == marks_ && has_words(searched.text, words_);
  }

 private:
  std::vector<std::string> words_;
  std::uint64_t marks_;
};

}  // namespace tailblock

#pragma once

#include <string>

#include "book/records.h"

namespace tailblock {

/// What the describe() of the book's records share.

inline constexpr Need free_to_leave_out = Need::has_default;
inline constexpr Range record_numbers{0, 2147483647, ""};
inline constexpr std::size_t name_bytes = 200;    // one line
inline constexpr std::size_t id_bytes = 64;       // a name in one of the tables of data/
inline constexpr std::size_t note_bytes = 20000;  // some ten written pages
inline constexpr Count any_count{0, 100000};

inline void record_id(FieldVisitor& visit, RecordId& id) {
  visit.integer({"id", "number in the book; 0: not kept yet", free_to_leave_out}, id, record_numbers);
}

inline void note(FieldVisitor& visit, std::string& text) {
  visit.text({"note", "anything else", free_to_leave_out}, text, note_bytes);
}

}  // namespace tailblock

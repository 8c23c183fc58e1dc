#pragma once

#include <string>

namespace tailblock {

/// Turns SQLite's extended result code and its message into what the person is told.
/// @throws Refused when the book's own rules refused the input, StorageFault for everything else.
[[noreturn]] void throw_storage_fault(int extended_code, const std::string& message);

}  // namespace tailblock

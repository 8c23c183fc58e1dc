// Fuzz target: any bytes are read as an amount of money and come back as they were, or are refused in one line.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "quantity/refused.h"
#include "repair/money.h"

using namespace tailblock;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  if (count == 0) return 0;
  const int digits = bytes[0] % 5;
  const std::string_view text(reinterpret_cast<const char*>(bytes) + 1, count - 1);
  try {
    const ExactDecimal amount = exact_decimal("amount", text, digits);
    const ExactDecimal again = exact_decimal("amount", as_text(amount), digits);
    if (again.units != amount.units || amount.digits != digits) std::abort();
  } catch (const Refused& refused) {
    if (std::string_view(refused.what()).find('\n') != std::string_view::npos) std::abort();
  }
  return 0;
}

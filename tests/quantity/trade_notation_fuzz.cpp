// Fuzz target: any bytes are read as a length, or refused in one printable line.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "quantity/refused.h"
#include "quantity/trade_notation.h"

using namespace tailblock;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  if (count == 0) return 0;
  const auto unit = static_cast<DefaultUnit>(bytes[0] % 4);
  const std::string_view text(reinterpret_cast<const char*>(bytes) + 1, count - 1);
  try {
    const Length length = bytes[0] < 128 ? length_from_text("length", text) : length_from_text("length", text, unit);
    if (!std::isfinite(in_mm(length))) std::abort();
    if (std::abs(in_mm(length)) < 1e5) (void)length_from_text("length", as_trade(length).sixty_fourths);
  } catch (const Refused& refused) {
    if (std::string_view(refused.what()).find('\n') != std::string_view::npos) std::abort();
  }
  return 0;
}

#include "paper/scan_code.h"

#include <qrencode.h>

#include <memory>
#include <stdexcept>

namespace tailblock {

Picture scan_code(const std::string& text, double wide_mm) {
  constexpr std::size_t most_bytes = 600;
  if (text.empty()) throw Refused("code: is empty");
  if (text.size() > most_bytes) {
    throw Refused("code: " + std::to_string(text.size()) + " bytes is more than " + std::to_string(most_bytes));
  }
  const auto* bytes = reinterpret_cast<const unsigned char*>(text.data());
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeData(static_cast<int>(text.size()), bytes, 0, QR_ECLEVEL_M), &QRcode_free);
  if (code == nullptr) throw std::runtime_error("the code could not be made");
  constexpr int quiet = 4;
  const double module = wide_mm / (code->width + 2 * quiet);
  Shape dark{.kind = ShapeKind::blocks, .points_mm = {}};
  for (int row = 0; row < code->width; ++row) {
    const unsigned char* modules = code->data + static_cast<std::ptrdiff_t>(row) * code->width;
    for (int from = 0; from < code->width; ++from) {
      if ((modules[from] & 1U) == 0) continue;
      int to = from;
      while (to < code->width && (modules[to] & 1U) != 0) ++to;
      dark.points_mm.insert(dark.points_mm.end(), {module * (quiet + from), module * (quiet + row),
                                                   module * (quiet + to), module * (quiet + row + 1)});
      from = to;
    }
  }
  return {.width_mm = wide_mm, .height_mm = wide_mm, .shapes = {dark}, .says = "A code to scan that says: " + text};
}

}  // namespace tailblock

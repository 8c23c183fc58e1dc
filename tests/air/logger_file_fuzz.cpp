// Fuzz target: any bytes are read as a logger's file, or refused in one line; no impossible day comes out.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "air/logger_file.h"

using namespace tailblock;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  if (count == 0) return 0;
  LoggerFile file{.text = std::string(reinterpret_cast<const char*>(bytes) + 1, count - 1)};
  if ((bytes[0] & 1U) != 0) file.temperature_unit = TemperatureUnit::celsius;
  if ((bytes[0] & 2U) != 0) file.columns = {.time = 1, .temperature = 2, .humidity = 3};
  try {
    for (const LoggedDay& day : read_logger_file(file).days) {
      if (!(-40 <= day.temperature_c && day.temperature_c <= 60.0000001)) std::abort();
      if (!(0 <= day.relative_humidity && day.relative_humidity <= 1)) std::abort();
    }
  } catch (const Refused& refused) {
    if (std::string(refused.what()).find('\n') != std::string::npos) std::abort();
  }
  return 0;
}

#include "http/wave_file.h"

namespace tailblock {
namespace {

/// Least significant byte first.
void append_number(std::string& file, std::uint32_t value, int bytes) {
  for (int i = 0; i < bytes; ++i) file += static_cast<char>((value >> (8 * i)) & 0xff);
}

}  // namespace

std::string wave_file(std::span<const std::int16_t> samples, int samples_per_s) {
  constexpr std::uint32_t plain_samples = 1, channels = 1, bytes_per_sample = 2, format_bytes = 16;
  const auto rate = static_cast<std::uint32_t>(samples_per_s);
  const auto data_bytes = static_cast<std::uint32_t>(samples.size() * bytes_per_sample);
  std::string file = "RIFF";
  append_number(file, 4 + 8 + format_bytes + 8 + data_bytes, 4);
  file += "WAVEfmt ";
  append_number(file, format_bytes, 4);
  append_number(file, plain_samples, 2);
  append_number(file, channels, 2);
  append_number(file, rate, 4);
  append_number(file, rate * channels * bytes_per_sample, 4);
  append_number(file, channels * bytes_per_sample, 2);
  append_number(file, 8 * bytes_per_sample, 2);
  file += "data";
  append_number(file, data_bytes, 4);
  for (const std::int16_t sample : samples) append_number(file, static_cast<std::uint16_t>(sample), 2);
  return file;
}

}  // namespace tailblock

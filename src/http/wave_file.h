#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace tailblock {

/// A sound as a file of type audio/wav: one channel, 16 bits a sample.
/// Source: RIFF and the WAVE format, "Multimedia Programming Interface and Data Specifications 1.0" (from memory).
[[nodiscard]] std::string wave_file(std::span<const std::int16_t> samples, int samples_per_s);

}  // namespace tailblock

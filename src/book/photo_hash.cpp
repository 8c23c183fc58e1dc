#include "book/photo_hash.h"

#include <sodium.h>

#include <array>

namespace tailblock {

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
  crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  std::string digits;
  constexpr std::string_view hexadecimal = "0123456789abcdef";
  for (const unsigned char byte : hash) {
    digits += hexadecimal[byte >> 4U];
    digits += hexadecimal[byte & 15U];
  }
  return digits;
}

}  // namespace tailblock

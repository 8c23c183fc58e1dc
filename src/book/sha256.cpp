#include "book/sha256.h"

#include <sodium.h>

#include <array>

namespace tailblock {

struct RunningSha256::State {
  crypto_hash_sha256_state sodium{};
};

RunningSha256::RunningSha256() : state_(std::make_unique<State>()) { crypto_hash_sha256_init(&state_->sodium); }
RunningSha256::~RunningSha256() = default;

void RunningSha256::take(std::string_view bytes) {
  crypto_hash_sha256_update(&state_->sodium, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
}

std::string RunningSha256::digits() {
  std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
  crypto_hash_sha256_final(&state_->sodium, hash.data());
  std::array<char, 2 * crypto_hash_sha256_BYTES + 1> text{};
  sodium_bin2hex(text.data(), text.size(), hash.data(), hash.size());
  return text.data();
}

std::string sha256(std::string_view bytes) {
  RunningSha256 sum;
  sum.take(bytes);
  return sum.digits();
}

}  // namespace tailblock

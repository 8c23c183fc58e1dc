#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace tailblock {

/// SHA-256 (FIPS 180-4) of bytes that come piece by piece.
class RunningSha256 {
 public:
  RunningSha256();
  ~RunningSha256();
  RunningSha256(const RunningSha256&) = delete;
  RunningSha256& operator=(const RunningSha256&) = delete;
  void take(std::string_view bytes);
  /// Of everything taken, as 64 lower-case hexadecimal digits; nothing is taken after it.
  [[nodiscard]] std::string digits();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

/// Of bytes that are all there, in the same digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace tailblock

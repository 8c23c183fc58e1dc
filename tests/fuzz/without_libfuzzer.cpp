// Runs a fuzz target on invented inputs where there is no libFuzzer: the same inputs on every run, mostly of the signs
// that the trade's notations and files are made of, so that some of them get past the first refusal.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <random>
#include <string>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count);

namespace {

constexpr unsigned seed = 20;
#ifdef FUZZ_INPUTS  // of a target whose inputs are bytes to choose by, each of which takes long
constexpr int inputs = FUZZ_INPUTS;
constexpr bool any_bytes = true;
#else
constexpr int inputs = 20000;
constexpr bool any_bytes = false;
#endif
constexpr std::size_t longest = 200;
constexpr std::string_view signs =
    "0123456789012345678901234567890123456789//..,,--+  \t\n\r\";:'%{}[]_CFTZemnichoutsd";

std::string invented_input(std::mt19937& random) {
  std::uniform_int_distribution<std::size_t> length(0, longest);
  std::uniform_int_distribution<std::size_t> sign(0, signs.size() - 1);
  std::uniform_int_distribution<int> any_byte(0, 255);
  std::uniform_int_distribution<int> one_in_ten(0, 9);
  std::string input(length(random) % (1 + length(random)), ' ');
  for (char& c : input) {
    const bool any = any_bytes || one_in_ten(random) == 0;
    c = any ? static_cast<char>(any_byte(random)) : signs[sign(random)];
  }
  if (!input.empty()) input[0] = static_cast<char>(any_byte(random));  // targets take their options from the first byte
  return input;
}

}  // namespace

int main() {
  std::mt19937 random(seed);
  for (int i = 0; i < inputs; ++i) {
    const std::string input = invented_input(random);
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(input.data()), input.size());
  }
  std::printf("%d invented inputs, seed %u: none crashed\n", inputs, seed);
}

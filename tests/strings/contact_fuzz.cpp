// Fuzz target: any contact request gets finite figures, or is refused in one line. Each byte sets one field somewhere
// in its range or a little beyond; one request in sixty-four is run, the others are only checked.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "strings/contact.h"

using namespace tailblock;

namespace {

/// Values drawn from bytes, one each; zero when they have run out.
class Draw {
 public:
  Draw(const std::uint8_t* bytes, std::size_t count) : bytes_(bytes), count_(count) {}
  double between(double low, double high) {
    const int mixed = at_ < count_ ? bytes_[at_++] * 73 % 256 : 77;  // invented inputs are mostly digits: spread them
    return low + (mixed / 250.0 - 0.01) * (high - low);
  }

 private:
  const std::uint8_t* bytes_;
  std::size_t count_, at_ = 1;
};

ContactRequest drawn(Draw draw) {
  ContactRequest request;
  NeckLine& neck = request.neck;
  neck.string_count = 1;
  neck.scale_length = mm(draw.between(500, 700));
  neck.fret_count = static_cast<int>(draw.between(14, 24));
  neck.relief = mm(draw.between(-0.5, 1));
  neck.nut_over_fret1_bass = neck.nut_over_fret1_treble = mm(draw.between(0, 2));
  request.action.action12_bass = request.action.action12_treble = mm(draw.between(0.5, 6));
  GuitarString string{.pitch_hz = draw.between(40, 1000), .diameter = mm(draw.between(0.1, 3))};
  // Weighed so that it pulls within or a little beyond what is allowed.
  string.weighed_kg_per_metre = draw.between(5, 500) / std::pow(2 * neck.scale_length.in_base() * string.pitch_hz, 2);
  if (draw.between(0, 1) > 0.3) string.core_diameter = draw.between(0.2, 1) * *string.diameter;
  request.strings = {string};
  request.attack = {.amplitude_bass = mm(draw.between(0.05, 5)), .amplitude_treble = mm(1)};
  request.attack.pluck_from_saddle = mm(draw.between(20, 250));
  request.attack.pluck_width = mm(draw.between(0.5, 20));
  request.stopped_fret = static_cast<int>(draw.between(0, neck.fret_count - 1));
  request.direction = draw.between(0, 1) > 0.5 ? PluckDirection::away : PluckDirection::toward;
  request.seconds = 0.05;
  if (draw.between(0, 1) > 0.5) request.decay = DecayTimes{draw.between(0.2, 60), draw.between(0.1, 60)};
  return request;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  if (count == 0) return 0;
  const ContactRequest request = drawn(Draw(bytes, count));
  try {
    if (bytes[0] % 64 != 0) {
      require_valid(request);
      return 0;
    }
    const ContactResult result = contact(request, {.buzz_from_gain_db = 3, .buzz_from_energy_taken = 0.05});
    for (const double figure : {result.impulse_mns, result.gain_db, result.energy_taken, result.energy_balance}) {
      if (!std::isfinite(figure)) std::abort();
    }
    if (result.impulse_mns < 0 || result.energy_balance > 1e-6) std::abort();
  } catch (const Refused& refused) {
    if (std::string_view(refused.what()).find('\n') != std::string_view::npos) std::abort();
  }
  return 0;
}

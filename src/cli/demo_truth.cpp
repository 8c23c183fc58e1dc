#include "cli/demo_truth.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "wood/equilibrium.h"
#include "wood/following.h"

namespace tailblock {
namespace {

constexpr double driest = 0.05, dampest = 0.95;  // no room is drier or damper for a day
constexpr double temperature_sd_c = 0.6;         // of a day, in a room that is lived in

/// The seed of one name: FNV-1a, which every machine computes alike.
std::uint64_t seed_of(int seed, std::string_view name) {
  std::uint64_t hash = 14695981039346656037ULL ^ static_cast<std::uint64_t>(seed);
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  return hash;
}

}  // namespace

HeightsMoved& HeightsMoved::operator+=(const HeightsMoved& other) {
  action12_bass_mm += other.action12_bass_mm;
  action12_treble_mm += other.action12_treble_mm;
  saddle_bass_mm += other.saddle_bass_mm;
  saddle_treble_mm += other.saddle_treble_mm;
  relief_mm += other.relief_mm;
  sink_mm += other.sink_mm;
  return *this;
}

NamedChance::NamedChance(int seed, std::string_view name) : engine_(seed_of(seed, name)) {}

double NamedChance::normal() {
  // Box and Muller: the library's own normal distribution may differ from one compiler to the next.
  const auto uniform = [this] { return (static_cast<double>(engine_() >> 11) + 0.5) * 0x1p-53; };
  const double radius = std::sqrt(-2 * std::log(uniform()));
  return radius * std::cos(2 * std::numbers::pi * uniform());
}

std::vector<HomeDay> lived_air(const HomeAir& typical, Date first, int count, NamedChance chance) {
  std::vector<HomeDay> air = home_days(typical, first, count);
  const double kept = std::exp(-1 / in_days(typical.weather_memory));
  const double renewed = std::sqrt(1 - kept * kept);
  double departure = chance.normal();
  for (HomeDay& day : air) {
    day.relative_humidity =
        std::clamp(day.relative_humidity + typical.weather_sd_relative_humidity * departure, driest, dampest);
    day.temperature_c += temperature_sd_c * chance.normal();
    departure = kept * departure + renewed * chance.normal();
  }
  return air;
}

std::vector<double> wood_moisture(const std::vector<HomeDay>& air, Days lag) {
  std::vector<double> equilibrium;
  equilibrium.reserve(air.size());
  for (const HomeDay& day : air) {
    equilibrium.push_back(
        in_percent(equilibrium_moisture(celsius(day.temperature_c), humidity_fraction(day.relative_humidity))));
  }
  return equilibrium.empty() ? equilibrium : follow(equilibrium, lag, equilibrium.front());
}

TrueHeights true_heights(const HiddenNature& nature, double moisture_percent, double years_ago,
                         const HeightsMoved& moved) {
  const double damper = moisture_percent - nature.reference_moisture_percent;
  const double risen = -nature.drift_mm_per_year * years_ago;
  TrueHeights heights{
      .action12_bass = nature.action12_bass_mm + nature.response_bass * damper + risen + moved.action12_bass_mm,
      .action12_treble = nature.action12_treble_mm + nature.response_treble * damper + risen + moved.action12_treble_mm,
      .relief = nature.relief_mm + nature.relief_mm_per_percent * damper + moved.relief_mm,
      .saddle_exposure_bass = nature.saddle_exposure_bass_mm + moved.saddle_bass_mm,
      .saddle_exposure_treble = nature.saddle_exposure_treble_mm + moved.saddle_treble_mm,
      .action1_bass = nature.nut_bass_mm,
      .action1_treble = nature.nut_treble_mm,
      .sink_at_soundhole = nature.sink_at_soundhole_mm + moved.sink_mm,
      .bridge_over_rim = nature.bridge_over_rim_mm + nature.bridge_over_rim_mm_per_percent * damper};
  // Fret 12 is in the middle: the saddle stands twice as high over the frets as the strings there, less the nut.
  const double saddle_over_frets =
      heights.action12_bass + heights.action12_treble - (nature.nut_bass_mm + nature.nut_treble_mm) / 2;
  const double exposure_in_the_middle =
      (heights.saddle_exposure_bass + heights.saddle_exposure_treble) / 2 + nature.saddle_crown_mm;
  heights.straightedge_over_bridge = exposure_in_the_middle - saddle_over_frets;
  return heights;
}

}  // namespace tailblock

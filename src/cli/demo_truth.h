#pragma once

#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "air/home.h"

namespace tailblock {

/// The small world behind the invented readings: air that departs from the typical year, wood that follows it, and
/// heights that answer the wood. Only the demo and its tests know of it; the models never do.

/// How one invented instrument really is.
struct HiddenNature {
  std::string instrument;
  double reference_moisture_percent = 0;
  double action12_bass_mm = 0, action12_treble_mm = 0;  ///< at the reference, on `today`, before any work
  double response_bass = 0, response_treble = 0;        ///< mm at fret 12 per percent of moisture
  Days lag{};
  double drift_mm_per_year = 0;
  double relief_mm = 0, relief_mm_per_percent = 0;
  double saddle_exposure_bass_mm = 0, saddle_exposure_treble_mm = 0;
  double nut_bass_mm = 0, nut_treble_mm = 0;  ///< over fret 1
  double saddle_crown_mm = 0;                 ///< its middle over the line from bass to treble
  double sink_at_soundhole_mm = 0;
  double bridge_over_rim_mm = 0, bridge_over_rim_mm_per_percent = 0;  ///< what the top does by itself
};

/// By how much work, or a brace that lets go, moved things; positive raises.
struct HeightsMoved {
  double action12_bass_mm = 0, action12_treble_mm = 0;
  double saddle_bass_mm = 0, saddle_treble_mm = 0;
  double relief_mm = 0;
  double sink_mm = 0;  ///< positive is deeper

  HeightsMoved& operator+=(const HeightsMoved& other);
};

/// A source of chance of its own for everything that has a name, so that adding one leaves the others as they were.
class NamedChance {
 public:
  NamedChance(int seed, std::string_view name);
  /// A draw from the normal distribution of mean 0 and standard deviation 1, the same on every machine.
  double normal();

 private:
  std::mt19937_64 engine_;
};

/// The air that a home really had on each of `count` days from `first`: the typical year and the home's weather.
[[nodiscard]] std::vector<HomeDay> lived_air(const HomeAir& typical, Date first, int count, NamedChance chance);

/// Moisture of the wood in percent on each of those days, having followed the air with this lag.
[[nodiscard]] std::vector<double> wood_moisture(const std::vector<HomeDay>& air, Days lag);

/// True heights, in mm.
struct TrueHeights {
  double action12_bass = 0, action12_treble = 0, relief = 0;
  double saddle_exposure_bass = 0, saddle_exposure_treble = 0;
  double action1_bass = 0, action1_treble = 0;
  double straightedge_over_bridge = 0;
  double sink_at_soundhole = 0;
  double bridge_over_rim = 0;
};

/// The heights of an instrument whose wood holds this much moisture, so many years before today, after that work.
[[nodiscard]] TrueHeights true_heights(const HiddenNature& nature, double moisture_percent, double years_ago,
                                       const HeightsMoved& moved);

}  // namespace tailblock

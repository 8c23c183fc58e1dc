#pragma once

#include <optional>
#include <vector>

#include "air/home.h"
#include "quantity/fields.h"
#include "wood/following.h"

namespace tailblock {

/// A plate and what stands between it and the room.
struct Plate {
  Slab slab;
  Days extra_lag;  ///< case, finish and air in the box, as one more first-order stage; fitted, never known beforehand
};
void describe(FieldVisitor&, Plate&);

/// Air that stays as it is.
struct StillAir {
  Temperature temperature = celsius(20);
  RelativeHumidity humidity = humidity_fraction(0.45);
};
void describe(FieldVisitor&, StillAir&);

/// Either the air of a home day by day, or air that stays as it is.
struct MoistureRequest {
  std::optional<HomeAir> home = {};
  std::optional<Date> first = {};  ///< the first day, with a home
  int count = 365;
  Plate plate = {};
  std::optional<StillAir> still_air = {};
};
void describe(FieldVisitor&, MoistureRequest&);

/// What still air does.
struct Equilibrium {
  double moisture_percent = 0;
  double percent_per_percent = 0;  ///< percent of moisture for one percent of relative humidity more
};
void describe(FieldVisitor&, Equilibrium&);

/// What the wood asks for and what it has, day by day.
struct MoistureDays {
  Date first;
  std::vector<double> equilibrium_percent;
  std::vector<double> moisture_percent;
  double lowest_percent = 0, highest_percent = 0;  ///< of the wood
};
void describe(FieldVisitor&, MoistureDays&);

struct MoistureResult {
  double slab_lag_days = 0;  ///< of the bare plate
  double extra_lag_days = 0;
  std::optional<Equilibrium> equilibrium;
  std::optional<MoistureDays> days;
};
void describe(FieldVisitor&, MoistureResult&);

/// The moisture of a plate in a home, or that which air that stays as it is brings it to. The plate follows the
/// equilibrium moisture of the day's air through two first-order stages, the extra lag and then the slab's slowest mode
/// (wood/following.h), having lived in that home long enough before the first day.
/// An absolute level is good to about a percent of moisture, a difference over the season better (wood/equilibrium.h).
/// @throws Refused unless exactly one of `home` and `still_air` is given, and `first` with a home.
[[nodiscard]] MoistureResult moisture(const MoistureRequest& request);

}  // namespace tailblock

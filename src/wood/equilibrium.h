#pragma once

#include "quantity/physical.h"

namespace tailblock {

/// The moisture that wood comes to when it is left in this air.
///
///     M = (1800/W) [ K h/(1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2)/(1 + K1 K h + K1 K2 K^2 h^2) ]   M in percent
///     W = 349 + 1.29 T + 0.0135 T^2         K  = 0.805 + 0.000736 T - 0.00000273 T^2
///     K1 = 6.27 - 0.00938 T - 0.000303 T^2  K2 = 1.91 + 0.0407 T - 0.000293 T^2      h 0..1, T in C
///
/// One equation for every wood. Left out: the history (wood that is drying holds 1.5 to 2 % more than wood that is
/// taking up water), the kind of wood (dense tropical woods hold less) and heat treatment. An absolute value is good to
/// about a percent; differences over a season are better known. The table printed from this equation covers -1..54 C
/// (30..130 F) and RH 0.05..0.95 in the part that was checked; it is accepted from -40 to 60 C and from 0 to 1, where
/// the curve is smooth but unsupported. Source: Simpson, FPL-RN-0268 (1998); Wood Handbook FPL-GTR-190 (2010) eq. 4-5:
/// read second-hand.
/// @throws Refused naming `temperature_c` or `relative_humidity` outside -40..60 C or 0..1.
[[nodiscard]] Moisture equilibrium_moisture(Temperature air, RelativeHumidity humidity);

/// How many percent of moisture one percent of relative humidity is worth in this air: the derivative of the above.
/// Valid and refused as above.
[[nodiscard]] double equilibrium_slope(Temperature air, RelativeHumidity humidity);

/// The humidity in which wood would keep this moisture: the inverse of `equilibrium_moisture`, solved to 1e-9.
/// @throws Refused naming `moisture_percent` when no humidity from 0 to 1 holds the wood at it.
[[nodiscard]] RelativeHumidity equilibrium_humidity(Temperature air, Moisture wood);

}  // namespace tailblock

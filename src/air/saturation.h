#pragma once

#include "quantity/physical.h"

namespace tailblock {

/// The vapour pressure of air that can hold no more water, in pascals, over liquid water; below 0 C over supercooled
/// water, which is what weather services and this house mean by relative humidity.
///
///     ln p = C8/T + C9 + C10 T + C11 T^2 + C12 T^3 + C13 ln T        T in kelvin
///
/// Left out: the few parts in a thousand by which air itself raises it. Valid -60..100 C here: the source says 0..200
/// C, and below 0 C the curve is continued, 0.1 % above a later fit to supercooled water at -20 C and 0.7 % at -40 C
/// (docs/models/air.md).
/// Source: Hyland & Wexler 1983, as ASHRAE Handbook Fundamentals 2017 ch. 1 eq. 6 (coefficients read in an open-source
/// psychrometric library that cites it).
/// @throws Refused naming `temperature_c`.
[[nodiscard]] double saturation_pa_over_water(Temperature air);

/// The same over ice, -100..0 C.
///
///     ln p = C1/T + C2 + C3 T + C4 T^2 + C5 T^3 + C6 T^4 + C7 ln T
///
/// Source: as above, eq. 5. @throws Refused naming `temperature_c`.
[[nodiscard]] double saturation_pa_over_ice(Temperature air);

/// The temperature at which air of this vapour pressure is saturated over liquid water, solved to 1e-9 K.
/// @throws Refused naming `vapour_pa` when the answer is not within -60..100 C.
[[nodiscard]] Temperature dew_point(double vapour_pa);

/// The temperature, not above 0 C, at which it is saturated over ice.
/// @throws Refused naming `vapour_pa` when the answer is not within -100..0 C.
[[nodiscard]] Temperature frost_point(double vapour_pa);

/// Grams of water in a cubic metre of air whose vapour pressure this is: 1000 p_v/(R_v T), R_v = R/M = 461.52 J/(kg K).
[[nodiscard]] double vapour_g_per_m3(double vapour_pa, Temperature air);

/// The inverse: the vapour pressure that this much water adds.
[[nodiscard]] double vapour_pa_of_density(double g_per_m3, Temperature air);

}  // namespace tailblock

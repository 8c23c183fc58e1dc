#pragma once

#include <numbers>

#include "quantity/quantity.h"

namespace tailblock {

/// A plane angle, held in radians.
using Angle = Quantity<struct AngleKind>;
constexpr Angle radians(double value) { return Angle::from_base(value); }
constexpr Angle degrees(double value) { return radians(value * std::numbers::pi / 180); }
constexpr double in_radians(Angle angle) { return angle.in_base(); }
constexpr double in_degrees(Angle angle) { return angle.in_base() * 180 / std::numbers::pi; }

/// A force, held in newtons.
using Force = Quantity<struct ForceKind>;
/// 1 lbf = 4.4482216152605 N exactly (0.45359237 kg x 9.80665 m/s2).
inline constexpr double newtons_per_pound_force = 4.4482216152605;
constexpr Force newtons(double value) { return Force::from_base(value); }
constexpr double in_newtons(Force force) { return force.in_base(); }
constexpr double in_pounds_force(Force force) { return force.in_base() / newtons_per_pound_force; }

/// An air temperature, held in degrees Celsius: only differences and Celsius formulas are ever used.
using Temperature = Quantity<struct TemperatureKind>;
constexpr Temperature celsius(double value) { return Temperature::from_base(value); }
constexpr Temperature fahrenheit(double value) { return celsius((value - 32) / 1.8); }
constexpr double in_celsius(Temperature temperature) { return temperature.in_base(); }
constexpr double in_fahrenheit(Temperature temperature) { return in_celsius(temperature) * 1.8 + 32; }

/// Relative humidity, 0..1, over liquid water unless the text says over ice.
using RelativeHumidity = Quantity<struct RelativeHumidityKind>;
constexpr RelativeHumidity humidity_fraction(double value) { return RelativeHumidity::from_base(value); }
constexpr RelativeHumidity humidity_percent(double value) { return humidity_fraction(value / 100); }
constexpr double in_fraction(RelativeHumidity humidity) { return humidity.in_base(); }
constexpr double in_percent(RelativeHumidity humidity) { return humidity.in_base() * 100; }

/// Moisture content of wood: mass of water over dry mass, held as a fraction.
using Moisture = Quantity<struct MoistureKind>;
constexpr Moisture moisture_percent(double value) { return Moisture::from_base(value / 100); }
constexpr double in_percent(Moisture moisture) { return moisture.in_base() * 100; }

/// A span of time, held in days.
using Days = Quantity<struct DaysKind>;
constexpr Days days(double value) { return Days::from_base(value); }
constexpr Days hours(double value) { return days(value / 24); }
constexpr double in_days(Days span) { return span.in_base(); }
constexpr double in_hours(Days span) { return span.in_base() * 24; }

}  // namespace tailblock

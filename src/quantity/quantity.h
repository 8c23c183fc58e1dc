#pragma once

#include <compare>

namespace tailblock {

/// A number that knows what it measures. `Kind` keeps two quantities from being swapped; the value is held in one base
/// unit. There is no way in or out that does not name a unit: see length.h, angle.h and the others for the named
/// makers.
template <class Kind>
class Quantity {
 public:
  constexpr Quantity() = default;
  static constexpr Quantity from_base(double value) { return Quantity(value); }
  [[nodiscard]] constexpr double in_base() const { return value_; }

  constexpr Quantity operator-() const { return Quantity(-value_); }
  constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
  constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
  friend constexpr Quantity operator*(Quantity a, double times) { return Quantity(a.value_ * times); }
  friend constexpr Quantity operator*(double times, Quantity a) { return Quantity(a.value_ * times); }
  friend constexpr Quantity operator/(Quantity a, double parts) { return Quantity(a.value_ / parts); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  explicit constexpr Quantity(double value) : value_(value) {}
  double value_ = 0;
};

}  // namespace tailblock

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>

namespace staddle {

template <class Dimension>
class Quantity;

// A unit makes quantities and reads them back: feet(5), height.in(feet). There is
// no other way in or out, so a number cannot be read in a unit it was not made in.
template <class Dimension>
struct Unit {
  constexpr Quantity<Dimension> operator()(double amount) const;
};

// An amount of one dimension, held as a double in that dimension's only unit.
// Sums, differences, multiples and ratios are amounts; products are not.
template <class Dimension>
class Quantity {
 public:
  constexpr Quantity() = default;  // zero

  constexpr double in(Unit<Dimension>) const { return amount_; }

  constexpr Quantity operator-() const { return Quantity(-amount_); }
  constexpr Quantity& operator+=(Quantity other) {
    amount_ += other.amount_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    amount_ -= other.amount_;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) {
    return Quantity(a.amount_ + b.amount_);
  }
  friend constexpr Quantity operator-(Quantity a, Quantity b) {
    return Quantity(a.amount_ - b.amount_);
  }
  friend constexpr Quantity operator*(Quantity a, double factor) {
    return Quantity(a.amount_ * factor);
  }
  friend constexpr Quantity operator*(double factor, Quantity a) { return a * factor; }
  friend constexpr Quantity operator/(Quantity a, double divisor) {
    return Quantity(a.amount_ / divisor);
  }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.amount_ / b.amount_; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  friend struct Unit<Dimension>;
  constexpr explicit Quantity(double amount) : amount_(amount) {}
  double amount_ = 0.0;
};

template <class Dimension>
constexpr Quantity<Dimension> Unit<Dimension>::operator()(double amount) const {
  return Quantity<Dimension>(amount);
}

}  // namespace staddle

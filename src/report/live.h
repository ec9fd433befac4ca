// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

// Formulas of a spreadsheet, each with the value that it has now. Building both in one
// place keeps the value that a reader shows without computing equal to what the formula
// gives, and a test lets another program recompute every one of them.
namespace staddle::sheets {

// A cell, counted from zero.
struct Place {
  int row = 0;
  int column = 0;
};

// "B7", and with its row or column held fixed where the formula is copied: "$B$7".
std::string cell_name(Place place);
std::string fixed_cell_name(Place place);
// "B7:D9", "B$7:D$9".
std::string range_name(Place first, Place last);
std::string range_with_fixed_rows(Place first, Place last);

// A formula without its "=", and its value. Sums, products and quotients of formulas are
// formulas, with brackets where the order of operations needs them.
class Live {
 public:
  enum class Binds { loosely, tightly, whole };  // a sum, a product, a single term

  Live(std::string formula, double value, Binds binds = Binds::whole)
      : formula_(std::move(formula)), value_(value), binds_(binds) {}
  static Live constant(double value);

  const std::string& formula() const { return formula_; }
  double value() const { return value_; }

  friend Live operator+(const Live& a, const Live& b);
  friend Live operator-(const Live& a, const Live& b);
  friend Live operator*(const Live& a, const Live& b);
  friend Live operator/(const Live& a, const Live& b);
  friend Live operator-(const Live& a);

 private:
  std::string within(Binds least) const;

  std::string formula_;
  double value_;
  Binds binds_;
};

// (1 + rate)^exponent.
Live compounded(const Live& rate, const Live& exponent);

}  // namespace staddle::sheets

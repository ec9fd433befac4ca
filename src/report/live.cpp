// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/live.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"

namespace staddle::sheets {
namespace {

std::string column_name(int column) {
  require(column >= 0, "a column of a sheet is counted from zero");
  std::string name;
  for (int rest = column + 1; rest > 0; rest = (rest - 1) / 26) {
    name.push_back(static_cast<char>('A' + (rest - 1) % 26));
  }
  std::reverse(name.begin(), name.end());
  return name;
}

}  // namespace

std::string cell_name(Place place) {
  return fmt::format("{}{}", column_name(place.column), place.row + 1);
}

std::string fixed_cell_name(Place place) {
  return fmt::format("${}${}", column_name(place.column), place.row + 1);
}

std::string range_name(Place first, Place last) { return cell_name(first) + ":" + cell_name(last); }

std::string range_with_fixed_rows(Place first, Place last) {
  return fmt::format("{}${}:{}${}", column_name(first.column), first.row + 1,
                     column_name(last.column), last.row + 1);
}

Live Live::constant(double value) {
  return {fmt::format("{}", value), value, value < 0.0 ? Binds::loosely : Binds::whole};
}

std::string Live::within(Binds least) const {
  return binds_ < least ? "(" + formula_ + ")" : formula_;
}

Live operator+(const Live& a, const Live& b) {
  return {a.formula_ + "+" + b.within(Live::Binds::tightly), a.value_ + b.value_,
          Live::Binds::loosely};
}

Live operator-(const Live& a, const Live& b) {
  return {a.formula_ + "-" + b.within(Live::Binds::tightly), a.value_ - b.value_,
          Live::Binds::loosely};
}

Live operator*(const Live& a, const Live& b) {
  return {a.within(Live::Binds::tightly) + "*" + b.within(Live::Binds::tightly),
          a.value_ * b.value_, Live::Binds::tightly};
}

Live operator/(const Live& a, const Live& b) {
  return {a.within(Live::Binds::tightly) + "/" + b.within(Live::Binds::whole), a.value_ / b.value_,
          Live::Binds::tightly};
}

Live operator-(const Live& a) {
  return {"-" + a.within(Live::Binds::tightly), -a.value_, Live::Binds::loosely};
}

Live compounded(const Live& rate, const Live& exponent) {
  // Spreadsheets let the sign bind more tightly than the power, as is meant here.
  return {fmt::format("(1+{})^({})", rate.formula(), exponent.formula()),
          std::pow(1.0 + rate.value(), exponent.value()), Live::Binds::tightly};
}

}  // namespace staddle::sheets

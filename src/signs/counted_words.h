// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/units/units.h"

// Numbers with the name of what they count, which is singular beside "1".
namespace staddle::words {

// 1 -> "1 year", 3 -> "3 years", 0.5 in one decimal -> "0.5 years". REQUIRES: finite; a name
// whose plural ends in s.
std::string counted(double value, const std::string& name, int decimals = 0);
// The name alone, as it stands beside a number that is shown so: "year" beside "1".
std::string named_beside(const std::string& shown, const std::string& name);

// "62 acres", "12.5 acres", "1 acre", "0.01 acres": two digits of what is less than one.
std::string acres_of(Area area);

}  // namespace staddle::words

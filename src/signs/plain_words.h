// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/units/age.h"
#include "staddle/units/units.h"

// Numbers as a landowner reads them: rounded, with thousands separators, never "-0".
namespace staddle::words {

// 12345.6, 0 -> "12,346". REQUIRES: finite, decimals >= 0.
std::string number(double value, int decimals = 0);

// Money rounded to whole $5 an acre, "$1,235"; a loss "-$40".
std::string money(MoneyPerAcre amount);
// The size of an amount for a sentence that says its direction: "$40"; what rounds to
// nothing is "less than $5".
std::string size_of(MoneyPerAcre amount);
// "about $40", and "less than $5" by itself: that is said of no exact figure.
std::string about(MoneyPerAcre amount);
// Of a whole tract, rounded to $500.
std::string tract_money(Money amount);
std::string size_of(Money amount);

// 0.3333 -> "33 percent"; shares below one percent keep a decimal.
std::string percent(double share);

// The chance of a year, in as many digits as it was given: 0.0125 -> "1.25 percent".
std::string chance(double probability);

// "a third", "half", or the percentage: how much of the basal area a cut takes.
std::string removal(double fraction);

// "one" to "ten", above that digits.
std::string count(std::size_t things);

// "pulpwood, chip-n-saw and sawtimber".
std::string list(const std::vector<std::string>& items, const std::string& last = "and");

// The name of a product or a key without its underscores: "chip_n_saw" -> "chip-n-saw".
std::string product(const std::string& name);

// "hurricane, major" -> "major hurricane", so that it can stand in a list.
std::string peril(const std::string& name);

// "hurricane" of "Hurricane": the first letter in upper case.
std::string capital(std::string text);

}  // namespace staddle::words

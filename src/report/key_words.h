// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/optimise/solve.h"

// Keys of the file and of results, as one says them.
namespace staddle {

// "guards/min_height_ft" -> "height at a thinning, feet"; an unknown key without its
// underscores.
std::string limit_in_words(const std::string& key);

// A value of that limit: shares as percentages, the rest as short as it is exact enough.
std::string limit_value(const std::string& key, double value);

// "tons of a sale 480, allowed 500; ..."
std::string breaks_in_words(const std::vector<BrokenLimit>& breaks);

// A guard with its setting: "no less than 60 square feet left".
std::string guard_in_words(const std::string& key, const Guards& guards);

// "dominant_height_ft" -> "dominant height, feet".
std::string sign_in_words(const std::string& sign);

}  // namespace staddle

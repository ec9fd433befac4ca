// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/advise/fitted_ranges.h"

namespace staddle {

// One sentence for each kind of thing beyond the fitted range: what leans on how much.
std::vector<std::string> outside_fitted_words(const std::vector<OutsideRange>& outside);

// The same of one plan's years, told in rows.
std::vector<std::string> fitted_words_of_years(const std::vector<OutsideRange>& outside);

}  // namespace staddle

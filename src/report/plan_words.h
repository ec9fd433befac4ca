// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "report/dates.h"
#include "staddle/regime/regime.h"

namespace staddle {

// "a third in 2029 and a third in 2034, final harvest in 2043"; "no thinning, final
// harvest at age 30".
std::string plan_in_words(const Dates& dates, const Regime& regime);

}  // namespace staddle

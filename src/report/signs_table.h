// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>

#include "staddle/report/report.h"
#include "staddle/signs/readiness.h"

namespace staddle {

// The signs that a thinning is due, one a row, with their limits and verdicts. `name`
// says an age as people do: "2029" or "age 17".
Table signs_table(const std::vector<SignReading>& signs, const ReadyLimits& limits,
                  const std::function<std::string(Age)>& name);

// How the signs decide, in a sentence for below the table.
std::string how_signs_decide();

}  // namespace staddle
